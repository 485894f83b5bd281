import { inRange } from '../in-range.ts';

/**
 * Speed, torque and power of a hydraulic motor.
 *
 * @formula n = Q η_v / D; T = D Δp η_m / (2 π)
 * @param displacement volume taken per turn [m3] 1e-7..0.1
 * @param flow oil flow to the motor [m3/s] 0..0.1
 * @param pressureDrop pressure drop across the motor [Pa] 0..1e8
 * @param volumetricEfficiency volumetric efficiency [-] 0.05..1
 * @param mechanicalEfficiency mechanical efficiency [-] 0.05..1
 * @result speed shaft speed [rad/s]
 * @result torque shaft torque [N.m]
 * @result power shaft power [W]
 * @valid overall efficiency of a gear motor is 0.70 to 0.85 (from memory)
 * @throws RangeError when a parameter is outside its range
 * @source Displacement machine relations
 */
export function hydraulicMotor(
  displacement: number,
  flow: number,
  pressureDrop: number,
  volumetricEfficiency: number,
  mechanicalEfficiency: number,
): HydraulicMotor {
  inRange('displacement', displacement, 1e-7, 0.1, 'm3');
  inRange('flow', flow, 0, 0.1, 'm3/s');
  inRange('pressureDrop', pressureDrop, 0, 1e8, 'Pa');
  inRange('volumetricEfficiency', volumetricEfficiency, 0.05, 1, '-');
  inRange('mechanicalEfficiency', mechanicalEfficiency, 0.05, 1, '-');
  const speed = ((flow * volumetricEfficiency) / displacement) * 2 * Math.PI;
  const torque = (displacement * pressureDrop * mechanicalEfficiency) / (2 * Math.PI);
  return { speed, torque, power: speed * torque };
}

export interface HydraulicMotor {
  readonly speed: number;
  readonly torque: number;
  readonly power: number;
}
