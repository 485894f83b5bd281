import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { FOOT, POUND, POUND_FORCE, STANDARD_GRAVITY } from '../us-measure.ts';
import {
  AGGREGATE_WLL_SHARE,
  DEFAULT_WLL_LB,
  RESTRAINT_SETS,
  TIEDOWN_COUNT_FACTOR,
  TIEDOWN_NUMBER,
  type RestraintSet,
  type RestraintSetId,
} from './restraint.data.ts';

/** Forgives the rounding of a limit that was typed in feet or pounds. */
const ROUNDING = 1e-9;

/**
 * Forces that hold a load on its carrier, with the strength they must be compared with.
 *
 * @formula F = k m g; forward, rearward, sideways: 0.8, 0.5, 0.5; working load limit in the United States: 0.435, 0.5, 0.25
 * @param mass mass of the load as carried [kg] 0..1e6
 * @param set rule and strength: United States by breaking strength or by working load limit; Australia and Europe by lashing capacity [one of breaking, working-load, australia, europe]
 * @result forward force against sliding forward [N]
 * @result rearward force against sliding back [N]
 * @result sideways force against sliding sideways [N]
 * @result sidewaysTipping force against tipping sideways, for a load that tips before it slides [N]
 * @result downward hold-down when nothing else keeps the load from lifting; 0 where the rule asks none [N]
 * @result aggregateWorkingLoad least sum of working load limits; 0 where the rule asks none [N]
 * @result strengthBasis strength to compare forward, rearward and sideways with [one of breaking strength, working load limit, lashing capacity]
 * @valid each set goes with its own strength only. The European rule does not hold for vehicles of 3.5 t and less: they brake and corner harder
 * @throws RangeError when a parameter is outside its range
 * @source 49 CFR 393.102, 393.106; National Transport Commission (Australia), Load Restraint Guide 2018; EN 12195-1:2010 as told by others
 */
export function restraintForces(mass: number, set: RestraintSetId): RestraintForces {
  inRange('mass', mass, 0, 1e6, 'kg');
  oneOfChoices('set', set, Object.keys(RESTRAINT_SETS));
  const weight = mass * STANDARD_GRAVITY;
  const k: RestraintSet = RESTRAINT_SETS[set];
  return {
    forward: k.forward * weight,
    rearward: k.rearward * weight,
    sideways: k.sideways * weight,
    sidewaysTipping: (k.sidewaysTipping ?? k.sideways) * weight,
    downward: k.downward * weight,
    aggregateWorkingLoad: k.aggregate * weight,
    strengthBasis: k.strengthBasis,
  };
}

export interface RestraintForces {
  readonly forward: number;
  readonly rearward: number;
  readonly sideways: number;
  readonly sidewaysTipping: number;
  readonly downward: number;
  readonly aggregateWorkingLoad: number;
  readonly strengthBasis: RestraintSet['strengthBasis'];
}

/**
 * Number of lashings that run from the load straight to the vehicle and keep it from sliding one way.
 *
 * @formula n = ceil((k - μ) m g / (S (cos α cos β + μ sin α)))
 * @param p.mass mass of the load [kg] 0..1e6
 * @param p.set rule and strength [one of breaking, working-load, australia, europe]
 * @param p.direction way in which the load would slide [one of forward, rearward, sideways]
 * @param p.strength strength of one lashing, of the kind that goes with the rule: its weakest part or anchor [N] 1..1e6
 * @param p.slope angle of the lashing above the floor [rad] 0..1.55
 * @param p.turn angle in plan between the lashing and the way the load would slide [rad] 0..1.55
 * @param p.friction friction under the load that is relied on; default none [-] 0..0.8
 * @result needed force that the lashings must hold, friction taken off [N]
 * @result each what one lashing holds of it [N]
 * @result number lashings that pull against this way; those of the other ways come besides [-]
 * @result strengthBasis kind of strength that was asked for [one of breaking strength, working load limit, lashing capacity]
 * @valid lashings that are tight and alike; for tipping reckon the moment besides. In the United States the sum of working load limits and the number by length hold besides
 * @throws RangeError when a parameter is outside its range
 * @source Statics; accelerations as restraintForces
 */
export function directLashings(p: DirectLashingsInput): DirectLashings {
  const { friction = 0 } = p;
  inRange('mass', p.mass, 0, 1e6, 'kg');
  oneOfChoices('set', p.set, Object.keys(RESTRAINT_SETS));
  oneOfChoices('direction', p.direction, ['forward', 'rearward', 'sideways']);
  inRange('strength', p.strength, 1, 1e6, 'N');
  inRange('slope', p.slope, 0, 1.55, 'rad');
  inRange('turn', p.turn, 0, 1.55, 'rad');
  inRange('friction', friction, 0, 0.8, '-');
  const rule = RESTRAINT_SETS[p.set];
  const needed = Math.max(0, rule[p.direction] - friction) * p.mass * STANDARD_GRAVITY;
  const each = p.strength * (Math.cos(p.slope) * Math.cos(p.turn) + friction * Math.sin(p.slope));
  return {
    needed,
    each,
    number: Math.ceil((needed / each) * (1 - ROUNDING)),
    strengthBasis: rule.strengthBasis,
  };
}

export interface DirectLashingsInput {
  readonly mass: number;
  readonly set: RestraintSetId;
  readonly direction: 'forward' | 'rearward' | 'sideways';
  readonly strength: number;
  readonly slope: number;
  readonly turn: number;
  readonly friction?: number;
}

