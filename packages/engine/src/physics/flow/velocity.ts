import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { checkBore, checkDensity, checkFlow, checkViscosity } from './limits.ts';

/**
 * Open area of a round bore.
 *
 * @formula A = π D² / 4
 * @param bore inside diameter [m] 0.0002..0.5
 * @returns area [m2]
 * @throws RangeError when a parameter is outside its range
 * @source Geometry
 */
export function boreArea(bore: number): number {
  checkBore(bore);
  return (Math.PI / 4) * bore * bore;
}

/**
 * Mean velocity of a flow in a round bore.
 *
 * @formula v = 4 Q / (π D²)
 * @param flow volume flow [m3/s] 0..1
 * @param bore inside diameter [m] 0.0002..0.5
 * @returns mean velocity [m/s]
 * @throws RangeError when a parameter is outside its range
 * @source Continuity
 */
export function meanVelocity(flow: number, bore: number): number {
  checkFlow(flow);
  return flow / boreArea(bore);
}

/**
 * Reynolds number of a flow in a round bore: what decides between laminar and turbulent.
 *
 * @formula Re = 4 ρ Q / (π D μ)
 * @param flow volume flow [m3/s] 0..1
 * @param bore inside diameter [m] 0.0002..0.5
 * @param density density of the liquid [kg/m3] 500..2500
 * @param viscosity dynamic viscosity [Pa.s] 1e-5..1000
 * @returns Reynolds number [-]
 * @valid Newtonian liquids; thickened mixes have their own (Metzner-Reed)
 * @throws RangeError when a parameter is outside its range
 * @source Reynolds 1883, in the form of any textbook
 */
export function reynoldsNumber(flow: number, bore: number, density: number, viscosity: number): number {
  checkDensity(density);
  checkViscosity(viscosity);
  return (density * meanVelocity(flow, bore) * bore) / viscosity;
}

/**
 * Head that a velocity stands for.
 *
 * @formula h = v² / (2 g)
 * @param velocity mean velocity [m/s] 0..200
 * @returns velocity head [m]
 * @throws RangeError when a parameter is outside its range
 * @source Bernoulli
 */
export function velocityHead(velocity: number): number {
  inRange('velocity', velocity, 0, 200, 'm/s');
  return (velocity * velocity) / (2 * STANDARD_GRAVITY);
}

/**
 * Pressure that a velocity stands for: what a gauge on a fast line does not show.
 *
 * @formula q = ρ v² / 2
 * @param velocity mean velocity [m/s] 0..200
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns dynamic pressure [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source Bernoulli
 */
export function dynamicPressure(velocity: number, density: number): number {
  inRange('velocity', velocity, 0, 200, 'm/s');
  checkDensity(density);
  return (density * velocity * velocity) / 2;
}

/**
 * Head of liquid that a pressure holds up.
 *
 * @formula h = p / (ρ g)
 * @param pressure pressure [Pa] -1e5..1e8
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns head of that liquid [m]
 * @throws RangeError when a parameter is outside its range
 * @source Hydrostatics, g = 9.80665 m/s2
 */
export function headOfPressure(pressure: number, density: number): number {
  inRange('pressure', pressure, -1e5, 1e8, 'Pa');
  checkDensity(density);
  return pressure / (density * STANDARD_GRAVITY);
}

/**
 * Pressure at the foot of a head of liquid.
 *
 * @formula p = ρ g h
 * @param head head of the liquid [m] -20..10000
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns pressure [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source Hydrostatics, g = 9.80665 m/s2
 */
export function pressureOfHead(head: number, density: number): number {
  inRange('head', head, -20, 10000, 'm');
  checkDensity(density);
  return head * density * STANDARD_GRAVITY;
}
