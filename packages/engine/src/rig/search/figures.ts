import type { Proof } from '../proof/prove.ts';

/**
 * What choices are compared by, in steps that a shop can tell apart: price to the cent, dry mass to the kilogram, least
 * margin over all promises to the hundredth, working days until it is ready.
 */
export interface Figures {
  readonly priceCents: number;
  /** [0.1 kg] */
  readonly mass: number;
  /** [0.001] */
  readonly margin: number;
  readonly days: number;
}

/** A margin in whole hundredths; a hair is given so that a bound and a figure that are equal on paper fall in one step. */
export function marginStep(margin: number): number {
  return Math.floor(Math.min(margin, 10) * 100 + 1e-7) * 10;
}

/** Least margin that falls in a step. */
export function stepShare(step: number): number {
  return step / 1000;
}

/** A mass in whole kilograms [0.1 kg]. */
export function massStep(mass: number): number {
  return Math.round(mass) * 10;
}

/** Figures of a proven rig. */
export function figuresOf({ bill, promises }: Proof): Figures {
  const least = Math.min(...promises.flatMap((p) => p.margin ?? []));
  return {
    priceCents: bill.priceCents,
    mass: massStep(bill.dryMass),
    margin: marginStep(least),
    days: bill.readyInDays,
  };
}

/**
 * Whether one is as good as another in everything.
 *
 * @param within share of the other's price and mass by which it may be worse, and what its margin may be less [1]
 */
export function asGood(a: Figures, b: Figures, within = 0): boolean {
  return (
    a.priceCents <= b.priceCents * (1 + within) &&
    a.mass <= b.mass * (1 + within) &&
    a.margin >= b.margin - 1000 * within &&
    a.days <= b.days
  );
}

/** Whether one beats another: as good in everything and better in something. */
export function beats(a: Figures, b: Figures): boolean {
  return asGood(a, b) && !asGood(b, a);
}
