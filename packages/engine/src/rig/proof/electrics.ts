import type { PartOf } from '../../catalogue/index.ts';
import {
  CHARGING_COILS,
  chargeBudget,
  coldCapacityShare,
  hoursToDepth,
  PLANNED_DEPTH,
  stateOfCharge,
} from '../../physics/index.ts';
import { looseFactor } from '../loose-inputs.ts';
import { compared, is, unknown, worked, type RigPromise, type Step } from '../promise.ts';
import { first } from '../rig-document.ts';
import { say, type ProofContext } from './context.ts';
import { cablePromises } from './electrics-cable.ts';
import { consumersOf, type Consumer } from './electrics-consumers.ts';

/** Start values of ours for a working day, where the brief tells nothing: common practice, no source. */
const DAY_START = {
  hours: 8,
  rewindsPerHour: 3,
  startsPerDay: 10,
  /** A 12 V pump that runs while the trigger is open. */
  pumpShare: 0.4,
} as const;
/** One start of a small engine: common practice, no source [s]. */
const CRANKING_TIME = 4;

/** Battery through the day, and cable and fuse of each consumer. Nothing for a rig without electrics. */
export function electricsPromises(context: ProofContext): RigPromise[] {
  const consumers = consumersOf(context);
  if (consumers.length === 0) return [];
  return [...dayPromises(context, consumers), ...cablePromises(context, consumers)];
}

function dayPromises(context: ProofContext, consumers: readonly Consumer[]): RigPromise[] {
  const battery = first(context.rig, 'battery');
  const told = {
    id: 'electrics:day',
    kind: 'electrics' as const,
    sentence: 'Battery lives through the day',
    items: consumers.map((c) => c.item),
    method: 'charge drawn and returned over the working day',
    source:
      'charge balance; Peukert; planned depth of 50 %, useful share and acceptance of charging coils from memory',
  };
  const asked = { value: 1 - PLANNED_DEPTH['deep-cycle'], dimension: 'ratio' as const };
  if (battery === undefined) {
    const names = consumers.map((c) => c.name).join(' and ');
    // A 12 V pump on the vehicle's socket is judged by its current alone.
    if (consumers.every((c) => c.use === 'pump')) return [];
    const { supplyCurrent } = context.rig.brief.carrier;
    const most = Math.max(...consumers.map((c) => c.current));
    const has = { value: most, dimension: 'current' as const };
    const without = { ...told, sentence: 'Something feeds the electric drive' };
    return [
      supplyCurrent === undefined
        ? unknown({ ...without, cause: `${names} draws current, but the rig has no battery` }, asked)
        : compared(
            { ...without, cause: `${names} on the vehicle's supply, without a battery of its own` },
            { value: supplyCurrent, dimension: 'current' },
            has,
            'at-most',
          ),
    ];
  }
  return [dayPromise(context, consumers, battery.part, [battery.item.id, ...told.items], told, asked)];
}

/** How a battery stands after the working day. */
export interface ChargeOfDay {
  readonly hours: number;
  /** Share of its rating that it holds at the site's temperature [-]. */
  readonly cold: number;
  /** [A h] */
  readonly capacity: number;
  /** What each consumer takes: hours of each hour at work, and mean current by Peukert [A]. */
  readonly perHour: readonly {
    readonly consumer: Consumer;
    readonly hours: number;
    readonly drawn: number;
  }[];
  /** Mean currents [A]. */
  readonly drawn: number;
  readonly returned: number;
  readonly supply: number;
  readonly net: number;
  /** Share of the battery that is left in the evening [-]. */
  readonly left: number;
}

