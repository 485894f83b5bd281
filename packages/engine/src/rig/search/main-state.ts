import { fallsToZero } from './falls-to-zero.ts';

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

/** The pressure is found to a part in so many of the highest. */
const PARTS = 5e6;

/**
 * Pressure at the manifold at which as much is taken as the pump gives, no higher than some pressure [Pa]. Every flow
 * taken grows with the pressure and the pump's does not, so there is one.
 */
export function mainPressureOf({ gives, back, out }: MainFlows, highest: number): number {
  const left = (pressure: number) => {
    let taken = Infinity;
    for (const way of back) taken = Math.min(taken, flowOf(way, pressure));
    for (const way of out) taken += flowOf(way, pressure);
    return gives(pressure) - taken;
  };
  return left(highest) > 0 ? highest : fallsToZero(left, highest, highest / PARTS);
}
