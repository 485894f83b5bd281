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

/** Ratings between two pressures, and what was found of pairs of ports there, by their numbers. */
interface Between {
  readonly levels: readonly number[];
  readonly joints: Map<number, MadeJoint | undefined>;
  readonly drained: Map<number, DrainedJoint | undefined>;
}

/** A joint with the drain of the tank in it: the elbows that its two sides may have. */
export interface DrainedJoint {
  readonly adds: Adds;
  readonly elbows: readonly Adds[];
}

/** More sorts of ports than any catalogues together have. */
const MOST_PORTS = 2 ** 20;

/** No line on the suction side or of a tank's cap stands under more than the liquid in the tank [Pa]. */
export const TANK_HEAD = 1e5;

/**
 * What single joints add to a rig: fittings of the cheapest chain, work and sealant, by the same rules as the plumbing
 * of a whole rig. Undefined is a joint that nothing makes.
 *
 * A joint is asked for with the least pressure that it sees. What it sees is more, and a stronger chain, though dearer to
 * buy, may have fewer pieces to make up: so each figure is the least over all ratings up to the most that any pump of the
 * space stands.
 */
export class Pieces {
  readonly supply: Supply;
  readonly #money: Money;
  readonly #most: number;
  readonly #clamps: readonly number[];
  readonly #known = new Map<string, unknown>();
  readonly #between = new Map<number, Map<number, Between>>();
  /** What was asked for last: a search asks for many joints under one pressure. */
  #asked: readonly [least: number, most: number] = [NaN, NaN];
  #last: Between | undefined;

