import { describe, expect, it } from 'vitest';
import { explanationsOf } from './explanations.ts';
import { inverseOf, product, rootOf, times, transposed, type Matrix } from './symmetric.ts';

const row = (...values: number[]) => Float64Array.from(values);

/** Three readings of which the first two see the same input: what each moves with, and what one says when all is well. */
const DIRECTIONS: Matrix = [row(1, 0, 0), row(0, 1, 0), row(0, 0, 1), row(1, 1, 0), row(0, 0.5, 1)];
const DOUBTS = [
  { variance: 40, odds: Math.log(0.03 / 0.97) },
  { variance: 40, odds: Math.log(0.03 / 0.97) },
  { variance: 40, odds: Math.log(0.03 / 0.97) },
  { variance: 25, odds: Math.log(0.02 / 0.98) },
  { variance: 9, odds: Math.log(0.02 / 0.98) },
];
const COVARIANCE: Matrix = [row(1.5, 0.5, 0.1), row(0.5, 1.5, 0.2), row(0.1, 0.2, 1.2)];

function found(off: Float64Array) {
  const toward = product(DIRECTIONS, inverseOf(COVARIANCE));
  return explanationsOf(DOUBTS, product(toward, transposed(DIRECTIONS)), times(toward, off));
}

/** Every set of doubts with the density of the normal that it makes of the readings, written out. */
function everySet(off: Float64Array): ReadonlyMap<string, number> {
  const weights = new Map<string, number>();
  for (let set = 0; set < 2 ** DOUBTS.length; set++) {
    const so = DOUBTS.flatMap((_, d) => ((set >> d) & 1 ? [d] : []));
    const covariance = COVARIANCE.map((line, i) =>
      line.map((value, j) =>
        so.reduce((v, d) => v + DOUBTS[d]!.variance * DIRECTIONS[d]![i]! * DIRECTIONS[d]![j]!, value),
      ),
    );
    const root = rootOf(covariance).reduce((all, line, i) => all * line[i]!, 1);
    const misfit = times(inverseOf(covariance), off).reduce((all, v, i) => all + v * off[i]!, 0);
    const prior = so.reduce((all, d) => all * Math.exp(DOUBTS[d]!.odds), 1);
    weights.set(so.join(), (prior * Math.exp(-misfit / 2)) / root);
  }
  const sum = [...weights.values()].reduce((all, w) => all + w, 0);
  return new Map([...weights].map(([so, w]) => [so, w / sum]));
}

describe('explanations of the readings of one machine', () => {
  it.each([
    ['readings that fit', row(0.3, -0.4, 0.2)],
    ['one reading far off', row(9, 0.2, -0.1)],
    ['two readings off together, as one input has it', row(6, 6, 0.3)],
    ['two readings off against each other', row(7, -7, 0.1)],
    ['everything off', row(8, -6, 12)],
  ])('have the probabilities of all sets written out: %s', (_, off) => {
    const all = everySet(off);
    const told = found(off);
    // Those left out are each less likely than a two hundredth of the best.
    for (const { so, probability } of told)
      expect(Math.abs(probability / all.get(so.join())! - 1)).toBeLessThan(0.1);
    const best = Math.max(...all.values());
    for (const [so, share] of all) if (share > best / 100) expect(told.map((t) => t.so.join())).toContain(so);
    expect(told.reduce((sum, t) => sum + t.probability, 0)).toBeCloseTo(1, 12);
  });

  it('share a misfit between its rivals, the reading and the copy, instead of blaming both', () => {
    // Only the third reading sees the last input, but for a little of the second.
    const told = found(row(0, 0, 7));
    const share = (d: number) =>
      told.filter((t) => t.so.includes(d)).reduce((sum, t) => sum + t.probability, 0);
    expect(share(2) + share(4)).toBeGreaterThan(0.95);
    expect(share(2) + share(4)).toBeLessThan(1.2);
  });
});
