import { inRange } from '../in-range.ts';
import { INCH, POUND_FORCE, PSI, STANDARD_GRAVITY, US_GALLON } from '../us-measure.ts';
import { jetExitSpeed } from './jet-exit.ts';

const GPM = US_GALLON / 60;

/**
 * Force with which a jet pushes its nozzle back.
 *
 * @formula F = ρ Q Cv sqrt(2 p/ρ)
 * @param flow volume flow [m3/s] 0..1
 * @param pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param density density of the liquid [kg/m3] 500..2500
 * @param velocityCoefficient velocity coefficient of the tip; default 0.97 [-] 0.3..1
 * @returns reaction [N]
 * @valid steady flow along the axis of a stream; cones and fans push less; opening or closing the trigger adds a jerk
 * @throws RangeError when a parameter is outside its range
 * @source Momentum theorem
 */
export function nozzleReaction(
  flow: number,
  pressure: number,
  density: number,
  velocityCoefficient = 0.97,
): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  return density * flow * jetExitSpeed(pressure, density, velocityCoefficient);
}

/**
 * Nozzle reaction of a smooth bore by the rule of the fire service.
 *
 * @formula F = 1.57 d² p (lbf, in, psi)
 * @param bore diameter of the bore [m] 0.0002..0.2
 * @param pressure pressure at the nozzle, gauge [Pa] 0..1e7
 * @returns reaction [N]
 * @valid water; the same as nozzleReaction with Cd Cv = 1
 * @throws RangeError when a parameter is outside its range
 * @source Fire-service training formula NR = 1.57 d² NP
 */
export function nozzleReactionSmoothBore(bore: number, pressure: number): number {
  inRange('bore', bore, 0.0002, 0.2, 'm');
  inRange('pressure', pressure, 0, 1e7, 'Pa');
  return 1.57 * (bore / INCH) ** 2 * (pressure / PSI) * POUND_FORCE;
}

/**
 * Nozzle reaction of a fog or combination nozzle by the rule of the fire service.
 *
 * @formula F = 0.0505 Q sqrt(p) (lbf, US gpm, psi)
 * @param flow volume flow [m3/s] 0..1
 * @param pressure pressure at the nozzle, gauge [Pa] 0..1e7
 * @returns reaction [N]
 * @valid water, straight stream
 * @throws RangeError when a parameter is outside its range
 * @source Fire-service training formula NR = 0.0505 Q sqrt(NP)
 */
export function nozzleReactionFog(flow: number, pressure: number): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('pressure', pressure, 0, 1e7, 'Pa');
  return 0.0505 * (flow / GPM) * Math.sqrt(pressure / PSI) * POUND_FORCE;
}

/** Nozzle reaction that one person can hold [N]. From memory: compare with the standard in force before quoting it. */
export const HOLDING_LIMITS = { allDay: 100, braced: 150, supported: 250 } as const;
const SHARE_OF_WEIGHT = 1 / 3;
const UNSTEADY = 0.5;

/** How a gun with a given reaction can be held. */
export const HOLDINGS = ['all-day', 'braced', 'supported', 'mounted'] as const;
export type Holding = (typeof HOLDINGS)[number];

/**
 * How a gun with a given reaction can be held by one person.
 *
 * @formula up to 100 N all day; up to 150 N both hands, body braced; up to 250 N and a third of body weight only with shoulder or body support; above on a fixed mount or by two people; half of each limit on a ladder or a wet roof
 * @param reaction nozzle reaction [N] 0..10000
 * @param unsteadyFooting whether the operator stands on a ladder, a wet roof or the like [yes/no]
 * @param bodyMass mass of the operator; default 75 [kg] 40..200
 * @returns guidance [one of all-day, braced, supported, mounted]
 * @valid guidance for steady flow, not a permission: local rules and the operator's judgement come first
 * @throws RangeError when a parameter is outside its range
 * @source Hand-held limits of fire practice, from memory
 */
export function holdingGuidance(reaction: number, unsteadyFooting: boolean, bodyMass = 75): Holding {
  inRange('reaction', reaction, 0, 10000, 'N');
  inRange('bodyMass', bodyMass, 40, 200, 'kg');
  const part = unsteadyFooting ? UNSTEADY : 1;
  if (reaction > part * SHARE_OF_WEIGHT * bodyMass * STANDARD_GRAVITY) return 'mounted';
  if (reaction <= part * HOLDING_LIMITS.allDay) return 'all-day';
  if (reaction <= part * HOLDING_LIMITS.braced) return 'braced';
  return reaction <= part * HOLDING_LIMITS.supported ? 'supported' : 'mounted';
}
