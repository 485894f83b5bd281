import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { PTO_SHARE_OF_ENGINE, PTO_TYPES, type PtoType } from './pto.data.ts';
import { shaftTorque } from './torque.ts';

/**
 * Torque and fitting shaft types of a PTO that carries a power at its standard speed.
 *
 * @formula T = P / ω
 * @param power power through the PTO shaft [W] 0..6e5
 * @param standardSpeed standard speed per minute [one of 540, 1000, 1300]
 * @result torque torque in the shaft [N.m]
 * @result types shaft types of that speed that carry the power [list of text]
 * @valid power limits of the types are from memory; above 75 hp an older tractor manual advises a slip clutch on the 6 spline 540 shaft
 * @throws RangeError when a parameter is outside its range
 * @source ISO 500-1 types; statics
 */
export function ptoShaft(power: number, standardSpeed: PtoStandardSpeed): PtoShaft {
  inRange('power', power, 0, 6e5, 'W');
  oneOfChoices('standardSpeed', standardSpeed, ['540', '1000', '1300']);
  const rpm = Number(standardSpeed);
  return {
    torque: shaftTorque(power, (rpm * 2 * Math.PI) / 60),
    types: PTO_TYPES.filter((t) => t.speedRpm === rpm && power <= t.maxPowerKw * 1000),
  };
}

export type PtoStandardSpeed = '540' | '1000' | '1300';

export interface PtoShaft {
  readonly torque: number;
  readonly types: readonly PtoType[];
}

/**
 * PTO power to expect from an engine rating, when the tractor's PTO power is not known.
 *
 * @formula P_pto = 0.90 P_net = 0.83 P_gross
 * @param enginePower flywheel power of the engine [W] 0..1e6
 * @param rating how the engine power was stated [one of net, gross]
 * @returns PTO power [W]
 * @valid an estimate: the tractor's published PTO power goes before it
 * @throws RangeError when a parameter is outside its range
 * @source ASABE D497 power relation diagram, from memory
 */
export function ptoPowerFromEngine(enginePower: number, rating: 'net' | 'gross'): number {
  inRange('enginePower', enginePower, 0, 1e6, 'W');
  oneOfChoices('rating', rating, ['net', 'gross']);
  return enginePower * PTO_SHARE_OF_ENGINE[rating];
}
