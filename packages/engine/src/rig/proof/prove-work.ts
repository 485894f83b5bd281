import { driveOf } from '../drive.ts';
import { dutySolver } from '../duty-state.ts';
import { first, type Rig } from '../rig-document.ts';
import type { RigPromise } from '../promise.ts';
import { agitationPromises } from './agitation.ts';
import type { ProveOptions, ProvenDuty, WorkContext } from './context.ts';
import { flowPromises } from './flow.ts';
import { liquidOf } from './liquid.ts';
import { powerPromises } from './power.ts';
import { ratingPromises } from './rating.ts';
import { reachOf, reachPromises, type DutyReach } from './reach.ts';
import { siteOf } from './site.ts';
import { suctionPromises } from './suction.ts';

/** A rig at its work: its solved duties, what its guns throw, and the promises that follow from these alone. */
interface ProvenWork {
  readonly context: WorkContext;
  /** By duty. */
  readonly reaches: ReadonlyMap<string, DutyReach | undefined>;
  /** Of reach, flow, suction, pressure, power and agitation. */
  readonly promises: readonly RigPromise[];
}

/** Solves every duty with the strainer clean and dirty and with the outlets shut, and judges what is promised of the work itself. */
export function proveWork(rig: Rig, options: ProveOptions = {}): ProvenWork {
  const site = siteOf(rig.brief);
  const notes = options.notes ?? true;
  const solve = (options.solver ?? dutySolver)(rig, notes);
  const duties = rig.brief.duties.map((duty): ProvenDuty => {
    const liquid = liquidOf(rig.brief, duty.liquid, site);
    return { duty, liquid, ...solve(duty, liquid) };
  });
  const context: WorkContext = {
    rig,
    site,
    drive: driveOf(rig),
    tank: first(rig, 'tank')!.part,
    duties,
    units: options.units ?? 'us',
  };
  const reaches = new Map(duties.map((d) => [d.duty.id, reachOf(context, d, notes)]));
  const promises = [
    ...reachPromises(context, reaches),
    ...flowPromises(context),
    ...suctionPromises(context),
    ...ratingPromises(context),
    ...powerPromises(context),
    ...agitationPromises(context),
  ];
  return { context, reaches, promises };
}
