import { inRange } from '../in-range.ts';
import { STANDARD_GRAVITY } from '../us-measure.ts';
import { wholeInRange } from '../whole-in-range.ts';

/** Dynamic factors on static loads: common practice, no code was found. */
export const DYNAMIC_FACTOR = { roadRail: 2, tongue: 3, offRoadLow: 2.5, offRoadHigh: 3 } as const;

/**
 * Bending of the rails under a tank, each carrying its share evenly between two supports.
 *
 * @formula F = k m g / n; M = F L / 8
 * @param mass mass carried by all rails [kg] 0..1e6
 * @param rails number of equal rails [-] 1..8
 * @param span clear span between supports [m] 0.05..20
 * @param dynamicFactor factor for bumps and braking; default 2 [-] 1..6
 * @result loadPerRail load on one rail, dynamic factor in [N]
 * @result moment largest bending moment in one rail [N.m]
 * @valid estimate: a qualified person must approve the frame. The factor of 2 is common practice, no code
 * @throws RangeError when a parameter is outside its range
 * @source M = w L²/8, beam tables
 */
export function railBending(mass: number, rails: number, span: number, dynamicFactor = 2): RailBending {
  inRange('mass', mass, 0, 1e6, 'kg');
  wholeInRange('rails', rails, 1, 8);
  inRange('span', span, 0.05, 20, 'm');
  inRange('dynamicFactor', dynamicFactor, 1, 6, '-');
  const loadPerRail = (mass * STANDARD_GRAVITY * dynamicFactor) / rails;
  return { loadPerRail, moment: (loadPerRail * span) / 8 };
}

export interface RailBending {
  readonly loadPerRail: number;
  readonly moment: number;
}

/**
 * Bending of an evenly loaded rail that hangs over both supports by the same length.
 *
 * @formula support M = -w a²/2; midspan M = w (L - 2a)²/8 - w a²/2
 * @param totalLength whole length of the rail [m] 0.1..30
 * @param overhang length beyond each support [m] 0..15
 * @param load load per length [N/m] 0..1e6
 * @result supportMoment moment over a support, negative: hogging [N.m]
 * @result midspanMoment moment at midspan [N.m]
 * @result bestOverhang overhang that makes both equal: 0.2071 of the length [m]
 * @throws RangeError when a parameter is outside its range
 * @source Beam statics; equal moments at a = (√2 - 1)/2 L
 */
export function overhangingRail(totalLength: number, overhang: number, load: number): OverhangingRail {
  inRange('totalLength', totalLength, 0.1, 30, 'm');
  inRange('overhang', overhang, 0, totalLength / 2, 'm');
  inRange('load', load, 0, 1e6, 'N/m');
  const supportMoment = overhang === 0 ? 0 : (-load * overhang ** 2) / 2;
  return {
    supportMoment,
    midspanMoment: (load * (totalLength - 2 * overhang) ** 2) / 8 + supportMoment,
    bestOverhang: (totalLength * (Math.SQRT2 - 1)) / 2,
  };
}

export interface OverhangingRail {
  readonly supportMoment: number;
  readonly midspanMoment: number;
  readonly bestOverhang: number;
}

/**
 * Sag at midspan of an evenly loaded beam on two supports.
 *
 * @formula y = 5 F L³/(384 E I)
 * @param load whole load on the beam [N] 0..1e7
 * @param span span [m] 0.05..20
 * @param elasticity modulus of elasticity [Pa] 1e9..3e11
 * @param inertia second moment of the section [m4] 1e-12..1
 * @returns sag [m]
 * @valid a limit such as span/240 is common practice; no code value for light trailers was found
 * @throws RangeError when a parameter is outside its range
 * @source Beam tables, 5 w L⁴/(384 E I)
 */
export function evenLoadSag(load: number, span: number, elasticity: number, inertia: number): number {
  inRange('load', load, 0, 1e7, 'N');
  inRange('span', span, 0.05, 20, 'm');
  inRange('elasticity', elasticity, 1e9, 3e11, 'Pa');
  inRange('inertia', inertia, 1e-12, 1, 'm4');
  return (5 * load * span ** 3) / (384 * elasticity * inertia);
}

/**
 * Bending of a trailer tongue that stands out from the frame.
 *
 * @formula M = k F L; σ = M/(n S)
 * @param tongueLoad load on the coupler [N] 0..1e6
 * @param cantilever length from the frame's front cross-member to the coupler [m] 0.05..10
 * @param members number of equal members [-] 1..4
 * @param modulus section modulus of one member [m3] 1e-9..0.1
 * @param dynamicFactor factor for bumps; default 3 [-] 1..6
 * @result moment moment at the frame [N.m]
 * @result stress bending stress [Pa]
 * @valid estimate: a qualified person must approve the frame. The factor of 3 is common practice, no code
 * @throws RangeError when a parameter is outside its range
 * @source Statics of a cantilever
 */
export function tongueBending(
  tongueLoad: number,
  cantilever: number,
  members: number,
  modulus: number,
  dynamicFactor = 3,
): { moment: number; stress: number } {
  inRange('tongueLoad', tongueLoad, 0, 1e6, 'N');
  inRange('cantilever', cantilever, 0.05, 10, 'm');
  wholeInRange('members', members, 1, 4);
  inRange('dynamicFactor', dynamicFactor, 1, 6, '-');
  const moment = dynamicFactor * tongueLoad * cantilever;
  return { moment, stress: bendingStress(moment, modulus) / members };
}

/**
 * Largest bending stress in a section.
 *
 * @formula σ = M / S
 * @param moment bending moment [N.m] -1e8..1e8
 * @param modulus section modulus [m3] 1e-9..0.1
 * @returns stress, without sign [Pa]
 * @throws RangeError when a parameter is outside its range
 * @source Euler-Bernoulli bending
 */
export function bendingStress(moment: number, modulus: number): number {
  inRange('moment', moment, -1e8, 1e8, 'N.m');
  inRange('modulus', modulus, 1e-9, 0.1, 'm3');
  return Math.abs(moment) / modulus;
}

/**
 * Section modulus that keeps a moment within an allowable stress.
 *
 * @formula S = M / σ
 * @param moment bending moment [N.m] -1e8..1e8
 * @param allowable allowable stress [Pa] 1e5..1e10
 * @returns section modulus [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Euler-Bernoulli bending
 */
export function sectionModulusFor(moment: number, allowable: number): number {
  inRange('moment', moment, -1e8, 1e8, 'N.m');
  inRange('allowable', allowable, 1e5, 1e10, 'Pa');
  return Math.abs(moment) / allowable;
}
