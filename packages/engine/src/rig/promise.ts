import {
  display,
  priceText,
  type Dimension,
  type DisplayPurpose,
  type UnitSystem,
} from '../quantity/index.ts';

/**
 * How a promise stands: kept with room, kept by less than 5 % (thin), broken, unknown because a datum is missing,
 * or not computed yet because the program has no method for it.
 */
export type PromiseState = 'kept' | 'thin' | 'broken' | 'unknown';

/** A number with its dimension; `value` is SI, money in whole currency units. */
export interface Figure {
  readonly value: number;
  readonly dimension: Dimension | 'count' | 'money' | 'days' | 'number';
  /**
   * What stands behind the figure where no unit of the trade does: "mol/L" behind a number, and behind a ratio which
   * of its percents is meant, such as "trade %".
   */
  readonly unit?: string;
  /** What it is of, where the trade has units of its own for it. */
  readonly as?: DisplayPurpose;
}

/** A figure as people read it: "21.3 gpm", "$15,240", "17 days". */
export function figureText({ value, dimension, unit, as }: Figure, units: UnitSystem): string {
  if (unit !== undefined) return `${plainNumber(dimension === 'ratio' ? 100 * value : value, 3)} ${unit}`;
  switch (dimension) {
    case 'number':
      return plainNumber(value, 4);
    case 'count':
      return String(Math.round(value));
    case 'days':
      return `${Math.round(value)} days`;
    case 'money':
      return priceText(Math.round(value * 100));
    default:
      return display(value, dimension, units, as === undefined ? {} : { as });
  }
}

/** Digits without a unit, in groups of three: "1,714", "0.82". */
export function plainNumber(value: number, significant: number): string {
  const text = String(Number(value.toPrecision(significant)));
  return text.replace(/\B(?<!\.\d*)(?=(\d{3})+(?!\d))/g, ',').replace('-', '−');
}

/** A formula with the names of its terms in braces, the figure of each, and what SI values of it are multiplied with. */
interface Sum {
  readonly formula: string;
  readonly terms: Readonly<Record<string, Figure>>;
  readonly factor?: number;
}

/** One step of the working: what it is, and its figure. */
export interface Step {
  readonly text: string;
  readonly figure?: Figure;
  /** How the figure follows from others. */
  readonly sum?: Sum;
}

/** A step whose figure follows from others by a formula, shown with the numbers put in. */
export function worked(
  text: string,
  figure: Figure,
  formula: string,
  terms: Readonly<Record<string, Figure>>,
  factor?: number,
): Step {
  return { text, figure, sum: { formula, terms, ...(factor === undefined ? {} : { factor }) } };
}

/** A figure in one word: `is(2, 'length')`, `is(40, 'speed', 'liquid-speed')`. */
export function is(value: number, dimension: Figure['dimension'], as?: DisplayPurpose): Figure {
  return as === undefined ? { value, dimension } : { value, dimension, as };
}

/** A figure whose unit no dimension of the trade has: `number(1.76, 'mol/L')`. */
export function number(value: number, unit?: string): Figure {
  return unit === undefined ? { value, dimension: 'number' } : { value, dimension: 'number', unit };
}

/** One thing the quote says and the proof computes. */
export interface RigPromise {
  /** Stable: kind, duty and item, such as `pressure:top:hose`. */
  readonly id: string;
  readonly kind: PromiseKind;
  readonly duty?: string;
  readonly state: PromiseState;
  /** What happens to the customer, without figures of proof: "Wets leaves at 52 ft in still air, 9 times in 10". */
  readonly sentence: string;
  readonly asked?: Figure;
  readonly has?: Figure;
  readonly sense: 'at-least' | 'at-most';
  /** Spare over what is asked, as a share of it; negative when short. Absent when unknown. */
  readonly margin?: number;
  /** 5 and 95 % of what it has, where the doubt is computed. */
  readonly band?: readonly [number, number];
  /** Why it stands as it does, in one line. */
  readonly cause: string;
  /** Items of the rig that decide it. */
  readonly items: readonly string[];
  /** Name of the method in METHODS.md and where it comes from. */
  readonly method: string;
  readonly source: string;
  readonly working: readonly Step[];
  /** What must be decided by a person before it can be kept. */
  readonly decisions?: readonly string[];
}

export type PromiseKind =
  | 'brief'
  | 'reach'
  | 'flow'
  | 'tip-pressure'
  | 'rating'
  | 'suction'
  | 'agitation'
  | 'power'
  | 'hold'
  | 'plumbing'
  | 'liquid'
  | 'reel'
  | 'price'
  | 'ready'
  | 'materials'
  | 'weight'
  | 'stability'
  | 'structure'
  | 'electrics'
  | 'rinse'
  | 'pattern'
  | 'day';

/** Spare below this share of what is asked is called thin. */
export const THIN = 0.05;

/** Compares what a rig has with what is asked. */
export function judge(
  asked: number,
  has: number,
  sense: 'at-least' | 'at-most',
): { state: 'kept' | 'thin' | 'broken'; margin: number } {
  const scale = Math.abs(asked) > 0 ? Math.abs(asked) : 1;
  const margin = (sense === 'at-least' ? has - asked : asked - has) / scale;
  return { state: margin < 0 ? 'broken' : margin < THIN ? 'thin' : 'kept', margin };
}

type Told = Pick<RigPromise, 'id' | 'kind' | 'sentence' | 'cause' | 'method' | 'source'> &
  Partial<Pick<RigPromise, 'duty' | 'items' | 'working' | 'band'>>;

/** A promise whose state follows from two figures. */
export function compared(told: Told, asked: Figure, has: Figure, sense: 'at-least' | 'at-most'): RigPromise {
  if (!Number.isFinite(has.value)) return unknown(told, asked, sense);
  const { state, margin } = judge(asked.value, has.value, sense);
  const promise = promised(told, sense, state);
  promise.asked = asked;
  promise.has = has;
  promise.margin = margin;
  return promise;
}

/** A promise that cannot be judged because something is missing; the cause says what. */
export function unknown(told: Told, asked?: Figure, sense: 'at-least' | 'at-most' = 'at-least'): RigPromise {
  const promise = promised(told, sense, 'unknown');
  if (asked !== undefined) promise.asked = asked;
  return promise;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** Field by field, not spread: a proof makes a hundred promises, and a spread copies each through the slow way. */
function promised(told: Told, sense: RigPromise['sense'], state: PromiseState): Writable<RigPromise> {
  const promise: Writable<RigPromise> = {
    id: told.id,
    kind: told.kind,
    state,
    sentence: told.sentence,
    sense,
    cause: told.cause,
    items: told.items ?? [],
    method: told.method,
    source: told.source,
    working: told.working ?? [],
  };
  if (told.duty !== undefined) promise.duty = told.duty;
  if (told.band !== undefined) promise.band = told.band;
  return promise;
}

const ORDER: readonly PromiseState[] = ['broken', 'thin', 'unknown', 'kept'];

/** Broken first, then thin, unknown, kept; within a state in the order they were made. */
export function inOrder(promises: readonly RigPromise[]): RigPromise[] {
  const ordered: RigPromise[] = [];
  for (const state of ORDER)
    for (const promise of promises) if (promise.state === state) ordered.push(promise);
  return ordered;
}
