import { inRange, oneOfChoices } from '../physics/index.ts';
import { liquidOf } from './liquid-of.ts';
import type { StrengthUnit } from './liquid.ts';
import { liquidProperties } from './liquid-properties.ts';

/** Specific gravity ratings that plastic tanks are sold with; trade practice, recalled. */
export const TANK_RATINGS = [1, 1.35, 1.5, 1.9] as const;
/** Density of water that ratings are stated against: 8.34 lb/gal [kg/m3]. */
const RATING_WATER = 999.35;
const FERTILISER_FLOOR = 1.5;

/**
 * Smallest common tank rating for a liquid.
 *
 * @formula smallest of 1.0, 1.35, 1.5, 1.9 that is not below ρ / 999.35 kg/m3 - 0.01; at least 1.5 for fertiliser
 * @param density density of the heaviest liquid carried [kg/m3] 500..1898
 * @param use what is carried [one of fertiliser, other]
 * @returns specific gravity rating [-]
 * @valid a liquid heavier than 1.9 has no common rating: it refuses. Life outdoors is 5-8 years
 * @throws RangeError when a parameter is outside its range
 * @source North Dakota State University, storing liquid fertiliser (the floor of 1.5); ratings and the 1 % let pass: common practice, no source
 */
export function tankRating(density: number, use: 'fertiliser' | 'other'): number {
  inRange('density', density, 500, 1898, 'kg/m3');
  oneOfChoices('use', use, ['fertiliser', 'other']);
  // One per cent is let pass (judgement): water and thin mixes need no more than a tank for water.
  const gravity = density / RATING_WATER - 0.01;
  const floor = use === 'fertiliser' ? Math.max(gravity, FERTILISER_FLOOR) : gravity;
  const rating = TANK_RATINGS.find((r) => r >= floor);
  if (rating === undefined)
    throw new RangeError(`density is ${density} kg/m3; no common tank is rated for it`);
  return rating;
}

export interface TankRatingNeed {
  /** Undefined when a density is not known. */
  readonly rating: number | undefined;
  readonly reason: string;
}

/**
 * Rating that a tank needs for the liquids it carries: by density, by the fertiliser rule and by what the trade asks
 * for a liquid (bleach 1.9).
 *
 * @throws RangeError for an unknown liquid, a unit it is not sold in, an empty list.
 */
export function tankRatingFor(
  liquids: readonly {
    readonly liquid: string;
    readonly strength?: number | undefined;
    readonly strengthUnit?: StrengthUnit | undefined;
    readonly temperatureC: number;
  }[],
): TankRatingNeed {
  if (liquids.length === 0) throw new RangeError('liquids is empty; name at least one liquid');
  let rating = 0;
  let reason = '';
  for (const l of liquids) {
    const liquid = liquidOf(l.liquid);
    const { density } = liquidProperties(l);
    if (density === undefined && liquid.tankRatingMin < 1.9)
      return {
        rating: undefined,
        reason: `the density of ${liquid.name} is not known: enter the supplier's value`,
      };
    const byDensity =
      density === undefined
        ? 0
        : tankRating(density, liquid.groups.includes('fertiliser') ? 'fertiliser' : 'other');
    const own = Math.max(byDensity, liquid.tankRatingMin);
    if (own <= rating) continue;
    rating = own;
    const note = liquid.tankNote === '' ? '' : `; ${liquid.tankNote}`;
    reason = `${liquid.name}${density === undefined ? '' : ` at ${Math.round(density)} kg/m3`}: rated ${own}${note}`;
  }
  return { rating, reason };
}
