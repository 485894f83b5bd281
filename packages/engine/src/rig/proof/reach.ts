import { HOLDING_LIMITS, nozzleReaction, reachBand } from '../../physics/index.ts';
import type { Target } from '../brief.ts';
import { arcsOf, askedOf, NO_PATHS, reachTowards, streamOf, type ThrowPaths } from '../gun-throw.ts';
import { compared, unknown, type RigPromise } from '../promise.ts';
import { say, sayGiven, type WorkContext, type ProvenDuty } from './context.ts';
import { hoseWords } from './flow.ts';
import { pushSteps, reachSteps } from './reach-working.ts';
import { throwerOf, type Thrower } from './thrower.ts';

/** What a gun throws in one duty, as drawings and papers show it; three meanings of reach kept apart. */
export interface DutyReach extends ThrowPaths {
  readonly aim: Target['aim'];
  /** Half the water must get there (wetted), or the farthest drops only (touched). */
  readonly meaning: 'wetted' | 'touched';
  /** Asked height or distance [m]. */
  readonly asked: number;
  /** Horizontal distance from the operator to a target that has a height [m]. */
  readonly standoff: number;
  /** Height of a roof's edge, or of the target [m]. */
  readonly height: number;
  readonly farthest: number;
  readonly bulk: number;
  readonly goodStream: number;
  /** Kept nine times in ten [m]. */
  readonly promised: number;
  /** 5 and 95 % of what the promise speaks of [m]. */
  readonly band5: number;
  readonly band95: number;
  readonly sigma: number;
  /** How the gun is held [rad]. */
  readonly elevation: number;
  readonly gunHeight: number;
  /** Push of the gun on the operator [N]. */
  readonly reactionForce: number;
}

const METHOD = 'throw of a jet with its own air, drag and break-up; 9 in 10 from the spread of the model';
const SOURCE =
  'calibrated on Theobald 1981, Box, Trettel 2020 and sprinkler tables; above 8 bar an extrapolation (judgement)';
/** Wind above which no height is promised, and no water test accepted [m/s]. */
const CALM = 3;

/** Throw of a duty's gun towards its target; undefined when the duty has none or its network failed. */
export function reachOf(context: WorkContext, proven: ProvenDuty, arcs: boolean): DutyReach | undefined {
  const { duty, open, liquid } = proven;
  const { target } = duty;
  const thrower = throwerOf(context.rig, context.site, proven);
  if (target === undefined || thrower === undefined) return undefined;
  const { conditions, pressure, flow } = thrower;
  const found = reachTowards(conditions, pressure, target, duty.reach);
  if (found === undefined || open.status === 'failed') return undefined;
  const band = reachBand(found.sigma);
  const middle = duty.reach === 'touched' ? found.farthest : found.bulk;
  const elevation = duty.reach === 'touched' ? found.farthestElevation : found.bulkElevation;
  return {
    aim: target.aim,
    meaning: duty.reach,
    asked: askedOf(target),
    standoff: target.aim === 'height' ? target.standoff : target.distance,
    height: target.aim === 'distance' ? 0 : target.height,
    farthest: found.farthest,
    bulk: found.bulk,
    goodStream: found.goodStream,
    promised: found.promised,
    band5: middle * band.low,
    band95: middle * band.high,
    sigma: found.sigma,
    elevation,
    gunHeight: conditions.tipHeight,
    reactionForce: nozzleReaction(flow, pressure, liquid.density, conditions.tip.velocityCoefficient),
    ...(arcs ? arcsOf(conditions, pressure, elevation, found.sigma) : NO_PATHS),
  };
}

/** Each target is reached nine times in ten, and one person can hold the gun. */
export function reachPromises(
  context: WorkContext,
  reaches: ReadonlyMap<string, DutyReach | undefined>,
): RigPromise[] {
  const out: RigPromise[] = [];
  let hardest: { force: number; duty: string; thrower: Thrower } | undefined;
  for (const proven of context.duties) {
    const thrower = throwerOf(context.rig, context.site, proven);
    if (thrower !== undefined) {
      const force = nozzleReaction(
        thrower.flow,
        thrower.pressure,
        proven.liquid.density,
        thrower.conditions.tip.velocityCoefficient,
      );
      if (hardest === undefined || force > hardest.force)
        hardest = { force, duty: proven.duty.name, thrower };
    }
    if (proven.duty.target !== undefined)
      out.push(reachPromise(context, proven, proven.duty.target, reaches.get(proven.duty.id)));
  }
  if (hardest !== undefined)
    out.push(
      compared(
        {
          id: 'hold',
          kind: 'hold',
          sentence: 'One person can hold the gun, both hands, braced',
          cause: `hardest in "${hardest.duty}"; take half on a ladder or a wet roof`,
          items: [hardest.thrower.items[0]!],
          method: 'push of a jet on its nozzle',
          working: pushSteps(hardest.thrower, hardest.force),
          source: 'momentum theorem; limit of 150 N for a braced person from memory',
        },
        { value: HOLDING_LIMITS.braced, dimension: 'force' },
        { value: hardest.force, dimension: 'force' },
        'at-most',
      ),
    );
  return out;
}

function reachPromise(
  context: WorkContext,
  proven: ProvenDuty,
  target: Target,
  reach: DutyReach | undefined,
): RigPromise {
  const { duty } = proven;
  const asked = { value: askedOf(target), dimension: 'length' as const };
  const told = {
    id: `reach:${duty.id}`,
    kind: 'reach' as const,
    duty: duty.id,
    sentence: sentenceOf(context, target, duty.reach),
    method: METHOD,
    source: SOURCE,
  };
  if (reach === undefined)
    return unknown({ ...told, cause: proven.open.reason ?? 'no gun and tip are open towards it' }, asked);
  const wind = duty.wind ?? context.site.wind;
  const thrower = throwerOf(context.rig, context.site, proven)!;
  const quality = streamOf(thrower.conditions.gun, thrower.conditions.tip);
  const other =
    duty.reach === 'touched'
      ? `half the water gets to ${say(context, reach.bulk, 'length')}`
      : `farthest drops get to ${say(context, reach.farthest, 'length')}`;
  const promise = compared(
    {
      ...told,
      cause: `${say(context, thrower.flow, 'flow')} at ${say(context, thrower.pressure, 'pressure')}, stream quality ${quality}; ${other}`,
      items: thrower.items,
      working: reachSteps(thrower, reach, hoseWords(context, duty)),
      band: [reach.band5, reach.band95],
    },
    asked,
    { value: reach.promised, dimension: 'length' },
    'at-least',
  );
  if (wind <= CALM || promise.state === 'broken') return promise;
  return {
    ...promise,
    state: 'thin',
    cause: `${promise.cause}. Promised for still air only: above ${say(context, CALM, 'speed')} of wind no height is promised`,
  };
}

function sentenceOf(context: WorkContext, target: Target, meaning: 'wetted' | 'touched'): string {
  const verb = meaning === 'wetted' ? 'Wets' : 'Touches';
  const end = 'in still air, 9 times in 10';
  const length = (value: number) => sayGiven(context, value, 'length');
  switch (target.aim) {
    case 'height':
      return `${verb} leaves at ${length(target.height)} from ${length(target.standoff)} off, ${end}`;
    case 'roof':
      return `${verb} a roof ${length(target.height)} up, ${length(target.distance)} away, ${end}`;
    case 'distance':
      return `${verb} ground ${length(target.distance)} away, ${end}`;
  }
}
