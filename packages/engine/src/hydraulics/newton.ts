/**
 * Newton on branch flows with the heads as multipliers (the global gradient of Todini and Pilati), in corrections:
 * each step solves for the change of the heads, so that mass balance is kept to rounding however steep or flat the laws.
 * The loop allocates nothing.
 */
import { branchLoss, downstreamLoss, groupPsi, loadCurves, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import * as layout from './circuit.ts';
import { fromHead, toHead } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import * as kernel from './friction-kernel.ts';
import * as table from './friction-table.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const {
  AT,
  BEND,
  CENTRE,
  CONSTANT,
  CORRECTION,
  CUBIC,
  DIAGONAL,
  FROM,
  GROUP,
  GROUP_END,
  GROUP_NUMBERS,
  HAS_CURVE,
  HEAD,
  HOLDING,
  LEAST_SLOPE,
  LINEAR,
  LOSS,
  LOSS_W,
  LOSS_W2,
  LOWER,
  NODE,
  NOMINAL,
  NUMBERS,
  ONE_WAY,
  PLACES,
  PLAIN,
  QUADRATIC,
  REDUCER,
  RELIEF,
  RELIEF_CHAIN,
  SHUT_CONDUCTANCE,
  SLOPE,
  SLOT,
  TARGET,
  TO,
  UPPER,
  W,
  WIDE_OPEN,
} = layout;
const { FIRST_PIECE, PIECE, PIECES, PIECE_CENTRE, PIECE_SHIFT, frictionTables } = table;
const { LAMINAR_PSI, psiOut } = kernel;

/** Largest correction over largest flow at which a solution is accepted. */
export const TOLERANCE = 1e-9;
/** Flows all below this are none [m3/s]. */
export const STILL = 1e-15;
const STEP_LIMIT = 3;
const REOPEN = 0.3;
/** Keep the matrix regular where nothing holds a head: a share of the conductance at a junction, and [(m3/s)/m]. */
const DIAGONAL_SHARE = 1e-14;
const LEAK = 10 * SHUT_CONDUCTANCE;
const DIAGONAL_FLOOR = 1e-15;

const bits = new Float64Array(1);
const words = new Int32Array(bits.buffer);

/** Steps taken; negative when the limit was reached without acceptance. */
export function newton(c: Circuit, laws: Laws, limit: number): number {
  for (let iteration = 1; iteration <= limit; iteration++) {
    clear(c);
    assemblePlain(c, laws);
    if (!c.symmetric) c.lower.set(c.upper);
    for (let b = c.plain; b < c.branches; b++) assembleRegulator(c, laws, b);
    if (c.symmetric) eliminateSymmetric(c);
    else eliminate(c);
    if (advance(c, laws)) return iteration;
  }
  return -limit;
}

export function clear(c: Circuit): void {
  const x = c.arena;
  for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) {
    x[i + DIAGONAL] = 0;
    x[i + CORRECTION] = 0;
  }
  for (let k = 0, n = c.elimination.slots; k < n; k++) c.upper[k] = 0;
}

function assemblePlain(c: Circuit, laws: Laws): void {
  const pieces = frictionTables.pieces;
  const { arena: x, places, shut, groupTable, groupLaminar, plain, flowAt, numbersAt, groupAt, cubicAt } = c;
  for (let b = 0, p = 0, o = numbersAt; b < plain; b++, p += PLACES, o += NUMBERS) {
    const i = places[p + FROM]!;
    const j = places[p + TO]!;
    const s = places[p + AT]!;
    if (shut[b] === 1) {
      x[o + SLOPE] = SHUT_CONDUCTANCE;
      x[o + TARGET] = 0;
      x[i + DIAGONAL]! += SHUT_CONDUCTANCE;
      x[j + DIAGONAL]! += SHUT_CONDUCTANCE;
      x[s]! -= SHUT_CONDUCTANCE;
      continue;
    }
    const q = x[flowAt + b]!;
    const a = q < 0 ? -q : q;
    const linear = x[o + LINEAR]!;
    let bend = x[o + QUADRATIC]!;
    const quadratic = bend * a;
    let loss = 0;
    let g = linear + 2 * quadratic;
    for (let k = places[p + GROUP]!, end = places[p + GROUP_END]!; k < end; k++) {
      const m = groupAt + k * GROUP_NUMBERS;
      const w = a * x[m + W]!;
      bits[0] = w;
      const index = (words[1]! >>> PIECE_SHIFT) - FIRST_PIECE;
      if (index >= 0 && index < PIECES) {
        const r = groupTable[k]! + index * PIECE;
        const centre = pieces[r + PIECE_CENTRE]!;
        if (centre > 0) {
          const d = w - centre;
          const c2 = pieces[r + 2]!;
          const half = c2 + 3 * pieces[r + 3]! * d;
          const c1 = pieces[r + 1]!;
          loss += x[m + LOSS]! * (pieces[r]! + d * (c1 + d * (c2 + d * pieces[r + 3]!)));
          g += x[m + LOSS_W]! * (c1 + d * (c2 + half));
          bend += x[m + LOSS_W2]! * (half < 0 ? -half : half);
          continue;
        }
      } else if (index < 0 && groupLaminar[k] === 1) {
        loss += x[m + LOSS]! * LAMINAR_PSI * w;
        g += x[m + LOSS_W]! * LAMINAR_PSI;
        continue;
      }
      groupPsi(c, laws, k, w);
      loss += x[m + LOSS]! * psiOut[0]!;
      g += x[m + LOSS_W]! * psiOut[1]!;
      bend += x[m + LOSS_W2]! * bendOfPsi(w);
    }
    if (places[p + HAS_CURVE] === 1) {
      const k = cubicAt + b * CUBIC;
      if (!(a >= x[k + LOWER]! && a < x[k + UPPER]!)) loadCurves(c, laws, b, a);
      const d = a - x[k + CENTRE]!;
      const c2 = x[k + 2]!;
      const c3 = x[k + 3]!;
      loss += x[k]! + d * (x[k + 1]! + d * (c2 + d * c3));
      g += x[k + 1]! + d * (2 * c2 + 3 * d * c3);
      const half = c2 + 3 * d * c3;
      bend += half < 0 ? -half : half;
    }
    if (q < 0) loss = -loss;
    loss += x[o + CONSTANT]! + (linear + quadratic) * q;
    const y = 1 / (g > LEAST_SLOPE ? g : LEAST_SLOPE);
    const target = q + y * (x[i + HEAD]! - x[j + HEAD]! - loss);
    x[o + SLOPE] = y;
    x[o + TARGET] = target;
    x[o + BEND] = y * bend;
    x[i + DIAGONAL]! += y;
    x[j + DIAGONAL]! += y;
    x[i + CORRECTION]! -= target;
    x[j + CORRECTION]! += target;
    x[s]! -= y;
  }
}

