/**
 * Fallback on the heads alone, with every branch's law inverted exactly: as if every junction stored a little liquid and
 * the network settled in time, by implicit steps that grow as the imbalances fall, until they are plain Newton steps.
 * Flows rise with the head before and fall with the head behind (an M-function: Rheinboldt 1970), so that settling is
 * order-preserving and has one resting point, whatever the start; regulators included.
 */
import type { Laws } from './branch-loss.ts';
import {
  CONSTANT,
  CORRECTION,
  CUBIC,
  DIAGONAL,
  FROM,
  HAS_CURVE,
  HEAD,
  NODE,
  NOMINAL,
  NUMBERS,
  ONE_WAY,
  PLACES,
  PLAIN,
  SLOT,
  STEP,
  TO,
} from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { flowBetween, flowOut } from './inverse-law.ts';
import { clear, eliminate } from './head-system.ts';
import { STILL_SHARE } from './newton.ts';

/** Longest first step, as a share of the spread of heads there can be. */
const FIRST_STEP = 0.1;
const STRONGEST_SLOWING = 8;
const STRONGEST_HURRY = 0.1;
/** An imbalance that grows by more is not taken. */
const GROWTH = 1.05;
/** Nor one that goes past the balance and leaves more than this. */
const PAYS = 0.7;

/** Steps taken; negative when the imbalance is still above the tolerance. Flows and heads are left as they are then. */
export function solveNodal(c: Circuit, laws: Laws, limit: number, tolerance: number): number {
  const span = headSpan(c);
  let imbalance = evaluate(c, laws);
  let storage = imbalance / (FIRST_STEP * span);
  for (let step = 1; step <= limit; step++) {
    if (imbalance <= tolerance * largestFlow(c) || rests(c)) {
      settleShut(c);
      return step;
    }
    for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) c.node[i + DIAGONAL]! += storage;
    eliminate(c);
    for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) {
      c.node[i + STEP] = c.node[i + CORRECTION]!;
      c.node[i + HEAD]! += c.node[i + STEP]!;
    }
    const after = evaluate(c, laws);
    if (after > GROWTH * imbalance || (overshot(c) && after > PAYS * imbalance)) {
      for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) c.node[i + HEAD]! -= c.node[i + STEP]!;
      storage *= STRONGEST_SLOWING;
      evaluate(c, laws);
      continue;
    }
    storage *= Math.min(Math.max(after / imbalance, STRONGEST_HURRY), 0.5) ** 2;
    imbalance = after;
  }
  settleShut(c);
  return -limit;
}

/** The imbalances now push back against the step just taken. */
function overshot(c: Circuit): boolean {
  let work = 0;
  for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE)
    work += c.node[i + CORRECTION]! * c.node[i + STEP]!;
  return work < 0;
}

/** Brings heads that a wild step left back to where they can be. */
export function clampHeads(c: Circuit): void {
  const span = headSpan(c);
  for (let k = 0; k < c.unknowns; k++) {
    const head = c.node[k * NODE + HEAD]!;
    if (!(Math.abs(head) <= span))
      c.node[k * NODE + HEAD] = c.heads - 1 > c.unknowns ? c.node[c.unknowns * NODE + HEAD]! : 0;
  }
}

/** No step need be longer than this [m]: twice the spread of fixed heads, pump heads and set heads. */
function headSpan(c: Circuit): number {
  let least = Infinity;
  let most = -Infinity;
  for (let k = c.unknowns; k < c.heads - 1; k++) {
    least = Math.min(least, c.node[k * NODE + HEAD]!);
    most = Math.max(most, c.node[k * NODE + HEAD]!);
  }
  let span = 10 + most - least + Math.abs(most);
  for (let b = 0; b < c.branches; b++) {
    span += Math.abs(c.numbers[b * NUMBERS + CONSTANT]!) + Math.abs(c.held[b]!);
    if (c.places[b * PLACES + HAS_CURVE] === 1) span += Math.abs(c.cubic[b * CUBIC]!);
  }
  return 2 * span;
}

/** Flows and derivatives at the present heads; the imbalances become the right-hand side. Returns their sum. */
function evaluate(c: Circuit, laws: Laws): number {
  clear(c);
  c.lower.fill(0);
  for (let b = 0; b < c.branches; b++) {
    const p = b * PLACES;
    const i = c.places[p + FROM]!;
    const j = c.places[p + TO]!;
    const s = c.places[p + SLOT]!;
    flowBetween(c, laws, b, c.node[i + HEAD]!, c.node[j + HEAD]!);
    const q = flowOut[0]!;
    c.flow[b] = q;
    c.node[i + CORRECTION]! -= q;
    c.node[j + CORRECTION]! += q;
    c.node[i + DIAGONAL]! += flowOut[1]!;
    c.node[j + DIAGONAL]! += flowOut[2]!;
    // Row i, column j falls with the to-head's slope; row j, column i with the from-head's.
    const rowFirst = i < j;
    (rowFirst ? c.upper : c.lower)[s]! -= flowOut[2]!;
    (rowFirst ? c.lower : c.upper)[s]! -= flowOut[1]!;
  }
  let sum = 0;
  for (let k = 0; k < c.unknowns; k++) sum += Math.abs(c.node[k * NODE + CORRECTION]!);
  return sum;
}

function rests(c: Circuit): boolean {
  for (let b = 0; b < c.branches; b++) {
    if (Math.abs(c.flow[b]!) > STILL_SHARE * c.numbers[b * NUMBERS + NOMINAL]!) return false;
  }
  return true;
}

function largestFlow(c: Circuit): number {
  let largest = 0;
  for (let b = 0; b < c.branches; b++) largest = Math.max(largest, Math.abs(c.flow[b]!));
  return largest;
}

/** Branches that pass nothing and cannot: shut for the Newton that follows. */
function settleShut(c: Circuit): void {
  for (let b = 0; b < c.branches; b++) {
    c.shut[b] = c.blocked[b] === 1 || (c.flow[b] === 0 && canShut(c, b)) ? 1 : 0;
  }
}

function canShut(c: Circuit, b: number): boolean {
  return c.kind[b] !== PLAIN || c.places[b * PLACES + ONE_WAY] === 1;
}
