import { inRange } from '../in-range.ts';
import { AXLE_SHARE_RULE, LIFT_FORCE_RULE } from './hitch-categories.data.ts';

/** Distance behind the hitch points at which lift is tested [m]. */
export const LIFT_TEST_DISTANCE = 0.61;

/**
 * Lift that a tractor must have at 610 mm behind its hitch points, from its PTO power.
 *
 * @formula F = 310 N/kW × P up to 65 kW; 20150 N + 155 N/kW × (P - 65 kW) above
 * @param ptoPower rated PTO power [W] 0..4e5
 * @returns least lift force [N]
 * @valid what the standard asks at least, for when the tractor's own figure is unknown; the category of the hitch is no proof of it
 * @throws RangeError when a parameter is outside its range
 * @source ISO 730 / ASABE S217: 310 N per kW up to 65 kW, then 20150 N + 155 N per kW over 65; from memory
 */
export function leastLiftForce(ptoPower: number): number {
  inRange('ptoPower', ptoPower, 0, 4e5, 'W');
  const rule = LIFT_FORCE_RULE;
  const kw = ptoPower / 1000;
  return kw <= rule.breakKw
    ? rule.newtonPerKw * kw
    : rule.constantAboveN + rule.newtonPerKwAbove * (kw - rule.breakKw);
}

/**
 * PTO power from which the standard would guarantee a lift at 610 mm.
 *
 * @formula inverse of leastLiftForce
 * @param force lift force asked [N] 0..7e4
 * @returns PTO power [W]
 * @throws RangeError when a parameter is outside its range
 * @source Inverse of the ISO 730 / ASABE S217 rule, from memory
 */
export function ptoPowerForLift(force: number): number {
  inRange('force', force, 0, 7e4, 'N');
  const rule = LIFT_FORCE_RULE;
  const kw =
    force <= rule.constantAboveN
      ? force / rule.newtonPerKw
      : rule.breakKw + (force - rule.constantAboveN) / rule.newtonPerKwAbove;
  return kw * 1000;
}

/**
 * Mass that a three-point hitch lifts with its centre at the real distance behind the hitch points.
 *
 * @formula m(x) = m_610 (l + 0.61)/(l + x); never more than m_610
 * @param liftAt610 lift capacity at 610 mm behind the hitch points [kg] 0..3e4
 * @param lowerLinkLength length of the lower links from pivot to hitch points [m] 0.3..1.5
 * @param behindHitch centre of the implement's mass behind the hitch points [m] 0..4
 * @returns mass that can be lifted [kg]
 * @valid moment about the lower links' front pivots, on the safe side; the true law depends on the linkage. Nearer than 610 mm no gain is credited
 * @throws RangeError when a parameter is outside its range
 * @source Own conservative model; a tractor manual warns that the distance governs
 */
export function liftAtDistance(liftAt610: number, lowerLinkLength: number, behindHitch: number): number {
  inRange('liftAt610', liftAt610, 0, 3e4, 'kg');
  inRange('lowerLinkLength', lowerLinkLength, 0.3, 1.5, 'm');
  inRange('behindHitch', behindHitch, 0, 4, 'm');
  const arm = lowerLinkLength + Math.max(behindHitch, LIFT_TEST_DISTANCE);
  return (liftAt610 * (lowerLinkLength + LIFT_TEST_DISTANCE)) / arm;
}

export interface MountedTractor {
  readonly tractorMass: number;
  readonly frontAxleUnladen: number;
  readonly wheelbase: number;
  readonly axleToHitch: number;
  readonly hitchToImplement: number;
  readonly implementMass: number;
  readonly ballastMass?: number;
  readonly ballastAhead?: number;
}

export interface MountedSlope extends MountedTractor {
  readonly tractorCentreHeight: number;
  readonly implementCentreHeight: number;
  readonly ballastCentreHeight?: number;
  readonly grade: number;
}

export interface MountedAxleLoads {
  readonly front: number;
  readonly rear: number;
  readonly frontShare: number;
  readonly enough: boolean;
}

