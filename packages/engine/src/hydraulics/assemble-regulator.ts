/** Regulators in a Newton step. */
import { branchLoss, downstreamLoss, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import {
  BEND,
  CONSTANT,
  CORRECTION,
  DIAGONAL,
  FROM,
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
  fromHead,
  toHead,
} from './circuit.ts';
import type { Circuit } from './circuit.ts';

/** Regulators: the term that rules at the present state decides what is linearised. */
export function assembleRegulator(c: Circuit, laws: Laws, b: number): void {
  if (c.shut[b] === 1) return stamp(c, b, SHUT_CONDUCTANCE, 0);
  const q = c.flow[b]!;
  downstreamLoss(c, laws, b, q);
  const open = lossOut[0]!;
  const openSlope = lossOut[1]!;
  const held = c.held[b]!;
  const heldSlope = c.heldSlope[b]!;
  const high = fromHead(c, b);
  const low = toHead(c, b);
  if (c.kind[b] === RELIEF_CHAIN) {
    branchLoss(c, laws, b, q);
    const holding = held - (c.heldAbsolute[b] === 1 ? low : 0) + heldSlope * q;
    c.ruling[b] = holding >= open ? HOLDING : WIDE_OPEN;
    c.margin[b] = Math.abs(holding - open);
    c.marginSlope[b] = heldSlope + openSlope;
    const loss = lossOut[0]! + (holding >= open ? holding : open);
    const moving = Math.abs(lossOut[0]! - c.numbers[b * NUMBERS + CONSTANT]!) + open;
    stampOpen(c, b, q, high - low - loss, lossOut[1]! + (holding >= open ? heldSlope : openSlope), moving);
    return;
  }
  const relief = c.kind[b] === RELIEF;
  const holds = relief ? held + heldSlope * q >= low + open : held - heldSlope * q <= high - open;
  c.ruling[b] = holds ? HOLDING : WIDE_OPEN;
  c.margin[b] = Math.abs(relief ? held + heldSlope * q - low - open : held - heldSlope * q - high + open);
  c.marginSlope[b] = heldSlope + openSlope;
  if (!holds) return stampOpen(c, b, q, high - low - open, openSlope, open);
  stampHolding(c, b, q, relief ? high - held - heldSlope * q : held - heldSlope * q - low);
}

/** `moving` is the part of the loss that grows with the flow, at most with its square: it bounds the bend. */
function stampOpen(c: Circuit, b: number, q: number, residual: number, g: number, moving: number): void {
  const y = 1 / (g > LEAST_SLOPE ? g : LEAST_SLOPE);
  stamp(c, b, y, q + y * residual);
  c.numbers[b * NUMBERS + BEND] = q > 0 ? (2 * y * moving) / (q * q) : 0;
}

function stamp(c: Circuit, b: number, y: number, target: number): void {
  const p = b * PLACES;
  const i = c.places[p + FROM]!;
  const j = c.places[p + TO]!;
  const s = c.places[p + SLOT]!;
  c.numbers[b * NUMBERS + SLOPE] = y;
  c.numbers[b * NUMBERS + TARGET] = target;
  c.node[i + DIAGONAL]! += y;
  c.node[j + DIAGONAL]! += y;
  c.node[i + CORRECTION]! -= target;
  c.node[j + CORRECTION]! += target;
  c.upper[s]! -= y;
  c.lower[s]! -= y;
}

/** The flow of a holding regulator follows one end's head only: that end's column gets it, in both rows. */
function stampHolding(c: Circuit, b: number, q: number, residual: number): void {
  const p = b * PLACES;
  const i = c.places[p + FROM]!;
  const j = c.places[p + TO]!;
  const y = 1 / c.heldSlope[b]!;
  const target = q + y * residual;
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
