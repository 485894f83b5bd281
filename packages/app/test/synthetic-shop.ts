import type { Proof, Rig } from '@spraywright/engine/rig';
import {
  factorKey,
  INSTRUMENTS,
  massWeights,
  PART_SHARES,
  repeatsLeft,
  scaleModel,
  valuesAsked,
  valuesTaken,
  WHOLE_MASS,
  yardModel,
  type BuiltRig,
  type Instrument,
  type Learned,
  type YardModel,
} from '@spraywright/engine/yard';
import { randomOf } from './mutation.ts';

/** A shop whose every part is known: what it built, what it read, and the truth behind. */
export interface SyntheticShop {
  readonly machines: readonly BuiltRig[];
  /** Mean log factor of every catalogue part, by the key of the factor. */
  readonly parts: ReadonlyMap<string, number>;
  /** Log factors of every machine's inputs, in the order of the machines. */
  readonly copies: readonly ReadonlyMap<string, number>[];
}

export interface SyntheticOptions {
  readonly count: number;
  readonly seed: number;
  /** Share of readings that are off by 10 to 60 % whatever the instrument. */
  readonly odd?: number;
  /** How much wider parts and copies scatter than the tolerances say; 1 when absent. */
  readonly wider?: number;
  /** Log factors of single parts, by the key of the factor; the others are drawn. */
  readonly parts?: Readonly<Record<string, number>>;
  /** Proofs of the rigs, where they are weighed too: each once, every third by wheels and coupler instead of whole. */
  readonly proofs?: ReadonlyMap<Rig, Proof>;
  /** Log factors of parts by input, all others nought, read without scatter. */
  readonly only?: Readonly<Record<string, number>>;
}

/**
 * Builds copies of the given rigs with parts and copies off by their tolerances, and reads each through the real solver
 * with the instruments' own scatter, a tape three times and a gauge with the outlets shut twice, or three times where two are at
 * odds, each with slips of its own. The same seed gives the same shop, odd readings or not.
 */
export function syntheticShop(
  rigs: readonly Rig[],
  { count, seed, odd = 0, wider = 1, only, proofs, parts: given }: SyntheticOptions,
): SyntheticShop {
  const hand = handOf(randomOf(seed), odd, only !== undefined);
  const again = handOf(randomOf(seed + AGAIN), odd, only !== undefined);
  const { normal } = hand;
  const models = rigs.map((rig): ShopModel => {
    const proof = proofs?.get(rig);
    const both = [yardModel(rig), ...(proof === undefined ? [] : [scaleModel(rig, proof)])];
    const inputs = both.flatMap((model) => model.inputs);
    return { rig, both, inputs, ...(proof === undefined ? {} : { proof }) };
  });
  const parts = new Map<string, number>();
  for (const { rig, inputs } of models)
    for (const input of inputs) {
      const key = factorKey(rig, input);
      const { share } = PART_SHARES[input.kind]!;
      if (!parts.has(key))
        parts.set(
          key,
          given?.[key] ??
            input.mean + (only?.[input.id] ?? 0) + wider * Math.sqrt(share) * input.deviation * normal(),
        );
    }
  const copies: Map<string, number>[] = [];
  const machines = Array.from({ length: count }, (_, n): BuiltRig => {
    const model = models[n % models.length]!;
    const truth = new Map<string, number>();
    const x = model.inputs.map((input) => {
      const { share } = PART_SHARES[input.kind]!;
      const own = wider * Math.sqrt(1 - share) * input.deviation * normal();
      const value = parts.get(factorKey(model.rig, input))! + own;
      truth.set(input.id, value);
      return value;
    });
    if (model.proof !== undefined)
      truth.set(
        WHOLE_MASS,
        [...massWeights(model.rig)].reduce((sum, [id, weight]) => sum + weight * truth.get(id)!, 0),
      );
    copies.push(truth);
    const weighed = Math.floor(n / models.length) % 3 === 2 ? 'supports' : 'whole';
    const machine = built(model, x, `S-${n}`, weighed, hand, again);
    return { ...machine, ...(model.proof === undefined ? {} : { proof: model.proof }) };
  });
  return { machines, parts, copies };
}

/** So far apart are the draws of what is read again from those of the shop. */
const AGAIN = 1_000_000;

/** Draws of what is read: scatter of a deviation of one, and now and then a slip. */
interface Hand {
  readonly normal: () => number;
  readonly slip: (value: number) => number;
}

function handOf(random: () => number, odd: number, steady: boolean): Hand {
  return {
    normal: () => (steady ? 0 : Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())),
    slip: (value) => {
      const wrong = random() < odd;
      const by = 0.1 + 0.5 * random();
      const sign = random() < 0.5 ? -1 : 1;
      return wrong ? value * Math.exp(sign * by) : value;
    },
  };
}

/** A rig with what water and scales show of it. */
interface ShopModel {
  readonly rig: Rig;
  readonly both: readonly YardModel[];
  /** Of both, one after the other. */
  readonly inputs: YardModel['inputs'];
  readonly proof?: Proof;
}

