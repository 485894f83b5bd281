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

/**
 * Relative humidity from a wet and a dry thermometer, such as a sling psychrometer.
 *
 * @formula e = e_s(T_w) - 6.60e-4 (1 + 0.00115 T_w) p (T - T_w); φ = e / e_s(T), temperatures in degC
 * @param temperature air temperature, dry thermometer [K] 273.15..330
 * @param wetBulb wet thermometer, well ventilated [K] 273.15..330
 * @param pressureAbsolute pressure of the air, absolute; default sea level [Pa] 50000..110000
 * @returns relative humidity over liquid water [-]
 * @valid wick wet, not iced, and ventilated at 3 m/s or more; a wet bulb too cold for any humidity is refused
 * @throws RangeError when a parameter is outside its range or the two readings do not belong together
 * @source American Meteorological Society, Glossary of Meteorology, psychrometric formula (6.60e-4 read, the factor 1 + 0.00115 T_w from memory); Magnus formula
 */
export function humidityFromWetBulb(temperature: number, wetBulb: number, pressureAbsolute = 101325): number {
  inRange('temperature', temperature, CELSIUS_ZERO, 330, 'K');
  inRange('wetBulb', wetBulb, CELSIUS_ZERO, temperature, 'K');
  inRange('pressureAbsolute', pressureAbsolute, 50000, 110000, 'Pa');
  const cooled = temperature - wetBulb;
  const vapour =
    airVapourPressure(wetBulb, 1) -
    6.6e-4 * (1 + 0.00115 * (wetBulb - CELSIUS_ZERO)) * pressureAbsolute * cooled;
  const humidity = vapour / airVapourPressure(temperature, 1);
  if (humidity < 0)
    throw new RangeError(
      `wetBulb is ${wetBulb} K; at ${temperature} K even dry air does not cool a wet thermometer so far`,
    );
  return humidity;
}
