import { inRange } from '../in-range.ts';

/**
 * Flow of a tip at another pressure than the one it is rated at.
 *
 * @formula Q = Q_r sqrt(p / p_r)
 * @param ratedFlow flow at the rated pressure [m3/s] 0..1
 * @param ratedPressure pressure of the rating [Pa] 1e4..1e8
 * @param pressure pressure at the tip [Pa] 0..1e8
 * @returns flow [m3/s]
 * @valid Same liquid; below about half of a tip's least pressure the pattern collapses, whatever the flow.
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law; UNL CropWatch 2016 and UF/IFAS WG013.
 */
export function nozzleFlowAtPressure(ratedFlow: number, ratedPressure: number, pressure: number): number {
  inRange('ratedFlow', ratedFlow, 0, 1, 'm3/s');
  inRange('ratedPressure', ratedPressure, 1e4, 1e8, 'Pa');
  inRange('pressure', pressure, 0, 1e8, 'Pa');
  return ratedFlow * Math.sqrt(pressure / ratedPressure);
}

/**
 * Pressure at which a tip gives a flow.
 *
 * @formula p = p_r (Q / Q_r)^2
 * @param ratedFlow flow at the rated pressure [m3/s] 1e-8..1
 * @param ratedPressure pressure of the rating [Pa] 1e4..1e8
 * @param flow flow wanted [m3/s] 0..1
 * @returns pressure at the tip [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law; UNL CropWatch 2016.
 */
export function nozzlePressureForFlow(ratedFlow: number, ratedPressure: number, flow: number): number {
  inRange('ratedFlow', ratedFlow, 1e-8, 1, 'm3/s');
  inRange('ratedPressure', ratedPressure, 1e4, 1e8, 'Pa');
  inRange('flow', flow, 0, 1, 'm3/s');
  return ratedPressure * (flow / ratedFlow) ** 2;
}

/**
 * Pressure a constant dose asks for when the speed changes.
 *
 * @formula p2 = p1 (v2 / v1)^2
 * @param pressure pressure at the first speed [Pa] 0..1e8
 * @param speed first speed [m/s] 0.01..30
 * @param newSpeed second speed [m/s] 0..30
 * @returns pressure at the second speed [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law at constant dose; UNL CropWatch 2016.
 */
export function pressureForSpeed(pressure: number, speed: number, newSpeed: number): number {
  inRange('pressure', pressure, 0, 1e8, 'Pa');
  inRange('speed', speed, 0.01, 30, 'm/s');
  inRange('newSpeed', newSpeed, 0, 30, 'm/s');
  return pressure * (newSpeed / speed) ** 2;
}

/**
 * The pressure range of a tip told as a range of speed at one dose.
 *
 * @formula v_max / v_min = sqrt(p_max / p_min)
 * @param leastPressure lowest pressure with a good pattern [Pa] 1e3..1e8
 * @param mostPressure highest pressure allowed [Pa] 1e3..1e8
 * @returns fastest over slowest speed [-]
 * @valid 1 to 5 bar is only 2.2 to 1.
 * @throws RangeError when a parameter is outside its range
 * @source Orifice law at constant dose.
 */
export function speedRangeOfPressures(leastPressure: number, mostPressure: number): number {
  inRange('leastPressure', leastPressure, 1e3, 1e8, 'Pa');
  inRange('mostPressure', mostPressure, leastPressure, 1e8, 'Pa');
  return Math.sqrt(mostPressure / leastPressure);
}
