import type { PartOf } from '../../catalogue/index.ts';
import { aimedCentre, imbalance, type Along } from './balance.ts';
import {
  behind,
  EMPTY_BLOCK,
  GAP,
  momentAt,
  packed,
  packedLength,
  placesAt,
  stacked,
  type Block,
  type Box,
  type Footprint,
} from './blocks.ts';
import { standingOf } from './carrier-frame.ts';
import type { MassPoint } from './placed-part.ts';

type Carrier = PartOf<'carrier'>;

export interface Spot {
  readonly item: string;
  readonly x: number;
  readonly y: number;
  /** Above the deck [m]. */
  readonly z: number;
}

/** What stands on a deck, by where it may go. */
export interface DeckLoad {
  readonly tanks: readonly Box[];
  /** Engine, pump, gear and battery. */
  readonly machinery: readonly Box[];
  readonly reels: readonly Box[];
  /** Hung behind the deck. */
  readonly booms: readonly Box[];
  /** Ahead of the deck: the PTO shaft. */
  readonly ahead: readonly Box[];
  readonly own: readonly MassPoint[];
  /** Mass of the full tank's liquid [kg]. */
  readonly liquid: number;
}

type ReelPlace = 'rear' | 'front' | 'beside' | 'over';

/** Reels are handiest at the rear, beside the pump next; on a stand they raise the centre of mass. */
const REEL_TROUBLE: Record<ReelPlace, number> = { rear: 0, beside: 0.01, front: 0.02, over: 0.08 };
/** A metre of overhang is worse than any imbalance. */
const OVERHANG_TROUBLE = 100;

/** Blocks that every order has in common, packed once. */
interface Packed {
  readonly tank: Block;
  readonly boom: Block;
  readonly ahead: Block;
}

/** One order of blocks with the places of their front ends [m]. */
interface Order {
  readonly front: Block;
  readonly rear: Block;
  readonly rearStart: number;
  readonly tankStart: number;
  readonly boomStart: number;
  readonly trouble: number;
}

/** One sensible way to set up a deck, and how far it is from what is aimed at. */
export interface Arrangement {
  /** Its blocks with the places of their front ends, each box at its place behind these [m]. */
  readonly blocks: readonly (readonly [block: Block, start: number])[];
  readonly trouble: number;
}

/** Where every standing part of an arrangement stands. */
export function spotsOf({ blocks }: Pick<Arrangement, 'blocks'>): Spot[] {
  return blocks.flatMap(([block, start]) =>
    placesAt(block, start).map(({ box, x, y, z }) => ({ item: box.item, x, y, z })),
  );
}

/**
 * Sensible places on a deck: every order of machinery, tank and reel is tried, the tank is pushed to where it balances
 * the carrier when full, and the order with least overhang and imbalance is taken.
 */
export function arrange(carrier: Carrier, load: DeckLoad): Spot[] {
  let best: Arrangement | undefined;
  for (const one of arrangements(carrier, load))
    if (best === undefined || one.trouble < best.trouble - 1e-9) best = one;
  return spotsOf(best!);
}

/** Every order of machinery, tank and reel. */
export function* arrangements(carrier: Carrier, load: DeckLoad): Generator<Arrangement> {
  const common: Packed = {
    tank: packed(load.tanks, carrier.deckWidth),
    boom: packed(load.booms, Infinity),
    ahead: packed(load.ahead, Infinity),
  };
  const own = ownAlong(load, common);
  for (const { front, rear, trouble } of orders(carrier, load)) {
    const order = placed(carrier, load, common, own, front, rear);
    yield {
      trouble: order.trouble + trouble,
      blocks: [
        [order.front, 0],
        [order.rear, order.rearStart],
        [common.boom, order.boomStart],
        [common.ahead, -common.ahead.length],
        [common.tank, order.tankStart],
      ],
    };
  }
}

/**
 * Least length that tank, machinery and reel take on a deck in whatever order [m]. With a battery still to come, the
 * reel beside the machinery is left out: one more box may put the rows together in another way.
 */
