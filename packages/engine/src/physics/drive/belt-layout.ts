import { inRange } from '../in-range.ts';

/**
 * Sheave for the engine that turns the pump at the speed at which it gives the flow wanted.
 *
 * @formula n2 = n_r Q/Q_r; d1 = d2 n2 / (n1 (1 - s))
 * @param flow flow wanted of the pump [m3/s] 1e-8..10
 * @param ratedFlow flow of the pump at its rated speed [m3/s] 1e-8..10
 * @param ratedSpeed rated shaft speed of the pump [rad/s] 0.1..2000
 * @param engineSpeed speed at which the engine shall run [rad/s] 0.1..2000
 * @param pumpSheave pitch diameter of the sheave on the pump [m] 0.02..2
 * @param slip share of speed lost by slip [-] 0..0.2
 * @result pumpSpeed speed at which the pump gives the flow [rad/s]
 * @result ratio engine turns per pump turn, slip in it [-]
 * @result engineSheave pitch diameter of the sheave on the engine [m]
 * @result share pump speed over its rated speed: above 1 the pump is driven too fast [-]
 * @valid displacement pumps at the rated pressure; take the nearest sheave that is sold and reckon the speed again with it
 * @throws RangeError when a parameter is outside its range
 * @source Proportionality of displacement flow to speed; belt kinematics
 */
export function sheaveForFlow(
  flow: number,
  ratedFlow: number,
  ratedSpeed: number,
  engineSpeed: number,
  pumpSheave: number,
  slip = 0,
): SheaveForFlow {
  inRange('flow', flow, 1e-8, 10, 'm3/s');
  inRange('ratedFlow', ratedFlow, 1e-8, 10, 'm3/s');
  inRange('ratedSpeed', ratedSpeed, 0.1, 2000, 'rad/s');
  inRange('engineSpeed', engineSpeed, 0.1, 2000, 'rad/s');
  inRange('pumpSheave', pumpSheave, 0.02, 2, 'm');
  inRange('slip', slip, 0, 0.2, '-');
  const share = flow / ratedFlow;
  const pumpSpeed = ratedSpeed * share;
  return {
    pumpSpeed,
    ratio: engineSpeed / pumpSpeed,
    engineSheave: (pumpSheave * pumpSpeed) / (engineSpeed * (1 - slip)),
    share,
  };
}

export interface SheaveForFlow {
  readonly pumpSpeed: number;
  readonly ratio: number;
  readonly engineSheave: number;
  readonly share: number;
}

/**
 * Length of an open belt over two sheaves and how far it goes round the small one.
 *
 * @formula L = 2 sqrt(C² - δ²) + π (d1 + d2)/2 + 2 δ asin(δ/C), δ = |d2 - d1|/2; wrap = π - 2 asin(δ/C)
 * @param driverDiameter pitch diameter of the driving sheave [m] 0.02..2
 * @param drivenDiameter pitch diameter of the driven sheave [m] 0.02..2
 * @param centres distance between the shafts [m] 0.05..10
 * @result length pitch length of the belt [m]
 * @result smallWrap angle over which the belt lies on the small sheave [rad]
 * @valid exact for a tight open belt; sheaves that would touch are refused. Under 120 degrees of wrap a V-belt carries clearly less (from memory)
 * @throws RangeError when a parameter is outside its range or the sheaves would touch
 * @source Geometry
 */
export function beltLength(driverDiameter: number, drivenDiameter: number, centres: number): BeltLength {
  inRange('driverDiameter', driverDiameter, 0.02, 2, 'm');
  inRange('drivenDiameter', drivenDiameter, 0.02, 2, 'm');
  inRange('centres', centres, Math.max(0.05, (driverDiameter + drivenDiameter) / 2), 10, 'm');
  const half = Math.abs(drivenDiameter - driverDiameter) / 2;
  const lean = Math.asin(half / centres);
  return {
    length:
      2 * Math.sqrt(centres ** 2 - half ** 2) +
      (Math.PI * (driverDiameter + drivenDiameter)) / 2 +
      2 * half * lean,
    smallWrap: Math.PI - 2 * lean,
  };
}

export interface BeltLength {
  readonly length: number;
  readonly smallWrap: number;
}
