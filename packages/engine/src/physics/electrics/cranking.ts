import { inRange } from '../in-range.ts';
import { cableDrop } from './wire.ts';

/**
 * Voltage left at a starter motor while it cranks.
 *
 * @formula U = U_b - I (R_cable + R_joints)
 * @param current current of the starter [A] 0..2000
 * @param area copper area of the cable [m2] 1e-6..1e-3
 * @param oneWay distance from battery to starter [m] 0..50
 * @param jointResistance resistance of lugs and switch together [ohm] 0..0.1
 * @param loadedVoltage voltage at the battery while cranking [V] 1..60
 * @result cableDrop voltage lost in the cable [V]
 * @result jointDrop voltage lost in the joints [V]
 * @result starterVoltage voltage at the starter; 0 when the drops eat it all [V]
 * @valid cable at 20 degC; many starters want about 9.6 V while cranking (from memory)
 * @throws RangeError when a parameter is outside its range
 * @source Ohm's law; copper by the international annealed copper standard
 */
export function crankingVoltage(
  current: number,
  area: number,
  oneWay: number,
  jointResistance: number,
  loadedVoltage: number,
): CrankingVoltage {
  inRange('area', area, 1e-6, 1e-3, 'm2');
  inRange('oneWay', oneWay, 0, 50, 'm');
  inRange('jointResistance', jointResistance, 0, 0.1, 'ohm');
  inRange('loadedVoltage', loadedVoltage, 1, 60, 'V');
  const { drop } = cableDrop(current, area, oneWay, loadedVoltage);
  const jointDrop = current * jointResistance;
  return { cableDrop: drop, jointDrop, starterVoltage: Math.max(0, loadedVoltage - drop - jointDrop) };
}

export interface CrankingVoltage {
  readonly cableDrop: number;
  readonly jointDrop: number;
  readonly starterVoltage: number;
}
