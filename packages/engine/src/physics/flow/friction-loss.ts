import { inRange } from '../in-range.ts';
import { checkBore, checkFlow, checkLength, checkViscosity } from './limits.ts';
import { dynamicPressure, meanVelocity } from './velocity.ts';

/**
 * Pressure lost to friction along a hose or pipe.
 *
 * @formula Δp = f (L/D) ρ v² / 2
 * @param frictionFactor Darcy friction factor, four times the Fanning one [-] 0..1e8
 * @param length length [m] 0..1e5
 * @param bore inside diameter [m] 0.0002..0.5
 * @param flow volume flow [m3/s] 0..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns pressure loss [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source Darcy-Weisbach
 */
export function frictionLossDarcy(
  frictionFactor: number,
  length: number,
  bore: number,
  flow: number,
  density: number,
): number {
  inRange('frictionFactor', frictionFactor, 0, 1e8, '-');
  checkLength(length);
  return frictionFactor * (length / bore) * dynamicPressure(meanVelocity(flow, bore), density);
}

/**
 * Pressure lost along a hose in laminar flow: thick liquid or a trickle.
 *
 * @formula Δp = 128 μ L Q / (π D⁴)
 * @param flow volume flow [m3/s] 0..1
 * @param bore inside diameter [m] 0.0002..0.5
 * @param length length [m] 0..1e5
 * @param viscosity dynamic viscosity [Pa.s] 1e-5..1000
 * @returns pressure loss [Pa]
 * @valid only below Reynolds number 2300; above it the true loss is larger, so look at the Reynolds number first
 * @throws RangeError when a parameter is outside its range
 * @source Hagen-Poiseuille
 */
export function frictionLossPoiseuille(
  flow: number,
  bore: number,
  length: number,
  viscosity: number,
): number {
  checkFlow(flow);
  checkBore(bore);
  checkLength(length);
  checkViscosity(viscosity);
  return (128 * viscosity * length * flow) / (Math.PI * bore ** 4);
}

/**
 * Pressure lost in a fitting whose loss coefficient is known.
 *
 * @formula Δp = K ρ v² / 2
 * @param lossCoefficient loss coefficient on the velocity in the bore [-] 0..1e6
 * @param bore bore the loss coefficient refers to [m] 0.0002..0.5
 * @param flow volume flow [m3/s] 0..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns pressure loss [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of the loss coefficient
 */
export function fittingLoss(lossCoefficient: number, bore: number, flow: number, density: number): number {
  inRange('lossCoefficient', lossCoefficient, 0, 1e6, '-');
  return lossCoefficient * dynamicPressure(meanVelocity(flow, bore), density);
}

/**
 * Length of hose that costs as much as a fitting.
 *
 * @formula L = K D / f
 * @param lossCoefficient loss coefficient [-] 0..1e6
 * @param frictionFactor Darcy friction factor of the hose [-] 0.001..1e6
 * @param bore inside diameter [m] 0.0002..0.5
 * @returns equivalent length [m]
 * @valid at the one flow the friction factor was taken at
 * @throws RangeError when a parameter is outside its range
 * @source Definition of the equivalent length
 */
export function equivalentLength(lossCoefficient: number, frictionFactor: number, bore: number): number {
  inRange('lossCoefficient', lossCoefficient, 0, 1e6, '-');
  inRange('frictionFactor', frictionFactor, 0.001, 1e6, '-');
  checkBore(bore);
  return (lossCoefficient * bore) / frictionFactor;
}
