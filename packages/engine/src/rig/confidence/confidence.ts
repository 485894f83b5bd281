import type { Proof } from '../proof/prove.ts';
import type { Figure, RigPromise } from '../promise.ts';
import type { Rig } from '../rig-document.ts';
import { contextOf } from './context-of.ts';
import { dayPromises } from './day-promises.ts';
import { drivePromises } from './drive-promises.ts';
import { DrawSheet } from './draw-sheet.ts';
import { evenDraws, type Draws } from './draws.ts';
import { evaluate } from './evaluate.ts';
import { inPlace } from './in-place.ts';
import { liquidPromises } from './liquid-promises.ts';
import { quantilesOf, regressionOn, type Regression } from './statistics.ts';
import { steadyPromises } from './steady-promises.ts';
import { storePromises } from './store-promises.ts';
import { throwPromises } from './throw-promises.ts';
import { uncertainInputs, type Correction, type UncertainInput } from './uncertain-inputs.ts';
import { workPromises } from './work-promises.ts';

/** What 5, 50 and 95 % of the draws stay below. */
export type Band = readonly [low: number, middle: number, high: number];

/** How sure one promise is, when every input may be off by its tolerance. */
export interface PromiseConfidence {
  /** Id of the promise in the proof. */
  readonly id: string;
  /** Share of the draws in which it is kept [-]. */
  readonly kept: number;
  /** What its figures are, and the unit that goes with them. */
  readonly shown: Omit<Figure, 'value'>;
  /** What the rig has in 5, 50 and 95 % of the draws, in the unit of the promise. A reach is the reach itself, not what is promised of it. */
  readonly band: Band;
  /** What is asked of it in 5, 50 and 95 % of the draws, where that is in doubt too. */
  readonly asked?: Band;
  /** What is kept nine times in ten: most of an at-least, least of an at-most, asked as the proof asks. */
  readonly ninety: number;
  /** The inputs that bring most of the doubt, strongest first: id, and share in the variance of the margin [-]. */
  readonly matters: readonly { readonly input: string; readonly share: number }[];
}

export interface Confidence {
  readonly draws: number;
  readonly seed: number;
  readonly inputs: readonly UncertainInput[];
  readonly promises: readonly PromiseConfidence[];
  /** Draws in which a network had no steady state or data said nothing; they count as not kept. */
  readonly unsolved: number;
}

export interface ConfidenceOptions {
  /** A power of two spreads them most evenly. Default 1024. */
  readonly draws?: number;
  /** Default 1. The same seed gives the same result to the last digit. */
  readonly seed?: number;
  /** What readings have taught of this rig's parts. */
  readonly corrections?: readonly Correction[];
}

const DRAWS = 1024;
const MOST_MATTERS = 3;
/** What sums may differ by that are added up anew [-]. */
const ROUNDING = 1e-9;
/** An input that brings less of the doubt is not named. */
const LEAST_SHARE = 0.03;

/** What a promise has and what it asks in every draw. */
export interface DrawnFigures {
  readonly promise: RigPromise;
  /** What the proof asks, which its figures are held against. */
  readonly stands: { readonly asked: Figure; readonly sense: RigPromise['sense'] };
  /** NaN in a draw without a steady state. */
  readonly has: Float64Array;
  readonly asked: Float64Array;
}

/**
 * How sure the promises of a proven rig are: every input is drawn from its tolerance, the same solver and the same
 * formulas as in the proof are run in each draw.
 *
 * @param rig the rig that was proven
 * @throws RangeError when draws are not 16..65536
 */
export function confidenceOf(rig: Rig, proof: Proof, options: ConfidenceOptions = {}): Confidence {
  const { draws: count = DRAWS, seed = 1, corrections = [] } = options;
  if (!(Number.isInteger(count) && count >= 16 && count <= 65536))
    throw new RangeError(`draws is ${count}; it must be a whole number from 16 to 65536`);
  const draws = evenDraws(uncertainInputs(rig, corrections), count, seed);
  const fit = regressionOn(draws);
  const failed = new Uint8Array(count);
  const promises = drawPromises(rig, proof, draws).map((figures) => {
    for (let i = 0; i < count; i++) if (Number.isNaN(figures.has[i]!)) failed[i] = 1;
    return confidenceFrom(figures, draws, fit);
  });
  return {
    draws: count,
    seed,
    inputs: draws.inputs,
    promises,
    unsolved: failed.reduce((sum, f) => sum + f, 0),
  };
}

