import { checkBore } from './limits.ts';

/** Roughness of clean commercial steel pipe, 0.00015 ft, on which the equivalent-length ratios rest [m]. */
const COMMERCIAL_STEEL = 0.00015 * 0.3048;

/**
 * Friction factor of clean steel pipe in complete turbulence, the measure of fittings given as a multiple of it.
 *
 * @formula fT = 0.25 / log10(ε/(3.7 D))², ε = 0.00015 ft
 * @param bore inside diameter of the pipe the fitting joins [m] 0.0002..0.5
 * @returns Darcy friction factor fT [-]
 * @valid a property of the fitting's size, not of the hose beside it
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 (2009), fully turbulent friction factor; within 2 % of its table for 1/2 to 2 in
 */
export function frictionFactorCrane(bore: number): number {
  checkBore(bore);
  const l = Math.log10(COMMERCIAL_STEEL / (3.7 * bore));
  return 0.25 / (l * l);
}
