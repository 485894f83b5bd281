import type { PartOf } from '../../catalogue/index.ts';
import { couplerClass, TONGUE_SHARE } from '../../physics/index.ts';
import {
  aimedCentre,
  arrangements,
  axleMiddle,
  boxesOf,
  carrierMasses,
  deckLoad,
  FILLS,
  imbalanceMoved,
  piecesOf,
  standingOf,
  tankLiquid,
} from '../placement/index.ts';
import { hoseLength, partRig, timesOf } from './part-rig.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Parts on which others ride that may not be known yet. */
const GROWING: ReadonlySet<string> = new Set(['tank', 'pump', 'motor-pump']);
/** Share of a deck's length by which parts may stand out over it, as the promise on it has it. */
const OVERHANG = 0.05;
/** For the little that balance moves the tank with what is added to it. */
const HAIR = 2e-3;
/** Trouble that two orders may differ by as they are summed up. */
const ROUNDED = 1e-6;

/** What weighs on a deck along it: mass and first moment [kg, kg m]. */
interface Along {
  mass: number;
  moment: number;
}

/** One order of the parts on a deck. */
interface Stood {
  /** How far it is from what the placement aims at, and by how much that may change with what is not known yet. */
  readonly trouble: number;
  readonly slack: number;
  readonly spare: number;
}

/**
 * Most spare of axles, wheels and tongue that a rig with some parts can have; without end where its carrier does not stand
 * on axles of its own.
 *
 * The proof puts the parts in the order with the least trouble, before it knows what fittings weigh. Slots that are open
 * only add mass about the pump and in the tank: so much at most that an order with far more trouble than another is not
 * taken. In front of the support behind it, mass adds to the load of the one ahead, wherever balance puts the tank; and the
 * share on the tongue can only move towards that of the places where mass is added. Batteries take room, so each that the
 * space has is tried where one may be needed.
 *
 * @param open slots that are not decided yet
 */
export function weightSpare(
  space: SearchSpace,
  partAt: PartAt,
  density: number,
  open: readonly string[],
): number {
  const carrier = partAt('carrier');
  if (carrier?.kind !== 'carrier') return Infinity;
  const standing = standingOf(carrier);
  if (standing !== 'coupled' && standing !== 'axles') return Infinity;
  const slots = space.layout.slots.map((s) => s.id);
  const all = space.slots.find((s) => s.id === 'battery')?.options ?? [undefined];
  const batteries = open.includes('battery') ? all : [partAt('battery')];
  const ruled = batteries.length > 1 && space.slots.some((s) => s.id === 'engine' || s.id === 'reel');
  const tank = partAt('tank');
  const liquids = Object.values(FILLS).map((share) =>
    tank?.kind === 'tank' ? tankLiquid(tank, share, 0).volume * density : 0,
  );
  const growing: ReadonlySet<string> = open.length > 0 ? GROWING : new Set(['pump', 'motor-pump']);
  const toCome = open.reduce(
    (sum, slot) => sum + (slot === 'battery' ? 0 : mostMass(space, slot, density)),
    0,
  );
  let most = -1;
  for (const battery of batteries) {
    if (ruled && (battery !== undefined) !== needsBattery(partAt)) continue;
    const at: PartAt = (slot) => (slot === 'battery' ? battery : partAt(slot));
    const pieces = piecesOf(partRig(space, at, slots, space.layout.lines), density);
    const boxes = boxesOf(pieces);
    const load = deckLoad(pieces, carrier, density);
    const stood: Stood[] = [];
    for (const { spots, trouble } of arrangements(carrier, load)) {
      const dry: Along = { mass: 0, moment: 0 };
      const add = (mass: number, x: number) => {
        dry.mass += mass;
        dry.moment += mass * x;
      };
      for (const own of carrierMasses(carrier)) add(own.mass, own.x);
      const grows: number[] = [];
      let [front, rear, tankAt] = [0, carrier.deckLength, 0];
      for (const spot of spots()) {
        const { kind, size } = pieces.find((p) => p.item.id === spot.item)!.part;
        if (kind !== 'boom' && kind !== 'pto-drive') {
          front = Math.min(front, spot.x - size.length / 2);
          rear = Math.max(rear, spot.x + size.length / 2);
        }
        add(boxes.get(spot.item)!.mass, spot.x);
        if (spot.item === 'tank') tankAt = spot.x;
        if (growing.has(kind)) grows.push(spot.x);
      }
      const fills = liquids.map((liquid): Along => ({
        mass: dry.mass + liquid,
        moment: dry.moment + liquid * tankAt,
      }));
      const spare =
        standing === 'axles' ? axlesSpare(carrier, fills[0]!, grows) : tongueSpare(carrier, fills, grows);
      const room = carrier.deckLength * (1 + OVERHANG);
      stood.push({
        trouble,
        slack: ROUNDED + slackOf(carrier, fills, grows, toCome),
        spare: Math.min(spare, 1 - (rear - front) / room),
      });
    }
    const least = Math.min(...stood.map((s) => s.trouble + s.slack));
    for (const s of stood) if (s.trouble - s.slack <= least) most = Math.max(most, s.spare);
  }
  return most + HAIR;
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
    return (toCome / mass) * Math.max(...[...grows, aimed].map((x) => Math.abs(x - centre)));
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
      if (part.kind !== 'hose') return part.mass * timesOf(part, () => undefined);
      return (part.mass / 0.3048 + (Math.PI / 4) * part.bore ** 2 * density) * length;
    });
    known.set(slot, (most = Math.max(0, ...masses)));
  }
  return most;
}

