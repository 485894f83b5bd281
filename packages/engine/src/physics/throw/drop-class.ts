import { inRange } from '../in-range.ts';

/** Share of the water that goes beyond the farthest drops, and beyond the bulk [-]. */
export const FARTHEST_SHARE = 0.001;
export const BULK_SHARE = 0.5;

/**
 * Size of the drops that a given share of the water outflies, relative to those of the farthest drops.
 *
 * @formula δ = (-ln F / 6.9)^(1/2.32)
 * @param share share of the water that goes farther: 0.001 for the farthest drops, 0.5 for the bulk [-] 0.001..0.99
 * @returns drop size relative to that of the farthest drops [-]
 * @throws RangeError when the share is outside its range
 * @source Volume distribution of Rosin and Rammler's form with the spread of the throw model's calibration; compared in the tests with the landing patterns of Trettel 2020
 */
export function dropSizeOfShare(share: number): number {
  inRange('share', share, 0.001, 0.99);
  return Math.min(1, (-Math.log(share) / 6.9) ** (1 / 2.32));
}
