import { airGap, BACKFLOW_RULES, hopperTime, fillTime } from '../../physics/index.ts';
import type { PartOf } from '../../catalogue/index.ts';
import type { Brief } from '../brief.ts';
import { looseFactor } from '../loose-inputs.ts';
import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import { first } from '../rig-document.ts';
import { say, type ProofContext, type ProvenDuty } from './context.ts';
import { orUnknown } from './out-of-range.ts';

/** Time to open, pour and set aside one container, and water to rinse it out: common practice, no source. */
const OPENING = 60;
const CONTAINER_RINSE_SHARE = 0.25;

/** Filling keeps the mix out of the water, and transfers and product take no longer than asked. */
export function fillingPromises(context: ProofContext): RigPromise[] {
  return [...backflowPromises(context), ...transferPromises(context), ...hopperPromises(context)];
}

function backflowPromises(context: ProofContext): RigPromise[] {
  const { fill } = context.rig.brief;
  const told = {
    id: 'rinse:backflow',
    kind: 'rinse' as const,
    sentence: 'The mix cannot run back into the water it is filled from',
    method: 'air gap or approved backflow device',
    source: BACKFLOW_RULES.map((r) => `${r.origin.source}: ${r.accepted.join(' or ')}`).join('; '),
    items: ['tank'],
    working: [{ text: 'the water supplier and local code decide which device is approved' }],
  };
  if (fill === undefined)
    return [
      unknown({ ...told, cause: 'say where the water comes from and what stands between it and the tank' }),
    ];
  const bore = fill.bore ?? 0.0254;
  const gap = say(context, airGap(Math.min(0.3, Math.max(0.001, bore))), 'length');
  const { protection } = fill;
  if (protection === undefined)
    return [
      unknown({
        ...told,
        cause: `say whether it fills over an air gap of ${gap} or through an approved device`,
      }),
    ];
  switch (protection) {
    case 'none':
      return [
        {
          ...told,
          state: 'broken',
          sense: 'at-least',
          cause: `nothing stands between: leave an air gap of ${gap} over the rim`,
        },
      ];
    case 'air-gap':
      return [
        {
          ...told,
          state: 'kept',
          sense: 'at-least',
          cause: `filled over an air gap of at least ${gap}, twice the bore`,
        },
      ];
    case 'reduced-pressure-assembly':
      return [
        {
          ...told,
          state: 'kept',
          sense: 'at-least',
          cause:
            'filled through a reduced-pressure assembly at the hydrant, as the customer says; it is tested every year',
        },
      ];
  }
}

/** Another sprayer is filled in the time asked. */
function transferPromises(context: ProofContext): RigPromise[] {
  const { transfer } = context.rig.brief;
  if (transfer === undefined) return [];
  const proven = context.duties.find((d) => d.duty.id === transfer.duty);
  const flow = proven?.open.outlets.reduce((sum, o) => sum + o.flow, 0) ?? 0;
  const told = {
    id: 'day:transfer',
    kind: 'day' as const,
    duty: transfer.duty,
    sentence: `Fills ${say(context, transfer.volume, 'volume')} into another sprayer in time`,
    method: 'volume over flow',
    source: 'definition',
  };
  const asked = { value: transfer.within, dimension: 'time' as const };
  if (!(flow > 0))
    return [unknown({ ...told, cause: proven?.open.reason ?? 'nothing comes out' }, asked, 'at-most')];
  return [
    orUnknown(
      told,
      () =>
        compared(
          {
            ...told,
            cause: `${say(context, flow, 'flow')} through the transfer hose`,
            working: [
              worked('time', is(fillTime(transfer.volume, flow), 'time'), '{volume} / {flow}', {
                volume: is(transfer.volume, 'volume'),
                flow: is(flow, 'flow'),
              }),
            ],
          },
          asked,
          { value: fillTime(transfer.volume, flow), dimension: 'time' },
          'at-most',
        ),
      asked,
      'at-most',
    ),
  ];
}

