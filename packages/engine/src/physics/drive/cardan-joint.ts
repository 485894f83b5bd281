import { inRange } from '../in-range.ts';

/**
 * Speed ripple behind a single universal joint that runs at an angle.
 *
 * @formula n2 from n1 cos β to n1 / cos β, twice each turn
 * @param inputSpeed speed of the input shaft [rad/s] 0..2000
 * @param jointAngle angle between the two shafts [rad] 0..1.2
 * @result maxSpeed highest output speed in a turn [rad/s]
 * @result minSpeed lowest output speed in a turn [rad/s]
 * @result ripple highest minus lowest over the mean of a turn [-]
 * @valid an equal and in-phase second joint cancels the ripple of the driven shaft, not that of the piece between
 * @throws RangeError when a parameter is outside its range
 * @source Exact kinematics of a Hooke joint
 */
export function cardanSpeedRange(inputSpeed: number, jointAngle: number): CardanSpeedRange {
  inRange('inputSpeed', inputSpeed, 0, 2000, 'rad/s');
  inRange('jointAngle', jointAngle, 0, 1.2, 'rad');
  const c = Math.cos(jointAngle);
  return { maxSpeed: inputSpeed / c, minSpeed: inputSpeed * c, ripple: 1 / c - c };
}

export interface CardanSpeedRange {
  readonly maxSpeed: number;
  readonly minSpeed: number;
  readonly ripple: number;
}
