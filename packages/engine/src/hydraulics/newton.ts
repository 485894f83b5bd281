/**
 * Newton on branch flows with the heads as multipliers (the global gradient of Todini and Pilati), in corrections:
 * each step solves for the change of the heads, so that mass balance is kept to rounding however steep or flat the laws.
 * The loop allocates nothing.
 */
import { assembleRegulator } from './assemble-regulator.ts';
import { groupPsi, loadCurves, psiIn } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import * as store from './circuit-store.ts';
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { excess, measureOpening, open } from './reopen.ts';
import { followBend } from './follow-bend.ts';
import { clear, eliminate, eliminateSymmetric, leakOut } from './head-system.ts';
import { stillLoops } from './still-loops.ts';
import * as kernel from './friction-kernel.ts';
import * as table from './friction-table.ts';
import { registers } from './registers.ts';

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
  LEAST_SLOPE,
  LINEAR,
  LOSS,
  LOWER,
  NODE,
  NOMINAL,
  NUMBERS,
  OFFSET,
  ONE_WAY,
  PLACES,
  QUADRATIC,
  REDUCER,
  RELIEF_CHAIN,
  SHUT_CONDUCTANCE,
  SLOPE,
  TARGET,
  TO,
  UPPER,
  W,
  WIDE_OPEN,
} = layout;
const { doubles, integers } = store;
const { FIRST_PIECE, PIECE, PIECES, PIECE_CENTRE, PIECE_SHIFT, frictionTables } = table;
const { LAMINAR_PSI, psiOut } = kernel;

/** Largest correction over largest flow at which a solution is accepted. */
export const TOLERANCE = 1e-9;
/** A flow below this is none [m3/s]. */
export const STILL = 1e-15;
/**
 * When every branch carries less than this share of its nominal flow the liquid rests: what is left of a drained pocket
 * fades, but slowly, and drowns in the rounding of the heads.
 */
export const STILL_SHARE = 3e-8;
/** ... once heads change by less than this [m]. */
const AT_REST = 1e-7;
/** What heads are told apart by [m]. */
const HEAD_ROUNDING = 1e-14;
/** A flow whose loss is below this [m] everywhere is the rounding of the heads going round a loop, not a flow. */
const STILL_HEAD = 4 * HEAD_ROUNDING;
/** w at which some friction law goes from one form to the next: Re 2000, 2300 and 4000. */
const REGIME_W_1 = 20;
const REGIME_W_2 = 23;
const REGIME_W_3 = 40;
const STEP_LIMIT = 3;
/** LEAST_SLOPE of steps cut short, which only come near: with the finer one nearly level laws make them go in circles. */
const CAUTIOUS_SLOPE = 1e-3;
/** What the bends leave may be this share of the step for them to be followed. */
const MOST_BEND = 0.5;

const words = new Int32Array(psiIn.buffer);

/**
 * Steps taken; negative when the limit was reached without acceptance. With `kept` the circuit holds its last solution, and a
 * first step, not counted, takes the laws of all branches that have not changed since as straight lines, as they were left:
 * that is how the solution moves with what has changed, and no law needs to be evaluated for it.
 */
export function newton(c: Circuit, laws: Laws, limit: number, kept = false): number {
  stepShare[0] = 1;
  if (kept) {
    step(c, laws, true);
    if (advance(c, laws) === BENT) followBend(c);
  }
  return iterate(c, laws, limit);
}

/** Steps cut short, which end the going round in circles that full ones can fall into. Accepts nothing. */
export function cautiousNewton(c: Circuit, laws: Laws, limit: number, part: number): void {
  stepShare[0] = part;
  iterate(c, laws, limit);
}

/** Part of each step that is taken; in an array, as a fraction in a variable of the module is a new object at each change. */
const stepShare = registers();

function iterate(c: Circuit, laws: Laws, limit: number): number {
  const whole = stepShare[0] === 1;
  for (let iteration = 1; iteration <= limit; iteration++) {
    step(c, laws, false);
    if (!whole) shorten(c);
    const outcome = advance(c, laws);
    if (!whole) continue;
    if (outcome === DONE) return iteration;
    if (outcome === BENT) followBend(c);
  }
  return -limit;
}

/** Corrections of heads and aims of flows, by the laws' straight lines. */
function step(c: Circuit, laws: Laws, kept: boolean): void {
  clear(c);
  assemblePlain(c, laws, kept);
  if (!c.symmetric) c.lower.set(c.upper);
  for (let b = c.plain; b < c.branches; b++) assembleRegulator(c, laws, b);
  if (c.symmetric) eliminateSymmetric(c);
  else eliminate(c);
}

