import { slopes, yardModel, type YardModel, type YardOptions } from '../yard-model.ts';
import { instrumentOf } from '../instruments.data.ts';
import type { Rig } from '../../rig/index.ts';
import { faultCases, type FaultCase, type FaultEffect } from './fault-cases.ts';
import { faultOf } from './faults.data.ts';

/** What every row of the sheet shows with one fault of one size. */
export interface FaultState {
  readonly shown: Float64Array;
  /** How the rows move with the inputs, row by row: rows × inputs. */
  readonly slope: Float64Array;
  /** How far rows move over the sizes that this one stands for. */
  readonly spread: Float64Array;
  /** Probability that it is noticed at all, and so the reason of a call [-]. */
  readonly noticed: number;
}

/** One fault in all its sizes; without a case, the rig with nothing wrong. */
interface FaultStates {
  readonly of: FaultCase | undefined;
  readonly states: readonly FaultState[];
}

export interface FaultModel {
  readonly model: YardModel;
  readonly faults: readonly FaultStates[];
}

/** Sizes of a fault that are solved, evenly in their logarithm. */
const SIZES = 8;
/** Standard deviation of an even spread, as a share of its width. */
const EVEN = 1 / Math.sqrt(12);
/** A change by this share is noticed two times in three, one that moves nothing once in twenty: judgement. */
const NOTICED = 0.05;
const UNSEEN = 0.05;

/** Solves a rig with every fault it can have, in several sizes: what a diagnosis weighs readings against. */
export function faultModel(rig: Rig, options: YardOptions = {}): FaultModel {
  const model = yardModel(rig, { ...options, inService: true });
  const middle = model.inputs.map((i) => i.mean);
  const plain: FaultState = {
    shown: model.predict(middle),
    slope: slopes(model, middle),
    spread: new Float64Array(model.rows.length),
    noticed: 1,
  };
  const faults = faultCases(rig, model.inputs).map((of) => ({
    of,
    states: statesOf(model, of, plain.shown),
  }));
  return { model, faults: [{ of: undefined, states: [plain] }, ...faults] };
}

/** What a rig with a fault shows, with its inputs at given log factors. */
export function shownWith(
  model: YardModel,
  effect: FaultEffect,
  logFactors: readonly number[],
): Float64Array {
  const { shift, rig, shown } = effect;
  const x = model.inputs.map((input, k) => logFactors[k]! + (shift?.get(input.id) ?? 0));
  const rows = model.predict(x, rig);
  if (shown !== undefined)
    model.rows.forEach(({ instrument }, r) => {
      if (shown.instruments.includes(instrument) && instrumentOf(instrument).plain !== true)
        rows[r]! += shown.by;
    });
  return rows;
}

function statesOf(model: YardModel, of: FaultCase, sound: Float64Array): FaultState[] {
  const { slight, bad } = faultOf(of.fault);
  const middle = model.inputs.map((i) => i.mean);
  const count = slight === bad ? 1 : SIZES;
  const at = (share: number) => slight * (bad / slight) ** share;
  const rows = Array.from({ length: count }, (_, i) =>
    shownWith(model, of.effect(at((i + 0.5) / count)), middle),
  );
  const half = slopesWith(model, of.effect(at(0.5)));
  return rows.map((shown, i) => {
    const [before, after] = [rows[Math.max(0, i - 1)]!, rows[Math.min(count - 1, i + 1)]!];
    const steps = Math.min(count - 1, i + 1) - Math.max(0, i - 1);
    const spread = Float64Array.from(shown, (_, r) => {
      const width = steps === 0 ? 0 : (after[r]! - before[r]!) / steps;
      return Number.isFinite(width) ? EVEN * width : 0;
    });
    return { shown, slope: half, spread, noticed: noticedBy(model, shown, sound) };
  });
}

/** Slopes of the rig with a fault: the same differences, taken around it. */
function slopesWith(model: YardModel, effect: FaultEffect): Float64Array {
  const predict: YardModel['predict'] = (x) => shownWith(model, effect, Array.from(x));
  return slopes(
    { ...model, predict },
    model.inputs.map((i) => i.mean),
  );
}

/** How likely somebody notices what a fault does to flow, pressure, throw or current. */
function noticedBy(model: YardModel, shown: Float64Array, sound: Float64Array): number {
  const most = model.rows.reduce((far, { instrument }, r) => {
    if (instrumentOf(instrument).plain === true || !Number.isFinite(sound[r]!)) return far;
    return Math.max(far, Number.isFinite(shown[r]!) ? Math.abs(shown[r]! - sound[r]!) : Infinity);
  }, 0);
  return UNSEEN + (1 - UNSEEN) * -Math.expm1(-((most / NOTICED) ** 2));
}