/** Regulators: the term that rules at the present state decides what is linearised. */
function assembleRegulator(c: Circuit, laws: Laws, b: number): void {
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

/** Bound of half the second derivative of psi just evaluated at w: exact within a factor of two for any power of w. */
function bendOfPsi(w: number): number {
  return w > 0 ? (2 * Math.abs(psiOut[0]! - w * psiOut[1]!)) / (w * w) : 0;
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

/** Solves for the corrections of the heads in place; those of fixed heads become zero. */
function eliminateSymmetric(c: Circuit): void {
  const { size, start, neighbour, pair } = c.elimination;
  const { node, upper } = c;
  regularise(c);
  let s = 0;
  for (let k = 0; k < size; k++) {
    const end = start[k + 1]!;
    const n = k * NODE;
    const inverse = 1 / node[n + DIAGONAL]!;
    node[n + DIAGONAL] = inverse;
    const right = node[n + CORRECTION]!;
    for (let a = start[k]!; a < end; a++) {
      const m = neighbour[a]! * NODE;
      const factor = upper[a]! * inverse;
      node[m + CORRECTION]! -= factor * right;
      node[m + DIAGONAL]! -= factor * upper[a]!;
      for (let b = a + 1; b < end; b++) upper[pair[s++]!]! -= factor * upper[b]!;
    }
  }
  substituteBack(c);
}

/** Largest conductance at a junction in the present step. */
let stiffest = 0;

function regularise(c: Circuit): void {
  const { node } = c;
  stiffest = 0;
  for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) {
    const diagonal = node[i + DIAGONAL]!;
    if (diagonal > stiffest) stiffest = diagonal;
    node[i + DIAGONAL] = diagonal + diagonal * DIAGONAL_SHARE + DIAGONAL_FLOOR;
  }
}

/** As above for values that are not symmetric. */
export function eliminate(c: Circuit): void {
  const { size, start, neighbour, pair } = c.elimination;
  const { node, upper, lower } = c;
  regularise(c);
  let p = 0;
  for (let k = 0; k < size; k++) {
    const end = start[k + 1]!;
    const n = k * NODE;
    const inverse = 1 / node[n + DIAGONAL]!;
    node[n + DIAGONAL] = inverse;
    const right = node[n + CORRECTION]!;
    for (let a = start[k]!; a < end; a++) {
      const m = neighbour[a]! * NODE;
      const factor = lower[a]! * inverse;
      node[m + CORRECTION]! -= factor * right;
      node[m + DIAGONAL]! -= factor * upper[a]!;
      for (let b = a + 1; b < end; b++) {
        const s = pair[p++]!;
        upper[s]! -= factor * upper[b]!;
        lower[s]! -= lower[b]! * inverse * upper[a]!;
      }
    }
  }
  substituteBack(c);
}

function substituteBack(c: Circuit): void {
  const { size, start, neighbour } = c.elimination;
  const { node, upper } = c;
  for (let i = size * NODE, n = c.heads * NODE; i < n; i += NODE) node[i + CORRECTION] = 0;
  for (let k = size - 1; k >= 0; k--) {
    const n = k * NODE;
    let x = node[n + CORRECTION]!;
    for (let a = start[k]!, end = start[k + 1]!; a < end; a++) {
      x -= upper[a]! * node[neighbour[a]! * NODE + CORRECTION]!;
    }
    node[n + CORRECTION] = x * node[n + DIAGONAL]!;
  }
}

/** Takes the step. True when what is left is below the tolerance. */
function advance(c: Circuit, laws: Laws): boolean {
  const { branches, plain, arena: x, flowAt, numbersAt, cubicAt, shut, places, kind, ruling } = c;
  let largestRise = 0;
  for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) {
    const rise = x[i + CORRECTION]!;
    x[i + HEAD]! += rise;
    if (rise > largestRise) largestRise = rise;
    else if (-rise > largestRise) largestRise = -rise;
  }
  let largestStep = 0;
  let largestFlow = 0;
  let remainder = 0;
  let sum = 0;
  let settled = true;
  let sure = true;
  for (let b = 0; b < branches; b++) {
    const p = b * PLACES;
    const o = numbersAt + b * NUMBERS;
    if (shut[b] === 1) {
      if (c.blocked[b] === 1) continue;
      const excess = openingHead(c, laws, b);
      if (excess > 0) {
        shut[b] = 0;
        x[flowAt + b] = openingFlow(c, b, excess);
        settled = false;
      }
      continue;
    }
    const q = x[flowAt + b]!;
    const y = x[o + SLOPE]!;
    let next = x[o + TARGET]!;
    const rise = x[places[p + FROM]! + CORRECTION]!;
    const fall = x[places[p + TO]! + CORRECTION]!;
    if (b < plain || ruling[b] === WIDE_OPEN || kind[b] === RELIEF_CHAIN) next += y * (rise - fall);
    else if (kind[b] === REDUCER) next -= y * fall;
    else next += y * rise;
    let a = next < 0 ? -next : next;
    const size = q < 0 ? -q : q;
    const nominal = x[o + NOMINAL]!;
    const limit = STEP_LIMIT * (size > nominal ? size : nominal);
    if (a > limit) {
      next = next < 0 ? -limit : limit;
      a = limit;
      settled = false;
    }
    if (next < 0 && places[p + ONE_WAY] === 1) {
      shut[b] = 1;
      x[flowAt + b] = 0;
      if (size > 0) settled = false;
      continue;
    }
    const step = next < q ? q - next : next - q;
    if (step > largestStep) largestStep = step;
    if (a > largestFlow) largestFlow = a;
    sum += next;
    const left = x[o + BEND]! * step * step;
    if (left > remainder) remainder = left;
    if (b >= plain && 2 * (c.marginSlope[b]! * step + Math.abs(rise) + Math.abs(fall)) > c.margin[b]!)
      sure = false;
    if (
      places[p + HAS_CURVE] === 1 &&
      !(a >= x[cubicAt + b * CUBIC + LOWER]! && a < x[cubicAt + b * CUBIC + UPPER]!)
    )
      settled = false;
    x[flowAt + b] = next;
  }
  // Not a number has no order, so nothing above would have noticed it.
  if (!settled || !Number.isFinite(sum)) return false;
  if (largestFlow < STILL && largestStep < STILL) {
    c.flow.fill(0);
    return true;
  }
  // What leaks in the matrix through shut branches and to keep it regular is in no flow: wait until heads rest.
  if (largestRise * (LEAK + stiffest * DIAGONAL_SHARE) > 0.1 * TOLERANCE * largestFlow) return false;
  if (largestStep <= TOLERANCE * largestFlow) return true;
  return sure && remainder <= 0.1 * TOLERANCE * largestFlow && largestStep < 1e-3 * largestFlow;
}