/** What the consumers of a rig leave of its battery. */
export function chargeOfDay(
  context: ProofContext,
  consumers: readonly Consumer[],
  battery: PartOf<'battery'>,
): ChargeOfDay {
  const c = context.rig.brief.carrier;
  const hours = c.workHours ?? DAY_START.hours;
  const cold = coldCapacityShare(Math.min(60, Math.max(-18, context.site.temperature - 273.15)));
  const capacity = (battery.capacity / 3600) * cold;
  const rated = battery.capacity / 3600 / battery.ratedHours;
  // Peukert: current above the rated one takes more out than it gives.
  const counted = (current: number) =>
    current <= rated ? current : current * (current / rated) ** (battery.peukert - 1);
  const perHour = consumers.map((consumer) => {
    const share = Math.min(1, hoursPerHour(context, consumer, hours));
    return { consumer, hours: share, drawn: counted(consumer.current) * share };
  });
  const budget = chargeBudget({
    rewindCurrent: 0,
    rewindTime: 0,
    rewindsPerHour: 0,
    controlCurrent: Math.min(200, perHour.reduce((sum, p) => sum + p.drawn, 0) + (c.controlCurrent ?? 0)),
    coilCurrent: first(context.rig, 'engine')?.part.chargingCurrent ?? 0,
  });
  const supply = (c.supplyCurrent ?? 0) * CHARGING_COILS.chargeAcceptance;
  const net = budget.net + supply;
  const left = stateOfCharge(capacity, 1, net, hours);
  return {
    hours,
    cold,
    capacity,
    perHour,
    drawn: budget.drawn,
    returned: budget.returned,
    supply,
    net,
    left,
  };
}

function dayPromise(
  context: ProofContext,
  consumers: readonly Consumer[],
  battery: PartOf<'battery'>,
  items: readonly string[],
  told: Pick<RigPromise, 'id' | 'kind' | 'sentence' | 'method' | 'source'>,
  asked: { readonly value: number; readonly dimension: 'ratio' },
): RigPromise {
  const c = context.rig.brief.carrier;
  const day = chargeOfDay(context, consumers, battery);
  const { hours, cold, capacity, perHour, supply, net, left } = day;
  const lasts = hoursToDepth(capacity, PLANNED_DEPTH['deep-cycle'], net);
  const assumed = [
    ...(c.workHours === undefined ? [`${hours} h`] : []),
    ...(c.rewindsPerHour === undefined && consumers.some((x) => x.use === 'reel')
      ? [`${DAY_START.rewindsPerHour} rewinds an hour`]
      : []),
  ];
  const working: Step[] = [
    worked(
      "battery at the site's temperature",
      is(capacity * 3600, 'charge'),
      '{rating} × {share when cold}',
      {
        rating: is(battery.capacity, 'charge'),
        'share when cold': is(cold, 'ratio'),
      },
    ),
    ...perHour.map((p) => ({
      text: `${p.consumer.name}: ${say(context, p.consumer.current, 'current')} for ${(p.hours * 60).toFixed(1)} min an hour, by Peukert`,
      figure: { value: p.drawn, dimension: 'current' as const },
    })),
    { text: 'controls, all day', figure: { value: c.controlCurrent ?? 0, dimension: 'current' } },
    {
      text: 'charging coil, what the battery takes',
      figure: { value: day.returned, dimension: 'current' },
    },
    ...(supply > 0
      ? [
          {
            text: "vehicle's supply, what the battery takes",
            figure: { value: supply, dimension: 'current' as const },
          },
        ]
      : []),
    worked('into the battery, mean', is(net, 'current'), '{returned} − {drawn}', {
      returned: is(day.returned + supply, 'current'),
      drawn: is(day.drawn, 'current'),
    }),
    worked(
      'left at the end of the day',
      is(left, 'ratio'),
      'min(1, max(0, 1 + {mean} × {day} / {battery}))',
      {
        mean: is(net, 'current'),
        day: is(hours * 3600, 'time'),
        battery: is(capacity * 3600, 'charge'),
      },
    ),
  ];
  return compared(
    {
      ...told,
      items,
      cause: `${lasts === null ? 'it is charged faster than it is used' : `half empty after ${lasts.toFixed(1)} h of work`}${assumed.length === 0 ? '' : `; ${assumed.join(' and ')} are start values of ours`}`,
      working,
    },
    asked,
    { value: left, dimension: 'ratio' },
    'at-least',
  );
}

/** Hours that a consumer draws its current in an hour of work. */
function hoursPerHour(context: ProofContext, consumer: Consumer, workHours: number): number {
  const c = context.rig.brief.carrier;
  const more = looseFactor(context.rig, 'charge-use');
  switch (consumer.use) {
    case 'reel':
      return (more * (c.rewindsPerHour ?? DAY_START.rewindsPerHour) * consumer.time) / 3600;
    case 'starter':
      return (more * (c.startsPerDay ?? DAY_START.startsPerDay) * CRANKING_TIME) / 3600 / workHours;
    case 'pump':
      return more * DAY_START.pumpShare;
  }
}
