import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { batteryRunTime } from './battery.ts';

/**
 * Pull to drag a filled hose in over the ground.
 *
 * @formula F = m g L (μ cos t + sin t)
 * @param length length of hose on the ground [m] 0..1000
 * @param massPerLength mass of hose and contents per length [kg/m] 0..20
 * @param friction friction of hose on ground [-] 0..2
 * @param slope slope up which it is dragged; default 0 [rad] -0.8..0.8
 * @returns pull; not below 0 when the slope alone brings the hose in [N]
 * @valid at the start of the rewind, where it is worst; lift on to the drum comes on top
 * @throws RangeError when a parameter is outside its range
 * @source Statics
 */
export function hoseDragForce(length: number, massPerLength: number, friction: number, slope = 0): number {
  inRange('length', length, 0, 1000, 'm');
  inRange('massPerLength', massPerLength, 0, 20, 'kg/m');
  inRange('friction', friction, 0, 2, '-');
  inRange('slope', slope, -0.8, 0.8, 'rad');
  const weight = massPerLength * length * STANDARD_GRAVITY;
  return Math.max(0, weight * (friction * Math.cos(slope) + Math.sin(slope)));
}

/**
 * Power and current of a reel motor that pulls the hose in.
 *
 * @formula P = F v; I = P / (η U)
 * @param pull pull on the hose [N] 0..1e5
 * @param speed speed of the hose [m/s] 0..10
 * @param driveEfficiency efficiency of motor and gear [-] 0.05..1
 * @param voltage voltage at the motor [V] 1..1000
 * @result mechanicalPower power on the hose [W]
 * @result current current drawn [A]
 * @throws RangeError when a parameter is outside its range
 * @source Power balance; the efficiency is an input
 */
export function reelMotor(pull: number, speed: number, driveEfficiency: number, voltage: number): ReelMotor {
  inRange('pull', pull, 0, 1e5, 'N');
  inRange('speed', speed, 0, 10, 'm/s');
  inRange('driveEfficiency', driveEfficiency, 0.05, 1, '-');
  inRange('voltage', voltage, 1, 1000, 'V');
  const mechanicalPower = pull * speed;
  return { mechanicalPower, current: mechanicalPower / (driveEfficiency * voltage) };
}

export interface ReelMotor {
  readonly mechanicalPower: number;
  readonly current: number;
}

/**
 * Whole rewinds that a battery gives before it reaches a depth of discharge.
 *
 * @formula t = H (C/(I H))^k; n = floor(depth t / t_rewind)
 * @param capacity capacity at the rated time [Ah] 0.1..5000
 * @param ratedHours time over which the capacity is rated [h] 0.1..200
 * @param exponent Peukert exponent [-] 1..1.6
 * @param current current of the reel [A] 0.01..2000
 * @param rewindTime time of one rewind [s] 1..3600
 * @param depth depth of discharge planned with [-] 0.01..1
 * @result runTime time to empty at that current [s]
 * @result rewinds whole rewinds [-]
 * @valid no charge between; rests recover some, so this is on the safe side
 * @throws RangeError when a parameter is outside its range
 * @source Peukert's law
 */
export function rewindsFromBattery(
  capacity: number,
  ratedHours: number,
  exponent: number,
  current: number,
  rewindTime: number,
  depth: number,
): { runTime: number; rewinds: number } {
  inRange('rewindTime', rewindTime, 1, 3600, 's');
  inRange('depth', depth, 0.01, 1, '-');
  const runTime = batteryRunTime(capacity, ratedHours, exponent, current) * 3600;
  return { runTime, rewinds: Math.floor((depth * runTime) / rewindTime + 1e-9) };
}
