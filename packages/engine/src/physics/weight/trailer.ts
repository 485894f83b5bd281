import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { centreOfMass, twoSupportLoads } from './loads.ts';
import { wholeInRange } from '../whole-in-range.ts';

/** Share of the gross weight that should rest on the tongue: vehicle manuals (seen). */
export const TONGUE_SHARE = { low: 0.1, high: 0.15 } as const;

/**
 * Load on coupler and axles of a trailer with one axle or an equalised axle group.
 *
 * @formula tongue = Σ m (X - x)/X; axles = Σ m x/X, x from the coupler, X axle group's middle
 * @param masses masses of the trailer's parts and liquid [list of kg] 0..1e6
 * @param places distance of each mass behind the coupler [list of m] -100..100
 * @param axlePlace distance of the axle group's middle behind the coupler [m] 0.1..30
 * @result gross total mass [kg]
 * @result tongue load on the coupler; negative when it lifts the tow vehicle [kg]
 * @result axles load on the axle group [kg]
 * @result tongueShare tongue load over gross; 0 when there is no mass [-]
 * @result withinGuidance whether the share is 10 to 15 % [yes/no]
 * @valid level, at rest. Evaluate full, half, empty and on the operating slope: the share must hold full and never be negative empty
 * @throws RangeError when a value is outside its range or the lists differ in length
 * @source Statics; 10 to 15 % of gross on the tongue: vehicle manuals
 */
export function trailerLoads(
  masses: readonly number[],
  places: readonly number[],
  axlePlace: number,
): TrailerLoads {
  inRange('axlePlace', axlePlace, 0.1, 30, 'm');
  const { mass: gross } = centreOfMass(masses, places);
  const { front: tongue, rear: axles } = twoSupportLoads(masses, places, 0, axlePlace);
  const tongueShare = gross > 0 ? tongue / gross : 0;
  const withinGuidance = tongueShare >= TONGUE_SHARE.low && tongueShare <= TONGUE_SHARE.high;
  return { gross, tongue, axles, tongueShare, withinGuidance };
}

export interface TrailerLoads {
  readonly gross: number;
  readonly tongue: number;
  readonly axles: number;
  readonly tongueShare: number;
  readonly withinGuidance: boolean;
}

/**
 * Load that braking moves from the trailer's axles to its tongue.
 *
 * @formula braked by its own wheels: W (a/g) h / X; pushing the coupler: W (a/g)(h - h_c) / X
 * @param gross mass of the trailer [kg] 0..1e6
 * @param centreHeight height of the centre of mass above the ground [m] 0..10
 * @param axlePlace distance of the axle group's middle behind the coupler [m] 0.1..30
 * @param deceleration deceleration [m/s2] 0..10
 * @param couplerHeight height of the coupler above the ground [m] 0..3
 * @param ownBrakes whether the trailer's own wheels brake it fully [yes/no]
 * @returns load added to the tongue and taken off the axles [kg]
 * @valid steady; the liquid's shift forward comes on top (tankTilted with pitch -atan(a/g))
 * @throws RangeError when a parameter is outside its range
 * @source Statics with the inertia force at the centre of mass
 */
export function brakingTongueLoad(
  gross: number,
  centreHeight: number,
  axlePlace: number,
  deceleration: number,
  couplerHeight: number,
  ownBrakes: boolean,
): number {
  inRange('gross', gross, 0, 1e6, 'kg');
  inRange('centreHeight', centreHeight, 0, 10, 'm');
  inRange('axlePlace', axlePlace, 0.1, 30, 'm');
  inRange('deceleration', deceleration, 0, 10, 'm/s2');
  inRange('couplerHeight', couplerHeight, 0, 3, 'm');
  const arm = ownBrakes ? centreHeight : centreHeight - couplerHeight;
  return (gross * (deceleration / STANDARD_GRAVITY) * arm) / axlePlace;
}

/**
 * Margin and use of an axle group against its rating.
 *
 * @formula margin = n R - load; use = load / (n R)
 * @param load load on the axle group [kg] 0..1e6
 * @param ratingEach rating of one axle: the lowest of axle, hub, wheels and tyres [kg] 1..1e5
 * @param axles number of axles that share the load equally [-] 1..4
 * @result margin rating less load; negative when overloaded [kg]
 * @result utilisation load over rating [-]
 * @valid equalised axles on level ground; without equaliser the share depends on the trailer's attitude
 * @throws RangeError when a parameter is outside its range
 * @source Common practice, no source
 */
export function axleUse(load: number, ratingEach: number, axles: number): AxleUse {
  inRange('load', load, 0, 1e6, 'kg');
  inRange('ratingEach', ratingEach, 1, 1e5, 'kg');
  wholeInRange('axles', axles, 1, 4);
  const rating = ratingEach * axles;
  return { margin: rating - load, utilisation: load / rating };
}

export interface AxleUse {
  readonly margin: number;
  readonly utilisation: number;
}

/**
 * Load on the tongue jack of an uncoupled trailer.
 *
 * @formula jack = Σ m (X - x)/(X - x_jack)
 * @param masses masses of the trailer's parts and liquid [list of kg] 0..1e6
 * @param places distance of each mass behind the coupler [list of m] -100..100
 * @param axlePlace distance of the axle group's middle behind the coupler [m] 0.1..30
 * @param jackPlace distance of the jack behind the coupler [m] -1..20
 * @returns load on the jack; negative when the tongue lifts off [kg]
 * @throws RangeError when a value is outside its range or the lists differ in length
 * @source Statics
 */
export function jackLoad(
  masses: readonly number[],
  places: readonly number[],
  axlePlace: number,
  jackPlace: number,
): number {
  inRange('axlePlace', axlePlace, 0.1, 30, 'm');
  inRange('jackPlace', jackPlace, -1, 20, 'm');
  return twoSupportLoads(masses, places, jackPlace, axlePlace).front;
}
