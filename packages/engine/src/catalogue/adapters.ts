import { display } from '../quantity/index.ts';
import type { Catalogue } from './catalogue.ts';
import type { PartOf } from './part.ts';
import { mates, type Port } from './port.ts';

/** The pieces that join two ports, in order from the first to the second; empty when the ports mate by themselves. */
export type Joint =
  | { readonly ok: true; readonly pieces: readonly PartOf<'fitting'>[] }
  | { readonly ok: false; readonly gap: string };

/** Finds what joins two ports and stands a gauge pressure [Pa]. */
export type JointFinder = (from: Port, to: Port, pressure: number) => Joint;

/** A fitting the one way round. */
interface Way {
  readonly piece: PartOf<'fitting'>;
  /** Key of the ports that it goes on to. */
  readonly from: string;
  readonly leave: Port;
  /** [Pa] */
  readonly stands: number;
}

/** Longest chain that is looked for: beyond four pieces a joint is a leak waiting to happen. */
const MOST_PIECES = 4;
/** Sizes that differ by less are one size. */
const SIZE_ROOM = 1e-4;
/** Joints whose size is that of a cap or thread, not of the way through: behind them comes a tip, narrower than any fitting. */
const OF_TIPS: readonly Port['joint'][] = ['tip-thread', 'nozzle-cap'];

/**
 * Makes the search for the cheapest chain of adapters between two ports of one catalogue.
 *
 * Cheapest by price; at equal price the chain with fewest joints, since every joint can leak. No piece is narrower than
 * the narrower of the two ports, so that the joint throttles nothing. Answers are remembered per pair of ports and
 * class of pressure, so a whole rig asks each question once.
 *
 * @param allowed whether a piece may be used at all: its wetted materials against the rig's liquids, for instance.
 */
export function jointFinder(
  catalogue: Catalogue,
  allowed: (piece: PartOf<'fitting'>) => boolean = () => true,
): JointFinder {
  const adapters = catalogue.byKind.fitting.filter((f) => f.ports.length === 2 && allowed(f));
  const classes = [...new Set(adapters.map(ratingOf))].sort((a, b) => a - b);
  const ways = adapters.flatMap((piece) =>
    bothWays(piece).map(([enter, leave]): Way => ({
      piece,
      from: mateKey(enter),
      leave,
      stands: ratingOf(piece),
    })),
  );
  const entering = new Map<string, Way[]>();
  for (const way of ways) {
    const list = entering.get(way.from);
    if (list === undefined) entering.set(way.from, [way]);
    else list.push(way);
  }
  const leftBy = new Map<string, ReadonlyMap<string, number>>();
  const left = (to: Port): ReadonlyMap<string, number> => {
    let known = leftBy.get(portKey(to));
    if (known === undefined) leftBy.set(portKey(to), (known = piecesLeft(to, ways)));
    return known;
  };
  const search: JointFinder = (from, to, pressure) => {
    if (mates(from, to)) return { ok: true, pieces: [] };
    const narrowest = narrowestOf(from, to);
    const least = left(to);
    interface Reached {
      port: Port;
      price: number;
      pieces: readonly PartOf<'fitting'>[];
    }
    // One state per port and number of pieces, so that a cheap long chain never hides a dearer one that is short enough.
    const reached = new Map<string, Reached | undefined>([
      [`0 ${portKey(from)}`, { port: from, price: 0, pieces: [] }],
    ]);
    const open = new Set(reached.keys());
    for (;;) {
      let next: Reached | undefined;
      let at = '';
      for (const key of open) {
        const r = reached.get(key)!;
        if (next !== undefined && !cheaper(r, next)) continue;
        next = r;
        at = key;
      }
      if (next === undefined)
        return { ok: false, gap: `nothing in the catalogue joins ${portName(from)} to ${portName(to)}` };
      open.delete(at);
      reached.set(at, undefined);
      if (mates(next.port, to)) return { ok: true, pieces: next.pieces };
      if (next.pieces.length >= MOST_PIECES) continue;
      for (const { piece, leave, stands } of entering.get(portKey(next.port)) ?? []) {
        if (stands < pressure || leave.size < narrowest) continue;
        const count = next.pieces.length + 1;
        if (count + (least.get(portKey(leave)) ?? Infinity) > MOST_PIECES) continue;
        const key = `${count} ${portKey(leave)}`;
        const known = reached.get(key);
        const price = next.price + piece.priceCents;
        // What is settled stays; what comes first stays too when nothing is cheaper.
        if (known === undefined ? reached.has(key) : price >= known.price) continue;
        reached.set(key, { port: leave, price, pieces: [...next.pieces, piece] });
        open.add(key);
      }
    }
  };

  return oncePerPorts(classes, search);
}

