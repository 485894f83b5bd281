import { inRange } from '../in-range.ts';
import { frictionFactorCrane } from './crane.ts';
import { interpolatePoints, type Point } from './interpolate-points.ts';
import { checkBore } from './limits.ts';

/**
 * Loss coefficient of a standard threaded 90 degree elbow.
 *
 * @formula K = 30 fT
 * @param bore bore of the pipe [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @valid Reynolds number above 1e4; the barb of a hose elbow is narrower than the hose and costs more
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-29, multiplier from memory
 */
export function lossCoefficientElbow90(bore: number): number {
  return 30 * frictionFactorCrane(bore);
}

/**
 * Loss coefficient of a standard threaded 45 degree elbow.
 *
 * @formula K = 16 fT
 * @param bore bore of the pipe [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @valid Reynolds number above 1e4
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-29, multiplier from memory
 */
export function lossCoefficientElbow45(bore: number): number {
  return 16 * frictionFactorCrane(bore);
}

/** K/fT of a 90 degree bend by its radius over bore. */
const BEND_90: readonly Point[] = [
  [1, 20],
  [1.5, 14],
  [2, 12],
  [3, 12],
  [4, 14],
  [6, 17],
  [8, 24],
  [10, 30],
  [12, 34],
  [14, 38],
  [16, 42],
  [20, 50],
];

/**
 * Loss coefficient of a smooth bend, its own friction included.
 *
 * @formula K = (n - 1)(0.25 π fT r/D + 0.5 K90) + K90, n = angle / 90°, K90 = fT times a table of r/D
 * @param bore bore of pipe and bend [m] 0.0002..0.5
 * @param radius radius of the centreline [m] 0.0002..10
 * @param angle angle of the turn [rad] 1.5707..6.2832
 * @returns loss coefficient on the bore [-]
 * @valid radius 1 to 20 bores; Reynolds number above 1e4; turns of 90 degrees and more
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-29, bend table from memory; compared with its example 7-11 in the tests
 */
export function lossCoefficientBend(bore: number, radius: number, angle: number): number {
  checkBore(bore);
  inRange('radius', radius, bore, 20 * bore, 'm');
  inRange('angle', angle, 1.5707, 2 * Math.PI, 'rad');
  const fT = frictionFactorCrane(bore);
  const k90 = fT * interpolatePoints(BEND_90, radius / bore);
  return (angle / (Math.PI / 2) - 1) * (0.25 * Math.PI * fT * (radius / bore) + 0.5 * k90) + k90;
}
