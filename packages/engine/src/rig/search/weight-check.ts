import type { Part, PartOf } from '../../catalogue/index.ts';
import { couplerClass, TONGUE_SHARE } from '../../physics/index.ts';
import { axleMiddle, standingOf } from '../placement/index.ts';
import { deckOrders, type Along, type DeckOrder } from './deck-orders.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Kinds of outlet lines that take room of their own on a deck or behind it: each is tried where none is decided. */
const STANDING: ReadonlySet<string> = new Set(['reel', 'boom']);
/** With more of them nothing is told. */
const MOST_STANDING = 60;
/** Share of a deck's length by which parts may stand out over it, as the promise on it has it. */
const OVERHANG = 0.05;
/** For the little that balance moves the tank with what is added to it. */
const HAIR = 2e-3;

/** Mass that is not known yet and comes about the pump or in the tank: at least, and at most [kg]. */
export interface ToCome {
  readonly least: number;
  readonly most: number;
}

/** Most spare of axles, wheels and tongue that a rig with some parts can have, with whatever stands in its open slots. */
export function borneSpare(
  space: SearchSpace,
  partAt: PartAt,
  density: number,
  open: readonly string[],
): number {
  const carrier = partAt('carrier');
  if (carrier?.kind !== 'carrier' || !isOnAxles(carrier)) return Infinity;
  const standing = space.slots.filter(
    ({ id, options }) => open.includes(id) && options.some((p) => p !== undefined && STANDING.has(p.kind)),
  );
  if (standing.reduce((n, { options }) => n * options.length, 1) > MOST_STANDING) return Infinity;
  const left = open.filter((id) => standing.every((s) => s.id !== id));
  const parts = new Map<string, Part | undefined>(left.map((id) => [id, undefined]));
  const at: PartAt = (slot) => (parts.has(slot) ? parts.get(slot) : partAt(slot));
  let most = -1;
  const visit = (k: number): void => {
    const slot = standing[k];
    if (slot === undefined) {
      const orders = deckOrders(space, carrier, at, density, left).flatMap((s) => s.orders);
      most = Math.max(most, weightSpare(carrier, orders));
    } else
      for (const part of slot.options) {
        parts.set(slot.id, part);
        visit(k + 1);
      }
  };
  visit(0);
  return most;
}

/**
 * Most spare of axles, wheels and tongue that a rig can have whose parts stand in one of some orders; without end where its
 * carrier does not stand on axles of its own.
 *
 * In front of the support behind it, mass that is not known yet adds to the load of the one ahead, wherever balance puts the
 * tank; and the share on the tongue can only move towards that of the places where mass is added. The least that comes is
 * only told where it comes at one place: there it counts as known.
 */
export function weightSpare(
  carrier: PartOf<'carrier'>,
  orders: readonly DeckOrder[],
  { least, most }: ToCome = { least: 0, most: Infinity },
): number {
  if (!isOnAxles(carrier)) return Infinity;
  const standing = standingOf(carrier);
  const room = carrier.deckLength * (1 + OVERHANG);
  let spare = -1;
  for (const { fills: known, grows, front, rear } of orders) {
    const [place] = grows;
    const sure = grows.length === 1 ? least : 0;
    const fills = known.map(({ mass, moment }): Along => ({
      mass: mass + sure,
      moment: moment + sure * (place ?? 0),
    }));
    const open = grows.length === 1 ? most - sure : Infinity;
    const borne =
      standing === 'axles'
        ? axlesSpare(carrier, fills[0]!, grows, open)
        : tongueSpare(carrier, fills, grows, open);
    spare = Math.max(spare, Math.min(borne, 1 - (rear - front) / room));
  }
  return spare + HAIR;
}

function isOnAxles(carrier: PartOf<'carrier'>): boolean {
  return ['coupled', 'axles'].includes(standingOf(carrier));
}

/** Loads of a front and a rear axle; what comes yet takes of one only beyond the other, and no more than both may carry. */
function axlesSpare(
  { axles }: PartOf<'carrier'>,
  { mass, moment }: Along,
  grows: readonly number[],
  open: number,
): number {
  const [front, rear] = [axles[0]!, axles[axles.length - 1]!];
  const span = rear.position - front.position;
  const atRear = (moment - mass * front.position) / span;
  const more = Math.min(open, Math.max(0, front.rating + rear.rating - mass));
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
function tongueSpare(
  carrier: PartOf<'carrier'>,
  fills: readonly Along[],
  grows: readonly number[],
  open: number,
): number {
  const coupler = carrier.coupler!;
  const span = axleMiddle(carrier) - coupler.position;
  const shareAt = (x: number) => 1 - (x - coupler.position) / span;
  const [full] = fills.map(({ mass, moment }) => ({ mass, share: shareAt(moment / mass) }));
  const { mass, share } = full!;
  // All that may come is so much of the whole: all of it where there is no end to it.
  const part = Number.isFinite(open) ? open / (mass + open) : 1;
  const shares = [share, ...grows.map((x) => share + part * (shareAt(x) - share))];
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
