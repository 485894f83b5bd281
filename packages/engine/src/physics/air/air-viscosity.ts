import { inRange } from '../in-range.ts';

/**
 * Dynamic viscosity of air.
 *
 * @formula μ = 1.458e-6 T^1.5 / (T + 110.4)
 * @param temperature air temperature [K] 220..330
 * @returns dynamic viscosity [Pa.s]
 * @valid independent of pressure in any weather
 * @throws RangeError when a parameter is outside its range
 * @source Sutherland's law as set by the U.S. Standard Atmosphere 1976
 */
export function airViscosity(temperature: number): number {
  inRange('temperature', temperature, 220, 330, 'K');
  return (1.458e-6 * temperature * Math.sqrt(temperature)) / (temperature + 110.4);
}
