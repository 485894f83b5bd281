/** When a shut one-way branch opens again, and with what flow. */
import { branchLossAt, flowIn, lossOut } from './branch-loss.ts';
import type { Laws } from './branch-loss.ts';
import * as layout from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { registers } from './registers.ts';

// Copies of its own: a constant of this module is compiled into the loop, an imported one is read anew each time.
const {
  CONSTANT,
  FROM,
  HAS_CURVE,
  HEAD,
  LINEAR,
  NOMINAL,
  NUMBERS,
  PLACES,
  PLAIN,
  QUADRATIC,
  REDUCER,
  RELIEF,
  RELIEF_CHAIN,
  TO,
} = layout;

/** Of its nominal flow, the most a branch opens with. */
const REOPEN = 0.3;

/** Head that pushes a shut branch open, beyond its rounding; not above zero when it stays shut. */
export const excess = registers();

/** Of shut branch b, into `excess`. */
export function measureOpening(c: Circuit, laws: Laws, b: number): void {
  const p = b * PLACES;
  let high = c.node[c.places[p + FROM]! + HEAD]!;
  let low = c.node[c.places[p + TO]! + HEAD]!;
  const held = c.held[b]!;
  if (c.kind[b] === RELIEF) low = held > low ? held : low;
  else if (c.kind[b] === REDUCER) high = held < high ? held : high;
  else {
    let rest = c.numbers[b * NUMBERS + CONSTANT]!;
    if (c.places[p + HAS_CURVE] === 1) {
      flowIn[0] = 0;
      branchLossAt(c, laws, b);
      rest = lossOut[0]!;
    }
    if (c.kind[b] === RELIEF_CHAIN) {
      const holding = held - (c.heldAbsolute[b] === 1 ? low : 0);
      rest += holding > 0 ? holding : 0;
    }
    low += rest;
  }
  excess[0] = high - low - 1e-9 - 1e-13 * (Math.abs(high) + Math.abs(low));
}

/** First guess of the flow an opening branch takes: its own law at the excess, friction left out. */
export function open(c: Circuit, b: number): void {
  const o = b * NUMBERS;
  const push = excess[0]!;
  const linear = c.numbers[o + LINEAR]! + c.linear2[b]! + (c.kind[b] === PLAIN ? 0 : c.heldSlope[b]!);
  const quadratic = c.numbers[o + QUADRATIC]! + c.quadratic2[b]!;
  const root = Math.sqrt(linear * linear + 4 * quadratic * push);
  const free = root + linear > 0 ? (2 * push) / (linear + root) : Infinity;
  c.flow[b] = Math.min(free, REOPEN * c.numbers[o + NOMINAL]!);
}
