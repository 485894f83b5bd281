import { inRange } from '../in-range.ts';

/**
 * Wet bulb temperature from air temperature and humidity.
 *
 * @formula Tw = T atan(0.151977 (RH + 8.313659)^0.5) + atan(T + RH) - atan(RH - 1.676331) + 0.00391838 RH^1.5 atan(0.023101 RH) - 4.686035
 * @param temperatureC air temperature [degC] -20..50
 * @param humidity relative humidity [-] 0.05..0.99
 * @returns wet bulb temperature [degC]
 * @valid Sea level; stated error -1 to +0.65 degC, mean below 0.3. RH in per cent within the formula.
 * @throws RangeError when a parameter is outside its range
 * @source Stull 2011, J. Appl. Meteor. Climatol. 50:2267-2269.
 */
export function wetBulbStull(temperatureC: number, humidity: number): number {
  inRange('temperatureC', temperatureC, -20, 50, 'degC');
  inRange('humidity', humidity, 0.05, 0.99);
  const t = temperatureC;
  const rh = humidity * 100;
  return (
    t * Math.atan(0.151977 * Math.sqrt(rh + 8.313659)) +
    Math.atan(t + rh) -
    Math.atan(rh - 1.676331) +
    0.00391838 * rh ** 1.5 * Math.atan(0.023101 * rh) -
    4.686035
  );
}

/**
 * Drying power of the air as spray operators read it: dry less wet bulb.
 *
 * @formula dT = T - Tw
 * @param temperatureC air temperature [degC] -20..50
 * @param humidity relative humidity [-] 0.05..0.99
 * @returns Delta T, never below 0 [K]
 * @throws RangeError when a parameter is outside its range
 * @source Stull 2011 for the wet bulb; GRDC for its use.
 */
export function deltaT(temperatureC: number, humidity: number): number {
  return Math.max(0, temperatureC - wetBulbStull(temperatureC, humidity));
}

/**
 * Time until a drop of pure water has dried up.
 *
 * @formula t = d^2 / (80 dT) (d in um)
 * @param diameter diameter of the drop [m] 1e-6..1e-3
 * @param difference Delta T of the air [K] 0.1..40
 * @returns life of the drop [s]
 * @throws RangeError when a parameter is outside its range
 * @source Amsden 1962 as given in Matthews, Pesticide Application Methods; from memory.
 */
export function dropLifetime(diameter: number, difference: number): number {
  inRange('diameter', diameter, 1e-6, 1e-3, 'm');
  inRange('difference', difference, 0.1, 40, 'K');
  return (diameter * 1e6) ** 2 / (80 * difference);
}

/**
 * How far a drop of pure water falls in still air before it has dried up.
 *
 * @formula h = 1.5e-3 d^4 / (80 dT) cm (d in um)
 * @param diameter diameter of the drop [m] 1e-6..1e-3
 * @param difference Delta T of the air [K] 0.1..40
 * @returns distance fallen [m]
 * @valid Overstated above about 100 um, by 1.7 at 200 um: the formula lets drops fall by Stokes' law.
 * @throws RangeError when a parameter is outside its range
 * @source Amsden 1962 as given in Matthews, Pesticide Application Methods; from memory.
 */
export function fallBeforeDry(diameter: number, difference: number): number {
  inRange('diameter', diameter, 1e-6, 1e-3, 'm');
  inRange('difference', difference, 0.1, 40, 'K');
  return (1.5e-3 * (diameter * 1e6) ** 4) / (80 * difference) / 100;
}
