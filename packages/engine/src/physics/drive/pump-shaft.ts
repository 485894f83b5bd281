import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { fluidPower } from './fluid-power.ts';

/**
 * Power that a pump takes at its shaft.
 *
 * @formula P_s = Q Δp / η_p
 * @param flow volume flow delivered [m3/s] 0..10
 * @param pressureRise pressure rise across the pump [Pa] 0..1e9
 * @param pumpEfficiency overall efficiency of the pump [-] 0.05..1
 * @returns shaft power [W]
 * @valid use the pump's own efficiency at the duty; ranges per type are from memory and only for a first size
 * @throws RangeError when a parameter is outside its range
 * @source Definition of overall pump efficiency (ISO 17769 terms, from memory)
 */
export function pumpShaftPower(flow: number, pressureRise: number, pumpEfficiency: number): number {
  inRange('pumpEfficiency', pumpEfficiency, 0.05, 1, '-');
  return fluidPower(flow, pressureRise) / pumpEfficiency;
}

/**
 * Torque that a displacement pump takes at its shaft.
 *
 * @formula T = D Δp / (2 π η_m)
 * @param displacement volume displaced per turn [m3] 0..0.1
 * @param pressureRise pressure rise across the pump [Pa] 0..1e9
 * @param mechanicalEfficiency mechanical efficiency [-] 0.05..1
 * @returns shaft torque [N.m]
 * @valid leakage (volumetric efficiency) does not raise the torque; friction (mechanical efficiency) does
 * @throws RangeError when a parameter is outside its range
 * @source Work per turn of a displacement machine; exercise data of an open hydraulics course
 */
export function pumpShaftTorque(
  displacement: number,
  pressureRise: number,
  mechanicalEfficiency: number,
): number {
  inRange('displacement', displacement, 0, 0.1, 'm3');
  inRange('pressureRise', pressureRise, 0, 1e9, 'Pa');
  inRange('mechanicalEfficiency', mechanicalEfficiency, 0.05, 1, '-');
  return (displacement * pressureRise) / (2 * Math.PI * mechanicalEfficiency);
}

/**
 * Everything a displacement pump does at one speed and pressure.
 *
 * @formula Q = D n η_v; P_f = Q Δp; P_s = P_f / (η_v η_m); T = D Δp / (2 π η_m)
 * @param displacement volume displaced per turn [m3] 0..0.1
 * @param speed shaft speed [rad/s] 0..2000
 * @param pressureRise pressure rise across the pump [Pa] 0..1e9
 * @param volumetricEfficiency share of the displacement that is delivered [-] 0.05..1
 * @param mechanicalEfficiency mechanical efficiency [-] 0.05..1
 * @result flow volume flow delivered [m3/s]
 * @result fluidPower power in the liquid [W]
 * @result overallEfficiency fluid power over shaft power [-]
 * @result shaftPower power at the shaft [W]
 * @result shaftTorque torque at the shaft [N.m]
 * @throws RangeError when a parameter is outside its range
 * @source Displacement machine relations; exercise data of an open hydraulics course
 */
export function displacementPumpDuty(
  displacement: number,
  speed: number,
  pressureRise: number,
  volumetricEfficiency: number,
  mechanicalEfficiency: number,
): DisplacementPumpDuty {
  inRange('speed', speed, 0, 2000, 'rad/s');
  inRange('volumetricEfficiency', volumetricEfficiency, 0.05, 1, '-');
  const shaftTorque = pumpShaftTorque(displacement, pressureRise, mechanicalEfficiency);
  const flow = displacement * (speed / (2 * Math.PI)) * volumetricEfficiency;
  return {
    flow,
    fluidPower: fluidPower(flow, pressureRise),
    overallEfficiency: volumetricEfficiency * mechanicalEfficiency,
    shaftPower: shaftTorque * speed,
    shaftTorque,
  };
}

export interface DisplacementPumpDuty {
  readonly flow: number;
  readonly fluidPower: number;
  readonly overallEfficiency: number;
  readonly shaftPower: number;
  readonly shaftTorque: number;
}

/**
 * Flow of a displacement pump that turns at another speed than its rated one.
 *
 * @formula Q2 = Q1 n2 / n1
 * @param ratedFlow flow at the rated speed [m3/s] 0..10
 * @param ratedSpeed rated shaft speed [rad/s] 0.1..2000
 * @param speed actual shaft speed [rad/s] 0..2000
 * @returns flow at the actual speed [m3/s]
 * @valid same pressure; the change of leakage with speed is neglected, which flatters low speeds
 * @throws RangeError when a parameter is outside its range
 * @source Proportionality of displacement flow to speed; common practice for PTO pumps at reduced engine speed
 */
export function pumpFlowAtSpeed(ratedFlow: number, ratedSpeed: number, speed: number): number {
  inRange('ratedFlow', ratedFlow, 0, 10, 'm3/s');
  inRange('ratedSpeed', ratedSpeed, 0.1, 2000, 'rad/s');
  inRange('speed', speed, 0, 2000, 'rad/s');
  return (ratedFlow * speed) / ratedSpeed;
}

/**
 * Volume that a plunger, piston or diaphragm pump displaces in a turn.
 *
 * @formula D = z π d² s / 4
 * @param plungers number of plungers [-] 1..12
 * @param bore diameter of a plunger [m] 0.001..0.3
 * @param stroke stroke of a plunger [m] 0.0005..0.3
 * @returns displacement per turn [m3]
 * @valid single-acting: each plunger delivers once in a turn; for a diaphragm take its effective area
 * @throws RangeError when a parameter is outside its range
 * @source Geometry
 */
export function plungerDisplacement(plungers: number, bore: number, stroke: number): number {
  wholeInRange('plungers', plungers, 1, 12);
  inRange('bore', bore, 0.001, 0.3, 'm');
  inRange('stroke', stroke, 0.0005, 0.3, 'm');
  return (plungers * Math.PI * bore ** 2 * stroke) / 4;
}
