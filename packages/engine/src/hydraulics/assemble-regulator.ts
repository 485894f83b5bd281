/** Regulators in a Newton step. */
import { branchLossAt, downstreamLossAt, flowIn, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { registers } from './registers.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const {
  BEND,
  CONSTANT,
  CORRECTION,
  DIAGONAL,
  FROM,
  HEAD,
  HOLDING,
  LEAST_SLOPE,
  NUMBERS,
  PLACES,
  RELIEF,
  RELIEF_CHAIN,
  SHUT_CONDUCTANCE,
  SLOPE,
  SLOT,
  TARGET,
  TO,
  WIDE_OPEN,
} = layout;

/** Regulators: the term that rules at the present state decides what is linearised. */
export function assembleRegulator(c: Circuit, laws: Laws, b: number): void {
  const o = b * NUMBERS;
  if (c.shut[b] === 1) {
    c.numbers[o + SLOPE] = SHUT_CONDUCTANCE;
    c.numbers[o + TARGET] = 0;
    stampBothEnds(c, b);
    return;
  }
  flowIn[0] = c.flow[b]!;
  downstreamLossAt(c, laws, b);
  if (c.kind[b] === RELIEF_CHAIN) assembleChain(c, laws, b);
  else assembleBetween(c, b);
}

/** Loss of a chain: what comes before the regulator, and the larger of what it holds and what it loses wide open. */
function assembleChain(c: Circuit, laws: Laws, b: number): void {
  const p = b * PLACES;
  const q = flowIn[0]!;
  const open = lossOut[0]!;
  const openSlope = lossOut[1]!;
  const heldSlope = c.heldSlope[b]!;
  const high = c.node[c.places[p + FROM]! + HEAD]!;
  const low = c.node[c.places[p + TO]! + HEAD]!;
  branchLossAt(c, laws, b);
  const holding = c.held[b]! - (c.heldAbsolute[b] === 1 ? low : 0) + heldSlope * q;
  const holds = holding >= open;
  c.ruling[b] = holds ? HOLDING : WIDE_OPEN;
  c.margin[b] = Math.abs(holding - open);
  c.marginSlope[b] = heldSlope + openSlope;
  openStep[RESIDUAL] = high - low - (lossOut[0]! + Math.max(holding, open));
  openStep[RISE] = lossOut[1]!;
  openStep[RISE] += holds ? heldSlope : openSlope;
  openStep[MOVING] = Math.abs(lossOut[0]! - c.numbers[b * NUMBERS + CONSTANT]!) + open;
  stampOpen(c, b);
}

/** A regulator between unknown heads. */
function assembleBetween(c: Circuit, b: number): void {
  const p = b * PLACES;
  const q = flowIn[0]!;
  const open = lossOut[0]!;
  const held = c.held[b]!;
  const heldSlope = c.heldSlope[b]!;
  const high = c.node[c.places[p + FROM]! + HEAD]!;
  const low = c.node[c.places[p + TO]! + HEAD]!;
  const relief = c.kind[b] === RELIEF;
  const holds = relief ? held + heldSlope * q >= low + open : held - heldSlope * q <= high - open;
  c.ruling[b] = holds ? HOLDING : WIDE_OPEN;
  c.margin[b] = Math.abs(relief ? held + heldSlope * q - low - open : held - heldSlope * q - high + open);
  c.marginSlope[b] = heldSlope + lossOut[1]!;
  if (holds) {
    openStep[RESIDUAL] = relief ? high - held - heldSlope * q : held - heldSlope * q - low;
    stampHolding(c, b);
    return;
  }
  openStep[RESIDUAL] = high - low - open;
  openStep[RISE] = lossOut[1]!;
  openStep[MOVING] = open;
  stampOpen(c, b);
}

/**
 * Handed from one function here to the next, in an array since a fraction as an argument may cost a heap number: the head
 * that is left over, the slope of the loss, and the part of the loss that grows with the flow, at most with its square,
 * which bounds the bend.
 */
const openStep = registers();
const RESIDUAL = 0;
const RISE = 1;
const MOVING = 2;

function stampOpen(c: Circuit, b: number): void {
  const o = b * NUMBERS;
  const q = c.flow[b]!;
  const g = openStep[RISE]!;
  const y = 1 / (g > LEAST_SLOPE ? g : LEAST_SLOPE);
  c.numbers[o + SLOPE] = y;
  c.numbers[o + TARGET] = q + y * openStep[RESIDUAL]!;
  stampBothEnds(c, b);
  c.numbers[o + BEND] = q > 0 ? (2 * y * openStep[MOVING]!) / (q * q) : 0;
}

/** The branch's slope and target into the matrix. */
function stampBothEnds(c: Circuit, b: number): void {
  const p = b * PLACES;
  const i = c.places[p + FROM]!;
  const j = c.places[p + TO]!;
  const s = c.places[p + SLOT]!;
  const y = c.numbers[b * NUMBERS + SLOPE]!;
  const target = c.numbers[b * NUMBERS + TARGET]!;
  c.node[i + DIAGONAL]! += y;
  c.node[j + DIAGONAL]! += y;
  c.node[i + CORRECTION]! -= target;
  c.node[j + CORRECTION]! += target;
  c.upper[s]! -= y;
  c.lower[s]! -= y;
}

/** The flow of a holding regulator follows one end's head only: that end's column gets it, in both rows. */
function stampHolding(c: Circuit, b: number): void {
  const p = b * PLACES;
  const i = c.places[p + FROM]!;
  const j = c.places[p + TO]!;
  const y = 1 / c.heldSlope[b]!;
  const target = c.flow[b]! + y * openStep[RESIDUAL]!;
  c.numbers[b * NUMBERS + SLOPE] = y;
  c.numbers[b * NUMBERS + TARGET] = target;
  c.numbers[b * NUMBERS + BEND] = 0;
  c.node[i + CORRECTION]! -= target;
  c.node[j + CORRECTION]! += target;
  const column = c.kind[b] === RELIEF ? i : j;
  const row = column === i ? j : i;
  c.node[column + DIAGONAL]! += y;
  const side = column < row ? c.lower : c.upper;
  side[c.places[p + SLOT]!]! -= y;
}
