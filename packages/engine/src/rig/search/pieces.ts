import {
  mates,
  portKey,
  type JointFinder,
  type Part,
  type PartOf,
  type Port,
} from '../../catalogue/index.ts';
import {
  branchesFor,
  bulkheadFor,
  capFor,
  couplingFor,
  drainFor,
  freeOf,
  type EndPort,
  type Supply,
} from '../plumbing/index.ts';
import { NOTHING, plus, type Adds, type Money } from './money.ts';

/** A joint that is made: what it adds, and what more an elbow in it adds; undefined where no elbow goes. */
export interface MadeJoint {
  readonly adds: Adds;
  readonly elbow: Adds | undefined;
}

/** Where several lines meet: what the branch adds, and the joints of its ends in their order. */
export interface MadeNode {
  readonly adds: Adds;
  readonly joints: readonly (MadeJoint | undefined)[];
}

/** The pressure that a joint sees is at least what is known, and hardly more than this much above it [-, Pa]. */
const MORE = 1.2;
const ABOVE = 1e5;

/**
 * What single joints add to a rig: fittings of the cheapest chain, work and sealant, by the same rules as the plumbing
 * of a whole rig. Undefined is a joint that nothing makes.
 */
export class Pieces {
  readonly supply: Supply;
  readonly #money: Money;
  readonly #known = new Map<string, unknown>();

  constructor(supply: Supply, money: Money) {
    this.supply = supply;
    this.#money = money;
  }

