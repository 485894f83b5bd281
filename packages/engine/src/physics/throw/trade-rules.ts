import { inRange } from '../in-range.ts';
import { FOOT, INCH, MILE, PSI, STANDARD_GRAVITY, US_GALLON } from '../us-measure.ts';

/**
 * Height of a large fire stream by the rule of Box.
 *
 * @formula h = H - 0.0125 H²/d (ft, d in eighths of an inch)
 * @param bore diameter of the nozzle [m] 0.003..0.1
 * @param head head at the nozzle [m] 0..100
 * @returns height of the stream [m]
 * @valid large smooth nozzles; beyond a loss of 40 % of the head the curve turns over and goes negative, so it refuses
 * @throws RangeError when a parameter is outside its range or the loss is above 40 % of the head
 * @source Box, Practical Hydraulics, as reprinted in Fire and Water Engineering, 15 Oct 1898
 */
export function fireStreamHeightBox(bore: number, head: number): number {
  inRange('bore', bore, 0.003, 0.1, 'm');
  const steepest = (0.4 / 0.0125) * (bore / (INCH / 8)) * FOOT;
  inRange('head', head, 0, Math.min(100, steepest), 'm');
  const feet = head / FOOT;
  return (feet - (0.0125 * feet * feet) / (bore / (INCH / 8))) * FOOT;
}

/**
 * Throw of a large irrigation gun by the rule of Cavazza.
 *
 * @formula R = 1.35 sqrt(d H) (d in mm, H in m)
 * @param bore diameter of the nozzle [m] 0.012..0.03
 * @param pressure pressure at the nozzle, gauge [Pa] 1.5e5..8e5
 * @returns throw [m]
 * @valid 13 to 25 mm at 2 to 6 bar within 9 % rms; for a tree gun it is 2.5 times too far, so small bores and high pressures are refused
 * @throws RangeError when a parameter is outside its range
 * @source Cavazza, as in irrigation textbooks, from memory
 */
export function throwRangeCavazza(bore: number, pressure: number): number {
  inRange('bore', bore, 0.012, 0.03, 'm');
  inRange('pressure', pressure, 1.5e5, 8e5, 'Pa');
  return 1.35 * Math.sqrt((bore * 1000 * pressure) / (1000 * STANDARD_GRAVITY));
}

/**
 * Loss of wetted diameter of a sprinkler to wind, by the rule of irrigation practice.
 *
 * @formula loss = 2.5 % for each mile per hour above 3
 * @param windSpeed wind speed [m/s] 0..9
 * @returns share of the diameter that is lost [-]
 * @valid rotating sprinklers, averaged over all directions; the throw model gives 14 to 34 % of the range in a head wind of 10 mph
 * @throws RangeError when the wind is outside its range
 * @source National Engineering Handbook 15 and 623 chapter 11, from memory
 */
export function windLossSprinkler(windSpeed: number): number {
  inRange('windSpeed', windSpeed, 0, 9, 'm/s');
  return 0.025 * Math.max(0, (windSpeed * 3600) / MILE - 3);
}

/**
 * Flow of a smooth-bore fire nozzle by the rule of the fire service.
 *
 * @formula Q = 29.7 d² sqrt(p) (US gpm, in, psi)
 * @param bore diameter of the bore [m] 0.005..0.1
 * @param pressure pressure at the nozzle, gauge [Pa] 0..2e6
 * @returns volume flow of water [m3/s]
 * @valid implies a discharge coefficient of 0.995: optimistic for small bores, whose coefficient is 0.966 to 0.982
 * @throws RangeError when a parameter is outside its range
 * @source Fire-service formula gpm = 29.7 d² sqrt(NP)
 */
export function smoothBoreFireFlow(bore: number, pressure: number): number {
  inRange('bore', bore, 0.005, 0.1, 'm');
  inRange('pressure', pressure, 0, 2e6, 'Pa');
  return (29.7 * (bore / INCH) ** 2 * Math.sqrt(pressure / PSI) * US_GALLON) / 60;
}
