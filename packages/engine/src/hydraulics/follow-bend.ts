/**
 * After a Newton step: what the laws' bends add to it (Chebyshev's correction). The step's own matrix is solved once more,
 * for the losses that the straight lines left out; that costs a quarter of a step and what is left then is of the third
 * order in the step instead of the second.
 */
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
  PLACES,
  REDUCER,
  RELIEF_CHAIN,
  SLOPE,
  TARGET,
  TO,
  WIDE_OPEN,
} = layout;

/** A regulator's BEND is twice what it is for a pure square. */
const REGULATOR_SHARE = 0.5;
/** A correction above this share of the flow is not to be trusted, nor is one that turns it round. */
const MOST = 0.5;

/** Adds the correction to the step just taken (TARGET holds the flow before it), flows and heads. */
export function followBend(c: Circuit): void {
  const { branches, plain, arena: x, flowAt, numbersAt, shut, places, kind, ruling } = c;
  clearRight(c);
  for (let b = 0, p = 0, o = numbersAt; b < branches; b++, p += PLACES, o += NUMBERS) {
    if (shut[b] === 1) continue;
    const before = x[o + TARGET]!;
    const d = x[flowAt + b]! - before;
    const bend = b < plain ? x[o + BEND]! : REGULATOR_SHARE * x[o + BEND]!;
    // An endless bend goes with no step at all: any other one would not have been followed.
    const size = d === 0 ? 0 : bend * d * d;
    const extra = before < 0 ? size : -size;
    x[o + TARGET] = extra;
    x[places[p + FROM]! + CORRECTION]! -= extra;
    x[places[p + TO]! + CORRECTION]! += extra;
  }
  solveAgain(c);
  for (let i = 0, n = c.unknowns * NODE; i < n; i += NODE) x[i + HEAD]! += x[i + CORRECTION]!;
  for (let b = 0, p = 0, o = numbersAt; b < branches; b++, p += PLACES, o += NUMBERS) {
    if (shut[b] === 1) continue;
    const rise = x[places[p + FROM]! + CORRECTION]!;
    const fall = x[places[p + TO]! + CORRECTION]!;
    let extra = x[o + TARGET]!;
    if (b < plain || ruling[b] === WIDE_OPEN || kind[b] === RELIEF_CHAIN)
      extra += x[o + SLOPE]! * (rise - fall);
    else if (kind[b] === REDUCER) extra -= x[o + SLOPE]! * fall;
    else extra += x[o + SLOPE]! * rise;
    const q = x[flowAt + b]!;
    if ((extra < 0 ? -extra : extra) <= MOST * (q < 0 ? -q : q)) x[flowAt + b] = q + extra;
  }
}
