import type { Matrix } from './symmetric.ts';

/** One thing that may have gone wrong with a machine's readings, and then widens what they may be along some direction. */
export interface Doubt {
  /** Variance that it adds along that direction, when it is so. */
  readonly variance: number;
  /** Probability that it is so before any reading, as against that it is not: logarithm [-]. */
  readonly odds: number;
}

/** One way in which a machine's readings may have come about. */
export interface Explanation {
  /** Places of the doubts that are so, in order; all others are not. */
  readonly so: readonly number[];
  readonly probability: number;
}

/** Explanations this much less likely than the best are left out [-]. */
const FAR = Math.log(200);
/** Explanations of one number of doubts that are gone on from. */
const WIDTH = 32;
/** A doubt that widens what is expected by less than this share explains nothing. */
const NOTHING = 0.02;

/** A set of doubts on the way, and every doubt's direction in the inverse covariance when these are so. */
interface Found {
  readonly so: readonly number[];
  readonly log: number;
  /** Square of each direction, and its product with what the readings are off. */
  readonly length: Float64Array;
  readonly pull: Float64Array;
  /** What the doubts that are so take from every product of two directions: a column each. */
  readonly taken: readonly Float64Array[];
}

/**
 * The likeliest explanations of the readings of one machine, each a set of doubts that are so, with their probabilities.
 *
 * Doubts are judged together, because two that explain the same misfit are rivals: a pump that gives a tenth less, or a bucket
 * misread. From the sets found so far those with one doubt more are tried, until none comes near the best.
 *
 * @param products of the doubts' directions, two by two, in the inverse covariance of readings of which none is so
 * @param pull product of each direction with what the readings are off
 * @source marginal likelihood of a mixture of normals; each doubt is a change of rank one (Sherman and Morrison); textbook
 */
export function explanationsOf(
  doubts: readonly Doubt[],
  products: Matrix,
  pull: Float64Array,
): Explanation[] {
  const length = Float64Array.from(doubts, (_, d) => products[d]![d]!);
  const telling = [...doubts.keys()].filter((d) => doubts[d]!.variance * length[d]! > NOTHING);
  let best = 0;
  let last: Found[] = [{ so: [], log: 0, length, pull, taken: [] }];
  const all = [...last];
  while (last.length > 0) {
    const seen = new Set<string>();
    const next: { from: Found; d: number; so: number[]; log: number }[] = [];
    for (const from of last)
      for (const d of telling) {
        if (from.so.includes(d)) continue;
        const { variance, odds } = doubts[d]!;
        const wider = variance * from.length[d]!;
        if (!(wider > NOTHING)) continue;
        const log = from.log + odds + ((variance * from.pull[d]! ** 2) / (1 + wider) - Math.log1p(wider)) / 2;
        const so = [...from.so, d].sort((a, b) => a - b);
        if (seen.has(so.join())) continue;
        seen.add(so.join());
        next.push({ from, d, so, log });
      }
    next.sort((a, b) => b.log - a.log);
    // While one more doubt still explains far more, a set that is behind may lead to the best.
    const climbs = next.length > 0 && next[0]!.log > best;
    best = Math.max(best, next[0]?.log ?? best);
    last = next
      .slice(0, WIDTH)
      .filter(({ log }) => climbs || log > best - FAR)
      .map(({ from, d, so, log }) => widened(from, d, so, log, doubts[d]!.variance, products));
    all.push(...last);
  }
  const near = all.filter(({ log }) => log > best - FAR);
  const sum = near.reduce((total, { log }) => total + Math.exp(log - best), 0);
  return near.map(({ so, log }) => ({ so, probability: Math.exp(log - best) / sum }));
}

function widened(
  from: Found,
  d: number,
  so: number[],
  log: number,
  variance: number,
  products: Matrix,
): Found {
  const by = Math.sqrt(variance / (1 + variance * from.length[d]!));
  const column = products[d]!.map(
    (product, j) => by * from.taken.reduce((rest, taken) => rest - taken[d]! * taken[j]!, product),
  );
  return {
    so,
    log,
    length: from.length.map((value, j) => value - column[j]! ** 2),
    pull: from.pull.map((value, j) => value - column[j]! * by * from.pull[d]!),
    taken: [...from.taken, column],
  };
}
