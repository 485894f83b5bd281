import type { LayoutLine, Part, PartOf } from '../../catalogue/index.ts';
import { askedFlow } from '../asked-flow.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import { outletHeightOf } from '../duty-network.ts';
import { liquidDepth } from '../tank-level.ts';
import type { Rated } from './rated.ts';
import type { LineNeeds } from './line-needs.ts';
import { leastOut, lineLaw } from './line-takes.ts';
import type { Way } from './main-state.ts';
import { factorOf, mostOut } from './outlet-most.ts';
import { highestSurface, outletNeed, type OutletNeed } from './outlet-need.ts';
import { OFF } from './part-terms.ts';
import { slipAt, type PumpFlow } from './pump-flow.ts';
import { mostReach } from './reach-most.ts';
import type { PartAt, SearchSpace } from './space.ts';

const BAR = 1e5;
const G = 9.80665;

/** A figure that hangs on parts of which any may stand in a slot. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

export function spanOf(values: readonly number[]): Span {
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** What a main is made of; where a slot is not decided yet, all that may stand in it. */
export interface MainParts {
  readonly partAt: PartAt;
  readonly pump: PartOf<'pump'>;
  readonly tanks: readonly PartOf<'tank'>[];
  readonly carriers: readonly (Part | undefined)[];
  readonly needs: LineNeeds;
  readonly flow: PumpFlow;
  /** Least ratings of what stands before the shutters of the outlets. */
  readonly rated: Rated;
}

/** One duty as the main sees it. */
export interface MainDuty {
  readonly density: number;
  readonly viscosity: number;
  readonly agitate: boolean;
  /** Share of the tank that must be stirred [1/s]; 0 when nothing asks for it. */
  readonly stirred: number;
  readonly set: number;
  /** Least pressure at the manifold that its outlets ask [Pa]. */
  readonly pressure: number;
  /** Least that goes out in a rig that keeps its promises [m3/s]. */
  readonly flow: number;
  /** Outlets at no less than they let out; undefined where that is not known. */
  readonly out: readonly Way[] | undefined;
  /** What the outlets must get by the brief [m3/s]. */
  readonly asked: number | undefined;
  /** Highest pressure of the tank at the pump with nothing flowing, and its lowest and highest at the manifold [Pa]. */
  readonly atPump: number;
  readonly atManifold: Span;
  readonly slip: number;
  /** Most spare of the reach of its gun by the pressure of the manifold. */
  readonly reach: ((pressure: number) => number) | undefined;
  /** Least that goes out by the pressure of the manifold [m3/s]. */
  readonly least: (pressure: number) => number;
  /** Highest pressure that its nozzles may have, and the least they have by that of the manifold. */
  readonly nozzles: { readonly highest: number; readonly least: (pressure: number) => number } | undefined;
}

/**
 * Most that the height of an outlet takes of the pressure at the manifold before any part of its line, with any of some
 * carriers [Pa]: what follows the machinery stands as high as the outlet.
 */
export function mostLifted(
  { brief, contexts, layout }: SearchSpace,
  carriers: readonly (Part | undefined)[],
): number {
  const deck = spanOf(carriers.map((c) => (c?.kind === 'carrier' ? c.deckHeight : 0))).low;
  const pumped = layout.lines.find((l) => l.run.includes('pump'));
  const from = deck + (layout.nodes[pumped?.to ?? ''] ?? 0);
  let most = 0;
  for (const duty of brief.duties)
    for (const line of usedOutlets(layout, brief)) {
      const { density } = contexts[0]!.liquids.get(duty.liquid)!;
      most = Math.max(most, density * G * (outletHeightOf(line, duty) - from));
    }
  return most;
}

/** The duties of a brief as the main of some parts sees them. */
export function mainDuties(space: SearchSpace, parts: MainParts): readonly MainDuty[] {
  const { contexts, brief, layout } = space;
  const { partAt, pump, needs } = parts;
  const lines = usedOutlets(layout, brief);
  const decks = spanOf(parts.carriers.map((c) => (c?.kind === 'carrier' ? c.deckHeight : 0)));
  const pumped = layout.lines.find((l) => l.run.includes('pump'));
  const nodeOf = (end: 'from' | 'to') => layout.nodes[pumped?.[end] ?? ''] ?? 0;
  const manifold = nodeOf('to');
  return brief.duties.map((duty, i): MainDuty => {
    const liquid = contexts[0]!.liquids.get(duty.liquid)!;
    const { density, viscosity, agitationShare } = liquid;
    const open = lines.filter((l) => (duty.open as readonly string[]).includes(l.opens));
    const outlets = open.map((l) => outletNeed(space, l, duty, partAt, 1));
    const boom = open.find((l) => l.run.includes('nozzle'));
    const nozzle = partAt('nozzle');
    const throwing = open.find((l) => l.run.includes('tip'));
    const depth = spanOf(parts.tanks.map((t) => liquidDepth(t, duty.tankLevel)));
    const lift = (line: LayoutLine, deck: number) =>
      density * G * (outletHeightOf(line, duty) - deck - manifold);
    const leastLift = (line: LayoutLine) => lift(line, decks.high);
    const mostLift = (line: LayoutLine) => lift(line, decks.low);
    const overSurface = density * G * ((duty.outletHeight ?? 0) - highestSurface(space, duty));
    /** What a line asks besides its height: by the laws of the network where no strainer may be clean or dirty. */
    const asks = (line: LayoutLine, { flow, pressure }: OutletNeed) => {
      const strained = line.run.some((slot) => partAt(slot)?.kind === 'strainer');
      const takes = strained ? 0 : lineLaw(space, line, duty, partAt)(flow);
      return Math.max(pressure - overSurface, Number.isFinite(takes) ? (1 - OFF) * takes : 0);
    };
    const out = open.map((l) => mostOut(l, partAt, density, leastLift(l)));
    const asked = askedFlow(duty, liquid);
    const lets = open.map((l) => ({ lift: mostLift(l), least: leastOut(space, l, duty, partAt) }));
    const atBoom = lets[open.indexOf(boom!)]?.least ?? (() => 0);
    return {
      density,
      viscosity,
      agitate: duty.agitate,
      stirred: duty.agitate ? agitationShare : 0,
      set: needs.sets[i]!,
      pressure: Math.max(0, ...open.map((l, k) => asks(l, outlets[k]!) + leastLift(l))),
      flow: outlets.reduce((sum, o) => sum + o.flow, 0),
      out: out.some((o) => o === undefined) ? undefined : out.flatMap((o) => o ?? []),
      asked: asked === undefined ? undefined : asked * duty.open.length,
      atPump: density * G * (depth.high - nodeOf('from')),
      atManifold: {
        low: density * G * (depth.low - manifold),
        high: density * G * (depth.high - manifold),
      },
      slip: slipAt(pump, viscosity),
      reach:
        throwing === undefined ? undefined : mostReach(space, throwing, duty, partAt, leastLift(throwing)),
      least: (pressure) => lets.reduce((sum, l) => sum + l.least(pressure - l.lift), 0),
      nozzles:
        boom === undefined || nozzle?.kind !== 'nozzle'
          ? undefined
          : {
              highest: nozzle.maxPressure,
              least: (pressure) => {
                const flow = atBoom(pressure - mostLift(boom));
                return (flow / factorOf(boom, partAt)!) ** 2 * BAR * (density / 1000);
              },
            },
    };
  });
}
