import { mates, slotIn, type Kind, type LayoutLine, type Part, type PartOf } from '../../catalogue/index.ts';
import type { NetworkLiquid } from '../../hydraulics/index.ts';
import { hoseLoss } from '../../physics/index.ts';
import type { Brief, Duty } from '../brief.ts';
import { drivenWidth } from '../application.ts';
import { askedFlow } from '../asked-flow.ts';
import { meanCoilDiameter, reelCapacity } from '../reel-drum.ts';
import { STARTS } from '../start-values.data.ts';
import { nozzleSuits } from './nozzle-suits.ts';
import { extrasOfLine, lossThrough, type PartsOf } from './extra-slots.ts';
import { partsFor } from './slot-parts.ts';
import type { LineContext } from './line-context.ts';
import { tipPressureFor } from './tip-demand.ts';

const BAR = 1e5;
/** Hose that a transfer or boom line takes when the brief does not say [m]. */
const BOOM_HOSE = 3;
const TRANSFER_HOSE = 15;
/** The same of a gun line [m]. */
const GUN_HOSE = 30;
/** Hose that one person can drag: 1 in. Common practice, no source. [m] */
const LARGEST_HAND_BORE = 0.027;
/** Speed beyond which a hose is out of the question [m/s]. */
const FASTEST = 30;
/** Different choices kept for one line: enough that a pump finds its match, few enough to try them all. */
const KEPT = 60;

/** One way to build an outlet line, and what it asks at the manifold in each duty that opens it. */
export interface LineOption {
  readonly line: string;
  readonly parts: ReadonlyMap<string, Part>;
  readonly hoseLength: number;
  readonly priceCents: number;
  /** Pressure and flow at the manifold, per duty id. */
  readonly demand: ReadonlyMap<string, { readonly pressure: number; readonly flow: number }>;
}

/**
 * Ways to build one outlet line that no other way beats in price, pressure and flow; cheapest first.
 *
 * @param partsOf parts that a slot may take, cheapest first: those of the catalogue unless others are given
 */
export function lineOptions(
  context: LineContext,
  line: LayoutLine,
  partsOf: PartsOf = (slot) => partsFor(context.catalogue, slot),
): LineOption[] {
  const options = [...allOptions(context, line, partsOf)];
  return unbeaten(options.flatMap((o) => withExtras(context, line, o, partsOf))).slice(0, KEPT);
}

/** Whether there is any way to build an outlet line of some parts. */
export function hasLineOption(context: LineContext, line: LayoutLine, partsOf: PartsOf): boolean {
  for (const o of allOptions(context, line, partsOf))
    if (withExtras(context, line, o, partsOf).length > 0) return true;
  return false;
}

function allOptions(context: LineContext, line: LayoutLine, partsOf: PartsOf): Iterable<LineOption> {
  const duties = context.brief.duties.filter((d) => (d.open as readonly string[]).includes(line.opens));
  if (duties.length === 0) return [];
  const offered = offerOf(context, partsOf);
  if (has(line, 'gun')) return gunOptions(context, line, duties, offered);
  return has(line, 'boom')
    ? boomOptions(context, line, duties, offered)
    : transferOptions(context, line, duties, offered);
}

type Offered = <K extends Kind>(slot: string, kind: K) => readonly PartOf<K>[];

/** Parts of one kind for a slot by its id; none where the layout has no such slot for them. */
function offerOf({ layout }: LineContext, partsOf: PartsOf): Offered {
  return <K extends Kind>(id: string, kind: K) => {
    const slot = layout.slots.find((s) => s.id === id);
    if (slot === undefined || !slot.kinds.includes(kind)) return [];
    return partsOf(slot).filter((p): p is PartOf<K> => p.kind === kind);
  };
}

function has(line: LayoutLine, role: string): boolean {
  return slotIn(line.run, role) !== undefined;
}

/** An option with what a shop's own layout puts into the line besides; none when the catalogue has nothing for it. */
function withExtras(context: LineContext, line: LayoutLine, o: LineOption, partsOf: PartsOf): LineOption[] {
  const asked = [...o.demand.values()];
  const flow = Math.max(...asked.map((d) => d.flow));
  const pressure = Math.max(...asked.map((d) => d.pressure));
  const extras = extrasOfLine(context.layout, line, flow, pressure, partsOf);
  if (extras === undefined) return [];
  if (extras.length === 0) return [o];
  const demand = new Map(
    [...o.demand].map(([id, d]) => {
      const liquid = context.liquids.get(context.brief.duties.find((duty) => duty.id === id)!.liquid)!;
      const loss = extras.reduce((sum, [, part]) => sum + lossThrough(part, d.flow, liquid.density), 0);
      return [id, { ...d, pressure: d.pressure + loss }];
    }),
  );
  const priceCents = extras.reduce((sum, [, part]) => sum + part.priceCents, o.priceCents);
  return [{ ...o, parts: new Map([...o.parts, ...extras]), priceCents, demand }];
}

