import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { dropSizeOfShare, FARTHEST_SHARE } from './drop-class.ts';
import { fly, type Flight } from './flight.ts';
import { type DropClass, dropClass, dropsOfShare, jetOf } from './jet.ts';
import { heightAt } from './reach.ts';
import { THROW_DEFAULTS, type ThrowStream } from './stream.ts';
import { checkElevation } from './throw-at.ts';

/**
 * Force of the water that strikes a target.
 *
 * @formula F = share · ρ Q v
 * @param share share of the water that strikes it [-] 0..1
 * @param flow volume flow of the gun [m3/s] 0..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @param speed speed of the water at the target [m/s] 0..200
 * @returns force [N]
 * @valid square to the surface and running off along it
 * @throws RangeError when a parameter is outside its range
 * @source Momentum theorem
 */
export function impactForce(share: number, flow: number, density: number, speed: number): number {
  inRange('share', share, 0, 1);
  inRange('flow', flow, 0, 1, 'm3/s');
  inRange('density', density, 500, 2500, 'kg/m3');
  inRange('speed', speed, 0, 200, 'm/s');
  return share * density * flow * speed;
}

const MOST_SHARE = 0.99;
const HALVINGS = 14;

/**
 * Share of the water that passes a target's distance at or above its height.
 *
 * @formula the share F whose drops pass just there: z(X; δ(F)) = height
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param standoff horizontal distance from the nozzle to the target [m] 0.25..150
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @param height height of the target above ground [m] 0..150
 * @returns share of the water, 0 to 0.99 [-]
 * @valid dose at the limit of reach is a fifth of the gun flow or less (Theobald 1984), never the gun flow
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff, with its drop size distribution
 */
export function shareReaching(
  stream: ThrowStream,
  elevation: number,
  standoff: number,
  nozzleHeight: number,
  height: number,
): number {
  checkElevation(elevation);
  inRange('standoff', standoff, 0.25, 150, 'm');
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  inRange('height', height, 0, 150, 'm');
  const jet = jetOf(stream);
  if (jet.exitSpeed === 0) return 0;
  const aim = { elevation, nozzleHeight, landingHeight: 0, standoff };
  const reaches = (drops: DropClass) => heightAt(drops, aim) >= height;
  if (!reaches(dropsOfShare(jet, FARTHEST_SHARE))) return 0;
  if (reaches(dropsOfShare(jet, MOST_SHARE))) return MOST_SHARE;
  // Halved in drop size rather than share: shares crowd together at the far end.
  let reaching = 1;
  let short = dropSizeOfShare(MOST_SHARE);
  for (let i = 0; i < HALVINGS; i++) {
    const size = 0.5 * (reaching + short);
    if (reaches(dropClass(jet, size * jet.dropDiameter))) reaching = size;
    else short = size;
  }
  return Math.max(FARTHEST_SHARE, Math.exp(-6.9 * reaching ** 2.32));
}

export interface Impact {
  readonly height: number;
  readonly speed: number;
  readonly force: number;
}

/**
 * Height, speed and force with which half of the water strikes an upright target.
 *
 * @formula F = 0.5 ρ Q v, v speed of the bulk at the standoff
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param standoff horizontal distance from the nozzle to the target [m] 0.25..150
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @result height height at which the bulk strikes; 0 when it comes down before [m]
 * @result speed its speed there [m/s]
 * @result force force of that half of the water [N]
 * @valid of the water alone; the air it carries adds to it. At 3 to 5 m a solid stream of 10 mm or more strikes with nearly all of its nozzle reaction: roofs, bark and leaves need a fan or distance
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff; momentum theorem
 */
export function bulkImpact(
  stream: ThrowStream,
  elevation: number,
  standoff: number,
  nozzleHeight: number,
): Impact {
  checkElevation(elevation);
  inRange('standoff', standoff, 0.25, 150, 'm');
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  const jet = jetOf(stream);
  const none: Impact = { height: 0, speed: 0, force: 0 };
  if (jet.exitSpeed === 0) return none;
  const end: Flight = fly(dropsOfShare(jet, 0.5), { elevation, nozzleHeight, landingHeight: 0, standoff });
  if (end.end !== 'standoff') return none;
  const flow = (Math.PI / 4) * stream.jetDiameter ** 2 * jet.exitSpeed;
  const density = stream.density ?? THROW_DEFAULTS.density;
  return { height: end.height, speed: end.speed, force: 0.5 * density * flow * end.speed };
}

/** Share of the discharge that reached a target near the limit of useful range of hand-held jets. */
export const ARRIVING_SHARE = { conventional: 0.16, improved: 0.21 } as const;
export type HandNozzle = keyof typeof ARRIVING_SHARE;

/**
 * Flow that still arrives near the limit of useful range of a hand-held jet.
 *
 * @formula Q_arriving = 0.16 Q (conventional nozzle), 0.21 Q (improved nozzle)
 * @param flow volume flow of the gun [m3/s] 0..1
 * @param nozzle conventional nozzle, or one shaped for a stable jet [one of conventional, improved]
 * @returns flow that arrives [m3/s]
 * @valid fire branches; dose at the top of a tree is a fifth of the gun flow, not the gun flow
 * @throws RangeError when a parameter is outside its range
 * @source Theobald, Fire Safety Journal 7 (1984) 177-190, abstract
 */
export function flowArrivingAtLimit(flow: number, nozzle: HandNozzle): number {
  inRange('flow', flow, 0, 1, 'm3/s');
  oneOfChoices('nozzle', nozzle, Object.keys(ARRIVING_SHARE));
  return ARRIVING_SHARE[nozzle] * flow;
}
