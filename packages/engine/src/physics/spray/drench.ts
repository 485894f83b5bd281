import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { US_GALLON } from '../us-measure.ts';

const OUNCE = US_GALLON / 128;

/** Drench a container as extension prints it [m3]. */
export const DRENCH_DOSES = {
  source: 'Runkle, Michigan State Univ., PGR drench guidelines',
  rows: [
    { container: '4 in pot', dose: 2 * OUNCE },
    { container: '5 in pot', dose: 3 * OUNCE },
    { container: '6 in pot', dose: 4 * OUNCE },
    { container: '10 in basket', dose: 15 * OUNCE },
    { container: 'flat of cells', dose: 20 * OUNCE },
  ],
} as const;

/**
 * Mix for drenching a number of pots.
 *
 * @formula V = n d
 * @param count pots or units [-] 0..1e6
 * @param dose volume a unit [m3] 0..1
 * @returns volume of mix [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Runkle, Michigan State Univ., PGR drench guidelines.
 */
export function drenchVolume(count: number, dose: number): number {
  wholeInRange('count', count, 0, 1e6);
  inRange('dose', dose, 0, 1, 'm3');
  return count * dose;
}

/**
 * Time the breaker is held over one unit.
 *
 * @formula t = d / Q
 * @param dose volume a unit [m3] 0..1
 * @param flow flow of the gun [m3/s] 1e-7..1
 * @returns time a unit [s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; doses of Runkle, Michigan State Univ.
 */
export function drenchTime(dose: number, flow: number): number {
  inRange('dose', dose, 0, 1, 'm3');
  inRange('flow', flow, 1e-7, 1, 'm3/s');
  return dose / flow;
}

/**
 * Share by which a hand-timed drench is off when the hand is off by a moment.
 *
 * @formula e = dt Q / d
 * @param dose volume a unit [m3] 1e-7..1
 * @param flow flow of the gun [m3/s] 0..1
 * @param timing error of the hand [s] 0..10
 * @returns relative error of the dose [-]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; 0.2 s of a person is judgement.
 */
export function drenchError(dose: number, flow: number, timing: number): number {
  inRange('dose', dose, 1e-7, 1, 'm3');
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('timing', timing, 0, 10, 's');
  return (timing * flow) / dose;
}