  /** @param most pressure that no joint sees in a rig that keeps its promises [Pa] */
  constructor(supply: Supply, money: Money, most: number) {
    this.supply = supply;
    this.#money = money;
    this.#most = most;
    this.#clamps = [
      ...new Set(
        supply.hardware.flatMap(({ purpose: p }) => (p.form === 'hose-clamp' ? [p.maxPressure] : [])),
      ),
    ];
  }

  /** Ratings at which pieces may be chosen between two pressures: pressures with the same are one. */
  levels(least: number, most = this.#most): readonly number[] {
    return this.#levelsOf(least, most).levels;
  }

  #levelsOf(least: number, most: number): Between {
    if (this.#last !== undefined && least === this.#asked[0] && most === this.#asked[1]) return this.#last;
    const [first, last] = [this.supply.level(least), this.supply.level(Math.max(least, most))];
    let from = this.#between.get(first);
    if (from === undefined) this.#between.set(first, (from = new Map<number, Between>()));
    let between = from.get(last);
    if (between === undefined) {
      const levels = [first];
      for (let at = first; at < last;) levels.push((at = this.supply.level(at + 1)));
      from.set(last, (between = { levels, joints: new Map(), drained: new Map() }));
    }
    this.#asked = [least, most];
    return (this.#last = between);
  }

  /** Between two ports, at a pressure that they see at least. */
  joint(
    from: Port | undefined,
    to: Port | undefined,
    pressure: number,
    most = this.#most,
  ): MadeJoint | undefined {
    if (from === undefined || to === undefined) return undefined;
    const { levels, joints } = this.#levelsOf(pressure, most);
    const key = pairOf(from, to);
    const known = joints.get(key);
    if (known !== undefined || joints.has(key)) return known;
    const joint = leastJoint(levels.map((level) => this.#jointAt(from, to, level)));
    joints.set(key, joint);
    return joint;
  }

  #jointAt(from: Port, to: Port, level: number): MadeJoint | undefined {
    const plain = this.#chain(this.supply.join, from, to, level);
    if (plain === undefined) return undefined;
    const round = this.#chain(this.supply.joinRound, from, to, level);
    if (round === undefined) return { adds: plain, elbow: undefined };
    return {
      adds: { ...plain, late: Math.min(plain.late, round.late) },
      elbow: {
        cents: Math.max(0, round.cents - plain.cents),
        mass: Math.max(0, round.mass - plain.mass),
        late: round.late,
      },
    };
  }

  /** A part of the bill with what it adds. */
  bought(part: Part, quantity = 1): Adds {
    return this.#money.bought(part, quantity);
  }

  /** From a port through the wall of the tank, and to what hangs on the wall's inner side. */
  throughWall(
    of: Port,
    outside: Port | undefined,
    inside: Port | undefined,
    pressure: number,
  ): MadeJoint | undefined {
    if (outside === undefined) return undefined;
    const levels = this.levels(pressure);
    const ports = [of, outside, inside].map((p) => (p === undefined ? '-' : portKey(p)));
    return this.#once(`w ${ports.join(' ')} ${keyOf(levels)}`, () =>
      leastJoint(
        levels.map((level) => {
          const wall = bulkheadFor(this.supply, of, level);
          const outer = this.joint(outside, wall?.ports[0], pressure);
          const inner = inside === undefined ? NOTHING : this.joint(wall?.ports[1], inside, pressure)?.adds;
          if (wall === undefined || outer === undefined || inner === undefined) return undefined;
          return { adds: plus(this.#money.bought(wall), outer.adds, inner), elbow: outer.elbow };
        }),
      ),
    );
  }

  /** Between two ports of a suction line, with the drain of the tank. */
  drained(from: Port | undefined, to: Port | undefined): DrainedJoint | undefined {
    if (from === undefined || to === undefined) return undefined;
    const { levels, drained } = this.#levelsOf(0, TANK_HEAD);
    const key = pairOf(from, to);
    const known = drained.get(key);
    if (known !== undefined || drained.has(key)) return known;
    const joint = this.#drained(from, to, levels);
    drained.set(key, joint);
    return joint;
  }

  #drained(from: Port, to: Port, levels: readonly number[]): DrainedJoint | undefined {
    const made = levels.flatMap((level) => {
      const drain = drainFor(this.supply, from, to, level);
      if (drain === undefined) return [];
      const { tee, valve } = drain;
      const joints = [
        this.joint(from, tee.ports[0], 0, TANK_HEAD),
        this.joint(tee.ports[1], to, 0, TANK_HEAD),
        this.joint(tee.ports[2], valve.ports[0], 0, TANK_HEAD),
      ];
      if (joints.some((j) => j === undefined)) return [];
      const bought = [this.#money.bought(tee), this.#money.bought(valve)];
      return [{ adds: plus(...bought, ...joints.map((j) => j!.adds)), joints: joints.slice(0, 2) }];
    });
    if (made.length === 0) return undefined;
    const elbows = [0, 1].flatMap((i) => leastOf(made.map((m) => m.joints[i]!.elbow)) ?? []);
    return { adds: leastOf(made.map((m) => m.adds))!, elbows };
  }

  /** Ends a port for what is coupled on from outside. */
  outside(port: Port | undefined, theirs: Port['gender'], pressure: number): MadeJoint | undefined {
    if (port === undefined) return undefined;
    if (port.joint === 'cam-lock') return { adds: NOTHING, elbow: undefined };
    const joint = leastJoint(
      this.levels(pressure).map((level) =>
        this.joint(port, couplingFor(this.supply, port, theirs, level), pressure),
      ),
    );
    return joint && { adds: joint.adds, elbow: undefined };
  }

  /** Closes a port. */
  cap(port: Port, pressure: number, most = this.#most): Adds {
    const caps = this.levels(pressure, most).map((level) => {
      const cap = capFor(this.supply, port, level);
      const joint = this.joint(port, cap?.ports[0], pressure, most);
      return cap && joint && plus(this.#money.bought(cap), joint.adds);
    });
    return leastOf(caps) ?? NOTHING;
  }

  /** What joins all ends at a node, in the order in which they stand along it. */
  node(ends: readonly EndPort[], pressure: number): MadeNode | undefined {
    const levels = this.levels(pressure);
    const key = ends.map(({ port, still }) => `${portKey(port)}${still ? ' still' : ''}`).join(' ');
    return this.#once(`n ${key} ${keyOf(levels)}`, () => {
      if (ends.length < 2) return { adds: NOTHING, joints: ends.map(() => undefined) };
      if (ends.length === 2) {
        const joint = this.joint(ends[0]!.port, ends[1]!.port, pressure);
        return joint === undefined ? undefined : { adds: joint.adds, joints: [undefined, joint] };
      }
      const made: MadeNode[] = [];
      let last: readonly Part[] | undefined;
      for (const level of levels) {
        const parts = branchesFor(this.supply, ends, level);
        // A row is so many of one fitting: the same one stands more than was asked.
        if (parts === undefined || (parts[0] === last?.[0] && parts.length === last?.length)) continue;
        last = parts;
        made.push(this.#branched(parts, ends, pressure));
      }
      if (made.length === 0) return undefined;
      return {
        adds: leastOf(made.map((m) => m.adds))!,
        joints: ends.map((_, i) => leastJoint(made.map((m) => m.joints[i]))),
      };
    });
  }

  #branched(parts: readonly PartOf<'fitting'>[], ends: readonly EndPort[], pressure: number): MadeNode {
    const { levels } = this.#levelsOf(pressure, this.#most);
    const { adds: of, free } = this.#once(
      `r ${parts[0]!.id} ${parts.length} ${ends.length} ${keyOf(levels)}`,
      () => this.#rowOf(parts, ends.length, pressure),
    );
    const joints = ends.map(({ port }, i) => this.joint(free[i], port, pressure));
    return { adds: joints.reduce((sum, j) => (j === undefined ? sum : plus(sum, j.adds)), of), joints };
  }

  /** A manifold, or tees in a row, with what closes the ports that no end takes. */
  #rowOf(parts: readonly PartOf<'fitting'>[], ends: number, pressure: number) {
    const rows = parts.map((p) => p.ports);
    const free = freeOf(rows);
    const between = rows.slice(1).map((row, i) => this.joint(rows[i]![1], row[0], pressure));
    const adds = plus(
      ...parts.map((p) => this.#money.bought(p)),
      ...between.map((j) => j?.adds ?? NOTHING),
      ...free.slice(ends).map((port) => this.cap(port, pressure)),
    );
    return { adds, free };
  }

  /** Least rating of fittings or clamps that stands a pressure: under all pressures up to it a hose ends alike [Pa]. */
  hoseLevel(pressure: number): number {
    let level = this.supply.level(pressure);
    for (const rating of this.#clamps) if (rating >= pressure) level = Math.min(level, rating);
    return level;
  }

  /** Clamps and menders of a hose that is cut to a length. */
  hoseEnds(hose: Part, length: number, pressure: number): Adds {
    if (hose.kind !== 'hose') return NOTHING;
    const pieces = Math.ceil(length / hose.longestPiece - 1e-6);
    const [into, out] = ['in', 'out'].map((id) => hose.ports.find((p) => p.id === id));
    let adds = NOTHING;
    for (const port of [into, out]) {
      if (port?.joint !== 'hose') continue;
      const clamp = this.small(
        pieces,
        ({ purpose: p }) =>
          p.form === 'hose-clamp' &&
          p.maxPressure >= pressure &&
          p.smallest <= hose.outsideDiameter + 1e-5 &&
          p.largest >= hose.outsideDiameter - 1e-5,
      );
      adds = plus(adds, clamp);
    }
    if (pieces < 2) return adds;
    const mender = this.joint(out, into, pressure)?.adds ?? NOTHING;
    return plus(adds, timesOver(mender, pieces - 1));
  }

  /**
   * Some small things of a sort, the least of all that fit: a rig may ask for stronger ones. What else of the same sort a
   * rig takes from the shelf decides its days, which say nothing here.
   */
  small(count: number, fits: (part: PartOf<'hardware'>) => boolean): Adds {
    const fitting = this.supply.hardware.filter(fits).map((part) => this.#money.bought(part, count));
    return { ...(leastOf(fitting) ?? NOTHING), late: 0 };
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

const numbers = new Map<string, number>();
const numberOf = new WeakMap<Port, number>();

/** A number of a pair of ports: the same for ports that join alike. */
function pairOf(from: Port, to: Port): number {
  return portNumber(from) * MOST_PORTS + portNumber(to);
}

function portNumber(port: Port): number {
  let number = numberOf.get(port);
  if (number === undefined) {
    number = numbers.get(portKey(port)) ?? numbers.size;
    numbers.set(portKey(port), number);
    numberOf.set(port, number);
  }
  return number;
}

function keyOf(levels: readonly number[]): string {
  return `${levels[0]} ${levels[levels.length - 1]}`;
}

/** Least of several ways to make one joint, each figure by itself; undefined when none can be made. */
function leastJoint(ways: readonly (MadeJoint | undefined)[]): MadeJoint | undefined {
  const made = ways.filter((w) => w !== undefined);
  const adds = leastOf(made.map((w) => w.adds));
  return adds && { adds, elbow: leastOf(made.map((w) => w.elbow)) };
}

/** Least of what several ways add, each figure by itself; undefined when there is none. */
export function leastOf(adds: readonly (Adds | undefined)[]): Adds | undefined {
  let least: Adds | undefined;
  for (const a of adds)
    if (a !== undefined)
      least =
        least === undefined
          ? a
          : {
              cents: Math.min(least.cents, a.cents),
              mass: Math.min(least.mass, a.mass),
              late: Math.min(least.late, a.late),
            };
  return least;
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