/** Product is taken in through the hopper in the time asked. */
function hopperPromises(context: ProofContext): RigPromise[] {
  const { hopper } = context.rig.brief;
  if (hopper === undefined) return [];
  const eductor = first(context.rig, 'eductor');
  const told = {
    id: 'day:hopper',
    kind: 'day' as const,
    sentence: `Takes in ${say(context, hopper.product, 'volume')} of product in time`,
    method: 'suction of the eductor at its motive pressure',
    source:
      'suction curve of the catalogue; opening a container 60 s and rinsing it a quarter: common practice, no source',
    items: eductor === undefined ? [] : [eductor.item.id],
  };
  const asked = { value: hopper.within, dimension: 'time' as const };
  if (eductor === undefined)
    return [
      unknown({ ...told, cause: 'the rig has no eductor: say how the product gets in' }, asked, 'at-most'),
    ];
  const motive = dutiesToMix(context).reduce(
    (most, d) => Math.max(most, d.open.pressureAt.get(eductor.item.id) ?? 0),
    0,
  );
  const suction = suctionAt(eductor.part, motive);
  if (suction === undefined)
    return [
      unknown(
        {
          ...told,
          cause:
            motive > 0
              ? `at ${say(context, motive, 'pressure')} in front of the eductor its curve says nothing`
              : 'in no duty is the eductor open',
        },
        asked,
        'at-most',
      ),
    ];
  const each = hopper.product / hopper.containers;
  const opening = OPENING * looseFactor(context.rig, 'pouring');
  return [
    orUnknown(
      told,
      () => {
        const time = timeAtHopper(context, hopper, suction);
        return compared(
          {
            ...told,
            cause: `${say(context, motive, 'pressure')} in front of the eductor draws ${say(context, suction, 'flow')} from ${hopper.containers === 1 ? 'one container' : `${hopper.containers} containers`}`,
            working: [
              { text: 'suction of the eductor', figure: { value: suction, dimension: 'flow' } },
              worked(
                'time',
                is(time, 'time'),
                '{product} / {suction} + {containers} × ({opening} + 0.25 × {container} / {suction})',
                {
                  product: is(hopper.product, 'volume'),
                  suction: is(suction, 'flow'),
                  containers: is(hopper.containers, 'count'),
                  opening: is(opening, 'time'),
                  container: is(each, 'volume'),
                },
              ),
              { text: 'powders go slower: unknown' },
            ],
          },
          asked,
          {
            value: time,
            dimension: 'time',
          },
          'at-most',
        );
      },
      asked,
      'at-most',
    ),
  ];
}

/** Duties in which the eductor may be fed. */
export function dutiesToMix(context: ProofContext): ProvenDuty[] {
  return context.duties.filter((d) => d.duty.agitate && d.open.status === 'converged');
}

/** Time for all product of a load at a suction [s]. */
export function timeAtHopper(
  { rig }: ProofContext,
  { product, containers }: NonNullable<Brief['hopper']>,
  suction: number,
): number {
  const opening = OPENING * looseFactor(rig, 'pouring');
  return hopperTime(product, suction, containers, opening, CONTAINER_RINSE_SHARE * (product / containers));
}

/** Straight between the points of the curve; undefined below it, its last value above it. */
export function suctionAt({ suction }: PartOf<'eductor'>, pressure: number): number | undefined {
  const curve = [...suction].sort((a, b) => a.motivePressure - b.motivePressure);
  const above = curve.findIndex((p) => p.motivePressure >= pressure);
  if (above === -1) return curve[curve.length - 1]?.flow;
  const high = curve[above]!;
  const low = curve[above - 1];
  if (low === undefined) return high.motivePressure === pressure ? high.flow : undefined;
  const part = (pressure - low.motivePressure) / (high.motivePressure - low.motivePressure);
  return low.flow + part * (high.flow - low.flow);
}
