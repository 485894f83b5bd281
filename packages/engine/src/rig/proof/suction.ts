import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import { first } from '../rig-document.ts';
import { say, type WorkContext } from './context.ts';
import type { DutyLiquid } from './liquid.ts';
import type { Site } from './site.ts';

const G = 9.80665;
/** Water of specific gravity 1 [kg/m3]. */
const WATER = 1000;

/** Pressure of the air less that of the vapour, as a head of the liquid [m]. */
function airHeadOf(site: Site, liquid: DutyLiquid): number {
  return (site.airPressure - liquid.vapourPressure) / (liquid.density * G);
}

/** Net positive suction head available at a gauge pressure at the pump's inlet [m]. */
export function headAvailable(site: Site, liquid: DutyLiquid, inlet: number): number {
  return inlet / (liquid.density * G) + airHeadOf(site, liquid);
}

/** The pump never starves, with the strainer dirty and the tank at its lowest; the suction hose does not collapse. */
export function suctionPromises(context: WorkContext): RigPromise[] {
  const pump = first(context.rig, 'pump') ?? first(context.rig, 'motor-pump');
  const told = {
    id: 'suction:pump',
    kind: 'suction' as const,
    sentence: 'Pump never starves, strainer dirty',
    method: 'net positive suction head available',
    source: 'US Standard Atmosphere 1976; IAPWS vapour pressure; inlet pressure from the network',
  };
  if (pump === undefined) return [unknown({ ...told, cause: 'the rig has no pump' })];
  const asked = { value: pump.part.npshRequired, dimension: 'length' as const };
  let least: { npsh: number; duty: string; inlet: number; airHead: number; liquid: DutyLiquid } | undefined;
  let lowest = Infinity;
  for (const { duty, liquid, dirty } of context.duties) {
    const inlet = dirty.pump?.inlet;
    if (inlet === undefined || inlet === null)
      return [
        unknown({ ...told, cause: dirty.reason ?? 'the pressure at the pump inlet is undefined' }, asked),
      ];
    lowest = Math.min(lowest, inlet);
    const airHead = airHeadOf(context.site, liquid);
    const npsh = headAvailable(context.site, liquid, inlet);
    if (least === undefined || npsh < least.npsh) least = { npsh, duty: duty.name, inlet, airHead, liquid };
  }
  if (least === undefined) return [unknown({ ...told, cause: 'the rig has no duty' }, asked)];
  return [
    compared(
      {
        ...told,
        cause: `least in "${least.duty}": ${say(context, least.inlet, 'pressure')} at the inlet`,
        items: [pump.item.id, 'strainer', 'suction-hose'].filter((id) => context.rig.items.has(id)),
        working: [
          worked(
            'head of the air above vapour',
            is(least.airHead, 'length'),
            '({air pressure} − {vapour pressure}) / {specific gravity}',
            {
              'air pressure': is(context.site.airPressure, 'pressure'),
              'vapour pressure': is(least.liquid.vapourPressure, 'pressure'),
              'specific gravity': is(least.liquid.density / WATER, 'ratio'),
            },
            1 / (WATER * G),
          ),
          worked(
            'head at the pump inlet',
            is(least.npsh - least.airHead, 'length'),
            '{gauge pressure} / {specific gravity}',
            {
              'gauge pressure': is(least.inlet, 'pressure'),
              'specific gravity': is(least.liquid.density / WATER, 'ratio'),
            },
            1 / (WATER * G),
          ),
          worked(
            'head available above vapour',
            is(least.npsh, 'length'),
            '{head of the air} + {head at the inlet}',
            {
              'head of the air': is(least.airHead, 'length'),
              'head at the inlet': is(least.npsh - least.airHead, 'length'),
            },
          ),
        ],
      },
      asked,
      { value: least.npsh, dimension: 'length' },
      'at-least',
    ),
    ...collapse(context, lowest),
  ];
}

function collapse(context: WorkContext, lowest: number): RigPromise[] {
  if (lowest >= 0) return [];
  const hose = [...context.rig.items.values()].find(
    ({ item, part }) => part.kind === 'hose' && item.id === 'suction-hose',
  );
  if (hose?.part.kind !== 'hose') return [];
  return [
    compared(
      {
        id: 'suction:hose',
        kind: 'suction',
        sentence: 'Suction hose stays open',
        cause: `${hose.part.name} against the lowest pressure at the pump inlet`,
        items: [hose.item.id],
        method: 'lowest inlet pressure over all duties',
        source: 'rating of the catalogue',
      },
      { value: -hose.part.minPressure, dimension: 'pressure' },
      { value: -lowest, dimension: 'pressure' },
      'at-most',
    ),
  ];
}
