/** A way from the manifold back to the tank: pressure [Pa] by flow [m3/s], a constant, a linear and a square term. */
export interface Way {
  readonly constant: number;
  readonly linear: number;
  readonly square: number;
}

/** Flow of a way at a pressure in front of it [m3/s]; nothing flows back out of it. */
export function flowOf({ constant, linear, square }: Way, pressure: number): number {
  const left = pressure - constant;
  if (left <= 0) return 0;
  if (square <= 0) return linear > 0 ? left / linear : Infinity;
  return (Math.sqrt(linear * linear + 4 * square * left) - linear) / (2 * square);
}

/** A pump, and all that takes of what it gives. */
export interface MainFlows {
  /** What the pump gives against a pressure: never more against more. */
  readonly gives: (pressure: number) => number;
  /** Ways of which the narrowest rules: a regulator that holds, and the same wide open. */
  readonly back: readonly Way[];
  /** Outlets and jets that are open, each by itself. */
  readonly out: readonly Way[];
}

/** Parts by which the pressure is found: a hair of it. */
const HALVINGS = 24;

/**
 * Pressure at the manifold at which as much is taken as the pump gives, no higher than some pressure [Pa]. Every flow
 * taken grows with the pressure and the pump's does not, so there is one.
 */
export function mainPressureOf({ gives, back, out }: MainFlows, highest: number): number {
  let [low, high] = [0, highest];
  for (let i = 0; i < HALVINGS; i++) {
    const p = (low + high) / 2;
    let taken = Infinity;
    for (const way of back) taken = Math.min(taken, flowOf(way, p));
    for (const way of out) taken += flowOf(way, p);
    if (taken < gives(p)) low = p;
    else high = p;
  }
  return (low + high) / 2;
}
