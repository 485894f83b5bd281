import { inRange } from '../in-range.ts';
import { shaftTorque } from './torque.ts';

/**
 * Speed, belt speed and power out of a V-belt drive.
 *
 * @formula n2 = n1 (d1/d2)(1 - s); v = ω1 d1 / 2; P2 = η P1
 * @param driverSpeed speed of the driving shaft [rad/s] 0..2000
 * @param driverDiameter pitch diameter of the driving sheave [m] 0.02..2
 * @param drivenDiameter pitch diameter of the driven sheave [m] 0.02..2
 * @param power power put in [W] 0..1e7
 * @param efficiency efficiency of the belt [-] 0.5..1
 * @param slip share of speed lost by slip [-] 0..0.2
 * @result drivenSpeed speed of the driven shaft [rad/s]
 * @result beltSpeed speed of the belt on the driving sheave [m/s]
 * @result powerOut power at the driven shaft [W]
 * @result torqueOut torque at the driven shaft, zero at standstill [N.m]
 * @valid slip of a sound V-belt is 0 to 2 %; efficiency 0.95 to 0.98 new, 0.93 when not retensioned
 * @throws RangeError when a parameter is outside its range
 * @source Belt kinematics; efficiencies: US Department of Energy tip sheet on belts, as reprinted by a trade journal
 */
export function beltDrive(
  driverSpeed: number,
  driverDiameter: number,
  drivenDiameter: number,
  power: number,
  efficiency: number,
  slip = 0,
): BeltDrive {
  inRange('driverSpeed', driverSpeed, 0, 2000, 'rad/s');
  inRange('driverDiameter', driverDiameter, 0.02, 2, 'm');
  inRange('drivenDiameter', drivenDiameter, 0.02, 2, 'm');
  inRange('power', power, 0, 1e7, 'W');
  inRange('efficiency', efficiency, 0.5, 1, '-');
  inRange('slip', slip, 0, 0.2, '-');
  const drivenSpeed = driverSpeed * (driverDiameter / drivenDiameter) * (1 - slip);
  const powerOut = power * efficiency;
  return {
    drivenSpeed,
    beltSpeed: (driverSpeed * driverDiameter) / 2,
    powerOut,
    torqueOut: drivenSpeed > 0.1 ? shaftTorque(powerOut, drivenSpeed) : 0,
  };
}

export interface BeltDrive {
  readonly drivenSpeed: number;
  readonly beltSpeed: number;
  readonly powerOut: number;
  readonly torqueOut: number;
}

/**
 * Ratio, power and torque out of a gear reducer between an engine and a pump.
 *
 * @formula i = n1 / n2; P2 = η P1; T2 = P2 / ω2
 * @param engineSpeed speed of the engine [rad/s] 0.1..2000
 * @param pumpSpeed speed of the pump [rad/s] 0.1..2000
 * @param power power put in [W] 0..1e7
 * @param efficiency efficiency of the gears [-] 0.5..1
 * @result ratio engine turns per pump turn [-]
 * @result powerOut power at the pump [W]
 * @result torqueOut torque at the pump [N.m]
 * @valid efficiency 0.95 to 0.98 for one stage (from memory)
 * @throws RangeError when a parameter is outside its range
 * @source Gear kinematics and power balance
 */
export function gearReducer(
  engineSpeed: number,
  pumpSpeed: number,
  power: number,
  efficiency: number,
): GearReducer {
  inRange('engineSpeed', engineSpeed, 0.1, 2000, 'rad/s');
  inRange('pumpSpeed', pumpSpeed, 0.1, 2000, 'rad/s');
  inRange('power', power, 0, 1e7, 'W');
  inRange('efficiency', efficiency, 0.5, 1, '-');
  const powerOut = power * efficiency;
  return { ratio: engineSpeed / pumpSpeed, powerOut, torqueOut: shaftTorque(powerOut, pumpSpeed) };
}

export interface GearReducer {
  readonly ratio: number;
  readonly powerOut: number;
  readonly torqueOut: number;
}
