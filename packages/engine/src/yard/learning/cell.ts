import { dividedVariance, linearised, type Evidence, type Linear, type Near } from './evidence.ts';
import type { Doubt } from './explanations.ts';
import { inverseOf, product, transposed, zeros, type Matrix } from './symmetric.ts';

/** Readings that go wrong altogether: slips of pen, wrong bucket, wrong valve. Judgement. */
const ODD_SHARE = 0.03;
/** Copies that are not like their part: a mix-up in the store, damage on the way. Judgement. */
const ODD_COPIES = 0.02;
/** How much wider these scatter than copies do. Judgement. */
const ODD_COPY_SPREAD = 8;
/** A slope that moves a reading by less than this share of its scatter teaches nothing. */
const TEACHES = 0.02;

/** One machine with its straight law, ready for the rounds. */
export interface Cell {
  readonly evidence: Evidence;
  readonly linear: Linear;
  /** Places of its factors in the list of all, and which of these each input has. */
  readonly places: readonly number[];
  readonly at: Int32Array;
  /** How each reading moves with each of its factors: readings × places. */
  readonly shared: Matrix;
  /** How each reading moves with each input of the copy: inputs × readings. */
  readonly copies: Matrix;
  /** What is asked of the copy: each input by itself, then sums of some, as places and weights. */
  readonly asked: readonly (readonly (readonly [place: number, weight: number])[])[];
  /** Variance of each input of a copy that is like its part. */
  readonly copyVariance: Float64Array;
  /** What may have gone wrong: each reading, then each input of the copy. */
  readonly doubts: readonly Doubt[];
  /** Covariance of sound readings of such copies, had the parts been known exactly, and its inverse. */
  readonly scatter: Matrix;
  readonly known: Directions;
  /** Factors that its readings depend on. */
  readonly teaches: ReadonlySet<number>;
}

/** An inverse covariance of the readings, what it makes of the directions of all doubts, and its products of two of them. */
export interface Directions {
  readonly sharp: Matrix;
  readonly toward: Matrix;
  readonly products: Matrix;
}

/** @param near log factors around which the readings are taken to be straight */
export function cellOf(evidence: Evidence, index: ReadonlyMap<string, number>, near: Near): Cell {
  const { inputs, keys, readings } = evidence;
  const linear = linearised(evidence, near);
  const of = keys.map((key) => index.get(key)!);
  const places = [...new Set(of)];
  const at = Int32Array.from(of, (p) => places.indexOf(p));
  const shared = zeros(readings.length, places.length);
  const teaches = new Set<number>();
  linear.slope.forEach((row, r) =>
    row.forEach((slope, k) => {
      shared[r]![at[k]!]! += slope;
      if (Math.abs(slope * inputs[k]!.deviation) > TEACHES * readings[r]!.deviation) teaches.add(of[k]!);
    }),
  );
  const copies = transposed(linear.slope);
  const copyVariance = Float64Array.from(inputs, (input) => dividedVariance(input).copy);
  const scatter = product(
    linear.slope.map((row) => row.map((slope, k) => slope * copyVariance[k]!)),
    copies,
  );
  readings.forEach(({ deviation }, r) => (scatter[r]![r]! += deviation ** 2 + linear.bent[r]!));
  const doubts = [
    ...readings.map(({ deviation, slipped }) => doubt(ODD_SHARE, slipped ** 2 - deviation ** 2)),
    ...Array.from(copyVariance, (variance) => doubt(ODD_COPIES, (ODD_COPY_SPREAD ** 2 - 1) * variance)),
  ];
  const known = directionsIn(inverseOf(scatter), copies);
  const asked = [
    ...inputs.map((_, k) => [[k, 1] as const]),
    ...evidence.sums.map(({ weights }) =>
      inputs.flatMap(({ id }, k) => {
        const weight = weights.get(id);
        return weight === undefined ? [] : [[k, weight] as const];
      }),
    ),
  ];
  return {
    evidence,
    linear,
    places,
    at,
    shared,
    copies,
    asked,
    copyVariance,
    doubts,
    scatter,
    known,
    teaches,
  };
}

function doubt(share: number, variance: number): Doubt {
  return { variance, odds: Math.log(share / (1 - share)) };
}

export function directionsIn(sharp: Matrix, copies: Matrix): Directions {
  // Of a reading it is a row of it, as that goes wrong by itself.
  const ofCopies = product(copies, sharp);
  const across = transposed(ofCopies);
  const among = product(ofCopies, transposed(copies));
  return {
    sharp,
    toward: [...sharp, ...ofCopies],
    products: [
      ...sharp.map((row, r) => joined(row, across[r]!)),
      ...ofCopies.map((row, k) => joined(row, among[k]!)),
    ],
  };
}

function joined(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length + b.length);
  out.set(a);
  out.set(b, a.length);
  return out;
}
