/** Loss and slope of one branch at one flow: the plain, complete form. The Newton loop holds its own flat copy. */
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { addElementCurve } from './element-coefficients.ts';
import type { Coefficients, ElementContext } from './element-coefficients.ts';
import * as kernel from './friction-kernel.ts';
import * as table from './friction-table.ts';
import { evaluateLaw } from './friction-table.ts';
import { registers } from './registers.ts';
import { evaluateSpare } from './spare-pieces.ts';
import type { ElementLaw } from './network-model.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const {
  CENTRE,
  CONSTANT,
  CUBIC,
  GROUP,
  GROUP_END,
  GROUP_NUMBERS,
  HAS_CURVE,
  LINEAR,
  LOSS,
  LOWER,
  NUMBERS,
  PLACES,
  QUADRATIC,
  UPPER,
  W,
} = layout;
const { LAMINAR_PSI, psiOut } = kernel;
const { FIRST_PIECE, PIECE, PIECES, PIECE_CENTRE, PIECE_SHIFT, SPARE_TABLE, frictionTables } = table;

export interface Laws {
  readonly laws: readonly ElementLaw[];
  readonly context: ElementContext;
  readonly coefficients: Coefficients;
}

/** w at which `groupPsi` evaluates, and its bits. */
export const psiIn = registers();
const words = new Int32Array(psiIn.buffer);

/** psi of friction group k at the w in `psiIn`, prepared or not, into `psiOut`; its bend is Infinity where nobody knows it. */
export function groupPsi(c: Circuit, laws: Laws, k: number): void {
  const w = psiIn[0]!;
  const index = (words[1]! >>> PIECE_SHIFT) - FIRST_PIECE;
  if (index >= 0 && index < PIECES) {
    const pieces = frictionTables.pieces;
    const r = c.groupTable[k]! + index * PIECE;
    const centre = pieces[r + PIECE_CENTRE]!;
    if (centre > 0) {
      const d = w - centre;
      const c1 = pieces[r + 1]!;
      const c2 = pieces[r + 2]!;
      const c3 = pieces[r + 3]!;
      const half = c2 + 3 * c3 * d;
      psiOut[0] = pieces[r]! + d * (c1 + d * (c2 + d * c3));
      psiOut[1] = c1 + d * (c2 + half);
      psiOut[2] = half;
      return;
    }
  } else if (index < 0 && c.groupLaminar[k] === 1) {
    psiOut[0] = LAMINAR_PSI * w;
    psiOut[1] = LAMINAR_PSI;
    psiOut[2] = 0;
    return;
  }
  unpreparedPsi(c, laws, k);
}

function unpreparedPsi(c: Circuit, laws: Laws, k: number): void {
  const w = psiIn[0]!;
  const low = c.groupLowW[k]!;
  const at = w < low ? low : w;
  const offset = c.groupTable[k]!;
  const key = laws.coefficients.friction[c.groupElement[k]!]!;
  if (offset > 0) frictionTables.evaluate(offset, at);
  else if (key.table === SPARE_TABLE) evaluateSpare(key, at);
  else evaluateLaw(key, at);
  if (w < low) {
    psiOut[1] = psiOut[0]! / low;
    psiOut[0] = psiOut[1] * w;
    psiOut[2] = Infinity;
  }
}

/** [loss, slope] of the last evaluation. */
export const lossOut = registers();
/**
 * Flow at which `branchLossAt` and `downstreamLossAt` evaluate. Handed over in an array, since a fraction that is an
 * argument or a result of a function costs a heap number each time the compiler keeps the two apart.
 */
export const flowIn = registers();

function frictionSum(c: Circuit, laws: Laws, first: number, last: number): void {
  const a = Math.abs(flowIn[0]!);
  let loss = 0;
  let slope = 0;
  for (let k = first; k < last; k++) {
    const o = k * GROUP_NUMBERS;
    const size = c.group[o + LOSS]!;
    const scale = c.group[o + W]!;
    psiIn[0] = a * scale;
    groupPsi(c, laws, k);
    loss += size * psiOut[0]!;
    slope += size * scale * psiOut[1]!;
  }
  lossOut[0] = loss;
  lossOut[1] = slope;
}

/** Makes the cubic of branch b's curves true at the flow that its CENTRE already holds. */
export function loadCurves(c: Circuit, laws: Laws, b: number): void {
  const o = b * CUBIC;
  const cubic = c.cubic;
  for (let i = o; i < o + CENTRE; i++) cubic[i] = 0;
  cubic[o + LOWER] = -Infinity;
  cubic[o + UPPER] = Infinity;
  for (let i = c.curveStart[b]!; i < c.curveStart[b + 1]!; i++) {
    const e = c.curveElement[i]!;
    addElementCurve(laws.context, laws.laws[e]!, e, cubic, o);
  }
  // What came of a flow that is no number is not kept: the range is empty.
  if (!Number.isFinite(cubic[o]!)) cubic[o + LOWER] = Infinity;
}

/** Loss of the part of branch b before its regulator, or of all of it, at q; into `lossOut`. */
export function branchLoss(c: Circuit, laws: Laws, b: number, q: number): void {
  flowIn[0] = q;
  branchLossAt(c, laws, b);
}

/** The same at the flow in `flowIn`. */
export function branchLossAt(c: Circuit, laws: Laws, b: number): void {
  const q = flowIn[0]!;
  const a = Math.abs(q);
  const o = b * NUMBERS;
  const p = b * PLACES;
  frictionSum(c, laws, c.places[p + GROUP]!, c.places[p + GROUP_END]!);
  const t = c.numbers[o + QUADRATIC]! * a;
  const sign = q < 0 ? -1 : 1;
  let loss = c.numbers[o + CONSTANT]! + (c.numbers[o + LINEAR]! + t) * q + sign * lossOut[0]!;
  let slope = c.numbers[o + LINEAR]! + 2 * t + lossOut[1]!;
  if (c.places[p + HAS_CURVE] === 1) {
    const k = b * CUBIC;
    if (!(a >= c.cubic[k + LOWER]! && a < c.cubic[k + UPPER]!)) {
      c.cubic[k + CENTRE] = a;
      loadCurves(c, laws, b);
    }
    const d = a - c.cubic[k + CENTRE]!;
    const c1 = c.cubic[k + 1]!;
    const c2 = c.cubic[k + 2]!;
    const c3 = c.cubic[k + 3]!;
    loss += sign * (c.cubic[k]! + d * (c1 + d * (c2 + d * c3)));
    slope += c1 + d * (2 * c2 + 3 * d * c3);
  }
  lossOut[0] = loss;
  lossOut[1] = slope;
}

/** Loss of the wide-open regulator and what follows it, q >= 0; into `lossOut`. */
export function downstreamLoss(c: Circuit, laws: Laws, b: number, q: number): void {
  flowIn[0] = q;
  downstreamLossAt(c, laws, b);
}

/** The same at the flow in `flowIn`. */
export function downstreamLossAt(c: Circuit, laws: Laws, b: number): void {
  const q = flowIn[0]!;
  frictionSum(c, laws, c.places[b * PLACES + GROUP_END]!, c.groupEnd2[b]!);
  const t = c.quadratic2[b]! * q;
  lossOut[0]! += (c.linear2[b]! + t) * q;
  lossOut[1]! += c.linear2[b]! + 2 * t;
}