function assemblePlain(c: Circuit, laws: Laws, kept: boolean): void {
  const x = doubles;
  const ints = integers;
  const bits = psiIn;
  // A number: what is true or false is told apart the long way at every branch.
  const keep = kept ? 1 : 0;
  const leastSlope = stepShare[0] === 1 ? LEAST_SLOPE : CAUTIOUS_SLOPE;
  const pieces = frictionTables.pieces;
  const { shutAt, changedAt, tableAt, laminarAt, plain, flowAt, numbersAt, groupAt, cubicAt } = c;
  for (let b = 0, p0 = 0, o0 = numbersAt; b < plain; b++, p0 += PLACES, o0 += NUMBERS) {
    const p = p0 & OFFSET;
    const o = o0 & OFFSET;
    const i = ints[p + FROM]! & OFFSET;
    const j = ints[p + TO]! & OFFSET;
    const s = ints[p + AT]! & OFFSET;
    if (ints[(shutAt + b) & OFFSET] === 1) {
      x[o + SLOPE] = SHUT_CONDUCTANCE;
      x[o + TARGET] = 0;
      x[i + DIAGONAL]! += SHUT_CONDUCTANCE;
      x[j + DIAGONAL]! += SHUT_CONDUCTANCE;
      x[s]! -= SHUT_CONDUCTANCE;
      continue;
    }
    const q = x[(flowAt + b) & OFFSET]!;
    if (keep === 1 && ints[(changedAt + b) & OFFSET] === 0) {
      const y = x[o + SLOPE]!;
      x[o + TARGET] = q;
      x[i + DIAGONAL]! += y;
      x[j + DIAGONAL]! += y;
      x[i + CORRECTION]! -= q;
      x[j + CORRECTION]! += q;
      x[s]! -= y;
      continue;
    }
    ints[(changedAt + b) & OFFSET] = 0;
    const a = Math.abs(q);
    const linear = x[o + LINEAR]!;
    let bend = x[o + QUADRATIC]!;
    const quadratic = bend * a;
    let loss = 0;
    let g = linear + 2 * quadratic;
    for (let k = ints[p + GROUP]!, end = ints[p + GROUP_END]!; k < end; k++) {
      const m = (groupAt + k * GROUP_NUMBERS) & OFFSET;
      const scale = x[m + W]!;
      const size = x[m + LOSS]!;
      const slope = size * scale;
      const w = a * scale;
      bits[0] = w;
      const index = (words[1]! >>> PIECE_SHIFT) - FIRST_PIECE;
      if (index >= 0 && index < PIECES) {
        const r = (ints[(tableAt + k) & OFFSET]! + index * PIECE) & OFFSET;
        const centre = pieces[r + PIECE_CENTRE]!;
        if (centre > 0) {
          const d = w - centre;
          const c1 = pieces[r + 1]!;
          const c2 = pieces[r + 2]!;
          const c3 = pieces[r + 3]!;
          const half = c2 + 3 * c3 * d;
          loss += size * (pieces[r]! + d * (c1 + d * (c2 + d * c3)));
          g += slope * (c1 + d * (c2 + half));
          bend += slope * scale * half;
          continue;
        }
      } else if (index < 0 && ints[(laminarAt + k) & OFFSET] === 1) {
        loss += size * LAMINAR_PSI * w;
        g += slope * LAMINAR_PSI;
        continue;
      }
      groupPsi(c, laws, k);
      loss += size * psiOut[0]!;
      g += slope * psiOut[1]!;
      bend += slope * scale * psiOut[2]!;
    }
    if (ints[p + HAS_CURVE] === 1) {
      const k = (cubicAt + b * CUBIC) & OFFSET;
      if (!(a >= x[k + LOWER]! && a < x[k + UPPER]!)) {
        x[k + CENTRE] = a;
        loadCurves(c, laws, b);
      }
      const d = a - x[k + CENTRE]!;
      const c2 = x[k + 2]!;
      const c3 = x[k + 3]!;
      loss += x[k]! + d * (x[k + 1]! + d * (c2 + d * c3));
      g += x[k + 1]! + d * (2 * c2 + 3 * d * c3);
      bend += c2 + 3 * d * c3;
    }
    if (q < 0) loss = -loss;
    loss += x[o + CONSTANT]! + (linear + quadratic) * q;
    const y = 1 / (g > leastSlope ? g : leastSlope);
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

/** Corrections of heads and aims of flows, cut to the part that is to be taken. */
function shorten(c: Circuit): void {
  const share = stepShare[0]!;
  for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) c.node[i + CORRECTION]! *= share;
  for (let b = 0; b < c.branches; b++) {
    const o = b * NUMBERS + TARGET;
    c.numbers[o] = c.flow[b]! + share * (c.numbers[o]! - c.flow[b]!);
  }
}

/** Of a step: what is left is below the tolerance; it was cut short somewhere; what is left is mostly the laws' bends. */
const DONE = 0;
const LIMITED = 1;
const BENT = 2;

/** Takes the step. */
function advance(c: Circuit, laws: Laws): number {
  const x = doubles;
  const ints = integers;
  const { branches, plain, flowAt, numbersAt, cubicAt, shutAt, kind, ruling } = c;
  let largestRise = 0;
  for (let k = 0, n = c.unknowns * NODE; k < n; k += NODE) {
    const i = k & OFFSET;
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
  let moving = false;
  let sure = true;
  let level = false;
  for (let b = 0; b < branches; b++) {
    const p = (b * PLACES) & OFFSET;
    const o = (numbersAt + b * NUMBERS) & OFFSET;
    if (ints[(shutAt + b) & OFFSET] === 1) {
      if (c.blocked[b] === 1) continue;
      measureOpening(c, laws, b);
      if (excess[0]! > 0) {
        ints[(shutAt + b) & OFFSET] = 0;
        open(c, b);
        settled = false;
      }
      continue;
    }
    const q = x[(flowAt + b) & OFFSET]!;
    const y = x[o + SLOPE]!;
    let next = x[o + TARGET]!;
    const rise = x[(ints[p + FROM]! & OFFSET) + CORRECTION]!;
    const fall = x[(ints[p + TO]! & OFFSET) + CORRECTION]!;
    if (b < plain || ruling[b] === WIDE_OPEN || kind[b] === RELIEF_CHAIN) next += y * (rise - fall);
    else if (kind[b] === REDUCER) next -= y * fall;
    else next += y * rise;
    let a = Math.abs(next);
    const size = Math.abs(q);
    const nominal = x[o + NOMINAL]!;
    const limit = STEP_LIMIT * (size > nominal ? size : nominal);
    if (a > limit) {
      next = next < 0 ? -limit : limit;
      a = limit;
      settled = false;
    }
    if (next < 0 && ints[p + ONE_WAY] === 1) {
      ints[(shutAt + b) & OFFSET] = 1;
      x[flowAt + b] = 0;
      if (size > 0) settled = false;
      continue;
    }
    const step = Math.abs(next - q);
    if (step > largestStep) {
      // A flow that moves no head by more than rounding is as good as found, however flat its law.
      if (step > y * HEAD_ROUNDING) largestStep = step;
      else if (a <= y * STILL_HEAD) level = true;
    }
    if (a > largestFlow) largestFlow = a;
    if (!moving && (a > STILL_SHARE * nominal || step > STILL_SHARE * nominal)) {
      const most = a > size ? a : size;
      moving = most * most > y * size * STILL_HEAD;
    }
    sum += next;
    const left = x[o + BEND]! * step * step;
    if (left > remainder) remainder = left;
    else if (-left > remainder) remainder = -left;
    if (b >= plain && 2 * (c.marginSlope[b]! * step + Math.abs(rise) + Math.abs(fall)) > c.margin[b]!)
      sure = false;
    if (
      ints[p + HAS_CURVE] === 1 &&
      !(a >= x[((cubicAt + b * CUBIC) & OFFSET) + LOWER]! && a < x[((cubicAt + b * CUBIC) & OFFSET) + UPPER]!)
    )
      settled = false;
    x[(flowAt + b) & OFFSET] = next;
    x[o + TARGET] = q;
  }
  // Not a number has no order, so nothing above would have noticed it.
  if (!settled || !Number.isFinite(sum)) return LIMITED;
  if (!moving && largestRise < AT_REST) return rest(c);
  // What the next step leaves is to this remainder as the remainder is to this step, squared: often that is nothing already.
  const next = (remainder / largestStep) ** 2 * remainder;
  const bent = remainder <= MOST_BEND * largestStep && next > 0.01 * TOLERANCE * largestFlow;
  const goOn = bent ? BENT : LIMITED;
  // What leaks in the matrix through shut branches and to keep it regular is in no flow: wait until heads rest.
  if (largestRise * leakOut[0]! > 0.1 * TOLERANCE * largestFlow) return goOn;
  if (largestStep <= TOLERANCE * largestFlow) {
    if (!moving) return rest(c);
  } else {
    const done =
      sure && remainder <= 0.1 * TOLERANCE * largestFlow && largestStep < 1e-3 * largestFlow && keptRegime(c);
    if (!done) return goOn;
  }
  if (level) stillLoops(c, laws);
  return DONE;
}

/** No friction law bends anew within the step just taken (TARGET now holds the flow before it). */
function keptRegime(c: Circuit): boolean {
  const x = doubles;
  const ints = integers;
  const { flowAt, numbersAt, groupAt } = c;
  for (let b = 0; b < c.plain; b++) {
    const p = (b * PLACES) & OFFSET;
    const before = Math.abs(x[((numbersAt + b * NUMBERS) & OFFSET) + TARGET]!);
    const now = Math.abs(x[(flowAt + b) & OFFSET]!);
    for (let k = ints[p + GROUP]!, end = ints[p + GROUP_END]!; k < end; k++) {
      const scale = x[((groupAt + k * GROUP_NUMBERS) & OFFSET) + W]!;
      const v = scale * before;
      const w = scale * now;
      if (v >= REGIME_W_3 && w >= REGIME_W_3) continue;
      if (
        v < REGIME_W_1 !== w < REGIME_W_1 ||
        v < REGIME_W_2 !== w < REGIME_W_2 ||
        v < REGIME_W_3 !== w < REGIME_W_3
      )
        return false;
    }
  }
  return true;
}

/** What moves as good as not does not move. */
function rest(c: Circuit): number {
  c.flow.fill(0);
  c.changed.fill(1);
  return DONE;
}
