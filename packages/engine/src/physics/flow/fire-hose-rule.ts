import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { FOOT, PSI, US_GALLON } from '../us-measure.ts';
import { checkFlow, checkLength } from './limits.ts';

const COEFFICIENTS = { '3/4': 1100, '1': 150, '1-1/2': 24, '1-3/4': 15.5, '2-1/2': 2 } as const;

/** Nominal size of fire hose in inches. */
export type FireHoseSize = keyof typeof COEFFICIENTS;

/**
 * Coefficient of a size of fire hose for the fire service's friction rule.
 *
 * @formula table
 * @param size nominal size in inches [one of 3/4, 1, 1-1/2, 1-3/4, 2-1/2]
 * @returns coefficient C [-]
 * @throws RangeError when the size is not in the table
 * @source Fire service friction loss coefficients (fireengineacademy.com, friction loss formula)
 */
export function fireHoseCoefficient(size: FireHoseSize): number {
  oneOfChoices('size', size, Object.keys(COEFFICIENTS));
  return COEFFICIENTS[size];
}

/**
 * Pressure lost in fire hose by the fire service's rule.
 *
 * @formula Δp[psi] = C (Q[gpm]/100)² L[ft]/100
 * @param flow volume flow [m3/s] 0..1
 * @param length length of hose [m] 0..1e5
 * @param coefficient coefficient C of the hose, see fireHoseCoefficient [-] 0.001..5000
 * @returns pressure loss [Pa]
 * @valid fire hose with its couplings, whose true bore is wider than its name; for other hose of the named bore it gives only 56 to 83 % of the friction: not a safe stand-in
 * @throws RangeError when a parameter is outside its range
 * @source Fire service friction loss formula (fireengineacademy.com)
 */
export function fireHoseLoss(flow: number, length: number, coefficient: number): number {
  checkFlow(flow);
  checkLength(length);
  inRange('coefficient', coefficient, 0.001, 5000, '-');
  const gpm = (flow * 60) / US_GALLON;
  return coefficient * (gpm / 100) ** 2 * (length / FOOT / 100) * PSI;
}
