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
import { NOTHING, plus, timesOver, type Adds, type Money } from './money.ts';

/**
 * A joint that is made: what it adds, and what more an elbow in it adds; undefined where no elbow goes. An elbow may take
 * the place of a piece that comes late: the joint's days are the fewer of both ways, the elbow's those of its own way.
 */
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
      if (round === undefined) return { adds: plain, elbow: undefined };
      return {
        adds: { ...plain, late: Math.min(plain.late, round.late) },
        elbow: {
          cents: Math.max(0, round.cents - plain.cents),
          mass: Math.max(0, round.mass - plain.mass),
          late: round.late,
        },
      };
    });
  }

  /** What is added, with its days only where the same is taken at every pressure that may be seen. */
  #days(adds: Adds, pressure: number, taken: (pressure: number) => unknown): Adds {
    return taken(pressure) === taken(pressure * MORE + ABOVE) ? adds : { ...adds, late: 0 };
  }

  /** Least of the chains that stand some pressures: what the joint sees lies between them. */
  #least(join: JointFinder, from: Port, to: Port, levels: readonly number[]): Adds | undefined {
    return leastOf([...new Set(levels)].map((level) => this.#chain(join, from, to, level)));
  }

  /** A part of the bill with what it adds. */
  bought(part: Part, quantity = 1): Adds {
    return this.#money.bought(part, quantity);
  }

  /** The fitting that takes a port through the wall of the tank. */
  wallFor(
    port: Port,
    pressure: number,
  ): { readonly ports: readonly Port[]; readonly adds: Adds } | undefined {
    const wall = (p: number) => bulkheadFor(this.supply, port, p);
    const part = wall(pressure);
    return part && { ports: part.ports, adds: this.#days(this.#money.bought(part), pressure, wall) };
  }

  /** The same with the drain of the tank in it. */
  drained(
    from: Port | undefined,
    to: Port | undefined,
    pressure: number,
  ): { readonly adds: Adds; readonly elbows: readonly Adds[] } | undefined {
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
      const taken = (p: number) => drainFor(this.supply, from, to, p);
      const days = (a: Adds) =>
        this.#days(a, pressure, (p) => taken(p)?.tee === tee && taken(p)?.valve === valve);
      return {
        adds: days(adds),
        elbows: joints.slice(0, 2).flatMap((j) => (j!.elbow ? days(j!.elbow) : [])),
      };
    });
  }

  /** Ends a port for what is coupled on from outside. */
  outside(port: Port | undefined, theirs: Port['gender'], pressure: number): MadeJoint | undefined {
    if (port === undefined) return undefined;
    if (port.joint === 'cam-lock') return { adds: NOTHING, elbow: undefined };
    const coupling = (p: number) => couplingFor(this.supply, port, theirs, p);
    const joint = this.joint(port, coupling(pressure), pressure);
    return joint && { adds: this.#days(joint.adds, pressure, (p) => coupling(p)?.size), elbow: undefined };
  }

  /** Closes a port. */
  cap(port: Port, pressure: number): Adds {
    const cap = capFor(this.supply, port, pressure);
    if (cap === undefined) return NOTHING;
    const adds = plus(this.#money.bought(cap), this.joint(port, cap.ports[0], pressure)?.adds ?? NOTHING);
    return this.#days(adds, pressure, (p) => capFor(this.supply, port, p));
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
      const which = (p: number) => branchesFor(this.supply, ends, p)?.[0];
      const days = (adds: Adds) => this.#days(adds, pressure, which);
      const adds = plus(
        ...parts.map((p) => this.#money.bought(p)),
        ...[...between, ...joints].map((j) => j?.adds ?? NOTHING),
        ...free.slice(ends.length).map((port) => this.cap(port, pressure)),
      );
      return {
        adds: days(adds),
        joints: joints.map((j) => j && { adds: days(j.adds), elbow: j.elbow && days(j.elbow) }),
      };
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
      // Another clamp may be taken at the pressure that the hose sees: this one's days say nothing.
      if (clamp !== undefined) adds = plus(adds, { ...this.#money.bought(clamp, pieces), late: 0 });
    }
    if (pieces < 2) return adds;
    const mender = this.joint(out, into, pressure)?.adds ?? NOTHING;
    return plus(adds, timesOver(mender, pieces - 1));
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
    return plus({ ...NOTHING, cents: work }, ...found.pieces.map((p) => this.#money.bought(p)));
  }

  #once<T>(question: string, make: () => T): T {
    if (!this.#known.has(question)) this.#known.set(question, make());
    return this.#known.get(question) as T;
  }
}

/** Least of what several elbows add, each figure by itself. */
export function leastOf(adds: readonly (Adds | undefined)[]): Adds | undefined {
  const there = adds.filter((a) => a !== undefined);
  const least = (value: (a: Adds) => number) => Math.min(...there.map(value));
  return there.length === 0
    ? undefined
    : { cents: least((a) => a.cents), mass: least((a) => a.mass), late: least((a) => a.late) };
}

/** Least that a line's bends add, each figure by itself: it turns as many of its joints as it has bends. */
export function leastBends(elbows: readonly Adds[], bends: number): Adds {
  const least = (value: (a: Adds) => number) =>
    elbows
      .map(value)
      .sort((a, b) => a - b)
      .slice(0, bends);
  const sum = (values: readonly number[]) => values.reduce((s, v) => s + v, 0);
  return {
    cents: sum(least((a) => a.cents)),
    mass: sum(least((a) => a.mass)),
    late: Math.max(0, ...least((a) => a.late)),
  };
}
