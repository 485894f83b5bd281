import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';

const EARTH_RADIUS = 6356766;
const SEA_LEVEL_TEMPERATURE = 288.15;
const SEA_LEVEL_PRESSURE = 101325;
const LAPSE_RATE = 0.0065;
/** Molar mass of dry air over the gas constant, both as the standard defines them [K.s2/m2]. */
const MOLAR_MASS_OVER_GAS_CONSTANT = 28.9644 / 8314.32;

/**
 * Temperature of the standard atmosphere at an altitude.
 *
 * @formula T = 288.15 K - 0.0065 K/m · H, H = r z / (r + z), r = 6356766 m
 * @param altitude altitude above sea level [m] -600..11000
 * @returns air temperature [K]
 * @valid a standard day; the real air of the day differs by tens of kelvin
 * @throws RangeError when a parameter is outside its range
 * @source U.S. Standard Atmosphere 1976, lowest layer
 */
export function standardAtmosphereTemperature(altitude: number): number {
  inRange('altitude', altitude, -600, 11000, 'm');
  return SEA_LEVEL_TEMPERATURE - (LAPSE_RATE * EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude);
}

/**
 * Air pressure of the standard atmosphere at an altitude: what pushes liquid into a pump.
 *
 * @formula p = 101325 Pa (T / 288.15 K)^(g M / (R L)); T from the standard atmosphere
 * @param altitude altitude above sea level [m] -600..11000
 * @returns air pressure, absolute [Pa]
 * @valid weather moves the true pressure by some 3 %
 * @throws RangeError when a parameter is outside its range
 * @source U.S. Standard Atmosphere 1976, lowest layer
 */
export function standardAtmospherePressure(altitude: number): number {
  const ratio = standardAtmosphereTemperature(altitude) / SEA_LEVEL_TEMPERATURE;
  return SEA_LEVEL_PRESSURE * ratio ** ((STANDARD_GRAVITY * MOLAR_MASS_OVER_GAS_CONSTANT) / LAPSE_RATE);
}
