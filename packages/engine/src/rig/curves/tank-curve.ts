import { outputByTank } from '../../physics/index.ts';
import type { DayProof } from '../proof/day.ts';

/** The day's work with other tanks and nothing else changed. */
export interface TankCurve {
  /** [m3], rising; the rig's own is one of them. */
  readonly sizes: readonly number[];
  readonly units: readonly number[];
  /** [m2] */
  readonly areas: readonly number[];
  /** Heaviest in the day, the empty tank unchanged [kg]. */
  readonly masses: readonly number[];
  /** Smallest tank within 1 % of the best [m3]. */
  readonly paying: number;
}

const STEPS = 30;
/** The curve ends at this share of the rig's own tank. */
const BEYOND = 2.5;
/** Sizes that a day can be told with [m3]. */
const [LEAST, MOST] = [0.001, 100];

/** What a day yields against the size of the tank. */
export function tankCurve({ input }: DayProof): TankCurve {
  const shares = Array.from({ length: STEPS }, (_, i) => ((i + 1) / STEPS) * BEYOND);
  const sizes = [...new Set([...shares, 1])]
    .sort((a, b) => a - b)
    .map((share) => Math.min(MOST, share * input.tank))
    .filter((tank) => tank >= LEAST && tank > (input.unusable ?? 0));
  const { units, areas, masses, paying } = outputByTank({ day: input, tanks: sizes });
  return { sizes, units, areas, masses, paying };
}