/**
 * Remembers what joins two ports, for each class of pressure.
 *
 * @param classes pressures that pieces stand, rising: between two of them all pressures have one answer [Pa]
 */
export function oncePerPorts(classes: readonly number[], search: JointFinder): JointFinder {
  /** By the key of the first port, that of the second, and the class of pressure. */
  const remembered = new Map<string, Map<string, Joint[]>>();
  return (from, to, pressure) => {
    // Above the highest class all pressures have one answer too.
    const found = classes.findIndex((c) => c >= pressure);
    const level = found < 0 ? classes.length : found;
    let ofFrom = remembered.get(portKey(from));
    if (ofFrom === undefined) remembered.set(portKey(from), (ofFrom = new Map<string, Joint[]>()));
    let joints = ofFrom.get(portKey(to));
    if (joints === undefined) ofFrom.set(portKey(to), (joints = []));
    return (joints[level] ??= search(from, to, pressure));
  };
}

/** Least pieces by which some ports still lack a mate, whatever they stand and however narrow they are, by their keys. */
function piecesLeft(to: Port, ways: readonly Way[]): ReadonlyMap<string, number> {
  const least = new Map<string, number>();
  for (const { leave } of ways) if (mates(leave, to)) least.set(portKey(leave), 0);
  for (let left = 1; left <= MOST_PIECES; left++) {
    const before = new Set([...least.keys()]);
    for (const { from, leave } of ways)
      if (before.has(portKey(leave)) && !least.has(from)) least.set(from, left);
  }
  return least;
}

/** Least size that a piece between two ports may have: that of the narrower of the two [m]. */
export function narrowestOf(from: Port, to: Port): number {
  if (OF_TIPS.includes(from.joint) || OF_TIPS.includes(to.joint)) return 0;
  return Math.min(from.size, to.size) - SIZE_ROOM;
}

/** What a fitting stands: the least of its own rating and those of its ports [Pa]. */
export function ratingOf(piece: PartOf<'fitting'>): number {
  return Math.min(piece.maxPressure, ...piece.ports.map((p) => p.maxPressure ?? Infinity));
}

/** How a builder says a port: "3/4 in npt, female". */
export function portName(port: Port): string {
  const size = display(port.size, 'length', 'us', { as: 'bore' });
  return `${size} ${port.joint}${port.gender === 'none' ? '' : `, ${port.gender}`}`;
}

function bothWays(f: PartOf<'fitting'>): [Port, Port][] {
  const [a, b] = [f.ports[0]!, f.ports[1]!];
  return [
    [a, b],
    [b, a],
  ];
}

function cheaper(
  a: { price: number; pieces: readonly unknown[] },
  b: { price: number; pieces: readonly unknown[] },
): boolean {
  return a.price < b.price || (a.price === b.price && a.pieces.length < b.pieces.length);
}

const keys = new WeakMap<Port, string>();

/** What says how a port joins: joint, size and gender. Made once per port, since every bill asks for it. */
export function portKey(p: Port): string {
  let key = keys.get(p);
  if (key === undefined) keys.set(p, (key = `${p.joint}:${p.size.toPrecision(6)}:${p.gender}`));
  return key;
}

/** Key of the port that mates with this one. */
function mateKey(p: Port): string {
  const gender = p.gender === 'none' ? 'none' : p.gender === 'male' ? 'female' : 'male';
  return portKey({ ...p, gender });
}
