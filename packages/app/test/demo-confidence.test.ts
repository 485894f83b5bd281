import { describe, expect, it } from 'vitest';
import {
  confidenceOf,
  drawPromises,
  drawsFrom,
  inPlace,
  normalQuantile,
  proveRig,
  uncertainInputs,
  withFactors,
  type Draws,
  type UncertainInput,
} from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const jobs = demoBriefs().map(({ name }) => {
  const { rig } = demoRig(name, catalogue, shop);
  return { name, rig, proof: proveRig(rig, catalogue, shop, { notes: false }) };
});

const CORNERS = 10;

/** Plain chance, repeatable: a 32-bit counter through a mixing function (mulberry32, T. Ettinger, public domain). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}

function plainDraws(inputs: readonly UncertainInput[], count: number, seed: number): Draws {
  const next = chance(seed);
  return drawsFrom(inputs, count, () => normalQuantile(next()));
}

describe.each(jobs)('draws of $name', ({ rig, proof }) => {
  it('have the figures of the exact proof of each drawn rig, out to the corners of the tolerances', () => {
    // The load of the liquid is no number of a rig; its draws are told apart from the others below.
    const inputs = uncertainInputs(rig).map((i) => (i.kind === 'liquid-mass' ? { ...i, deviation: 0 } : i));
    const next = chance(7);
    // First corners: every input two deviations off, to either side; then plain draws, of which the last come after
    // the situations that cannot decide have been left out.
    const draws = drawsFrom(inputs, 84, (draw) =>
      draw >= CORNERS ? normalQuantile(next()) : next() < 0.5 ? -2 : 2,
    );
    const drawn = drawPromises(rig, proof, draws);
    expect(drawn.length).toBeGreaterThan(15);
    const throwAt = new Map(inputs.map((i, k) => [i.id, draws.columns[k]!]));
    const placed = inPlace(rig, proof);
    for (const draw of [...Array(CORNERS).keys(), ...Array.from({ length: 10 }, (_, i) => 74 + i)]) {
      const exact = proveRig(
        withFactors(placed, inputs, (_, k) => draws.columns[k]![draw]!),
        catalogue,
        shop,
        { notes: false },
      );
      for (const { promise, has, asked } of drawn) {
        const found = exact.promises.find((p) => p.id === promise.id);
        if (found?.has === undefined || found.asked === undefined) continue;
        const about = `${promise.id} in draw ${draw}`;
        if (promise.kind === 'reach') {
          const reach = exact.duties.find((d) => d.id === promise.duty)!.reach!;
          const z = throwAt.get('throw:gun')![draw]! / 0.08;
          const thrown =
            (reach.meaning === 'touched' ? reach.farthest : reach.bulk) * Math.exp(z * reach.sigma);
          expect(Math.abs(has[draw]! / thrown - 1), about).toBeLessThan(1e-3);
        } else if (found.kind === 'electrics' && found.sentence !== promise.sentence) {
          // The proof of the drawn rig chooses another cable; the draws keep the one that was laid.
          expect(promise.id, about).toMatch(/^electrics:cable:/);
        } else if (found.asked.value === 0 || (found.kind === 'weight' && found.sense !== promise.sense))
          expect(Math.abs(has[draw]! - found.has.value), about).toBeLessThan(
            5e-3 * Math.abs(found.has.value),
          );
        else {
          // Where several parts or duties share a promise the proof tells the worst, with its own limit.
          // Where a window may be missed on either side the proof tells the nearer one.
          const share = found.has.value / found.asked.value;
          const [mine, theirs] = [
            has[draw]! / asked[draw]!,
            found.sense === promise.sense ? share : 1 / share,
          ];
          // Parabolas miss where the worst fill of the tank changes; losses of bends are not quite powers of the bore.
          const steady = ['weight', 'stability', 'structure', 'pattern', 'liquid'].includes(promise.kind);
          expect(Math.abs(mine / theirs - 1), about).toBeLessThan(steady ? 5e-3 : 1e-5);
        }
      }
    }
  });

  it('keep nine times in ten what is promised nine times in ten, and their bands are those of plain chance', () => {
    const sure = confidenceOf(rig, proof);
    const count = 5000;
    const drawn = drawPromises(rig, proof, plainDraws(uncertainInputs(rig), count, 20260));
    expect(drawn.length).toBe(sure.promises.length);
    for (const { promise, stands, has, asked } of drawn) {
      const told = sure.promises.find((p) => p.id === promise.id)!;
      const sign = stands.sense === 'at-least' ? 1 : -1;
      const share = (passes: (draw: number) => boolean) =>
        has.reduce((sum, _, draw) => sum + (passes(draw) ? 1 : 0), 0) / count;
      const nominal = stands.asked.value;
      const counted = (draw: number) =>
        asked[draw] === nominal ? has[draw]! : (has[draw]! * nominal) / asked[draw]!;
      const keptNine = share((i) => sign * (counted(i) - told.ninety) >= 0);
      const more = share((i) => sign * (counted(i) - told.ninety) > 1e-9 * Math.abs(told.ninety));
      // A figure that many draws share (a pump that switches off at its pressure) may be kept more often.
      expect(keptNine, promise.id).toBeGreaterThanOrEqual(0.88);
      expect(more, promise.id).toBeLessThanOrEqual(0.92);
      const within = (p: number) => 4 * Math.sqrt(p * (1 - p) * (1 / count + 1 / sure.draws)) + 1e-9;
      expect(Math.abs(share((i) => sign * (has[i]! - asked[i]!) >= 0) - told.kept), promise.id).toBeLessThan(
        within(Math.min(0.995, Math.max(0.005, told.kept))),
      );
      const [low, middle, high] = told.band;
      const room = 1e-9 * Math.abs(middle);
      for (const [at, p] of [
        [low, 0.05],
        [middle, 0.5],
        [high, 0.95],
      ] as const) {
        expect(
          share((i) => has[i]! < at - room),
          promise.id,
        ).toBeLessThan(p + within(p));
        expect(
          share((i) => has[i]! <= at + room),
          promise.id,
        ).toBeGreaterThan(p - within(p));
      }
    }
  });

  it('come out the same every time, and nearly so with other draws', () => {
    const once = confidenceOf(rig, proof);
    expect(confidenceOf(rig, proof)).toEqual(once);
    const other = confidenceOf(rig, proof, { seed: 2 });
    expect(other).not.toEqual(once);
    for (const p of once.promises) {
      const again = other.promises.find((q) => q.id === p.id)!;
      expect(Math.abs(again.kept - p.kept), p.id).toBeLessThan(0.03);
    }
  });
});