function needsBattery(partAt: PartAt): boolean {
  const [engine, reel] = [partAt('engine'), partAt('reel')];
  return (
    (engine?.kind === 'engine' && engine.start === 'electric') ||
    (reel?.kind === 'reel' && reel.rewind === 'electric')
  );
}

/** Loads of a front and a rear axle; what comes yet takes of one only beyond the other, and no more than both may carry. */
function axlesSpare({ axles }: PartOf<'carrier'>, { mass, moment }: Along, grows: readonly number[]): number {
  const [front, rear] = [axles[0]!, axles[axles.length - 1]!];
  const span = rear.position - front.position;
  const atRear = (moment - mass * front.position) / span;
  const more = Math.max(0, front.rating + rear.rating - mass);
  const taken = (beyond: (x: number) => number) => (more * Math.max(0, ...grows.map(beyond))) / span;
  return Math.min(
    axleSpare(front, mass - atRear - taken((x) => x - rear.position)),
    axleSpare(rear, atRear - taken((x) => front.position - x)),
  );
}

/** An axle with its tyres, of which those of one side carry at least half. */
function axleSpare(axle: PartOf<'carrier'>['axles'][number], load: number): number {
  const tyres = axle.tyreRating * axle.tyres;
  const side = axle.tyreRating * Math.max(1, axle.tyres / 2);
  return Math.min(1 - load / Math.min(axle.rating, tyres), 1 - load / 2 / side);
}

/** Tongue and equalised axles of what is towed, with its tank full, half full and empty. */
function tongueSpare(carrier: PartOf<'carrier'>, fills: readonly Along[], grows: readonly number[]): number {
  const coupler = carrier.coupler!;
  const span = axleMiddle(carrier) - coupler.position;
  const shareAt = (x: number) => 1 - (x - coupler.position) / span;
  const [full] = fills.map(({ mass, moment }) => ({ mass, share: shareAt(moment / mass) }));
  const { mass, share } = full!;
  const shares = [share, ...grows.map(shareAt)];
  const { low, high } = TONGUE_SHARE;
  const [least, greatest] = [Math.min(...shares), Math.max(...shares)];
  let spare = Math.min((greatest - low) / low, (high - least) / high);
  if (grows.every((x) => shareAt(x) >= 0)) {
    const { maxTongue, class: known } = couplerClass(coupler.rating);
    const heaviestLoad = Math.max(...fills.map((f) => shareAt(f.moment / f.mass) * f.mass));
    if (known !== 0) spare = Math.min(spare, 1 - heaviestLoad / maxTongue);
  }
  if (grows.every((x) => x >= coupler.position)) {
    const each = ((1 - share) * mass) / carrier.axles.length;
    for (const axle of carrier.axles) spare = Math.min(spare, axleSpare(axle, each));
  }
  return spare;
}
