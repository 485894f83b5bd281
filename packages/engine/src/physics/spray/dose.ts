import { areaRate } from './area-rate.ts';
import { inRange } from '../in-range.ts';

/**
 * Volume per area that a flow leaves behind a moving swath.
 *
 * @formula q = Q / (v w)
 * @param flow volume flow of all outlets over the width [m3/s] 0..1
 * @param speed speed over ground [m/s] 0.01..30
 * @param width effective width, or the spacing when the flow is of one tip [m] 0.01..60
 * @returns dose on the area that the width covers [m3/m2]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; GPA = 5940 gpm / (mph in), Albany County (Wyoming) and Univ. of Missouri Extension G1270a.
 */
export function doseFromFlow(flow: number, speed: number, width: number): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('speed', speed, 0.01, 30, 'm/s');
  inRange('width', width, 0.01, 60, 'm');
  return flow / areaRate(speed, width);
}

/**
 * Flow that a dose asks of a moving swath.
 *
 * @formula Q = q v w
 * @param dose volume per area [m3/m2] 0..1
 * @param speed speed over ground [m/s] 0..30
 * @param width effective width, or the spacing for one tip [m] 0..60
 * @returns volume flow [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; gpm = GPA mph in / 5940, Univ. of Missouri Extension G1270a.
 */
export function flowForDose(dose: number, speed: number, width: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  return dose * areaRate(speed, width);
}

/**
 * Speed at which a flow over a width gives a dose.
 *
 * @formula v = Q / (q w)
 * @param flow volume flow of all outlets over the width [m3/s] 0..1
 * @param dose volume per area [m3/m2] 1e-7..1
 * @param width effective width [m] 0.01..60
 * @returns speed [m/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function speedForDose(flow: number, dose: number, width: number): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('dose', dose, 1e-7, 1, 'm3/m2');
  inRange('width', width, 0.01, 60, 'm');
  return flow / (dose * width);
}

/**
 * Dose from what was caught in the time that a course of known area takes.
 *
 * @formula q = V / A
 * @param volume volume caught [m3] 0..100
 * @param area area of the course on the swath [m2] 0.1..1e8
 * @returns dose [m3/m2]
 * @valid On 1/128 acre the US fluid ounces, on 1/8 acre the pints are the gallons per acre.
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Mesa County (Colorado), Univ. of Kentucky ENTFACT-805, LSU AgCenter 2020.
 */
export function doseFromCatch(volume: number, area: number): number {
  inRange('volume', volume, 0, 100, 'm3');
  inRange('area', area, 0.1, 1e8, 'm2');
  return volume / area;
}

/**
 * Flow from a catch over a measured time.
 *
 * @formula Q = V / t
 * @param volume volume caught [m3] 0..100
 * @param time time of the catch [s] 0.1..100000
 * @returns flow [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; UF/IFAS Extension Marion County 2017.
 */
export function flowFromCatch(volume: number, time: number): number {
  inRange('volume', volume, 0, 100, 'm3');
  inRange('time', time, 0.1, 100000, 's');
  return volume / time;
}

/**
 * Area that a tank treats.
 *
 * @formula A = V / q
 * @param tank usable volume of the tank [m3] 0..100
 * @param dose volume per area [m3/m2] 1e-7..1
 * @returns area a tank [m2]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Univ. of Idaho Extension, band application; Mesa County (Colorado).
 */
export function areaPerTank(tank: number, dose: number): number {
  inRange('tank', tank, 0, 100, 'm3');
  inRange('dose', dose, 1e-7, 1, 'm3/m2');
  return tank / dose;
}

/**
 * Volume that an area takes at a dose.
 *
 * @formula V = q A
 * @param dose volume per area [m3/m2] 0..1
 * @param area area [m2] 0..1e9
 * @returns volume [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Ohio DOT, Guide for RIVM, production worksheet.
 */
export function volumeForArea(dose: number, area: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  inRange('area', area, 0, 1e9, 'm2');
  return dose * area;
}

/**
 * Liquid product to put into a tank so that the label rate reaches the ground.
 *
 * @formula V_p = q_p V / q
 * @param tank volume of mix made [m3] 0..100
 * @param dose volume of mix per area [m3/m2] 1e-7..1
 * @param labelRate volume of product per area, on the same area as the dose [m3/m2] 0..1
 * @returns volume of product [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Univ. of Idaho Extension, band application; extension slides on the 1/128 method.
 */
export function productForTank(tank: number, dose: number, labelRate: number): number {
  inRange('labelRate', labelRate, 0, 1, 'm3/m2');
  return areaPerTank(tank, dose) * labelRate;
}

/**
 * How far a measured dose is off the wanted one.
 *
 * @formula e = q / q_wanted - 1
 * @param measured dose found by calibration [m3/m2] 0..1
 * @param wanted dose of the label [m3/m2] 1e-7..1
 * @returns relative error, positive when too much [-]
 * @valid Buhler (Pesticide Environmental Stewardship) accepts 0.05 either way; label and law come first.
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function doseError(measured: number, wanted: number): number {
  inRange('measured', measured, 0, 1, 'm3/m2');
  inRange('wanted', wanted, 1e-7, 1, 'm3/m2');
  return measured / wanted - 1;
}