/**
 * Axle loads of a tractor with a rig on its three-point hitch, on level ground.
 *
 * @formula front = [G_V (a + b) + T_V b - G_H (c + d)]/b; rear = the rest
 * @param p.tractorMass unladen mass of the tractor with driver as weighed, T_L [kg] 100..3e4
 * @param p.frontAxleUnladen front axle load of the unladen tractor, T_V [kg] 0..3e4
 * @param p.wheelbase wheelbase b [m] 0.5..5
 * @param p.axleToHitch rear axle to lower hitch points, c [m] 0..2
 * @param p.hitchToImplement lower hitch points to the rig's centre of mass, d [m] 0..4
 * @param p.implementMass mass of the rig as filled, G_H [kg] 0..3e4
 * @param p.ballastMass front ballast G_V; default 0 [kg] 0..1e4
 * @param p.ballastAhead front ballast ahead of the front axle, a; default 0 [m] 0..3
 * @result front load on the front axle; negative when it lifts [kg]
 * @result rear load on the rear axle [kg]
 * @result frontShare front load over unladen tractor mass [-]
 * @result enough whether the share is at least 20 % [yes/no]
 * @throws RangeError when a parameter is outside its range
 * @source Ballast method of several operators' manuals; statics. One manual prints a minus before T_V b: wrong
 */
export function threePointAxleLoads(p: MountedTractor): MountedAxleLoads {
  return loadsOnGrade({ ...p, tractorCentreHeight: 0, implementCentreHeight: 0, grade: 0 });
}

/**
 * Axle loads of a tractor with a mounted rig that climbs or descends a grade.
 *
 * @formula moments about the rear wheels' contact: each mass with lever x cos t - h sin t; x ahead of the rear axle, h above ground
 * @param p.tractorMass unladen mass of the tractor with driver, T_L [kg] 100..3e4
 * @param p.frontAxleUnladen front axle load of the unladen tractor on the level, T_V [kg] 0..3e4
 * @param p.wheelbase wheelbase b [m] 0.5..5
 * @param p.axleToHitch rear axle to lower hitch points, c [m] 0..2
 * @param p.hitchToImplement lower hitch points to the rig's centre of mass, d [m] 0..4
 * @param p.implementMass mass of the rig as filled, G_H [kg] 0..3e4
 * @param p.tractorCentreHeight height of the tractor's centre of mass [m] 0..3
 * @param p.implementCentreHeight height of the rig's centre of mass [m] 0..4
 * @param p.grade angle of the grade, positive uphill [rad] -0.7..0.7
 * @param p.ballastMass front ballast G_V; default 0 [kg] 0..1e4
 * @param p.ballastAhead front ballast ahead of the front axle, a; default 0 [m] 0..3
 * @param p.ballastCentreHeight height of the ballast; default the tractor's centre height [m] 0..3
 * @result front load on the front axle, square to the ground; negative when it lifts [kg]
 * @result rear load on the rear axle, square to the ground [kg]
 * @result frontShare front load over unladen tractor mass [-]
 * @result enough whether the share is at least 20 % [yes/no]
 * @valid at rest or at steady speed; pull at the drawbar and liquid shift come on top
 * @throws RangeError when a parameter is outside its range
 * @source Statics
 */
export function threePointAxleLoadsOnGrade(p: MountedSlope): MountedAxleLoads {
  return loadsOnGrade(p);
}

function loadsOnGrade(p: MountedSlope): MountedAxleLoads {
  const { ballastMass = 0, ballastAhead = 0, ballastCentreHeight = p.tractorCentreHeight } = p;
  checkTractor(p);
  inRange('implementMass', p.implementMass, 0, 3e4, 'kg');
  inRange('ballastMass', ballastMass, 0, 1e4, 'kg');
  inRange('ballastAhead', ballastAhead, 0, 3, 'm');
  inRange('tractorCentreHeight', p.tractorCentreHeight, 0, 3, 'm');
  inRange('implementCentreHeight', p.implementCentreHeight, 0, 4, 'm');
  inRange('ballastCentreHeight', ballastCentreHeight, 0, 3, 'm');
  inRange('grade', p.grade, -0.7, 0.7, 'rad');
  const c = Math.cos(p.grade);
  const s = Math.sin(p.grade);
  const tractorAhead = (p.frontAxleUnladen * p.wheelbase) / p.tractorMass;
  const moment =
    p.tractorMass * (tractorAhead * c - p.tractorCentreHeight * s) +
    ballastMass * ((ballastAhead + p.wheelbase) * c - ballastCentreHeight * s) -
    p.implementMass * ((p.axleToHitch + p.hitchToImplement) * c + p.implementCentreHeight * s);
  const front = moment / p.wheelbase;
  const rear = (p.tractorMass + ballastMass + p.implementMass) * c - front;
  const frontShare = front / p.tractorMass;
  return { front, rear, frontShare, enough: frontShare >= AXLE_SHARE_RULE.front * (1 - 1e-9) };
}

