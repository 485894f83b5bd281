import type { YardOptions } from '../yard-model.ts';
import {
  dividedVariance,
  evidenceOf,
  linearised,
  modelMaker,
  type BuiltRig,
  type Evidence,
  type Linear,
} from './evidence.ts';
import { inverseOf, product, times, transposed, zeros, type Matrix } from './symmetric.ts';

/** What readings say of one input of all copies of one part, as logarithms of the factor on its nominal value [-]. */
export interface LearnedFactor {
  /** `kind:part`. */
  readonly key: string;
  /** "Plunger pump: flow". */
  readonly name: string;
  readonly mean: number;
  readonly deviation: number;
  /** Of one copy around the part's mean; a tolerance, not learned. */
  readonly copyDeviation: number;
  /** What the tolerance says before any reading. */
  readonly before: { readonly mean: number; readonly deviation: number };
  /** Built machines whose readings depend on it. */
  readonly rigs: number;
}

/** What readings say of one input of one built machine. */
interface LearnedInput {
  readonly id: string;
  readonly mean: number;
  readonly deviation: number;
  /** Key of the factor that it shares with other copies; absent where none of its readings depends on it. */
  readonly factor?: string;
}

/** What readings say of one built machine. */
export interface LearnedCopy {
  readonly rig: string;
  readonly serial?: string;
  /** When it was tested, as written down, the first first. */
  readonly taken: readonly string[];
  readonly inputs: readonly LearnedInput[];
  /** Probability that a reading was taken as its instrument takes it; the rest, that something went wrong [-]. */
  readonly readings: readonly { readonly id: string; readonly sound: number }[];
  readonly unused: readonly { readonly id: string; readonly why: string }[];
}

export interface Learned {
  readonly factors: readonly LearnedFactor[];
  readonly copies: readonly LearnedCopy[];
}

/** Readings that go wrong altogether: slips of pen, wrong bucket, wrong valve. Judgement. */
const ODD_SHARE = 0.03;
/** Copies that are not like their part: a mix-up in the store, damage on the way. Judgement. */
const ODD_COPIES = 0.02;
/** How much wider these scatter than copies do. Judgement. */
const ODD_COPY_SPREAD = 8;
/** Rounds of weighing, each after the last has settled the factors; more change nothing in the third digit. */
const ROUNDS = 40;
const SETTLED = 1e-3;
/** Slopes are taken at the tolerances' middle, then anew at what was learned. */
const LINEARISED = 2;
/** A slope that moves a reading by less than this share of its scatter teaches nothing. */
const TEACHES = 0.02;

/**
 * Learns from the tests of built machines how far each part is off its leaflet, and each copy off its part.
 *
 * All readings at once, from the tolerances as they stand, so the order in which they came changes nothing. A reading
 * is its value by the real solver, straight near what is learned, and the instrument's scatter; a few are taken to be
 * wrong altogether, and each counts by the probability that it is sound, judged by all the others.
 *
 * @source Bayesian linear regression with random effects and the contaminated normal of Tukey (1960), both textbook;
 * the judgement of each reading by all others is the leave-one-out residual of Gaussian regression.
 */
export function learnFrom(machines: readonly BuiltRig[], options: YardOptions = {}): Learned {
  const modelOf = modelMaker(options);
  const evidence = [...machines]
    .sort(byName)
    .map((built) => evidenceOf(built, modelOf))
    .filter((e) => e.inputs.length > 0);
  const places = new Map<string, number>();
  const before: { name: string; mean: number; part: number; copy: number }[] = [];
  for (const { keys, inputs } of evidence)
    keys.forEach((key, k) => {
      if (places.has(key)) return;
      places.set(key, places.size);
      before.push({ name: inputs[k]!.name, mean: inputs[k]!.mean, ...dividedVariance(inputs[k]!) });
    });
  let cells = evidence.map((e) => cellOf(e, places, undefined));
  let found = settle(cells, before);
  for (let again = 1; again < LINEARISED; again++) {
    cells = cells.map((cell, i) => cellOf(cell.evidence, places, { cell, state: found.states[i]! }));
    found = settle(cells, before);
  }
  const { states, mean, covariance } = found;
  return {
    factors: [...places].map(([key, p]): LearnedFactor => {
      const prior = before[p]!;
      return {
        key,
        name: prior.name,
        mean: prior.mean + mean[p]!,
        deviation: Math.sqrt(covariance[p]![p]!),
        copyDeviation: Math.sqrt(prior.copy),
        before: { mean: prior.mean, deviation: Math.sqrt(prior.part) },
        rigs: cells.filter((c) => c.teaches.has(p)).length,
      };
    }),
    copies: cells.map((cell, i) => copyOf(cell, states[i]!, covariance)),
  };
}