/** Figures of every promise that the draws move. */
export function drawPromises(rig: Rig, proof: Proof, draws: Draws): DrawnFigures[] {
  const context = contextOf(inPlace(rig, proof), proof);
  const promised = new Map(proof.promises.map((p) => [p.id, p]));
  const sheet = new DrawSheet(context, draws);
  const drawn = [
    ...throwPromises(sheet),
    ...liquidPromises(sheet),
    ...drivePromises(sheet),
    ...workPromises(sheet),
    ...dayPromises(sheet),
    ...storePromises(sheet),
  ].flatMap((d) => {
    const promise = promised.get(d.id);
    if (promise === undefined || d.contenders.length === 0) return [];
    const stands = d.stands ?? standsOf(promise);
    return stands === undefined || (d.stands !== undefined && promise.state === 'unknown')
      ? []
      : [{ ...d, promise, stands, sense: stands.sense }];
  });
  const columns = evaluate(drawn, draws.count);
  return [
    ...drawn.map(({ promise, stands, askedFactor, as }, p): DrawnFigures => {
      const has = columns[p]!;
      const asked = stands.asked.value;
      return {
        promise,
        stands,
        has: as === 'share' ? has.map((v) => v * asked) : has,
        asked: askedFactor?.map((f) => f * asked) ?? new Float64Array(draws.count).fill(asked),
      };
    }),
    ...steadyPromises(context, draws).flatMap(({ id, has, asked }): DrawnFigures[] => {
      const promise = promised.get(id);
      const stands = promise === undefined ? undefined : standsOf(promise);
      return promise === undefined || stands === undefined ? [] : [{ promise, stands, has, asked }];
    }),
  ];
}

/** The figures that a promise is judged by; undefined where the proof has none. */
function standsOf({ asked, has, sense }: RigPromise): DrawnFigures['stands'] | undefined {
  return asked === undefined || has === undefined ? undefined : { asked, sense };
}

function confidenceFrom(
  { promise, stands, has, asked }: DrawnFigures,
  draws: Draws,
  fit: (column: Float64Array) => Regression,
): PromiseConfidence {
  const nominal = stands.asked.value;
  const sign = stands.sense === 'at-least' ? 1 : -1;
  const askedMoves = !isAll(asked, nominal);
  // Where what is asked is in doubt too, a draw counts by its share of what was asked then.
  const counted = askedMoves ? has.map((value, i) => (value * nominal) / asked[i]!) : has;
  const fitOf = (column: Float64Array) => (isStill(column) ? STILL : fit(column));
  const doubt = fitOf(counted);
  const at = quantilesOf(counted, doubt);
  const bandOf = (column: Float64Array) => bandAt(quantilesOf(column, fitOf(column)));
  return {
    id: promise.id,
    kept: keptIn(has, asked, sign) / draws.count,
    shown: shownAs(stands.asked),
    band: askedMoves ? bandOf(has) : bandAt(at),
    ...(askedMoves ? { asked: bandOf(asked) } : {}),
    ninety: at(stands.sense === 'at-least' ? 0.1 : 0.9),
    matters: draws.inputs
      .map(({ id }, k) => ({ input: id, share: doubt.shares[k] ?? 0 }))
      .filter((m) => m.share >= LEAST_SHARE)
      .sort((a, b) => b.share - a.share)
      .slice(0, MOST_MATTERS),
  };
}

function isAll(column: Float64Array, value: number): boolean {
  for (let i = 0; i < column.length; i++) if (column[i] !== value) return false;
  return true;
}

/** Draws in which what is had is no worse than what is asked. */
function keptIn(has: Float64Array, asked: Float64Array, sign: number): number {
  let kept = 0;
  for (let i = 0; i < has.length; i++) if (sign * (has[i]! - asked[i]!) >= 0) kept++;
  return kept;
}

function bandAt(quantile: (share: number) => number): Band {
  return [quantile(0.05), quantile(0.5), quantile(0.95)];
}

function shownAs({ dimension, unit, as }: Figure): Omit<Figure, 'value'> {
  return { dimension, ...(unit === undefined ? {} : { unit }), ...(as === undefined ? {} : { as }) };
}

/** A column that no input moves. */
const STILL: Regression = {
  slopes: new Float64Array(0),
  shares: new Float64Array(0),
  deviation: 0,
  line: new Float64Array(0),
};

/** Whether a column moves by no more than rounding. */
function isStill(column: Float64Array): boolean {
  const first = column[0]!;
  return column.every((value) => Math.abs(value - first) <= ROUNDING * Math.abs(first));
}
