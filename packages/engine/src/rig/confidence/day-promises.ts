import { fillTime, workingDay } from '../../physics/index.ts';
import { dayInputOf } from '../proof/day-input.ts';
import { wholeUnits } from '../proof/day.ts';
import { openFlow } from '../proof/pattern-units.ts';
import { dutiesToMix, suctionAt, timeAtHopper } from '../proof/rinse-filling.ts';
import { first } from '../rig-document.ts';
import type { Contender, DrawnPromise, DrawSheet } from './draw-sheet.ts';

/** What gets done in a day, and how long filling and taking in product last. */
export function dayPromises(sheet: DrawSheet): DrawnPromise[] {
  return [...workedDay(sheet), ...transfer(sheet), ...hopper(sheet)];
}

/** The whole day anew in each draw: fills, refuelling, pauses and all. */
function workedDay({ context, contexts }: DrawSheet): DrawnPromise[] {
  const proven = dayInputOf(context)?.proven;
  const drawn = proven === undefined ? undefined : contexts.duty(proven);
  if (proven === undefined || drawn === undefined) return [];
  const days: { readonly units: number; readonly area: number }[] = [];
  const dayIn = (draw: number) => {
    let day = days[draw];
    if (day === undefined) {
      const made = dayInputOf({ ...contexts.at(draw), duties: [drawn.at(draw)] }, false);
      const { units, area } = made === undefined ? { units: NaN, area: NaN } : workingDay(made.input);
      day = days[draw] = { units, area };
    }
    return day;
  };
  const contender = (value: Contender['value']): Contender[] => [{ readings: drawn.readings, value }];
  return [
    { id: 'day:work', as: 'figure', contenders: contender((draw) => wholeUnits(dayIn(draw).units)) },
    { id: 'day:area', as: 'figure', contenders: contender((draw) => dayIn(draw).area) },
  ];
}

function transfer({ context, contexts }: DrawSheet): DrawnPromise[] {
  const { transfer: asked } = context.rig.brief;
  const proven = context.duties.find((d) => d.duty.id === asked?.duty);
  const drawn = proven === undefined ? undefined : contexts.duty(proven);
  if (asked === undefined || drawn === undefined) return [];
  return [
    {
      id: 'day:transfer',
      as: 'figure',
      contenders: [
        { readings: drawn.readings, value: (draw) => fillTime(asked.volume, openFlow(drawn.at(draw))) },
      ],
    },
  ];
}

function hopper(sheet: DrawSheet): DrawnPromise[] {
  const { context, contexts } = sheet;
  const { hopper: asked } = context.rig.brief;
  const eductor = first(context.rig, 'eductor');
  if (asked === undefined || eductor === undefined) return [];
  // The proof takes the duty with the most pressure in front of it: the shortest time.
  const pressures = dutiesToMix(context).flatMap((proven) => {
    const network = sheet.network(proven, 'open');
    return [...(network?.made.lines.values() ?? [])]
      .flat()
      .filter((e) => e.item === eductor.item.id)
      .flatMap((e) => [network!.pressure(e.from), network!.pressure(e.to)]);
  });
  return [
    {
      id: 'day:hopper',
      as: 'figure',
      contenders: [
        {
          readings: pressures,
          value: (draw) => {
            const motive = pressures.reduce((most, p) => Math.max(most, p.values[draw] || 0), 0);
            const at = contexts.at(draw);
            const suction = suctionAt(first(at.rig, 'eductor')!.part, motive);
            return suction === undefined ? NaN : timeAtHopper(at, asked, suction);
          },
        },
      ],
    },
  ];
}
