import { inRange } from '../in-range.ts';
import { listInRange } from '../lists-in-range.ts';

/**
 * Fuse for a continuous load that also protects its cable.
 *
 * @formula 1.25 I ≤ fuse ≤ ampacity of the cable
 * @param load continuous current of the load [A] 0..2000
 * @param cableAmpacity current the cable carries [A] 0..2000
 * @param standardSizes fuses that can be had [list of A] 0.1..2000
 * @result minimumRating least rating [A]
 * @result chosen smallest standard size that does; null when none lies between [A]
 * @result fits whether one was found [yes/no]
 * @valid when none fits a thicker cable is needed; up to 150 % of ampacity is allowed by some practice (from memory), not here
 * @throws RangeError when a parameter is outside its range
 * @source 125 % continuous rule: common practice, no source; ampacity: ABYC E-11 table
 */
export function fuseFor(load: number, cableAmpacity: number, standardSizes: readonly number[]): FuseChoice {
  inRange('load', load, 0, 2000, 'A');
  inRange('cableAmpacity', cableAmpacity, 0, 2000, 'A');
  listInRange('standardSizes', standardSizes, 0.1, 2000, 'A');
  const minimumRating = 1.25 * load;
  const usable = standardSizes.filter((s) => s >= minimumRating && s <= cableAmpacity);
  const chosen = usable.length === 0 ? null : Math.min(...usable);
  return { minimumRating, chosen, fits: chosen !== null };
}

export interface FuseChoice {
  readonly minimumRating: number;
  readonly chosen: number | null;
  readonly fits: boolean;
}
