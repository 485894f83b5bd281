import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { FOOT, POUND, POUND_FORCE, STANDARD_GRAVITY } from '../us-measure.ts';
import {
  AGGREGATE_WLL_SHARE,
  DEFAULT_WLL_LB,
  DOWNWARD_SHARE,
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
 * @formula F = k m g; breaking strength: 0.8 forward, 0.5 rearward, 0.5 sideways; working load limit: 0.435, 0.5, 0.25
 * @param mass mass of the load as carried [kg] 0..1e6
 * @param set which set of accelerations [one of breaking, working-load]
 * @result forward force against sliding forward [N]
 * @result rearward force against sliding back [N]
 * @result sideways force against sliding sideways [N]
 * @result downward hold-down when the vehicle does not contain the load: 20 % of the weight [N]
 * @result aggregateWorkingLoad least sum of working load limits: half the weight [N]
 * @result strengthBasis strength to compare forward, rearward and sideways with [one of breaking strength, working load limit]
 * @valid each set goes with its own strength only
 * @throws RangeError when a parameter is outside its range
 * @source 49 CFR 393.102; aggregate: 49 CFR 393.106
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
    downward: DOWNWARD_SHARE * weight,
    aggregateWorkingLoad: AGGREGATE_WLL_SHARE * weight,
    strengthBasis: k.strengthBasis,
  };
}

export interface RestraintForces {
  readonly forward: number;
  readonly rearward: number;
  readonly sideways: number;
  readonly downward: number;
  readonly aggregateWorkingLoad: number;
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
