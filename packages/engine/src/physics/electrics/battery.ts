import { inRange } from '../in-range.ts';
import { COLD_CAPACITY } from './battery.data.ts';

/**
 * Time for which a lead-acid battery gives a steady current until it is empty.
 *
 * @formula t = H (C/(I H))^k
 * @param capacity capacity at the rated time, C [Ah] 0.1..5000
 * @param ratedHours time over which the capacity is rated, H [h] 0.1..200
 * @param exponent Peukert exponent k; 1.25 when unknown [-] 1..1.6
 * @param current steady current I [A] 0.01..2000
 * @returns run time [h]
 * @valid at the rated current it is exactly H. Rests between draws recover some, so intermittent use lies on the safe side; far below the rated current it flatters
 * @throws RangeError when a parameter is outside its range
 * @source Peukert's law in the form with rated time, from a battery reference
 */
export function batteryRunTime(
  capacity: number,
  ratedHours: number,
  exponent: number,
  current: number,
): number {
  inRange('capacity', capacity, 0.1, 5000, 'Ah');
  inRange('ratedHours', ratedHours, 0.1, 200, 'h');
  inRange('exponent', exponent, 1, 1.6, '-');
  inRange('current', current, 0.01, 2000, 'A');
  return ratedHours * (capacity / (current * ratedHours)) ** exponent;
}

/**
 * Capacity that a battery must have to give a steady current for a time.
 *
 * @formula C = I H (t/(share H))^(1/k)
 * @param current steady current I [A] 0.01..2000
 * @param hours time wanted, t [h] 0.01..200
 * @param share part of the battery's time that may be used up, 0.5 for a long life [-] 0.1..1
 * @param ratedHours time over which the capacity is rated, H; 20 on most labels [h] 0.1..200
 * @param exponent Peukert exponent k; 1.25 when unknown [-] 1..1.6
 * @returns capacity on the label, at the rated time [Ah]
 * @valid warm battery; divide by the share that is left in the cold. Rests between draws recover some, so intermittent use lies on the safe side
 * @throws RangeError when a parameter is outside its range
 * @source Peukert's law in the form with rated time, solved for the capacity
 */
export function batteryForRunTime(
  current: number,
  hours: number,
  share: number,
  ratedHours: number,
  exponent: number,
): number {
  inRange('current', current, 0.01, 2000, 'A');
  inRange('hours', hours, 0.01, 200, 'h');
  inRange('share', share, 0.1, 1, '-');
  inRange('ratedHours', ratedHours, 0.1, 200, 'h');
  inRange('exponent', exponent, 1, 1.6, '-');
  return current * ratedHours * (hours / (share * ratedHours)) ** (1 / exponent);
}

/**
 * Peukert exponent from two run times of the same battery.
 *
 * @formula k = ln(t1/t2)/ln(I2/I1)
 * @param currentLow smaller current I1 [A] 0.01..2000
 * @param hoursLow run time at it, t1 [h] 0.01..500
 * @param currentHigh larger current I2 [A] 0.01..2000
 * @param hoursHigh run time at it, t2 [h] 0.001..500
 * @returns exponent [-]
 * @valid below 1 or above 1.6 the two ratings do not belong together: refused
 * @throws RangeError when a parameter is outside its range or the result is no exponent
 * @source Peukert's law solved for k; reserve capacity is 25 A to 10.5 V
 */
export function peukertExponent(
  currentLow: number,
  hoursLow: number,
  currentHigh: number,
  hoursHigh: number,
): number {
  inRange('currentLow', currentLow, 0.01, 2000, 'A');
  inRange('hoursLow', hoursLow, 0.01, 500, 'h');
  inRange('currentHigh', currentHigh, 0.01, 2000, 'A');
  inRange('hoursHigh', hoursHigh, 0.001, 500, 'h');
  if (currentHigh <= currentLow)
    throw new RangeError(`currentHigh is ${currentHigh} A; it must be above currentLow: ${currentLow} A`);
  const k = Math.log(hoursLow / hoursHigh) / Math.log(currentHigh / currentLow);
  inRange('exponent of these two ratings', k, 1, 1.6, '-');
  return k;
}

/**
 * Share of a battery's capacity that is left in the cold.
 *
 * @formula straight lines through 0.6 at -18, 0.8 at 0, 1 at 27 degC
 * @param temperatureC temperature of the battery [degC] -18..60
 * @returns share of the rated capacity; 1 above 27 degC [-]
 * @throws RangeError when a parameter is outside its range
 * @source Rule of the trade, from memory
 */
export function coldCapacityShare(temperatureC: number): number {
  inRange('temperatureC', temperatureC, -18, 60, 'degC');
  for (let i = 1; i < COLD_CAPACITY.length; i++) {
    const [t0, s0] = COLD_CAPACITY[i - 1]!;
    const [t1, s1] = COLD_CAPACITY[i]!;
    if (temperatureC <= t1) return s0 + ((s1 - s0) * (temperatureC - t0)) / (t1 - t0);
  }
  return 1;
}

/**
 * Cold cranking current from the marine cranking current of a battery.
 *
 * @formula CCA = 0.77 MCA
 * @param marineCranking current held at 0 degC [A] 0..5000
 * @returns current held 30 s at -18 degC above 7.2 V [A]
 * @throws RangeError when a parameter is outside its range
 * @source Marine battery reference: CCA = 0.77 MCA
 */
export function coldCrankingFromMarine(marineCranking: number): number {
  inRange('marineCranking', marineCranking, 0, 5000, 'A');
  return 0.77 * marineCranking;
}

/**
 * Capacity at 25 A that a reserve capacity stands for.
 *
 * @formula C = 25 A × t
 * @param reserve reserve capacity [s] 0..100000
 * @returns capacity when drawn at 25 A [Ah]
 * @valid at 25 A, not at the 20 h rate
 * @throws RangeError when a parameter is outside its range
 * @source Definition: minutes at 25 A to 10.5 V at 27 degC
 */
export function capacityFromReserve(reserve: number): number {
  inRange('reserve', reserve, 0, 100000, 's');
  return (25 * reserve) / 3600;
}
