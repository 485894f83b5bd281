import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { CUBIC_FOOT, POUND } from '../us-measure.ts';
import { FREIGHT_SCALES, type FreightScale, type FreightScaleId } from './freight-classes.data.ts';

/**
 * Volume and density of a packed piece of freight.
 *
 * @formula ρ = m / (L W H), outermost sizes, pallet included
 * @param length outermost length [m] 0.01..30
 * @param width outermost width [m] 0.01..5
 * @param height outermost height [m] 0.01..5
 * @param mass mass with pallet or crate [kg] 0..1e5
 * @result volume volume of the piece [m3]
 * @result density mass per volume [kg/m3]
 * @throws RangeError when a parameter is outside its range
 * @source Freight practice: pounds over (L W H / 1728) in inches
 */
export function freightDensity(length: number, width: number, height: number, mass: number): FreightDensity {
  inRange('length', length, 0.01, 30, 'm');
  inRange('width', width, 0.01, 5, 'm');
  inRange('height', height, 0.01, 5, 'm');
  inRange('mass', mass, 0, 1e5, 'kg');
  const volume = length * width * height;
  return { volume, density: mass / volume };
}

export interface FreightDensity {
  readonly volume: number;
  readonly density: number;
}

/**
 * Freight class that a density alone suggests.
 *
 * @formula table of densities
 * @param density density of the packed piece [kg/m3] 0..20000
 * @param scale density scale [one of 13-level, 18-level]
 * @returns freight class [-]
 * @valid an estimate: item, handling and carrier rules can override it. The 13-level scale holds from 19 July 2025
 * @throws RangeError when a parameter is outside its range
 * @source Density charts of both scales, as read on a freight calculator page
 */
export function freightClass(density: number, scale: FreightScaleId): number {
  inRange('density', density, 0, 20000, 'kg/m3');
  oneOfChoices('scale', scale, Object.keys(FREIGHT_SCALES));
  // A density typed as a round number of pounds must not fall under its own step by a rounding.
  const pounds = (density / (POUND / CUBIC_FOOT)) * (1 + 1e-9);
  const { steps }: FreightScale = FREIGHT_SCALES[scale];
  return steps.find(([below]) => pounds < below)![1];
}

/**
 * What would bring a piece of freight to a target density.
 *
 * @formula m = ρ L W H; H = m / (ρ L W)
 * @param length outermost length [m] 0.01..30
 * @param width outermost width [m] 0.01..5
 * @param height outermost height [m] 0.01..5
 * @param mass mass with pallet or crate [kg] 0..1e5
 * @param targetDensity density to reach [kg/m3] 1..20000
 * @result massAtHeight mass that has the density in the same crate [kg]
 * @result heightAtMass height of crate that has it with the same mass [m]
 * @valid cutting the crate's height is often the cheaper way
 * @throws RangeError when a parameter is outside its range
 * @source Definition of density
 */
export function freightTarget(
  length: number,
  width: number,
  height: number,
  mass: number,
  targetDensity: number,
): FreightTarget {
  const { volume } = freightDensity(length, width, height, mass);
  inRange('targetDensity', targetDensity, 1, 20000, 'kg/m3');
  return { massAtHeight: targetDensity * volume, heightAtMass: mass / (targetDensity * length * width) };
}

export interface FreightTarget {
  readonly massAtHeight: number;
  readonly heightAtMass: number;
}
