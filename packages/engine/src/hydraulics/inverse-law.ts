/** The flow a branch passes between two heads: the exact inverse of its law. */
import { branchLoss, downstreamLoss, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import {
  LEAST_SLOPE,
  NOMINAL,
  NUMBERS,
  ONE_WAY,
  PLACES,
  REDUCER,
  RELIEF,
  RELIEF_CHAIN,
  SHUT_CONDUCTANCE,
} from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { registers } from './registers.ts';

/** How the flow follows the heads at its ends: [flow, d flow / d from-head, - d flow / d to-head]. */
export const flowOut = registers();

const LIMIT = 200;

export function flowBetween(c: Circuit, laws: Laws, b: number, high: number, low: number): void {
  if (c.blocked[b] === 1) return write(0, SHUT_CONDUCTANCE, SHUT_CONDUCTANCE);
  if (c.kind[b] === RELIEF) return regulatorFlow(c, laws, b, high - c.held[b]!, high - low, true);
  if (c.kind[b] === REDUCER) return regulatorFlow(c, laws, b, c.held[b]! - low, high - low, false);
  const base = c.kind[b] === RELIEF_CHAIN && c.heldAbsolute[b] === 1 ? low : 0;
  const drop = high - low;
  const rest = totalLoss(c, laws, b, 0, base);
  const oneWay = c.places[b * PLACES + ONE_WAY] === 1 || c.kind[b] === RELIEF_CHAIN;
  if (oneWay && drop <= rest) return write(0, SHUT_CONDUCTANCE, SHUT_CONDUCTANCE);
  const q = invert(c, laws, b, drop, rest, base);
  const y = 1 / Math.max(slopeAt, LEAST_SLOPE);
  write(q, y, y);
}

let slopeAt = 0;

function totalLoss(c: Circuit, laws: Laws, b: number, q: number, base: number): number {
  branchLoss(c, laws, b, q);
  let loss = lossOut[0]!;
  slopeAt = lossOut[1]!;
  if (c.kind[b] !== RELIEF_CHAIN) return loss;
  downstreamLoss(c, laws, b, Math.max(q, 0));
  const holding = c.held[b]! - base + c.heldSlope[b]! * q;
  loss += Math.max(holding, lossOut[0]!);
  slopeAt += holding >= lossOut[0]! ? c.heldSlope[b]! : lossOut[1]!;
  return loss;
}

/** Bracketed Newton on loss(q) = drop. */
function invert(c: Circuit, laws: Laws, b: number, drop: number, rest: number, base: number): number {
  const direction = drop > rest ? 1 : -1;
  let near = 0;
  let far = direction * Math.max(c.numbers[b * NUMBERS + NOMINAL]!, 1e-9);
  for (let i = 0; i < LIMIT && (totalLoss(c, laws, b, far, base) - drop) * direction < 0; i++) {
    near = far;
    far *= 4;
  }
  let q =
    c.flow[b]! * direction > Math.abs(near) && Math.abs(c.flow[b]!) < Math.abs(far)
      ? c.flow[b]!
      : (near + far) / 2;
  for (let i = 0; i < LIMIT; i++) {
    const excess = totalLoss(c, laws, b, q, base) - drop;
    if (excess === 0) return q;
    if (excess * direction > 0) far = q;
    else near = q;
    const newton = q - excess / Math.max(slopeAt, 1e-300);
    const inside = (newton - near) * (newton - far) < 0;
    const next = inside ? newton : (near + far) / 2;
    if (Math.abs(next - q) <= 1e-14 * Math.abs(q) + 1e-18) return next;
    q = next;
  }
  return q;
}

function regulatorFlow(c: Circuit, laws: Laws, b: number, room: number, drop: number, relief: boolean): void {
  if (room <= 0 || drop <= 0) return write(0, SHUT_CONDUCTANCE, SHUT_CONDUCTANCE);
  const y = 1 / c.heldSlope[b]!;
  const holding = room * y;
  downstreamLoss(c, laws, b, holding);
  // Holding rules while its flow is below what the wide-open valve would pass.
  if (lossOut[0]! <= drop) return relief ? write(holding, y, 0) : write(holding, 0, y);
  const open = Math.sqrt(drop / c.quadratic2[b]!);
  const slope = 1 / Math.max(2 * c.quadratic2[b]! * open, LEAST_SLOPE);
  write(open, slope, slope);
}

function write(flow: number, fromSlope: number, toSlope: number): void {
  flowOut[0] = flow;
  flowOut[1] = fromSlope;
  flowOut[2] = toSlope;
}
