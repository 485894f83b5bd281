import type { Shop } from '@spraywright/engine/catalogue';
import {
  buildCalendar,
  workingDaysAfter,
  type PlannedBuild,
  type WeekOfBuilds,
} from '@spraywright/engine/rig';
import type { FrozenQuote } from '../../documents/quote/frozen-quote.ts';
import type { BuildToDo } from '../../store/index.ts';

/** A build with when it is done. */
interface PlacedBuild {
  readonly quote: string;
  readonly job: string;
  readonly title: string;
  readonly customer: string;
  readonly serials: readonly string[];
  readonly acceptedOn: string;
  readonly hours: number;
  readonly partsOn: string;
  readonly ready: string;
  /** Absent when the shop does not plan by hours. */
  readonly weeks: readonly { readonly monday: string; readonly hours: number }[];
}

export interface ShopPlan {
  readonly hoursPerWeek?: number;
  readonly builds: readonly PlacedBuild[];
  readonly weeks: readonly WeekOfBuilds[];
}

/** Lays what is to be built into the weeks of the shop; without its hours each build is ready by its own days alone. */
export function shopPlan(toDo: readonly BuildToDo[], shop: Shop, today: string): ShopPlan {
  const builds = toDo.map((build) => ({ build, planned: plannedOf(build, shop) }));
  const { hoursPerWeek } = shop;
  const { plans, weeks } =
    hoursPerWeek === undefined
      ? { plans: [], weeks: [] }
      : buildCalendar(
          builds.map((b) => b.planned),
          hoursPerWeek,
          today,
        );
  return {
    ...(hoursPerWeek === undefined ? {} : { hoursPerWeek }),
    weeks,
    builds: builds.map(({ build, planned }, i) => ({
      quote: build.quote,
      job: build.job,
      title: build.title,
      customer: build.customer,
      serials: build.serials,
      acceptedOn: build.acceptedAt.slice(0, 10),
      hours: planned.hours,
      partsOn: planned.partsOn,
      ready: plans[i]?.ready ?? workingDaysAfter(planned.partsOn, planned.leastDays),
      weeks: plans[i]?.weeks ?? [],
    })),
  };
}

/** What a new rig would add. */
export interface NewBuild {
  readonly labourHours: number;
  readonly partsInDays: number;
}

/** Day on which a rig is ready that is ordered today, behind everything that is to be built. */
export function promisedDay(
  toDo: readonly BuildToDo[],
  shop: Shop,
  today: string,
  { labourHours, partsInDays }: NewBuild,
): string {
  const partsOn = workingDaysAfter(today, partsInDays);
  if (shop.hoursPerWeek === undefined) return workingDaysAfter(partsOn, shop.assemblyDays);
  const own: PlannedBuild = { id: 'new', hours: labourHours, partsOn, leastDays: shop.assemblyDays };
  const { plans } = buildCalendar([...toDo.map((b) => plannedOf(b, shop)), own], shop.hoursPerWeek, today);
  return plans.at(-1)!.ready;
}

function plannedOf({ quote, document, option, acceptedAt }: BuildToDo, shop: Shop): PlannedBuild {
  const frozen = document as FrozenQuote;
  const chosen = frozen.options.find((o) => o.name === option) ?? frozen.options[0]!;
  const { labourHours, partsInDays } = chosen.summary;
  return {
    id: quote,
    hours: labourHours,
    partsOn: workingDaysAfter(acceptedAt.slice(0, 10), partsInDays),
    leastDays: shop.assemblyDays,
  };
}
