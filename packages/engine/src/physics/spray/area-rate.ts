import { inRange } from '../in-range.ts';

/**
 * Ground area that a moving swath covers in a time.
 *
 * @formula A' = v w
 * @param speed speed over ground [m/s] 0..30
 * @param width effective width that is covered, overlap taken off [m] 0..60
 * @returns area rate [m2/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition (volume rate = dose x area rate).
 */
export function areaRate(speed: number, width: number): number {
  inRange('speed', speed, 0, 30, 'm/s');
  inRange('width', width, 0, 60, 'm');
  return speed * width;
}

/**
 * Area rate over a whole field, turns and stops included.
 *
 * @formula C = v w E
 * @param speed speed over ground while spraying [m/s] 0..30
 * @param width effective width [m] 0..60
 * @param efficiency share of the field time that is spent spraying [-] 0..1
 * @returns effective field capacity [m2/s]
 * @valid The usual 0.5 to 0.8 for boom sprayers already holds refilling: never use it together with a refill time.
 * @throws RangeError when a parameter is outside its range
 * @source ASABE EP496 / D497, C = S w E / 8.25 in US units; from memory.
 */
export function fieldCapacity(speed: number, width: number, efficiency: number): number {
  inRange('efficiency', efficiency, 0, 1);
  return areaRate(speed, width) * efficiency;
}

/**
 * Area done in a time.
 *
 * @formula A = A' t
 * @param rate area rate [m2/s] 0..1800
 * @param time working time [s] 0..
 * @returns area [m2]
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function areaCovered(rate: number, time: number): number {
  inRange('rate', rate, 0, 1800, 'm2/s');
  inRange('time', time, 0, Infinity, 's');
  return rate * time;
}

/**
 * Area rate at which a flow lays down a dose: the pace a hand gun must be moved at.
 *
 * @formula A' = Q / q
 * @param flow volume flow of the gun [m3/s] 0..1
 * @param dose volume per area wanted [m3/m2] 1e-7..1
 * @returns area rate [m2/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; checked with Buhler, Pesticide Environmental Stewardship, spray gun calibration.
 */
export function areaRateOfFlow(flow: number, dose: number): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('dose', dose, 1e-7, 1, 'm3/m2');
  return flow / dose;
}

/**
 * Speed over a measured course.
 *
 * @formula v = s / t
 * @param distance length of the course [m] 0..10000
 * @param time time over the course [s] 0.1..100000
 * @returns speed [m/s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; UF/IFAS Extension Marion County 2017, mph = ft x 60 / (s x 88).
 */
export function courseSpeed(distance: number, time: number): number {
  inRange('distance', distance, 0, 10000, 'm');
  inRange('time', time, 0.1, 100000, 's');
  return distance / time;
}

/**
 * Length of a course that makes a wanted area with a swath, such as 1/128 acre for the ounces method.
 *
 * @formula s = A / w
 * @param area area of the course [m2] 0..1e8
 * @param width swath [m] 0.01..60
 * @returns length of the course [m]
 * @throws RangeError when a parameter is outside its range
 * @source Geometry; Mesa County (Colorado), Albany County (Wyoming) and LSU AgCenter calibration sheets.
 */
export function courseLength(area: number, width: number): number {
  inRange('area', area, 0, 1e8, 'm2');
  inRange('width', width, 0.01, 60, 'm');
  return area / width;
}

/**
 * Mean of the times taken over a course.
 *
 * @formula t = sum t_i / n
 * @param times time of each run [list of s] 0.1..100000
 * @returns mean time [s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; Buhler, Pesticide Environmental Stewardship, asks for three runs.
 */
export function meanCourseTime(times: readonly number[]): number {
  inRange('number of times', times.length, 1, 1000);
  let sum = 0;
  for (const time of times) {
    inRange('times', time, 0.1, 100000, 's');
    sum += time;
  }
  return sum / times.length;
}
