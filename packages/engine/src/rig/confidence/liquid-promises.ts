import { pumpDemand } from '../../physics/index.ts';
import type { ProvenDuty } from '../proof/context.ts';
import { statedFlow, stirring } from '../proof/pump-reserve.ts';
import { backToTank, dutiesToStir, stirringAsked } from '../proof/agitation.ts';
import { peakAt, shutPeak } from '../proof/rating.ts';
import { sprayersOf } from '../proof/sprayer.ts';
import { headAvailable } from '../proof/suction.ts';
import { first } from '../rig-document.ts';
import type { Contender, DrawnPromise, DrawSheet } from './draw-sheet.ts';
import type { Reading } from './drawn-network.ts';
import { pumpReadings } from './pump-readings.ts';

/** Promises that follow from flows and pressures alone. */
export function liquidPromises(sheet: DrawSheet): DrawnPromise[] {
  return [
    ...sheet.context.duties.flatMap((proven) => outletPromises(sheet, proven)),
    ...suction(sheet),
    ...ratings(sheet),
    ...agitation(sheet),
    ...reserve(sheet),
  ];
}

/** Flow and pressure at each open outlet. */
function outletPromises(sheet: DrawSheet, proven: ProvenDuty): DrawnPromise[] {
  const network = sheet.network(proven, 'open');
  if (network === undefined) return [];
  const { id } = proven.duty;
  const asked = askedFactor(sheet, proven);
  return network.made.outlets.flatMap(({ line, last, before }) => {
    const flow = single(network.flow(last));
    const pressure = single(network.pressure(before));
    return [
      {
        id: `flow:${id}:${line}`,
        as: 'figure',
        contenders: [flow],
        ...(asked === undefined ? {} : { askedFactor: asked }),
      },
      { id: `tip-pressure:${id}:${line}:asked`, as: 'figure', contenders: [pressure] },
      ...tipRange(sheet, proven, line, network.pressure(before)),
    ];
  });
}

/** A tip must work between two pressures: whichever is nearer decides. */
function tipRange(sheet: DrawSheet, proven: ProvenDuty, line: string, pressure: Reading): DrawnPromise[] {
  const sprayer = sprayersOf(sheet.context, proven).find((s) => s.outlet.line === line);
  if (sprayer === undefined) return [];
  const { minPressure, maxPressure } = sprayer.end;
  const room = (p: number) => Math.min(p / minPressure, maxPressure / p);
  const { tipPressure } = sprayer.outlet;
  const low = tipPressure / minPressure < maxPressure / tipPressure;
  return [
    {
      id: `tip-pressure:${proven.duty.id}:${line}:range`,
      as: 'share',
      contenders: [
        {
          readings: [pressure],
          value: (draw) => {
            const share = room(Math.max(0, pressure.values[draw]!));
            return low ? share : 1 / share;
          },
        },
      ],
    },
  ];
}

/** A rate over ground asks more flow of who drives faster. */
function askedFactor(sheet: DrawSheet, { duty }: ProvenDuty): Float64Array | undefined {
  const driven = duty.flow === undefined && (duty.application !== undefined || duty.lane !== undefined);
  return driven ? sheet.factor('ground-speed', 'rig') : undefined;
}

function single(reading: Reading): Contender {
  return { readings: [reading], value: (draw) => reading.values[draw]! };
}

function suction(sheet: DrawSheet): DrawnPromise[] {
  const { context } = sheet;
  const pump = (first(context.rig, 'pump') ?? first(context.rig, 'motor-pump'))?.item.id;
  if (pump === undefined) return [];
  const inlets = context.duties.flatMap((proven) => {
    const network = sheet.network(proven, 'dirty');
    const inlet = network === undefined ? undefined : pumpReadings(network, pump)?.inlet;
    return inlet === undefined ? [] : [{ inlet, liquid: proven.liquid }];
  });
  return [
    {
      id: 'suction:pump',
      as: 'figure',
      askedFactor: sheet.factor('suction-need', pump),
      contenders: inlets.map(({ inlet, liquid }) => ({
        readings: [inlet],
        value: (draw) => headAvailable(context.site, liquid, inlet.values[draw]!),
      })),
    },
    {
      id: 'suction:hose',
      as: 'figure',
      contenders: inlets.map(({ inlet }) => ({
        readings: [inlet],
        value: (draw) => -inlet.values[draw]!,
      })),
    },
  ];
}

/** Highest pressure at each rated part, as a share of its rating. */
function ratings(sheet: DrawSheet): DrawnPromise[] {
  const { rig } = sheet.context;
  const peak = shutPeak(rig);
  const pump: Contender[] = [];
  const delivery: Contender[] = [];
  for (const proven of sheet.context.duties)
    for (const condition of ['open', 'shut'] as const) {
      const network = sheet.network(proven, condition);
      for (const run of network?.made.lines.values() ?? [])
        for (const { from, to, item } of run) {
          const part = item === undefined ? undefined : rig.items.get(item)!.part;
          if (part === undefined || !('maxPressure' in part)) continue;
          const felt = (condition === 'shut' ? peakAt(part, peak) : 1) / part.maxPressure;
          const readings = [network!.pressure(from), network!.pressure(to)] as const;
          (part.kind === 'pump' || part.kind === 'motor-pump' ? pump : delivery).push({
            readings,
            // A pressure that nothing defines, behind a shut valve, loads no part.
            value: (draw) => felt * Math.max(readings[0].values[draw] || 0, readings[1].values[draw] || 0),
          });
        }
    }
  return [
    { id: 'rating:pump', as: 'share', contenders: pump },
    { id: 'rating:delivery', as: 'share', contenders: delivery },
  ];
}

function agitation(sheet: DrawSheet): DrawnPromise[] {
  const { context } = sheet;
  const back = backToTank(context);
  const contenders = dutiesToStir(context).flatMap((proven): Contender[] => {
    const network = sheet.network(proven, 'open');
    const returning = [...(network?.made.lines.values() ?? [])].flat().findLast((e) => e.item === back);
    if (network === undefined || returning === undefined) return [];
    const flow = network.flow(returning.element);
    const asked = stirringAsked(context, proven.liquid);
    return [{ readings: [flow], value: (draw) => flow.values[draw]! / asked }];
  });
  return [{ id: 'agitation', as: 'share', contenders }];
}

function reserve(sheet: DrawSheet): DrawnPromise[] {
  const { context } = sheet;
  const pump = first(context.rig, 'pump') ?? first(context.rig, 'motor-pump');
  if (pump === undefined) return [];
  const displacement = pump.part.kind === 'pump' && pump.part.law.action === 'displacement';
  const contenders = context.duties.flatMap((proven): Contender[] => {
    const network = sheet.network(proven, 'open');
    const supply = network === undefined ? undefined : pumpReadings(network, pump.item.id)?.flow;
    const stated = statedFlow(proven);
    if (network === undefined || supply === undefined || (stated === undefined && !displacement)) return [];
    const outlets = stated === undefined ? network.made.outlets.map((o) => network.flow(o.last)) : [];
    const stirred = stirring(context, proven);
    const faster = askedFactor(sheet, proven);
    return [
      {
        readings: [supply, ...outlets],
        value: (draw) => {
          const out =
            stated !== undefined
              ? stated * (faster?.[draw] ?? 1)
              : outlets.reduce((sum, o) => sum + Math.max(0, o.values[draw]!), 0);
          return Math.max(0, supply.values[draw]!) / pumpDemand(out, stirred);
        },
      },
    ];
  });
  return [{ id: 'flow:pump-reserve', as: 'share', contenders }];
}