/** Length of the hose of an outlet line: as wished, or as far as it is paid out in some duty [m]. */
export function lineHose({ wishes }: Brief, line: LayoutLine, duties: readonly Duty[]): number {
  if (has(line, 'boom')) return BOOM_HOSE;
  const usual = has(line, 'gun') ? GUN_HOSE : TRANSFER_HOSE;
  return wishes.hose ?? Math.max(...duties.map((d) => d.hoseOut ?? usual));
}

function* gunOptions(
  context: LineContext,
  line: LayoutLine,
  duties: readonly Duty[],
  offered: Offered,
): Generator<LineOption> {
  const { brief } = context;
  const length = lineHose(brief, line, duties);
  const slot = (role: string) => slotIn(line.run, role) ?? role;
  const hoses = offered(slot('hose'), 'hose').filter((h) => h.bore < LARGEST_HAND_BORE);
  const guns = offered(slot('gun'), 'gun');
  const tips = offered(slot('tip'), 'tip');
  const drum = slotIn(line.run, 'reel');
  const reels = (drum === undefined ? [] : offered(drum, 'reel')).filter(
    (r) => brief.wishes.rewind === undefined || r.rewind === brief.wishes.rewind,
  );
  for (const gun of guns) {
    for (const tip of tips) {
      const asked = duties.map((duty) => tipPressureFor(context, duty, gun, tip));
      if (asked.some((p) => p === undefined)) continue;
      for (const hose of hoses) {
        const reel = reels.find(
          (r) =>
            reelCapacity(r, hose) >= length &&
            r.bore >= hose.bore * 0.95 &&
            r.maxPressure >= Math.max(...(asked as number[])),
        );
        // A wish for a rewind is kept or the choice is dropped: it is never given up in silence.
        if (reel === undefined && drum !== undefined && brief.wishes.rewind !== undefined) continue;
        const demand = new Map<string, { pressure: number; flow: number }>();
        duties.forEach((duty, i) => {
          const liquid = context.liquids.get(duty.liquid)!;
          const pressure = asked[i]!;
          const sg = liquid.density / 1000;
          const flow = tip.flowAtOneBar * Math.sqrt(pressure / BAR / sg);
          const outLength = Math.min(duty.hoseOut ?? length, length);
          const wound = reel === undefined ? 0 : length - outLength;
          const local =
            ((flow / gun.flowAtOneBar) ** 2 + (reel === undefined ? 0 : (flow / reel.flowAtOneBar) ** 2)) *
            BAR *
            sg;
          const lift = liquid.density * 9.80665 * ((duty.outletHeight ?? 1.5) - 0.8);
          demand.set(duty.id, {
            flow,
            pressure:
              pressure + local + lift + lossOf(hose, length, flow, liquid, reel, wound) + 0.02 * pressure,
          });
        });
        const most = Math.max(...[...demand.values()].map((d) => d.pressure));
        if (
          most > Math.min(hose.maxPressure, gun.maxPressure) ||
          Math.max(...[...demand.values()].map((d) => d.flow)) > gun.maxFlow
        )
          continue;
        const parts = new Map<string, Part>([
          ...(reel === undefined ? [] : [[drum!, reel] as const]),
          [slot('hose'), hose],
          [slot('gun'), gun],
          [slot('tip'), tip],
        ]);
        yield option(line, parts, length, demand);
      }
    }
  }
}

function* boomOptions(
  context: LineContext,
  line: LayoutLine,
  duties: readonly Duty[],
  offered: Offered,
): Generator<LineOption> {
  const width = Math.max(
    0,
    ...duties.map((d) => drivenWidth(d) ?? (d.lane?.lanes ?? 0) * STARTS.laneWidth.value),
  );
  const booms = offered('boom', 'boom')
    .filter((b) => b.width >= width * 0.98)
    .slice(0, 4);
  const nozzles = offered('nozzle', 'nozzle');
  const valves = offered('boom-valve', 'valve');
  const hoses = offered('boom-hose', 'hose');
  for (const boom of booms)
    for (const nozzle of suitedNozzles(context, boom, nozzles, duties)) {
      const demandAtBoom = new Map<string, { pressure: number; flow: number }>();
      for (const duty of duties) {
        const liquid = context.liquids.get(duty.liquid)!;
        const flow = (askedFlow(duty, liquid) ?? 0) * context.spare;
        const each = flow / boom.nozzles;
        const pressure = Math.max(
          (each / nozzle.flowAtOneBar) ** 2 * BAR * (liquid.density / 1000),
          duty.pressure ?? 0,
          nozzle.minPressure,
        );
        if (pressure > nozzle.maxPressure) break;
        demandAtBoom.set(duty.id, {
          pressure,
          flow: nozzle.flowAtOneBar * boom.nozzles * Math.sqrt(pressure / BAR / (liquid.density / 1000)),
        });
      }
      if (demandAtBoom.size < duties.length) continue;
      for (const hose of hoses) {
        const valve = valves.find((v) => v.bore >= hose.bore * 0.9) ?? valves[valves.length - 1];
        if (valve === undefined) continue;
        const demand = new Map<string, { pressure: number; flow: number }>();
        for (const duty of duties) {
          const liquid = context.liquids.get(duty.liquid)!;
          const { pressure, flow } = demandAtBoom.get(duty.id)!;
          const velocity = flow / ((Math.PI / 4) * hose.bore ** 2);
          demand.set(duty.id, {
            flow,
            pressure:
              pressure + lossOf(hose, BOOM_HOSE, flow, liquid) + 4 * 0.5 * liquid.density * velocity ** 2,
          });
        }
        const parts = new Map<string, Part>([
          ['boom-valve', valve],
          ['boom-hose', hose],
          ['boom', boom],
          ['nozzle', nozzle],
        ]);
        yield option(line, parts, BOOM_HOSE, demand);
      }
    }
}