/** One machine with its straight law, ready for the rounds. */
interface Cell {
  readonly evidence: Evidence;
  readonly linear: Linear;
  /** Place of each input in the list of factors. */
  readonly at: Int32Array;
  /** Distinct places, and slopes summed over the inputs of each: readings × places. */
  readonly places: readonly number[];
  readonly shared: Matrix;
  /** Variance of each input of a copy that is like its part, and the probability that it is. */
  readonly copyVariance: Float64Array;
  readonly like: Float64Array;
  /** Factors that its readings depend on. */
  readonly teaches: ReadonlySet<number>;
  readonly sound: Float64Array;
}

interface State {
  /** Mean of every input less the tolerance's. */
  readonly x: Float64Array;
  /** Mean of what each input of the copy is off its part. */
  readonly own: Float64Array;
  /** Inverse covariance of the readings when the parts are known. */
  readonly inverse: Matrix;
}

interface Settled {
  readonly states: readonly State[];
  readonly mean: Float64Array;
  readonly covariance: Matrix;
}

function byName(a: BuiltRig, b: BuiltRig): number {
  const name = ({ rig, serial, tests }: BuiltRig) =>
    JSON.stringify([rig.document.id, serial ?? '', tests.map((t) => t.document)]);
  const [left, right] = [name(a), name(b)];
  return left < right ? -1 : left > right ? 1 : 0;
}

function cellOf(
  evidence: Evidence,
  index: ReadonlyMap<string, number>,
  last: { cell: Cell; state: State } | undefined,
): Cell {
  const { inputs, keys, readings } = evidence;
  const middle = Float64Array.from(inputs, (input, k) => input.mean + (last?.state.x[k] ?? 0));
  const linear = linearised(evidence, middle);
  const at = Int32Array.from(keys, (key) => index.get(key)!);
  const places = [...new Set(at)];
  const column = new Map(places.map((p, j) => [p, j]));
  const shared = zeros(readings.length, places.length);
  const copyVariance = Float64Array.from(inputs, (input) => dividedVariance(input).copy);
  const teaches = new Set<number>();
  linear.slope.forEach((row, i) =>
    row.forEach((slope, k) => {
      shared[i]![column.get(at[k]!)!]! += slope;
      if (Math.abs(slope * inputs[k]!.deviation) > TEACHES * readings[i]!.deviation) teaches.add(at[k]!);
    }),
  );
  const sound = last?.cell.sound ?? new Float64Array(readings.length).fill(1);
  const like = last?.cell.like ?? new Float64Array(inputs.length).fill(1);
  return { evidence, linear, at, places, shared, copyVariance, like, teaches, sound };
}

/** Variance of a copy's inputs, wider where it is not sure that the copy is like its part. */
function scatterOf({ copyVariance, like }: Cell): Float64Array {
  return copyVariance.map((variance, k) => variance / (like[k]! + (1 - like[k]!) / ODD_COPY_SPREAD ** 2));
}

/** Scatter of a reading of which it is not sure that it is sound. */
function noiseOf({ deviation, slipped }: Evidence['readings'][number], sound: number): number {
  return 1 / (sound / deviation ** 2 + (1 - sound) / slipped ** 2);
}

/** Factors and weights, in turn, until neither moves. */
function settle(cells: readonly Cell[], before: readonly { part: number }[]): Settled {
  let found = solve(cells, before);
  for (let round = 1; round < ROUNDS; round++) {
    let moved = 0;
    cells.forEach((cell, i) => {
      const [sound, like] = [weighed(cell, found, i), likeness(cell, found, i)];
      for (const [now, next] of [
        [cell.sound, sound],
        [cell.like, like],
      ] as const)
        next.forEach((value, j) => {
          // Half way after the first rounds: two readings that contradict each other would take turns.
          const to = round > 4 ? (value + now[j]!) / 2 : value;
          moved = Math.max(moved, Math.abs(to - now[j]!));
          now[j] = to;
        });
    });
    found = solve(cells, before);
    if (moved < SETTLED) break;
  }
  return found;
}

/** Posterior of all factors with the weights as they are. */
function solve(cells: readonly Cell[], before: readonly { part: number }[]): Settled {
  const n = before.length;
  const precision = zeros(n, n);
  before.forEach(({ part }, p) => (precision[p]![p] = 1 / part));
  const pull = new Float64Array(n);
  const inverses = cells.map((cell) => {
    const { evidence, sound, shared, places, linear } = cell;
    const scatter = scatterOf(cell);
    const inverse = inverseOf(
      linear.slope.map((a, i) => {
        const weighted = a.map((v, k) => v * scatter[k]!);
        const out = Float64Array.from(linear.slope, (b) =>
          weighted.reduce((sum, v, k) => sum + v * b[k]!, 0),
        );
        out[i]! += noiseOf(evidence.readings[i]!, sound[i]!);
        return out;
      }),
    );
    const back = product(transposed(shared), inverse);
    const square = product(back, shared);
    const right = times(back, linear.rest);
    places.forEach((p, a) => {
      pull[p]! += right[a]!;
      places.forEach((q, b) => (precision[p]![q]! += square[a]![b]!));
    });
    return inverse;
  });
  const covariance = inverseOf(precision);
  const mean = times(covariance, pull);
  const states = cells.map((cell, i): State => {
    const inverse = inverses[i]!;
    const left = times(inverse, unexplained(cell, mean));
    const own = scatterOf(cell).map(
      (variance, k) => variance * cell.linear.slope.reduce((sum, row, r) => sum + row[k]! * left[r]!, 0),
    );
    return { x: own.map((v, k) => mean[cell.at[k]!]! + v), own, inverse };
  });
  return { states, mean, covariance };
}

