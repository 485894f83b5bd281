/** The linear system of a step: clearing it, and solving it by the elimination laid out for the topology. */
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const { CORRECTION, DIAGONAL, NODE, OFFSET, SHUT_CONDUCTANCE } = layout;

/** Keep the matrix regular where nothing holds a head: a share of the conductance at a junction, and [(m3/s)/m]. */
const DIAGONAL_SHARE = 1e-14;
const DIAGONAL_FLOOR = 1e-15;
/** Of all shut branches at a junction together. */
const LEAK = 10 * SHUT_CONDUCTANCE;

/** What leaks out of the balances for each metre that heads change, in the matrix but in no flow. */
export const leakOut = new Float64Array(1);

export function clear(c: Circuit): void {
  const x = c.arena;
  for (let k = 0; k < c.unknowns; k++) {
    const i = (k * NODE) & OFFSET;
    x[i + DIAGONAL] = 0;
    x[i + CORRECTION] = 0;
  }
  const { upper } = c;
  for (let k = 0, n = c.elimination.slots; k < n; k++) upper[k] = 0;
}

/** Solves for the corrections of the heads in place; those of fixed heads become zero; the leak is in `leakOut`. */
export function eliminateSymmetric(c: Circuit): void {
  const { size, start, neighbour, pair } = c.elimination;
  const { node, upper } = c;
  regularise(c);
  let s = 0;
  for (let k = 0; k < size; k++) {
    const end = start[k + 1]!;
    const n = (k * NODE) & OFFSET;
    const inverse = 1 / node[n + DIAGONAL]!;
    node[n + DIAGONAL] = inverse;
    const right = node[n + CORRECTION]!;
    for (let a = start[k]!; a < end; a++) {
      const m = (neighbour[a]! * NODE) & OFFSET;
      const factor = upper[a]! * inverse;
      node[m + CORRECTION]! -= factor * right;
      node[m + DIAGONAL]! -= factor * upper[a]!;
      for (let b = a + 1; b < end; b++) upper[pair[s++]!]! -= factor * upper[b]!;
    }
  }
  substituteBack(c);
}

function regularise(c: Circuit): void {
  const { node } = c;
  let stiffest = 0;
  for (let k = 0; k < c.unknowns; k++) {
    const i = (k * NODE) & OFFSET;
    const diagonal = node[i + DIAGONAL]!;
    if (diagonal > stiffest) stiffest = diagonal;
    node[i + DIAGONAL] = diagonal + diagonal * DIAGONAL_SHARE + DIAGONAL_FLOOR;
  }
  leakOut[0] = LEAK + stiffest * DIAGONAL_SHARE;
}

/** As above for values that are not symmetric. */
export function eliminate(c: Circuit): void {
  const { size, start, neighbour, pair } = c.elimination;
  const { node, upper, lower } = c;
  regularise(c);
  let p = 0;
  for (let k = 0; k < size; k++) {
    const end = start[k + 1]!;
    const n = (k * NODE) & OFFSET;
    const inverse = 1 / node[n + DIAGONAL]!;
    node[n + DIAGONAL] = inverse;
    const right = node[n + CORRECTION]!;
    for (let a = start[k]!; a < end; a++) {
      const m = (neighbour[a]! * NODE) & OFFSET;
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
    const n = (k * NODE) & OFFSET;
    let x = node[n + CORRECTION]!;
    for (let a = start[k]!, end = start[k + 1]!; a < end; a++) {
      x -= upper[a]! * node[((neighbour[a]! * NODE) & OFFSET) + CORRECTION]!;
    }
    node[n + CORRECTION] = x * node[n + DIAGONAL]!;
  }
}

export function clearRight(c: Circuit): void {
  for (let i = 0, n = c.heads * NODE; i < n; i += NODE) c.node[i + CORRECTION] = 0;
}

/** Solves the matrix eliminated last for another right-hand side, in place. */
export function solveAgain(c: Circuit): void {
  const { size, start, neighbour } = c.elimination;
  const { node } = c;
  const below = c.symmetric ? c.upper : c.lower;
  for (let k = 0; k < size; k++) {
    const n = (k * NODE) & OFFSET;
    const right = node[n + CORRECTION]! * node[n + DIAGONAL]!;
    for (let a = start[k]!, end = start[k + 1]!; a < end; a++)
      node[((neighbour[a]! * NODE) & OFFSET) + CORRECTION]! -= below[a]! * right;
  }
  substituteBack(c);
}
