import type { Part, PartOf } from '../../catalogue/index.ts';
import {
  aimedCentre,
  arrangements,
  carrierMasses,
  deckLoad,
  FILLS,
  imbalanceMoved,
  piecesOf,
  spotsOf,
  tankLiquid,
  type Spot,
} from '../placement/index.ts';
import { hoseLength, partRig } from './part-rig.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Parts on which others ride that may not be known yet. */
const GROWING: ReadonlySet<string> = new Set(['tank', 'pump', 'motor-pump']);
/** The same with outlet lines that are not known yet. */
const GROWING_LINES: ReadonlySet<string> = new Set([...GROWING, 'reel', 'boom']);
/** Trouble that two orders may differ by as they are summed up. */
const ROUNDED = 1e-6;

/** What weighs on a deck along it: mass and first moment [kg, kg m]. */
export interface Along {
  mass: number;
  moment: number;
}

/** One order of the parts on a deck. */
export interface DeckOrder {
  /** Where each part stands. Of what is not known yet only the tank's place hangs, which balance moves. */
  readonly spots: () => readonly Spot[];
  /** All of the rig that is known, its tank full, half full and empty. */
  readonly fills: readonly Along[];
  /** Places at which mass comes yet [m]. */
  readonly grows: readonly number[];
  /** Ends of what stands on the deck, no less than those of the deck itself [m]. */
  readonly front: number;
  readonly rear: number;
}

/** The orders in which the proof may put the parts of a rig with one battery, or none. */
export interface Stood {
  readonly battery: Part | undefined;
  readonly orders: readonly DeckOrder[];
}

/**
 * The orders in which the proof may put the parts of a rig on its deck, by the battery that it may have.
 *
 * The proof puts them in the order with the least trouble, before it knows what fittings weigh. Slots that are open only
 * add mass about the pump, in the tank and, of outlet lines, where a reel or boom stands: so much at most that an order with
 * far more trouble than another is not taken.
 * Batteries take room, so each that the space has is tried where one may be needed.
 *
 * @param open slots that are not decided yet
 */
export function deckOrders(
  space: SearchSpace,
  carrier: PartOf<'carrier'>,
  partAt: PartAt,
  density: number,
  open: readonly string[],
): readonly Stood[] {
  const slots = space.layout.slots.map((s) => s.id);
  const all = space.slots.find((s) => s.id === 'battery')?.options ?? [undefined];
  const batteries = open.includes('battery') ? all : [partAt('battery')];
  const ruled = batteries.length > 1 && space.slots.some((s) => s.id === 'engine' || s.id === 'reel');
  const tank = partAt('tank');
  const liquids = Object.values(FILLS).map((share) =>
    tank?.kind === 'tank' ? tankLiquid(tank, share, 0).volume * density : 0,
  );
  const outlets = space.layout.lines.filter((l) => l.to === 'air').flatMap((l) => l.run);
  const growing: ReadonlySet<string> =
    open.length === 0
      ? new Set(['pump', 'motor-pump'])
      : open.some((id) => outlets.includes(id))
        ? GROWING_LINES
        : GROWING;
  const toCome = open.reduce(
    (sum, slot) => sum + (slot === 'battery' ? 0 : mostMass(space, slot, density)),
    0,
  );
  let [ownMass, ownMoment] = [0, 0];
  for (const own of carrierMasses(carrier)) {
    ownMass += own.mass;
    ownMoment += own.mass * own.x;
  }
  return batteries.flatMap((battery): Stood[] => {
    if (ruled && (battery !== undefined) !== needsBattery(partAt)) return [];
    const at: PartAt = (slot) => (slot === 'battery' ? battery : partAt(slot));
    const pieces = piecesOf(partRig(space, at, slots, space.layout.lines), density);
    const kinds = new Map(pieces.map((p) => [p.item.id, p.part.kind]));
    const load = deckLoad(pieces, carrier, density);
    const stood = [...arrangements(carrier, load)].map(({ blocks, trouble }) => {
      const dry: Along = { mass: ownMass, moment: ownMoment };
      const grows: number[] = [];
      let [front, rear, tankAt] = [0, carrier.deckLength, 0];
      for (const [{ places }, start] of blocks)
        for (const { box, x: within } of places) {
          const x = within + start;
          const kind = kinds.get(box.item)!;
          if (kind !== 'boom' && kind !== 'pto-drive') {
            front = Math.min(front, x - box.length / 2);
            rear = Math.max(rear, x + box.length / 2);
          }
          dry.mass += box.mass;
          dry.moment += box.mass * x;
          if (box.item === 'tank') tankAt = x;
          if (growing.has(kind)) grows.push(x);
        }
      const fills = liquids.map((liquid): Along => ({
        mass: dry.mass + liquid,
        moment: dry.moment + liquid * tankAt,
      }));
      const slack = ROUNDED + slackOf(carrier, fills, grows, toCome);
      return { trouble, slack, order: { spots: () => spotsOf({ blocks }), fills, grows, front, rear } };
    });
    const least = Math.min(...stood.map((s) => s.trouble + s.slack));
    return [
      { battery, orders: stood.filter((s) => s.trouble - s.slack <= least).map((s): DeckOrder => s.order) },
    ];
  });
}

/**
 * By how much the trouble of an order may change with mass that comes yet: each part of it goes with the place of the
 * rig's centre, full, half full or empty, which moves towards where the mass is added or, with the tank, towards the place
 * aimed at.
 */
function slackOf(
  carrier: PartOf<'carrier'>,
  fills: readonly Along[],
  grows: readonly number[],
  toCome: number,
): number {
  if (toCome === 0) return 0;
  const aimed = aimedCentre(carrier) ?? 0;
  const moves = fills.map(({ mass, moment }) => {
    const centre = moment / mass;
    let furthest = Math.abs(aimed - centre);
    for (const x of grows) furthest = Math.max(furthest, Math.abs(x - centre));
    return (toCome / mass) * furthest;
  });
  return imbalanceMoved(carrier, { full: moves[0]!, half: moves[1]!, empty: moves[2]! });
}

const heaviest = new WeakMap<SearchSpace['slots'], Map<string, number>>();

/** Most that a part of a slot weighs as it works [kg]. */
function mostMass(space: SearchSpace, slot: string, density: number): number {
  let known = heaviest.get(space.slots);
  if (known === undefined) heaviest.set(space.slots, (known = new Map<string, number>()));
  let most = known.get(slot);
  if (most === undefined) {
    const options = space.slots.find((s) => s.id === slot)?.options ?? [];
    const length = hoseLength(space, slot) + 0.3048;
    const masses = options.map((part) => {
      if (part === undefined) return 0;
      if (part.kind === 'nozzle') return part.mass * mostNozzles(space);
      if (part.kind !== 'hose') return part.mass;
      return (part.mass / 0.3048 + (Math.PI / 4) * part.bore ** 2 * density) * length;
    });
    known.set(slot, (most = Math.max(0, ...masses)));
  }
  return most;
}

function mostNozzles({ slots }: SearchSpace): number {
  return Math.max(1, ...slots.flatMap((s) => s.options.map((p) => (p?.kind === 'boom' ? p.nozzles : 1))));
}

function needsBattery(partAt: PartAt): boolean {
  const [engine, reel] = [partAt('engine'), partAt('reel')];
  return (
    (engine?.kind === 'engine' && engine.start === 'electric') ||
    (reel?.kind === 'reel' && reel.rewind === 'electric')
  );
}