export function leastDeckLength(
  { deckWidth }: Carrier,
  { tanks, machinery, reels }: Readonly<Record<'tanks' | 'machinery' | 'reels', readonly Footprint[]>>,
  moreToCome: boolean,
): number {
  const tank = packedLength(tanks, deckWidth);
  const machines = packedLength(machinery, deckWidth);
  const reel = packedLength(reels, deckWidth);
  const row = (...lengths: readonly number[]) =>
    lengths.filter((l) => l > 0).reduce((sum, l) => sum + l + GAP, -GAP);
  const beside = moreToCome ? 0 : packedLength([...machinery, ...reels], deckWidth);
  return Math.min(
    row(tank, machines, reel),
    row(tank, Math.max(machines, reel)),
    row(tank, Math.max(beside, machines, reel)),
  );
}

function* orders(
  carrier: Carrier,
  load: DeckLoad,
): Generator<{ front: Block; rear: Block; trouble: number }> {
  const machinery = packed(load.machinery, carrier.deckWidth);
  const reel = packed(load.reels, carrier.deckWidth);
  const hitched = standingOf(carrier) === 'hitch';
  const reelPlaces: readonly ReelPlace[] =
    load.reels.length === 0 ? ['rear'] : hitched ? ['rear', 'over'] : ['rear', 'beside', 'front', 'over'];
  for (const place of reelPlaces) {
    const trouble = REEL_TROUBLE[place];
    const joined =
      place === 'beside'
        ? packed([...load.machinery, ...load.reels], carrier.deckWidth)
        : place === 'over'
          ? stacked(machinery, reel)
          : machinery;
    const outer = place === 'rear' || place === 'front' ? reel : EMPTY_BLOCK;
    for (const ahead of hitched ? [true] : [true, false]) {
      const atFront = ahead ? joined : EMPTY_BLOCK;
      const atRear = ahead ? EMPTY_BLOCK : joined;
      yield place === 'front'
        ? { front: behind(outer, atFront), rear: atRear, trouble }
        : { front: atFront, rear: behind(atRear, outer), trouble };
    }
  }
}

/** The carrier's own mass and what hangs ahead of the deck: where they are in every order. */
function ownAlong(load: DeckLoad, { ahead }: Packed): Along {
  let mass = ahead.mass;
  let moment = momentAt(ahead, -ahead.length);
  for (const m of load.own) {
    mass += m.mass;
    moment += m.mass * m.x;
  }
  return { mass, moment };
}

/** Puts the tank between two blocks where the rig is balanced best. */
function placed(
  carrier: Carrier,
  load: DeckLoad,
  { tank, boom }: Packed,
  own: Along,
  front: Block,
  rear: Block,
): Order {
  const gapFront = front.length > 0 && tank.length > 0 ? GAP : 0;
  const gapRear = rear.length > 0 && tank.length > 0 ? GAP : 0;
  const earliest = front.length + gapFront;
  const overhang = Math.max(0, earliest + tank.length + gapRear + rear.length - carrier.deckLength);
  const latest = Math.max(earliest, carrier.deckLength - rear.length - gapRear - tank.length);
  const rearStart = Math.max(carrier.deckLength - rear.length, earliest + tank.length + gapRear);
  const boomStart = Math.max(carrier.deckLength, rearStart + rear.length) + (boom.length > 0 ? GAP : 0);
  const others: Along = {
    mass: own.mass + front.mass + rear.mass + boom.mass,
    moment: own.moment + front.moment + momentAt(rear, rearStart) + momentAt(boom, boomStart),
  };
  const tankStart = balanced(carrier, load, tank, others, earliest, latest);
  const dry: Along = {
    mass: others.mass + tank.mass,
    moment: others.moment + momentAt(tank, tankStart),
  };
  const liquid: Along = {
    mass: load.liquid,
    moment: load.liquid * (tankStart + (tank.places[0]?.x ?? 0)),
  };
  const trouble = OVERHANG_TROUBLE * overhang + imbalance(carrier, dry, liquid);
  return { front, rear, rearStart, tankStart, boomStart, trouble };
}

/** Front end of the tank block: where the full rig's centre is as aimed, or as near to it as the room allows. */
function balanced(
  carrier: Carrier,
  load: DeckLoad,
  tank: Block,
  others: Along,
  earliest: number,
  latest: number,
): number {
  const aimed = aimedCentre(carrier);
  const first = tank.places[0];
  if (aimed === undefined || first === undefined) return earliest;
  // Σ m x = M x_aimed, with every tank and the liquid of the first one moved together.
  const moved = tank.mass + load.liquid;
  const inBlock = tank.moment + load.liquid * first.x;
  const start = ((others.mass + moved) * aimed - others.moment - inBlock) / moved;
  return Math.min(latest, Math.max(earliest, start));
}
