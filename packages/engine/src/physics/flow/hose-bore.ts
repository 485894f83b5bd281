import { inRange } from '../in-range.ts';
import { checkBore, checkFlow, checkLength } from './limits.ts';
import { boreArea } from './velocity.ts';

/**
 * Liquid held in a hose: what must be flushed, drained and carried.
 *
 * @formula V = π D² L / 4
 * @param bore inside diameter [m] 0.0002..0.5
 * @param length length [m] 0..1e5
 * @returns volume [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Geometry
 */
export function hoseContents(bore: number, length: number): number {
  checkLength(length);
  return boreArea(bore) * length;
}

/**
 * True bore of a hose from the water it holds, since the bore dominates the loss and the label only names it.
 *
 * @formula D = sqrt(4 V / (π L))
 * @param contents volume of water that fills the hose [m3] 1e-9..100
 * @param length length of the hose [m] 0.1..1e5
 * @returns mean inside diameter [m]
 * @valid mean over the length, at the pressure at which it was filled
 * @throws RangeError when a parameter is outside its range
 * @source Geometry
 */
export function boreFromContents(contents: number, length: number): number {
  inRange('contents', contents, 1e-9, 100, 'm3');
  inRange('length', length, 0.1, 1e5, 'm');
  return Math.sqrt((4 * contents) / (Math.PI * length));
}

/**
 * Smallest bore that keeps a flow at or below a velocity.
 *
 * @formula D = sqrt(4 Q / (π v))
 * @param flow volume flow [m3/s] 0..1
 * @param velocity highest velocity wanted [m/s] 0.01..100
 * @returns inside diameter [m]
 * @valid a first size; suction lines are commonly kept under 1 to 1.5 m/s and delivery under 5 m/s (common practice, no source)
 * @throws RangeError when a parameter is outside its range
 * @source Continuity
 */
export function boreForVelocity(flow: number, velocity: number): number {
  checkFlow(flow);
  inRange('velocity', velocity, 0.01, 100, 'm/s');
  return Math.sqrt((4 * flow) / (Math.PI * velocity));
}

/**
 * How much more a hose loses when its bore is narrower than its label says.
 *
 * @formula Δp2/Δp1 = (D1/D2)⁵ f2/f1, here with f2/f1 = (D1/D2)^-0.25 of smooth turbulent flow
 * @param bore bore on the label [m] 0.0002..0.5
 * @param trueBore bore measured [m] 0.0002..0.5
 * @returns loss over the loss of the labelled bore [-]
 * @valid a rule of thumb for turbulent flow, within about 2 %; laminar flow goes with the fourth power
 * @throws RangeError when a parameter is outside its range
 * @source Darcy-Weisbach with the Blasius exponent
 */
export function boreErrorLossRatio(bore: number, trueBore: number): number {
  checkBore(bore);
  checkBore(trueBore, 'trueBore');
  return (bore / trueBore) ** 4.75;
}
