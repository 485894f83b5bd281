import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { FOOT, STANDARD_GRAVITY } from '../us-measure.ts';
import { checkDensity } from './limits.ts';
import { meanVelocity } from './velocity.ts';

/**
 * Net positive suction head that a suction line leaves for the pump.
 *
 * @formula NPSHa = (p_surface - p_v)/(ρ g) + h_static - h_loss
 * @param surfacePressureAbsolute pressure on the liquid in the tank, absolute [Pa] 1000..1e7
 * @param vapourPressure vapour pressure of the liquid, absolute [Pa] 0..2e5
 * @param density density of the liquid [kg/m3] 500..2500
 * @param staticHead height of the liquid surface above the pump inlet, negative for a lift [m] -20..100
 * @param suctionLoss head lost from tank to pump inlet: entrance, hose, valve, strainer [m] 0..1000
 * @returns net positive suction head available [m]
 * @valid steady flow; piston and diaphragm pumps need the acceleration head besides. Negative means the liquid boils before the pump
 * @throws RangeError when a parameter is outside its range
 * @source Definition, e.g. Crane TP-410 example 7-32
 */
export function npshAvailable(
  surfacePressureAbsolute: number,
  vapourPressure: number,
  density: number,
  staticHead: number,
  suctionLoss: number,
): number {
  inRange('surfacePressureAbsolute', surfacePressureAbsolute, 1000, 1e7, 'Pa');
  inRange('vapourPressure', vapourPressure, 0, 2e5, 'Pa');
  checkDensity(density);
  inRange('staticHead', staticHead, -20, 100, 'm');
  inRange('suctionLoss', suctionLoss, 0, 1000, 'm');
  return (surfacePressureAbsolute - vapourPressure) / (density * STANDARD_GRAVITY) + staticHead - suctionLoss;
}

/**
 * Head by which a suction line exceeds what the pump needs.
 *
 * @formula m = NPSHa - NPSHr
 * @param available net positive suction head available [m] -1000..1000
 * @param required net positive suction head the pump needs [m] 0..100
 * @returns margin; negative means it starves [m]
 * @valid NPSHr is stated at 3 % head loss for centrifugal pumps, so no margin is already some cavitation
 * @throws RangeError when a parameter is outside its range
 * @source Definition
 */
export function npshMargin(available: number, required: number): number {
  inRange('available', available, -1000, 1000, 'm');
  inRange('required', required, 0, 100, 'm');
  return available - required;
}

/**
 * Least height of the liquid surface above the pump inlet: negative is the largest suction lift.
 *
 * @formula h = NPSHr + h_loss - (p_surface - p_v)/(ρ g)
 * @param required net positive suction head the pump needs [m] 0..100
 * @param surfacePressureAbsolute pressure on the liquid in the tank, absolute [Pa] 1000..1e7
 * @param vapourPressure vapour pressure of the liquid, absolute [Pa] 0..2e5
 * @param density density of the liquid [kg/m3] 500..2500
 * @param suctionLoss head lost from tank to pump inlet [m] 0..1000
 * @returns least static head [m]
 * @valid no margin in it; a pump that must prime itself may lift less
 * @throws RangeError when a parameter is outside its range
 * @source The definition of NPSH solved for the static head
 */
export function leastStaticHead(
  required: number,
  surfacePressureAbsolute: number,
  vapourPressure: number,
  density: number,
  suctionLoss: number,
): number {
  inRange('required', required, 0, 100, 'm');
  return required - npshAvailable(surfacePressureAbsolute, vapourPressure, density, 0, suctionLoss);
}

/** Pump factor C of the acceleration head, by the number of plungers or diaphragms. */
const ACCELERATION_FACTOR = { two: 0.2, three: 0.066, five: 0.04, seven: 0.028 } as const;
export type PumpChambers = keyof typeof ACCELERATION_FACTOR;

/**
 * Head that the pulsing flow of a piston or diaphragm pump takes to speed up the liquid in its suction line.
 *
 * @formula h_a = L v N C / (k g), L in ft, v in ft/s, N in 1/min, g in ft/s2, k = 1.5
 * @param length length of the suction line [m] 0..100
 * @param flow mean volume flow [m3/s] 0..1
 * @param bore bore of the suction line [m] 0.0002..0.5
 * @param speed pump shaft speed [rad/s] 0..500
 * @param chambers single-acting plungers or diaphragms [one of two, three, five, seven]
 * @returns acceleration head to subtract from the NPSH available [m]
 * @valid rigid line; soft suction hose or a damper takes much of it away, so it is the far end of a band that starts at 0
 * @throws RangeError when a parameter is outside its range
 * @source Hydraulic Institute, acceleration head of reciprocating pumps, from memory
 */
export function accelerationHead(
  length: number,
  flow: number,
  bore: number,
  speed: number,
  chambers: PumpChambers,
): number {
  inRange('length', length, 0, 100, 'm');
  inRange('speed', speed, 0, 500, 'rad/s');
  oneOfChoices('chambers', chambers, Object.keys(ACCELERATION_FACTOR));
  const perMinute = (speed * 60) / (2 * Math.PI);
  const feet =
    ((length / FOOT) * (meanVelocity(flow, bore) / FOOT) * perMinute * ACCELERATION_FACTOR[chambers]) /
    (1.5 * (STANDARD_GRAVITY / FOOT));
  return feet * FOOT;
}
