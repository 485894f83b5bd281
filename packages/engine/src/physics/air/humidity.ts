import { inRange } from '../in-range.ts';

const CELSIUS_ZERO = 273.15;
const MAGNUS_PRESSURE = 611.2;
const MAGNUS_SLOPE = 17.62;
const MAGNUS_OFFSET = 243.12;

/**
 * Partial pressure of water vapour in air.
 *
 * @formula e = φ · 611.2 Pa · exp(17.62 t / (243.12 + t)), t in degC
 * @param temperature air temperature [K] 230..330
 * @param relativeHumidity relative humidity over liquid water [-] 0..1
 * @returns vapour pressure [Pa]
 * @valid over liquid water also below freezing, as weather stations report it; within 0.35 % of the water vapour pressure law from 0 to 50 degC
 * @throws RangeError when a parameter is outside its range
 * @source Magnus formula, WMO Guide to Instruments and Methods of Observation (WMO-No. 8), from memory
 */
export function airVapourPressure(temperature: number, relativeHumidity: number): number {
  inRange('temperature', temperature, 230, 330, 'K');
  inRange('relativeHumidity', relativeHumidity, 0, 1, '-');
  const t = temperature - CELSIUS_ZERO;
  return relativeHumidity * MAGNUS_PRESSURE * Math.exp((MAGNUS_SLOPE * t) / (MAGNUS_OFFSET + t));
}

/**
 * Temperature at which the moisture in the air begins to condense.
 *
 * @formula t_d = 243.12 x / (17.62 - x), x = ln(e / 611.2 Pa)
 * @param temperature air temperature [K] 260..330
 * @param relativeHumidity relative humidity over liquid water [-] 0.05..1
 * @returns dew point [K]
 * @throws RangeError when a parameter is outside its range
 * @source Inverse of the Magnus formula, WMO-No. 8, from memory
 */
export function dewPoint(temperature: number, relativeHumidity: number): number {
  inRange('temperature', temperature, 260, 330, 'K');
  inRange('relativeHumidity', relativeHumidity, 0.05, 1, '-');
  const x = Math.log(airVapourPressure(temperature, relativeHumidity) / MAGNUS_PRESSURE);
  return CELSIUS_ZERO + (MAGNUS_OFFSET * x) / (MAGNUS_SLOPE - x);
}