/** Head that pushes a shut branch open; not above zero when it stays shut. */
function openingHead(c: Circuit, laws: Laws, b: number): number {
  const high = fromHead(c, b);
  const low = toHead(c, b);
  if (c.kind[b] === RELIEF) return drive(high, Math.max(c.held[b]!, low));
  if (c.kind[b] === REDUCER) return drive(Math.min(c.held[b]!, high), low);
  let rest = c.numbers[b * NUMBERS + CONSTANT]!;
  if (c.places[b * PLACES + HAS_CURVE] === 1) {
    branchLoss(c, laws, b, 0);
    rest = lossOut[0]!;
  }
  if (c.kind[b] === RELIEF_CHAIN) rest += Math.max(c.held[b]! - (c.heldAbsolute[b] === 1 ? low : 0), 0);
  return drive(high, low + rest);
}

/** What is left of a head difference beyond its rounding. */
function drive(high: number, low: number): number {
  return high - low - 1e-9 - 1e-13 * (Math.abs(high) + Math.abs(low));
}

/** First guess of the flow an opening branch takes: its own law at that head, friction left out. */
function openingFlow(c: Circuit, b: number, excess: number): number {
  const o = b * NUMBERS;
  const linear = c.numbers[o + LINEAR]! + c.linear2[b]! + (c.kind[b] === PLAIN ? 0 : c.heldSlope[b]!);
  const quadratic = c.numbers[o + QUADRATIC]! + c.quadratic2[b]!;
  const root = Math.sqrt(linear * linear + 4 * quadratic * excess);
  const free = root + linear > 0 ? (2 * excess) / (linear + root) : Infinity;
  return Math.min(free, REOPEN * c.numbers[o + NOMINAL]!);
}
