import type { Catalogue, Part, Shop } from '../../catalogue/index.ts';
import type { CaughtCaution } from '../../physics/index.ts';
import { billFor, type Bill } from '../bill/index.ts';
import type { Duty } from '../brief.ts';
import { plumbingOf } from '../plumbing/index.ts';
import { contactsOf } from '../contacts.ts';
import { supplyFor } from '../rig-supply.ts';
import type { DutyStates } from '../duty-state.ts';
import { inOrder, type PromiseState, type RigPromise } from '../promise.ts';
import type { Rig, RigItem } from '../rig-document.ts';
import { cautionsOf } from './cautions.ts';
import type { ProofContext, ProveOptions, ProvenDuty } from './context.ts';
import { dayOf, dayPromises, type DayProof } from './day.ts';
import { electricsPromises } from './electrics.ts';
import { gaugePromises } from './gauge-scale.ts';
import { guarded } from './guarded.ts';
import { hardwareNeeds } from './hardware.ts';
import { liquidPromises } from './liquid-known.ts';
import { materialPromises } from './materials.ts';
import { billPromises } from './money.ts';
import { placementOf, type Placement } from './placement-data.ts';
import { patternPromises } from './pattern.ts';
import { pumpReservePromises } from './pump-reserve.ts';
import { proveWork } from './prove-work.ts';
import type { DutyReach } from './reach.ts';
import { rinsePromises } from './rinse.ts';
import { fillingPromises } from './rinse-filling.ts';
import type { Site } from './site.ts';
import { stabilityPromises } from './stability.ts';
import { mixOrderPromises } from './mix-order.ts';
import { recipePromises } from './recipe.ts';
import { startValuePromises } from './start-values.ts';
import { strengthPromises } from './strength.ts';
import { structurePromises } from './structure.ts';
import { weightPromises } from './weight.ts';
import { wishPromises } from './wishes.ts';
import { wiringOf, type Wiring } from './wiring.ts';

/** Version of the engine's numbers; it is frozen into every quote. */
export const ENGINE_VERSION = '0.1.0';

/** One duty as a page or paper shows it. */
export interface DutyProof extends DutyStates {
  readonly id: string;
  readonly name: string;
  readonly duty: Duty;
  readonly liquid: string;
  /** Present when a gun has a target. */
  readonly reach?: DutyReach;
}

/** All promises of a rig over all its duties. */
export interface Proof {
  readonly id: string;
  readonly title: string;
  readonly customer: string;
  readonly engineVersion: string;
  readonly catalogue: { readonly name: string; readonly version: number };
  readonly site: Site;
  readonly promises: readonly RigPromise[];
  readonly counts: Readonly<Record<PromiseState, number>>;
  readonly duties: readonly DutyProof[];
  readonly bill: Bill;
  /** Absent when the rig has no carrier. */
  readonly placement?: Placement;
  /** Cautions that the rig and its work bring up, each once. */
  readonly cautions: readonly CaughtCaution[];
  /** The simulated day; absent when its main duty sprays nothing. */
  readonly day?: DayProof;
  /** Cables, fuses and lengths; absent for a rig without electrics, or when they cannot be reckoned. */
  readonly wiring?: Wiring;
  readonly parts: readonly {
    readonly item: string;
    readonly part: string;
    readonly kind: string;
    readonly name: string;
    readonly count: number;
    readonly length?: number;
    /** Who says the figures of a part that is in no catalogue. */
    readonly figuresFrom?: string;
  }[];
}

