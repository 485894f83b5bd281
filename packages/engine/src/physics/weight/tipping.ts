import { inRange } from '../in-range.ts';

/** Share of the static factor at which loaded vehicles roll in a manoeuvre: about 25 % lower (SAE 2003-01-3385, abstract). */
export const DYNAMIC_ROLL_SHARE = 0.75;
/** Least roll threshold that regulators ask of tank trucks, in g (tank truck roll stability study, NRC Canada). */
export const LEAST_TANK_TRUCK_ROLL = 0.4;

/**
 * Static stability of a rig on wheels against rolling over.
 *
 * @formula SSF = T/(2 h); tilt = atan(SSF)
 * @param track distance between the wheels' middles [m] 0.1..10
 * @param centreHeight height of the centre of mass; round-tank liquid counted at the tank's axis [m] 0.05..10
 * @result factor static stability factor, the sideways acceleration in g at which it tips [-]
 * @result tiltAngle side slope at which it tips [rad]
 * @result dynamicFactor factor less 25 % for a manoeuvre [-]
 * @valid rigid suspension and tyres: subtract a margin
 * @throws RangeError when a parameter is outside its range
 * @source SSF = T/2h; dynamic threshold about 25 % lower: SAE 2003-01-3385 abstract; 0.40 g least for tank trucks
 */
export function rollStability(track: number, centreHeight: number): RollStability {
  inRange('track', track, 0.1, 10, 'm');
  inRange('centreHeight', centreHeight, 0.05, 10, 'm');
  const factor = track / (2 * centreHeight);
  return { factor, tiltAngle: Math.atan(factor), dynamicFactor: DYNAMIC_ROLL_SHARE * factor };
}

export interface RollStability {
  readonly factor: number;
  readonly tiltAngle: number;
  readonly dynamicFactor: number;
}

/**
 * Side slope at which a rig on three supports tips about the line from its single front support to a wheel.
 *
 * @formula tan = (T/2) x / (L (h - h_f) + h_f x)
 * @param track distance between the wheels' middles [m] 0.1..10
 * @param supportToAxle distance from the front support (hitch ball, pin, pivot of the front axle) to the axle [m] 0.1..30
 * @param supportToCentre distance from the front support to the centre of mass [m] 0.01..30
 * @param centreHeight height of the centre of mass; round-tank liquid counted at the tank's axis [m] 0.01..10
 * @param supportHeight height of the front support above the ground [m] 0..3
 * @returns side slope angle at which it tips [rad]
 * @valid the support resists no roll. With the centre ahead of the axle and above the support T/2h is optimistic by 2 to 4 degrees; refused when the centre lies so low that it never tips
 * @throws RangeError when a parameter is outside its range
 * @source Three-dimensional statics, checked numerically
 */
export function threeSupportTipAngle(
  track: number,
  supportToAxle: number,
  supportToCentre: number,
  centreHeight: number,
  supportHeight: number,
): number {
  inRange('track', track, 0.1, 10, 'm');
  inRange('supportToAxle', supportToAxle, 0.1, 30, 'm');
  inRange('supportToCentre', supportToCentre, 0.01, supportToAxle, 'm');
  inRange('centreHeight', centreHeight, 0.01, 10, 'm');
  inRange('supportHeight', supportHeight, 0, 3, 'm');
  const lever = supportToAxle * (centreHeight - supportHeight) + supportHeight * supportToCentre;
  if (lever <= 0)
    throw new RangeError(
      `centreHeight is ${centreHeight} m; it must be above the line from the support to the wheel, or nothing tips`,
    );
  return Math.atan(((track / 2) * supportToCentre) / lever);
}

/**
 * Grade at which a parked or climbing rig tips backward.
 *
 * @formula tan = x / h
 * @param centreAheadOfAxle centre of mass ahead of the rear axle [m] 0..20
 * @param centreHeight height of the centre of mass [m] 0.05..10
 * @result angle angle of the grade [rad]
 * @result grade rise over run [-]
 * @valid at rest; shift of the liquid to the rear comes on top
 * @throws RangeError when a parameter is outside its range
 * @source Statics
 */
export function backwardTipGrade(
  centreAheadOfAxle: number,
  centreHeight: number,
): { angle: number; grade: number } {
  inRange('centreAheadOfAxle', centreAheadOfAxle, 0, 20, 'm');
  inRange('centreHeight', centreHeight, 0.05, 10, 'm');
  const grade = centreAheadOfAxle / centreHeight;
  return { angle: Math.atan(grade), grade };
}

/**
 * Height of a rig's centre of mass in roll, with the liquid where it acts.
 *
 * @formula h = (m_d h_d + m_l h_l)/(m_d + m_l)
 * @param dryMass mass of the rig without liquid [kg] 0.1..1e6
 * @param dryHeight height of its centre of mass [m] 0..10
 * @param liquid mass of the liquid [kg] 0..1e6
 * @param liquidHeight height at which the liquid acts: the axis of a round tank at every fill, else centroid plus free-surface rise [m] 0..10
 * @returns height of the centre of mass [m]
 * @valid "lower when part full" is false for round tanks: the frozen centroid flatters the roll threshold by up to 17 %
 * @throws RangeError when a parameter is outside its range
 * @source Statics; free-surface identity of a circle
 */
export function rollCentreHeight(
  dryMass: number,
  dryHeight: number,
  liquid: number,
  liquidHeight: number,
): number {
  inRange('dryMass', dryMass, 0.1, 1e6, 'kg');
  inRange('dryHeight', dryHeight, 0, 10, 'm');
  inRange('liquid', liquid, 0, 1e6, 'kg');
  inRange('liquidHeight', liquidHeight, 0, 10, 'm');
  return (dryMass * dryHeight + liquid * liquidHeight) / (dryMass + liquid);
}
