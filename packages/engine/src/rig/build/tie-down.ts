import { STANDARD_GRAVITY, tiedownNumber } from '../../physics/index.ts';
import type { FreightEstimate } from '../proof/freight.ts';

/** How a rig is held on the truck that takes it to its owner. */
export interface TieDown {
  /** Least number of tiedowns by length and weight. */
  readonly number: number;
  /** Least sum of their working load limits: half the weight [N]. */
  readonly workingLoad: number;
  readonly source: string;
}

/** Tiedowns of a rig as cargo, not blocked by a wall in front of it; undefined outside what the rule is written for. */
export function tieDownOf({ length, mass }: FreightEstimate): TieDown | undefined {
  try {
    return {
      number: tiedownNumber(length, mass, false),
      workingLoad: (mass * STANDARD_GRAVITY) / 2,
      source: '49 CFR 393.106(d), 393.110',
    };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
