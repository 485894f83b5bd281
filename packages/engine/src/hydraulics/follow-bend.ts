/**
 * After a Newton step: what the laws' bends add to it (Chebyshev's correction). The step's own matrix is solved once more,
 * for the losses that the straight lines left out; that costs a quarter of a step and what is left then is of the third
 * order in the step instead of the second.
 */
import * as store from './circuit-store.ts';
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { clearRight, solveAgain } from './head-system.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const {
  BEND,
  CORRECTION,
  FROM,
  HEAD,
  NODE,
  NUMBERS,
  OFFSET,
  PLACES,
  REDUCER,
  RELIEF_CHAIN,
  SLOPE,
  TARGET,
  TO,
  WIDE_OPEN,
} = layout;
const { doubles, integers } = store;

/** A regulator's BEND is twice what it is for a pure square. */
const REGULATOR_SHARE = 0.5;
/** A correction above this share of the flow is not to be trusted, nor is one that turns it round. */
const MOST = 0.5;

/** Adds the correction to the step just taken (TARGET holds the flow before it), flows and heads. */
export function followBend(c: Circuit): void {
  const x = doubles;
  const ints = integers;
  const { branches, plain, flowAt, numbersAt, shutAt } = c;
  clearRight(c);
  for (let b = 0; b < branches; b++) {
    if (ints[(shutAt + b) & OFFSET] === 1) continue;
    const p = (b * PLACES) & OFFSET;
    const o = (numbersAt + b * NUMBERS) & OFFSET;
    const before = x[o + TARGET]!;
    const d = x[(flowAt + b) & OFFSET]! - before;
    // An endless bend goes with no step at all: any other one would not have been followed.
    const size = d === 0 ? 0 : (b < plain ? 1 : REGULATOR_SHARE) * x[o + BEND]! * d * d;
    const extra = before < 0 ? size : -size;
    x[o + TARGET] = extra;
    x[(ints[p + FROM]! & OFFSET) + CORRECTION]! -= extra;
    x[(ints[p + TO]! & OFFSET) + CORRECTION]! += extra;
  }
  solveAgain(c);
  for (let k = 0, n = c.unknowns; k < n; k++) {
    const i = (k * NODE) & OFFSET;
    x[i + HEAD]! += x[i + CORRECTION]!;
  }
  for (let b = 0; b < branches; b++) {
    if (ints[(shutAt + b) & OFFSET] === 1) continue;
    const p = (b * PLACES) & OFFSET;
    const o = (numbersAt + b * NUMBERS) & OFFSET;
    const rise = x[(ints[p + FROM]! & OFFSET) + CORRECTION]!;
    const fall = x[(ints[p + TO]! & OFFSET) + CORRECTION]!;
    const drive = b < plain ? rise - fall : driveOf(c, b, rise, fall);
    const extra = x[o + TARGET]! + x[o + SLOPE]! * drive;
    const q = x[(flowAt + b) & OFFSET]!;
    if (Math.abs(extra) <= MOST * Math.abs(q)) x[(flowAt + b) & OFFSET] = q + extra;
  }
}

/** What moves a regulator's flow: both ends, or the one it follows. */
function driveOf(c: Circuit, b: number, rise: number, fall: number): number {
  if (c.ruling[b] === WIDE_OPEN || c.kind[b] === RELIEF_CHAIN) return rise - fall;
  return c.kind[b] === REDUCER ? -fall : rise;
}
