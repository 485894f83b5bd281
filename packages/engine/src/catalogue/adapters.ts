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
  const entering = new Map<string, { piece: PartOf<'fitting'>; leave: Port }[]>();
  for (const piece of adapters)
    for (const [enter, leave] of bothWays(piece)) {
      const key = mateKey(enter);
      const list = entering.get(key) ?? [];
      list.push({ piece, leave });
      entering.set(key, list);
    }
  const search: JointFinder = (from, to, pressure) => {
    if (mates(from, to)) return { ok: true, pieces: [] };
    const narrowest = narrowestOf(from, to);
    interface Reached {
      port: Port;
      price: number;
      pieces: readonly PartOf<'fitting'>[];
      settled: boolean;
    }
    // One state per port and number of pieces, so that a cheap long chain never hides a dearer one that is short enough.
    const start: Reached = { port: from, price: 0, pieces: [], settled: false };
    const reached = new Map<string, Reached>([[`0 ${portKey(from)}`, start]]);
    for (;;) {
      let next: Reached | undefined;
      for (const r of reached.values()) if (!r.settled && (next === undefined || cheaper(r, next))) next = r;
      if (next === undefined)
        return { ok: false, gap: `nothing in the catalogue joins ${portName(from)} to ${portName(to)}` };
      next.settled = true;
      if (mates(next.port, to)) return { ok: true, pieces: next.pieces };
      if (next.pieces.length >= MOST_PIECES) continue;
      for (const { piece, leave } of entering.get(portKey(next.port)) ?? []) {
        if (ratingOf(piece) < pressure || leave.size < narrowest) continue;
        const pieces = [...next.pieces, piece];
        const key = `${pieces.length} ${portKey(leave)}`;
        const candidate = { port: leave, price: next.price + piece.priceCents, pieces, settled: false };
        const known = reached.get(key);
        if (known === undefined || (!known.settled && cheaper(candidate, known))) reached.set(key, candidate);
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
