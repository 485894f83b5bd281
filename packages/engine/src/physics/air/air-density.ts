import { inRange } from '../in-range.ts';

/** Gas constants of dry air and of water vapour [J/(kg.K)]. */
const DRY_AIR = 8314.32 / 28.9644;
const WATER_VAPOUR = 8314.32 / 18.0153;

/**
 * Density of dry air.
 *
 * @formula ρ = p / (R_air T)
 * @param pressureAbsolute air pressure, absolute [Pa] 20000..120000
 * @param temperature air temperature [K] 220..330
 * @returns density [kg/m3]
 * @throws RangeError when a parameter is outside its range
 * @source Ideal gas law with the constants of the U.S. Standard Atmosphere 1976
 */
export function dryAirDensity(pressureAbsolute: number, temperature: number): number {
  inRange('pressureAbsolute', pressureAbsolute, 20000, 120000, 'Pa');
  inRange('temperature', temperature, 220, 330, 'K');
  return pressureAbsolute / (DRY_AIR * temperature);
}

/**
 * Density of humid air: moist air is lighter than dry.
 *
 * @formula ρ = (p - e) / (R_air T) + e / (R_vapour T)
 * @param pressureAbsolute air pressure, absolute [Pa] 20000..120000
 * @param temperature air temperature [K] 220..330
 * @param vapourPressure partial pressure of water vapour [Pa] 0..15000
 * @returns density [kg/m3]
 * @valid ideal gases; within 0.1 % of the full equation in ordinary weather (from memory)
 * @throws RangeError when a parameter is outside its range
 * @source Dalton's law with the constants of the U.S. Standard Atmosphere 1976; molar mass of water 18.0153 g/mol
 */
export function humidAirDensity(
  pressureAbsolute: number,
  temperature: number,
  vapourPressure: number,
): number {
  inRange('vapourPressure', vapourPressure, 0, 15000, 'Pa');
  const dry = dryAirDensity(pressureAbsolute, temperature);
  return dry - (vapourPressure / temperature) * (1 / DRY_AIR - 1 / WATER_VAPOUR);
}
