import { inRange } from '../in-range.ts';

/** Speeds above which each force begins, at 10 m over open ground [m/s]. */
const BEAUFORT = [1, 6, 12, 20, 29, 39, 50, 62, 75, 89, 103, 118].map((kmh) => kmh / 3.6);

/**
 * Force on the Beaufort scale.
 *
 * @formula table: force 1 from 1 km/h, 2 from 6, 3 from 12, 4 from 20, 5 from 29, 6 from 39 ...
 * @param wind wind at 10 m above open ground [m/s] 0..80
 * @returns force [-]
 * @valid Some spray leaflets print lower speeds beside the same force, taken near boom height: use speeds.
 * @throws RangeError when a parameter is outside its range
 * @source Victoria Dept of Health, Beaufort wind scale for pesticide spraying (2 to 4 seen); other rows from memory.
 */
export function beaufortForce(wind: number): number {
  inRange('wind', wind, 0, 80, 'm/s');
  // A touch of slack: 20 km/h typed in and converted must count as 20.
  return BEAUFORT.filter((from) => wind >= from - 1e-9).length;
}