function built(
  { rig, both }: ShopModel,
  x: readonly number[],
  serial: string,
  weighed: 'whole' | 'supports',
  hand: Hand,
  again: Hand,
): BuiltRig {
  const [water, scale] = both;
  const count = water!.inputs.length;
  const shown = [...water!.predict(x.slice(0, count)), ...(scale?.predict(x.slice(count)) ?? [])];
  const rows = both.flatMap((model) => model.rows);
  const values = new Map<string, number[]>();
  const placed = misplaced(rows, shown, hand.normal);
  const supported = placed.size > 0;
  rows.forEach((row, r) => {
    if (row.sumOf !== undefined) return;
    if (row.instrument === 'scale' && placed.has(r) !== (supported && weighed === 'supports')) return;
    const { deviation, plain, repeats }: Instrument = INSTRUMENTS[row.instrument];
    // As many as may be asked for are drawn, so that the same seed gives the same shop whatever is asked.
    const asked = {
      instrument: row.instrument,
      ...(repeats === undefined ? {} : { repeats: repeats.times }),
    };
    const at = shown[r]! + (placed.get(r) ?? 0);
    const said = (by: Hand, off: number) => by.slip(plain === true ? at + off : Math.exp(at + off));
    const ofOne = repeats?.deviation ?? 0;
    const shareOfAll = 1 - (ofOne / deviation) ** 2;
    const drawn: number[] = [];
    if (repeats?.one === 'reading') {
      // What is read again is drawn by itself, so that the shop is the same as one that reads it once.
      const first = deviation * hand.normal();
      const common = shareOfAll * first + ofOne * Math.sqrt(shareOfAll) * again.normal();
      drawn.push(said(hand, first));
      while (drawn.length < valuesTaken(asked)) drawn.push(said(again, common + ofOne * again.normal()));
    } else {
      const common = Math.sqrt(shareOfAll) * deviation * hand.normal();
      while (drawn.length < valuesTaken(asked))
        drawn.push(said(hand, repeats === undefined ? common : common + ofOne * hand.normal()));
    }
    const read = drawn.slice(0, valuesAsked(asked));
    while (read.length < drawn.length && repeatsLeft(asked, read) > 0) read.push(drawn[read.length]!);
    if (read.every(Number.isFinite)) values.set(row.id, read);
  });
  return {
    rig,
    serial,
    tests: [
      {
        document: {
          format: 'spraywright-readings',
          rig: rig.document.id,
          serial,
          wind: 1,
          readings: [],
        },
        values,
      },
    ],
  };
}

/** How far what rests on each support is off because the masses stand elsewhere: what one carries less the others carry more. */
function misplaced(
  rows: YardModel['rows'],
  shown: readonly number[],
  normal: () => number,
): Map<number, number> {
  const supports = rows.flatMap((row, r) => (row.besides === undefined ? [] : [r]));
  const [least, ...others] = supports.sort((a, b) => shown[a]! - shown[b]!);
  if (least === undefined) return new Map();
  const off = rows[least]!.besides!.deviation * normal();
  const load = (r: number) => Math.exp(shown[r]!);
  const rest = others.reduce((sum, r) => sum + load(r), 0);
  return new Map([
    [least, off],
    ...others.map((r) => [r, Math.log1p((-Math.expm1(off) * load(least)) / rest)] as const),
  ]);
}

/** Share of the learned parts whose truth lies within two deviations of what was learned. */
export function partsWithin({ factors }: Learned, { parts }: SyntheticShop): number {
  const taught = factors.filter((f) => f.rigs > 0);
  const near = taught.filter((f) => Math.abs(f.mean - parts.get(f.key)!) <= 2 * f.deviation);
  return near.length / taught.length;
}

/** Share of the inputs of all built machines whose truth lies within two deviations of what was learned. */
export function copiesWithin(learned: Learned, { machines, copies }: SyntheticShop): number {
  let [near, all] = [0, 0];
  for (const { serial, inputs } of learned.copies) {
    const truth = copies[machines.findIndex((m) => m.serial === serial)]!;
    for (const { id, mean, deviation } of inputs) {
      all++;
      if (Math.abs(mean - truth.get(id)!) <= 2 * deviation) near++;
    }
  }
  return near / all;
}

/** How far the mean of a part moves at most between two learnings of the same shop, in its deviations. */
export function worstShift(from: Learned, to: Learned): number {
  return Math.max(...from.factors.map((f, i) => Math.abs(to.factors[i]!.mean - f.mean) / f.deviation));
}

/** The machines of a shop without the readings in which it differs from the same shop read right. */
export function withoutOdd({ machines }: SyntheticShop, right: SyntheticShop): BuiltRig[] {
  return machines.map((machine, n) => ({
    ...machine,
    tests: machine.tests.map((test, t) => {
      const same = right.machines[n]!.tests[t]!.values;
      const values = [...test.values].flatMap(([id, list]) => {
        // A third reading, of two at odds, is in one of the shops only.
        const sound = same.get(id)!;
        const near = list.filter((v, i) => Math.abs(v / (sound[i] ?? sound[0]!) - 1) < 0.05);
        return near.length === 0 ? [] : [[id, near] as const];
      });
      return { ...test, values: new Map(values) };
    }),
  }));
}
