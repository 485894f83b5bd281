/** The linear system of a step: clearing it, and solving it by the elimination laid out for the topology. */
import * as store from './circuit-store.ts';
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { registers } from './registers.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const { CORRECTION, DIAGONAL, NODE, OFFSET, SHUT_CONDUCTANCE } = layout;
const { doubles, integers } = store;

/** Keep the matrix regular where nothing holds a head: a share of the conductance at a junction, and [(m3/s)/m]. */
const DIAGONAL_SHARE = 1e-14;
const DIAGONAL_FLOOR = 1e-15;
/** Of all shut branches at a junction together. */
const LEAK = 10 * SHUT_CONDUCTANCE;

/** What leaks out of the balances for each metre that heads change, in the matrix but in no flow. */
export const leakOut = registers();

export function clear(c: Circuit): void {
  const x = doubles;
  for (let k = 0; k < c.unknowns; k++) {
    const i = (k * NODE) & OFFSET;
    x[i + DIAGONAL] = 0;
    x[i + CORRECTION] = 0;
  }
  for (let k = c.upperAt, n = c.upperAt + c.elimination.slots; k < n; k++) x[k & OFFSET] = 0;
}

/** Solves for the corrections of the heads in place; those of fixed heads become zero; the leak is in `leakOut`. */
export function eliminateSymmetric(c: Circuit): void {
  const x = doubles;
  const ints = integers;
  const { upperAt, startAt, neighbourAt } = c;
  const { pair } = c.elimination;
  regularise(c);
  let s = 0;
  for (let k = 0; k < c.unknowns; k++) {
    const end = ints[(startAt + k + 1) & OFFSET]!;
    const n = (k * NODE) & OFFSET;
    const inverse = 1 / x[n + DIAGONAL]!;
    x[n + DIAGONAL] = inverse;
    const right = x[n + CORRECTION]!;
    for (let a = ints[(startAt + k) & OFFSET]!; a < end; a++) {
      const m = (ints[(neighbourAt + a) & OFFSET]! * NODE) & OFFSET;
      const factor = x[(upperAt + a) & OFFSET]! * inverse;
      x[m + CORRECTION]! -= factor * right;
      x[m + DIAGONAL]! -= factor * x[(upperAt + a) & OFFSET]!;
      for (let b = a + 1; b < end; b++)
        x[(upperAt + pair[s++]!) & OFFSET]! -= factor * x[(upperAt + b) & OFFSET]!;
    }
  }
  substituteBack(c);
}

function regularise(c: Circuit): void {
  const x = doubles;
  let stiffest = 0;
  for (let k = 0; k < c.unknowns; k++) {
    const i = (k * NODE) & OFFSET;
    const diagonal = x[i + DIAGONAL]!;
    if (diagonal > stiffest) stiffest = diagonal;
    x[i + DIAGONAL] = diagonal + diagonal * DIAGONAL_SHARE + DIAGONAL_FLOOR;
  }
  leakOut[0] = LEAK + stiffest * DIAGONAL_SHARE;
}

/** As above for values that are not symmetric. */
export function eliminate(c: Circuit): void {
  const x = doubles;
  const ints = integers;
  const { lower, upperAt, startAt, neighbourAt } = c;
  const { pair } = c.elimination;
  regularise(c);
  let p = 0;
  for (let k = 0; k < c.unknowns; k++) {
    const end = ints[(startAt + k + 1) & OFFSET]!;
    const n = (k * NODE) & OFFSET;
    const inverse = 1 / x[n + DIAGONAL]!;
    x[n + DIAGONAL] = inverse;
    const right = x[n + CORRECTION]!;
    for (let a = ints[(startAt + k) & OFFSET]!; a < end; a++) {
      const m = (ints[(neighbourAt + a) & OFFSET]! * NODE) & OFFSET;
      const factor = lower[a]! * inverse;
      x[m + CORRECTION]! -= factor * right;
      x[m + DIAGONAL]! -= factor * x[(upperAt + a) & OFFSET]!;
      for (let b = a + 1; b < end; b++) {
        const s = pair[p++]!;
        x[(upperAt + s) & OFFSET]! -= factor * x[(upperAt + b) & OFFSET]!;
        lower[s]! -= lower[b]! * inverse * x[(upperAt + a) & OFFSET]!;
      }
    }
  }
  substituteBack(c);
}

function substituteBack(c: Circuit): void {
  const x = doubles;
  const ints = integers;
  const { upperAt, startAt, neighbourAt } = c;
  for (let i = c.unknowns * NODE, n = c.heads * NODE; i < n; i += NODE) x[i + CORRECTION] = 0;
  for (let k = c.unknowns - 1; k >= 0; k--) {
    const n = (k * NODE) & OFFSET;
    let sum = x[n + CORRECTION]!;
    for (let a = ints[(startAt + k) & OFFSET]!, end = ints[(startAt + k + 1) & OFFSET]!; a < end; a++) {
      sum -=
        x[(upperAt + a) & OFFSET]! * x[((ints[(neighbourAt + a) & OFFSET]! * NODE) & OFFSET) + CORRECTION]!;
    }
    x[n + CORRECTION] = sum * x[n + DIAGONAL]!;
  }
}

export function clearRight(c: Circuit): void {
  const x = doubles;
  for (let i = 0, n = c.heads * NODE; i < n; i += NODE) x[i + CORRECTION] = 0;
}

/** Solves the matrix eliminated last for another right-hand side, in place. */
export function solveAgain(c: Circuit): void {
  const x = doubles;
  const ints = integers;
  const { startAt, neighbourAt } = c;
  const below = c.symmetric ? c.upper : c.lower;
  for (let k = 0; k < c.unknowns; k++) {
    const n = (k * NODE) & OFFSET;
    const right = x[n + CORRECTION]! * x[n + DIAGONAL]!;
    for (let a = ints[(startAt + k) & OFFSET]!, end = ints[(startAt + k + 1) & OFFSET]!; a < end; a++)
      x[((ints[(neighbourAt + a) & OFFSET]! * NODE) & OFFSET) + CORRECTION]! -= below[a]! * right;
  }
  substituteBack(c);
}
