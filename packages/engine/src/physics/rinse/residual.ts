import { inRange } from '../in-range.ts';
import { listInRange } from '../lists-in-range.ts';

/**
 * Liquid left in a rig after it has sucked air: the sum of what each part keeps.
 *
 * @formula R = sum R_i
 * @param parts volume left in each part: tank sump, pump, strainer bowl, manifold, hose [list of m3] 0..10
 * @returns residual volume [m3]
 * @valid On a rig with a reel the hose is usually the largest part.
 * @throws RangeError when a parameter is outside its range
 * @source Definition; extension handout, cleaning sprayers after use.
 */
export function residualVolume(parts: readonly number[]): number {
  listInRange('parts', parts, 0, 10, 'm3');
  return parts.reduce((sum, part) => sum + part, 0);
}

/**
 * Residual of tank, pump and fittings to expect before it has been measured.
 *
 * @formula R = 0.013 V to 0.020 V
 * @param tank nominal volume of the tank [m3] 0..100
 * @result least smallest to expect [m3]
 * @result most largest to expect [m3]
 * @valid Without boom and hose. From three boom sprayers of 0.6 to 1.5 m3: outside that an estimate.
 * @throws RangeError when a parameter is outside its range
 * @source Extension handout, cleaning sprayers after use: 2.1, 4.3 and 7.6 gal in tanks of 159, 212 and 396 gal.
 */
export function expectedResidual(tank: number): { least: number; most: number } {
  inRange('tank', tank, 0, 100, 'm3');
  return { least: 0.013 * tank, most: 0.02 * tank };
}
