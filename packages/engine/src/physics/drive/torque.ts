import { inRange } from '../in-range.ts';

/**
 * Torque in a shaft that carries a power at a speed.
 *
 * @formula T = P / ω
 * @param power power carried [W] 0..1e7
 * @param speed shaft speed [rad/s] 0.1..5000
 * @returns torque [N.m]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; T[N.m] = 9549 kW/rpm and T[lbf.ft] = 5252 hp/rpm are the same law
 */
export function shaftTorque(power: number, speed: number): number {
  inRange('power', power, 0, 1e7, 'W');
  inRange('speed', speed, 0.1, 5000, 'rad/s');
  return power / speed;
}