/** What the parts' factors leave of the readings. */
function unexplained({ linear, shared, places }: Cell, mean: Float64Array): Float64Array {
  return linear.rest.map((r, i) => r - places.reduce((sum, p, a) => sum + shared[i]![a]! * mean[p]!, 0));
}

/** Probability that each reading is sound, judged by all others: of this machine and of every other. */
function weighed(cell: Cell, { states, mean, covariance }: Settled, i: number): Float64Array {
  const { inverse } = states[i]!;
  const left = times(inverse, unexplained(cell, mean));
  const through = product(inverse, cell.shared);
  return Float64Array.from(cell.evidence.readings, (reading, r) => {
    const row = through[r]!;
    let known = 0;
    cell.places.forEach((p, a) =>
      cell.places.forEach((q, b) => (known += row[a]! * covariance[p]![q]! * row[b]!)),
    );
    const sharp = inverse[r]![r]! - known;
    const off = left[r]! / sharp;
    const others = Math.max(0, 1 / sharp - noiseOf(reading, cell.sound[r]!));
    const sound = (1 - ODD_SHARE) * density(off, others + reading.deviation ** 2);
    const odd = ODD_SHARE * density(off, others + reading.slipped ** 2);
    return sound + odd > 0 ? sound / (sound + odd) : 0;
  });
}

/** Of a normal around nought, but for a factor. */
function density(off: number, variance: number): number {
  return Math.exp((-off * off) / (2 * variance)) / Math.sqrt(variance);
}

/** Probability that a copy is like its part in each input, judged by all readings. */
function likeness(cell: Cell, { states, covariance }: Settled, i: number): Float64Array {
  const { own, inverse } = states[i]!;
  const scatter = scatterOf(cell);
  return cell.copyVariance.map((plain, k) => {
    const variance = varianceOf(cell, inverse, covariance, scatter, k, false);
    // What the readings alone say of it, the copy's own tolerance taken out again.
    const sharp = 1 / variance - 1 / scatter[k]!;
    if (!(sharp * scatter[k]! > NOTHING)) return 1;
    const off = own[k]! / variance / sharp;
    const like = (1 - ODD_COPIES) * density(off, 1 / sharp + plain);
    const odd = ODD_COPIES * density(off, 1 / sharp + ODD_COPY_SPREAD ** 2 * plain);
    return like + odd > 0 ? like / (like + odd) : 0;
  });
}

/** Readings that narrow a copy's doubt by less than this share say nothing of it. */
const NOTHING = 1e-3;

/** Variance of one input of a copy: of the whole, or of what it is off its part. */
function varianceOf(
  { linear, at, places, shared }: Cell,
  inverse: Matrix,
  covariance: Matrix,
  scatter: Float64Array,
  k: number,
  whole: boolean,
): number {
  const pull = Float64Array.from(linear.slope, (row) => row[k]! * scatter[k]!);
  const weight = times(inverse, pull);
  let variance = scatter[k]! - pull.reduce((sum, v, r) => sum + v * weight[r]!, 0);
  const toParts = places.map(
    (p, a) =>
      (whole && p === at[k] ? 1 : 0) - weight.reduce((sum, value, r) => sum + value * shared[r]![a]!, 0),
  );
  places.forEach((p, a) =>
    places.forEach((q, b) => (variance += toParts[a]! * covariance[p]![q]! * toParts[b]!)),
  );
  return Math.max(1e-12 * scatter[k]!, variance);
}

function copyOf(cell: Cell, { x, inverse }: State, covariance: Matrix): LearnedCopy {
  const { built, inputs, keys, readings, unused } = cell.evidence;
  const scatter = scatterOf(cell);
  return {
    rig: built.rig.document.id,
    ...(built.serial === undefined ? {} : { serial: built.serial }),
    taken: built.tests.flatMap(({ document }) => document.taken ?? []).sort(),
    inputs: inputs.map(({ id, mean }, k) => ({
      id,
      mean: mean + x[k]!,
      deviation: Math.sqrt(varianceOf(cell, inverse, covariance, scatter, k, true)),
      ...(cell.teaches.has(cell.at[k]!) ? { factor: keys[k]! } : {}),
    })),
    readings: readings.map(({ id }, r) => ({ id, sound: cell.sound[r]! })),
    unused,
  };
}