/** Proves a rig: judges the promises of its work and every other one. */
export function proveRig(rig: Rig, catalogue: Catalogue, shop: Shop, options: ProveOptions = {}): Proof {
  const work = proveWork(rig, options);
  const { site, duties } = work.context;
  const supply = supplyFor(catalogue, contactsOf(rig.brief, site).unsuited);
  const plumbing = plumbingOf(rig, supply, highestPressures(rig, duties));
  const bills = billFor(rig, supply, shop, plumbing);
  const unheld: ProofContext = { ...work.context, bill: bills([]) };
  const bill = bills(hardwareNeeds(unheld));
  const context: ProofContext = { ...unheld, bill };
  const placement = placementOf(context);
  const day = dayOf(context, options.notes ?? true);
  const promises = inOrder([
    ...startValuePromises(context),
    ...wishPromises(context),
    ...work.promises,
    ...gaugePromises(context),
    ...billPromises(context),
    ...liquidPromises(context),
    ...materialPromises(context),
    ...guarded('weight', 'Carrier and vehicle carry the rig', () => weightPromises(context)),
    ...guarded('stability', 'Stays upright on a slope', () => stabilityPromises(context)),
    ...guarded('structure', 'Frame and straps hold the load', () => structurePromises(context)),
    ...guarded('electrics', 'Battery lives through the day', () => electricsPromises(context)),
    ...strengthPromises(context),
    ...recipePromises(context),
    ...mixOrderPromises(context),
    ...pumpReservePromises(context),
    ...guarded('pattern', 'Covers evenly at the right dose', () => patternPromises(context)),
    ...guarded('rinse', 'Can be filled, rinsed and put away clean', () => [
      ...fillingPromises(context),
      ...rinsePromises(context),
    ]),
    ...dayPromises(context, day),
  ]);
  return {
    id: rig.document.id,
    title: rig.document.title,
    customer: rig.brief.customer,
    engineVersion: ENGINE_VERSION,
    catalogue: { name: catalogue.name, version: catalogue.version },
    site,
    promises,
    counts: countStates(promises),
    duties: duties.map(({ duty, liquid, open, dirty, shut }) => {
      const reach = work.reaches.get(duty.id);
      return {
        id: duty.id,
        name: duty.name,
        duty,
        liquid: liquid.name,
        open,
        dirty,
        shut,
        ...(reach === undefined ? {} : { reach }),
      };
    }),
    bill,
    ...(placement === undefined ? {} : { placement }),
    cautions: cautionsOf(context),
    ...('reason' in day ? {} : { day }),
    ...wired(context),
    parts: [...rig.items.values()].map(({ item, part }) => provenPart(rig, item, part)),
  };
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** Field by field, not spread: there are dozens of them in every proof. */
function provenPart(rig: Rig, item: RigItem, part: Part): Proof['parts'][number] {
  const proven: Writable<Proof['parts'][number]> = {
    item: item.id,
    part: part.id,
    kind: part.kind,
    name: part.name,
    count: item.count,
  };
  if (item.length !== undefined) proven.length = item.length;
  const own = rig.ownParts.get(part.id);
  if (own !== undefined) proven.figuresFrom = own.figuresFrom;
  return proven;
}

/** Out of range for the physics is told by the promise; there is then no wiring to show. */
function wired(context: ProofContext): { wiring?: Wiring } {
  try {
    const wiring = wiringOf(context);
    return wiring === undefined ? {} : { wiring };
  } catch (error) {
    if (error instanceof RangeError) return {};
    throw error;
  }
}

/** Highest gauge pressure at each item over all duties; the rating of one that no solve reached [Pa]. */
function highestPressures(rig: Rig, duties: readonly ProvenDuty[]): (item: string) => number {
  const highest = new Map<string, number>();
  for (const { open, shut } of duties)
    for (const { pressureAt } of [open, shut])
      pressureAt.forEach((p, item) => {
        const before = highest.get(item);
        if (before === undefined || p > before) highest.set(item, Math.max(p, 0));
      });
  return (item) => {
    const { part } = rig.items.get(item)!;
    return highest.get(item) ?? ('maxPressure' in part ? part.maxPressure : 0);
  };
}

function countStates(promises: readonly RigPromise[]): Record<PromiseState, number> {
  const counts: Record<PromiseState, number> = { broken: 0, thin: 0, unknown: 0, kept: 0 };
  for (const p of promises) counts[p.state]++;
  return counts;
}