  /** Between two ports, at a pressure that they see at least. */
  joint(from: Port | undefined, to: Port | undefined, pressure: number): MadeJoint | undefined {
    if (from === undefined || to === undefined) return undefined;
    const levels = [this.supply.level(pressure), this.supply.level(pressure * MORE + ABOVE)];
    return this.#once(`j ${portKey(from)} ${portKey(to)} ${levels.join(' ')}`, () => {
      const plain = this.#least(this.supply.join, from, to, levels);
      if (plain === undefined) return undefined;
      const round = this.#least(this.supply.joinRound, from, to, levels);
      const elbow =
        round === undefined
          ? undefined
          : { cents: Math.max(0, round.cents - plain.cents), mass: Math.max(0, round.mass - plain.mass) };
      return { adds: plain, elbow };
    });
  }

  /** Least of the chains that stand some pressures: what the joint sees lies between them. */
  #least(join: JointFinder, from: Port, to: Port, levels: readonly number[]): Adds | undefined {
    return leastOf([...new Set(levels)].map((level) => this.#chain(join, from, to, level)));
  }

  /** A part of the bill with its price and mass. */
  bought(part: Part, quantity = 1): Adds {
    return this.#money.bought(part, quantity);
  }

  /** The fitting that takes a port through the wall of the tank. */
  wallFor(port: Port, pressure: number): PartOf<'fitting'> | undefined {
    return bulkheadFor(this.supply, port, pressure);
  }

  /** The same with the drain of the tank in it. */
  drained(from: Port | undefined, to: Port | undefined, pressure: number): MadeJoint | undefined {
    if (from === undefined || to === undefined) return undefined;
    return this.#once(`d ${portKey(from)} ${portKey(to)} ${this.supply.level(pressure)}`, () => {
      const drain = drainFor(this.supply, from, to, pressure);
      if (drain === undefined) return undefined;
      const { tee, valve } = drain;
      const joints = [
        this.joint(from, tee.ports[0], pressure),
        this.joint(tee.ports[1], to, pressure),
        this.joint(tee.ports[2], valve.ports[0], pressure),
      ];
      if (joints.some((j) => j === undefined)) return undefined;
      const adds = plus(this.#money.bought(tee), this.#money.bought(valve), ...joints.map((j) => j!.adds));
      return { adds, elbow: leastOf(joints.slice(0, 2).map((j) => j!.elbow)) };
    });
  }

  /** Ends a port for what is coupled on from outside. */
  outside(port: Port | undefined, theirs: Port['gender'], pressure: number): MadeJoint | undefined {
    if (port === undefined) return undefined;
    if (port.joint === 'cam-lock') return { adds: NOTHING, elbow: undefined };
    return this.joint(port, couplingFor(this.supply, port, theirs, pressure), pressure);
  }

  /** Closes a port. */
  cap(port: Port, pressure: number): Adds {
    const cap = capFor(this.supply, port, pressure);
    if (cap === undefined) return NOTHING;
    return plus(this.#money.bought(cap), this.joint(port, cap.ports[0], pressure)?.adds ?? NOTHING);
  }

  /** What joins all ends at a node, in the order in which they stand along it. */
  node(ends: readonly EndPort[], pressure: number): MadeNode | undefined {
    const key = ends.map(({ port, still }) => `${portKey(port)}${still ? ' still' : ''}`).join(' ');
    return this.#once(`n ${key} ${this.supply.level(pressure)}`, () => {
      if (ends.length < 2) return { adds: NOTHING, joints: ends.map(() => undefined) };
      if (ends.length === 2) {
        const joint = this.joint(ends[0]!.port, ends[1]!.port, pressure);
        return joint === undefined ? undefined : { adds: joint.adds, joints: [undefined, joint] };
      }
      const parts = branchesFor(this.supply, ends, pressure);
      if (parts === undefined) return undefined;
      const rows = parts.map((p) => p.ports);
      const between = rows.slice(1).map((row, i) => this.joint(rows[i]![1], row[0], pressure));
      const free = freeOf(rows);
      const joints = ends.map(({ port }, i) => this.joint(free[i], port, pressure));
      const adds = plus(
        ...parts.map((p) => this.#money.bought(p)),
        ...[...between, ...joints].map((j) => j?.adds ?? NOTHING),
        ...free.slice(ends.length).map((port) => this.cap(port, pressure)),
      );
      return { adds, joints };
    });
  }

  /** Clamps and menders of a hose that is cut to a length. */
  hoseEnds(hose: Part, length: number, pressure: number): Adds {
    if (hose.kind !== 'hose') return NOTHING;
    const pieces = Math.ceil(length / hose.longestPiece - 1e-6);
    const [into, out] = ['in', 'out'].map((id) => hose.ports.find((p) => p.id === id));
    let adds = NOTHING;
    for (const port of [into, out]) {
      if (port?.joint !== 'hose') continue;
      const clamp = this.#clamp(hose, pressure);
      if (clamp !== undefined) adds = plus(adds, this.#money.bought(clamp, pieces));
    }
    if (pieces < 2) return adds;
    const mender = this.joint(out, into, pressure)?.adds ?? NOTHING;
    return plus(adds, { cents: mender.cents * (pieces - 1), mass: mender.mass * (pieces - 1) });
  }

  #clamp(hose: PartOf<'hose'>, pressure: number): PartOf<'hardware'> | undefined {
    let best: PartOf<'hardware'> | undefined;
    for (const part of this.supply.hardware) {
      const { purpose: p } = part;
      if (p.form !== 'hose-clamp' || p.maxPressure < pressure) continue;
      if (p.smallest > hose.outsideDiameter + 1e-5 || p.largest < hose.outsideDiameter - 1e-5) continue;
      if (best === undefined || part.priceCents < best.priceCents) best = part;
    }
    return best;
  }

  #chain(join: JointFinder, from: Port, to: Port, pressure: number): Adds | undefined {
    const found = join(from, to, pressure);
    if (!found.ok) return undefined;
    let at: Port | undefined = from;
    let threads = at.joint === 'npt' ? 1 : 0;
    for (const piece of found.pieces) {
      const entered: Port | undefined = piece.ports.find((p) => at !== undefined && mates(at, p));
      at = piece.ports.find((p) => p !== entered);
      if (at?.joint === 'npt') threads++;
    }
    const work = (found.pieces.length + 1) * this.#money.perJoint + threads * this.#money.perThread;
    return plus({ cents: work, mass: 0 }, ...found.pieces.map((p) => this.#money.bought(p)));
  }

  #once<T>(question: string, make: () => T): T {
    if (!this.#known.has(question)) this.#known.set(question, make());
    return this.#known.get(question) as T;
  }
}

/** Least of what several elbows add, each figure by itself. */
export function leastOf(adds: readonly (Adds | undefined)[]): Adds | undefined {
  const there = adds.filter((a) => a !== undefined);
  return there.length === 0
    ? undefined
    : { cents: Math.min(...there.map((a) => a.cents)), mass: Math.min(...there.map((a) => a.mass)) };
}