function transferOptions(
  context: LineContext,
  line: LayoutLine,
  duties: readonly Duty[],
  offered: Offered,
): LineOption[] {
  const { brief } = context;
  const length = lineHose(brief, line, duties);
  const valves = offered('transfer-valve', 'valve');
  return offered('transfer-hose', 'hose').flatMap((hose) => {
    const valve = valves.find((v) => v.bore >= hose.bore * 0.9);
    if (valve === undefined) return [];
    const demand = new Map<string, { pressure: number; flow: number }>();
    for (const duty of duties) {
      const liquid = context.liquids.get(duty.liquid)!;
      const flow = (askedFlow(duty, liquid) ?? 0) * context.spare;
      const velocity = flow / ((Math.PI / 4) * hose.bore ** 2);
      const lift = liquid.density * 9.80665 * Math.max(0, (duty.outletHeight ?? 1.2) - 0.8);
      demand.set(duty.id, {
        flow,
        pressure: lift + lossOf(hose, length, flow, liquid) + 3 * 0.5 * liquid.density * velocity ** 2,
      });
    }
    return [
      option(
        line,
        new Map<string, Part>([
          ['transfer-valve', valve],
          ['transfer-hose', hose],
        ]),
        length,
        demand,
      ),
    ];
  });
}

function option(
  line: LayoutLine,
  parts: ReadonlyMap<string, Part>,
  hoseLength: number,
  demand: LineOption['demand'],
): LineOption {
  let priceCents = 0;
  for (const part of parts.values())
    priceCents += part.kind === 'hose' ? part.priceCents * Math.ceil(hoseLength / 0.3048) : part.priceCents;
  const nozzle = parts.get('nozzle');
  const boom = parts.get('boom') as PartOf<'boom'> | undefined;
  if (nozzle !== undefined && boom !== undefined) priceCents += nozzle.priceCents * (boom.nozzles - 1);
  return { line: line.id, parts, hoseLength, priceCents, demand };
}

/** Drops every option that another one beats in price and in the pressure and flow it asks in every duty. */
function unbeaten(options: readonly LineOption[]): LineOption[] {
  const kept: LineOption[] = [];
  for (const o of [...options].sort((a, b) => a.priceCents - b.priceCents)) {
    const beaten = kept.some((k) =>
      [...o.demand].every(([duty, d]) => {
        const other = k.demand.get(duty)!;
        return other.pressure <= d.pressure && other.flow <= d.flow;
      }),
    );
    if (!beaten) kept.push(o);
  }
  return kept;
}

/** Pressure that a hose takes at a flow, part of it wound on the reel [Pa]. */
function lossOf(
  hose: PartOf<'hose'>,
  length: number,
  flow: number,
  liquid: NetworkLiquid,
  reel?: PartOf<'reel'>,
  wound = 0,
): number {
  if (flow / ((Math.PI / 4) * hose.bore ** 2) > FASTEST) return Infinity;
  const { bore, roughness } = hose;
  const { density, viscosity } = liquid;
  const line = { flow, bore, length, roughness, density, viscosity };
  return reel === undefined || wound <= 0
    ? hoseLoss(line).pressureLoss
    : hoseLoss({ ...line, woundLength: wound, coilDiameter: meanCoilDiameter(reel, hose, wound) })
        .pressureLoss;
}

/** Nozzles of a boom that keep rate and droplets at every speed; all that fit when none does. */
function suitedNozzles(
  { brief, liquids }: LineContext,
  boom: PartOf<'boom'>,
  nozzles: readonly PartOf<'nozzle'>[],
  duties: readonly Duty[],
): readonly PartOf<'nozzle'>[] {
  const fitting = nozzles.filter((n) => nozzleFits(boom, n));
  const suited = fitting.filter((n) =>
    duties.every((d) => nozzleSuits(n, brief, d, 1 / boom.nozzles, liquids.get(d.liquid)!.density)),
  );
  return suited.length > 0 ? suited : fitting;
}

/** A nozzle goes straight on the boom's bodies, without an adapter. */
function nozzleFits(boom: PartOf<'boom'>, nozzle: PartOf<'nozzle'>): boolean {
  const body = boom.ports.find((p) => p.id === 'out');
  const cap = nozzle.ports.find((p) => p.id === 'in');
  return body !== undefined && cap !== undefined && mates(body, cap);
}