export interface DirectLashings {
  readonly needed: number;
  readonly each: number;
  readonly number: number;
  readonly strengthBasis: RestraintSet['strengthBasis'];
}

/**
 * Least number of tiedowns by the length and weight of a load.
 *
 * @formula not blocked: 1 to 5 ft and 1100 lb, 2 to 10 ft, one more per 10 ft or part; blocked: one per 10 ft or part
 * @param length length of the load along the vehicle [m] 0.01..40
 * @param mass mass of the load [kg] 0..1e6
 * @param blockedForward whether something keeps it from moving forward [yes/no]
 * @returns number of tiedowns [-]
 * @valid beside the sum of working load limits: the larger number counts
 * @throws RangeError when a parameter is outside its range
 * @source 49 CFR 393.110 as told in the agency's cargo securement rules
 */
export function tiedownNumber(length: number, mass: number, blockedForward: boolean): number {
  inRange('length', length, 0.01, 40, 'm');
  inRange('mass', mass, 0, 1e6, 'kg');
  const feet = (length / FOOT) * (1 - ROUNDING);
  const tens = Math.ceil(feet / TIEDOWN_NUMBER.perFt);
  if (blockedForward) return tens;
  const light = mass <= TIEDOWN_NUMBER.lightLb * POUND * (1 + ROUNDING);
  if (feet <= TIEDOWN_NUMBER.shortFt) return light ? 1 : 2;
  return 1 + tens;
}

/**
 * Number of equal tiedowns whose working load limits add up to what the load asks.
 *
 * @formula n = ceil(m g / 2 / (f WLL)), f = 1/2 from anchor to the load, 1 over the load to the far side
 * @param mass mass of the load [kg] 0..1e6
 * @param workingLoad working load limit of one tiedown: its weakest part or anchor [N] 1..1e6
 * @param run how each tiedown runs [one of direct, over]
 * @result needed sum of working load limits asked [N]
 * @result number number of tiedowns for it [-]
 * @valid the number of tiedowns by length and weight still applies
 * @throws RangeError when a parameter is outside its range
 * @source 49 CFR 393.106(d)
 */
export function tiedownsForWorkingLoad(
  mass: number,
  workingLoad: number,
  run: 'direct' | 'over',
): TiedownsNeeded {
  inRange('mass', mass, 0, 1e6, 'kg');
  inRange('workingLoad', workingLoad, 1, 1e6, 'N');
  oneOfChoices('run', run, Object.keys(TIEDOWN_COUNT_FACTOR));
  const needed = AGGREGATE_WLL_SHARE * mass * STANDARD_GRAVITY;
  return { needed, number: Math.ceil((needed / (TIEDOWN_COUNT_FACTOR[run] * workingLoad)) * (1 - ROUNDING)) };
}

export interface TiedownsNeeded {
  readonly needed: number;
  readonly number: number;
}

export type ChainSize = keyof typeof DEFAULT_WLL_LB.chain;
export type ChainGrade = '30' | '43' | '70' | '80' | '100';

/**
 * Working load limit of a chain.
 *
 * @formula table
 * @param size size of the chain, inch [one of 1/4, 5/16, 3/8, 7/16, 1/2, 5/8]
 * @param grade grade marked on it; unmarked is 30 [one of 30, 43, 70, 80, 100]
 * @returns working load limit [N]
 * @valid 7/16 in grades 80 and 100 are not printed: refused
 * @throws RangeError when size or grade is not in the table
 * @source 49 CFR 393.108; 5/16 in grade 80 below grade 70 is as printed
 */
export function chainWorkingLoad(size: ChainSize, grade: ChainGrade): number {
  oneOfChoices('size', size, Object.keys(DEFAULT_WLL_LB.chain));
  const row: Partial<Record<ChainGrade, number>> = DEFAULT_WLL_LB.chain[size];
  const pounds = row[grade];
  if (pounds === undefined)
    throw new RangeError(
      `grade is '${grade}'; for ${size} in chain it must be one of ${Object.keys(row).join(', ')}`,
    );
  return pounds * POUND_FORCE;
}

/**
 * Working load limit of unmarked synthetic webbing.
 *
 * @formula table
 * @param width width of the webbing, inch [one of 1-3/4, 2, 3, 4]
 * @returns working load limit [N]
 * @throws RangeError when the width is not in the table
 * @source 49 CFR 393.108
 */
export function webbingWorkingLoad(width: keyof typeof DEFAULT_WLL_LB.webbing): number {
  oneOfChoices('width', width, Object.keys(DEFAULT_WLL_LB.webbing));
  return DEFAULT_WLL_LB.webbing[width] * POUND_FORCE;
}

/**
 * Working load limit of unmarked wire rope, 6x37.
 *
 * @formula table
 * @param diameter diameter of the rope, inch [one of 1/4, 5/16, 3/8, 7/16, 1/2, 5/8, 3/4]
 * @returns working load limit [N]
 * @throws RangeError when the diameter is not in the table
 * @source 49 CFR 393.108
 */
export function wireRopeWorkingLoad(diameter: keyof typeof DEFAULT_WLL_LB.wireRope): number {
  oneOfChoices('diameter', diameter, Object.keys(DEFAULT_WLL_LB.wireRope));
  return DEFAULT_WLL_LB.wireRope[diameter] * POUND_FORCE;
}