/**
 * Least front ballast that keeps a share of the tractor's unladen mass on the front axle.
 *
 * @formula G_V = [G_H (c + d) - T_V b + 0.2 T_L b]/(a + b)
 * @param p.tractorMass unladen mass of the tractor, T_L [kg] 100..3e4
 * @param p.frontAxleUnladen front axle load of the unladen tractor, T_V [kg] 0..3e4
 * @param p.wheelbase wheelbase b [m] 0.5..5
 * @param p.axleToHitch rear axle to lower hitch points, c [m] 0..2
 * @param p.hitchToImplement lower hitch points to the rig's centre of mass, d [m] 0..4
 * @param p.implementMass mass of the rig as filled, G_H [kg] 0..3e4
 * @param p.ballastAhead front ballast ahead of the front axle, a; default 0 [m] 0..3
 * @param p.leastShare least share on the front axle; default 0.2 [-] 0..0.6
 * @returns ballast; 0 when none is needed [kg]
 * @throws RangeError when a parameter is outside its range
 * @source Ballast method of several operators' manuals; statics
 */
export function leastFrontBallast(p: MountedTractor & { readonly leastShare?: number }): number {
  const { ballastAhead = 0, leastShare = AXLE_SHARE_RULE.front } = p;
  checkTractor(p);
  inRange('implementMass', p.implementMass, 0, 3e4, 'kg');
  inRange('ballastAhead', ballastAhead, 0, 3, 'm');
  inRange('leastShare', leastShare, 0, 0.6, '-');
  const missing =
    p.implementMass * (p.axleToHitch + p.hitchToImplement) -
    p.frontAxleUnladen * p.wheelbase +
    leastShare * p.tractorMass * p.wheelbase;
  return Math.max(0, missing / (ballastAhead + p.wheelbase));
}

/**
 * Largest mounted rig that keeps a share of the unladen mass on the front axle without ballast.
 *
 * @formula G_H = b (T_V - 0.2 T_L)/(c + d)
 * @param p.tractorMass unladen mass of the tractor, T_L [kg] 100..3e4
 * @param p.frontAxleUnladen front axle load of the unladen tractor, T_V [kg] 0..3e4
 * @param p.wheelbase wheelbase b [m] 0.5..5
 * @param p.axleToHitch rear axle to lower hitch points, c [m] 0..2
 * @param p.hitchToImplement lower hitch points to the rig's centre of mass, d [m] 0..4
 * @param p.leastShare least share on the front axle; default 0.2 [-] 0..0.6
 * @returns mass of the rig; 0 when the bare tractor already has too little on the front axle [kg]
 * @throws RangeError when a parameter is outside its range
 * @source Ballast method rearranged
 */
export function largestMountedMass(
  p: Omit<MountedTractor, 'implementMass' | 'ballastMass' | 'ballastAhead'> & {
    readonly leastShare?: number;
  },
): number {
  const { leastShare = AXLE_SHARE_RULE.front } = p;
  checkTractor(p);
  inRange('leastShare', leastShare, 0, 0.6, '-');
  const lever = p.axleToHitch + p.hitchToImplement;
  if (lever <= 0) throw new RangeError(`axleToHitch + hitchToImplement is ${lever} m; it must be above 0 m`);
  return Math.max(0, (p.wheelbase * (p.frontAxleUnladen - leastShare * p.tractorMass)) / lever);
}

function checkTractor(p: Omit<MountedTractor, 'implementMass'>): void {
  inRange('tractorMass', p.tractorMass, 100, 3e4, 'kg');
  inRange('frontAxleUnladen', p.frontAxleUnladen, 0, p.tractorMass, 'kg');
  inRange('wheelbase', p.wheelbase, 0.5, 5, 'm');
  inRange('axleToHitch', p.axleToHitch, 0, 2, 'm');
  inRange('hitchToImplement', p.hitchToImplement, 0, 4, 'm');
}
