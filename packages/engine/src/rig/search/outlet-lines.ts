import type { Part } from '../../catalogue/index.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import type { Parting } from './core.ts';
import type { Limit } from './limit.ts';
import { LineTree, type Beginning, type WholeLine } from './line-tree.ts';
import { plus, NOTHING, type Adds } from './money.ts';
import { leastBends } from './pieces.ts';
import { both, fewer, frontOf, joinedPoints, ORIGIN, type Point } from './points.ts';
import { remember } from './remember.ts';
import type { PartAt } from './space.ts';
import { endKey, portKeyOf, type LineEnd } from './trims.ts';

/** What an outlet line adds that meets the manifold with some end. */
interface Way {
  readonly end: LineEnd;
  readonly points: Point[];
}

/** One outlet line that begins with some parts. */
interface Begun {
  /** What its other parts and all its joints add, by its end. */
  readonly ways: readonly Way[];
  /** The least that it is set to [Pa]. */
  readonly set: number;
}

/** All outlet lines that begin with some parts. */
export interface BegunLines {
  readonly lines: readonly Begun[];
  readonly set: number;
  /** What they add with what joins all lines, by the outlet of the pump and by the ratings that are enough. */
  readonly known: Map<string, readonly Point[]>;
}

const NO_LINE: Begun = { ways: [], set: Infinity };
/** Ways to meet at the manifold that are told apart. */
const MOST_MEETINGS = 12;
/** Ends of one line that are told apart. */
const MOST_ENDS = 8;

/** The lines of a space, by its conditions: the same for all pumps. */
const treesBy = new WeakMap<readonly Limit[], readonly LineTree[]>();

interface Line {
  readonly tree: LineTree;
  /** Places of its slots among all of the core. */
  readonly places: readonly number[];
  readonly known: Map<Beginning, Begun>;
  /** Whole lines by what their joints hang on. */
  readonly wholes: (Begun | undefined)[];
}

/**
 * Whole outlet lines, of which there are many more than drives and bodies: what those add at least that begin with some
 * parts, and what they ask at least of the pump. A rig's drive and body are decided first, and met by no line at all but
 * by these fronts, so that most lines are never looked at.
 */
export class OutletLines {
  readonly #parting: Parting;
  readonly #lines: readonly Line[];
  readonly #joined = new Map<string, BegunLines>();
  readonly #ends = new Map<string, LineEnd>();

  constructor(parting: Parting, limits: readonly Limit[]) {
    this.#parting = parting;
    const { coreSlots } = parting;
    const trees = treesBy.get(limits) ?? treesOf(parting, limits);
    treesBy.set(limits, trees);
    this.#lines = trees.map((tree) => ({
      tree,
      places: tree.slots.map((s) => coreSlots.indexOf(s)),
      known: new Map(),
      wholes: [],
    }));
  }

  /** Whether every slot of the outlet lines is among the first ones decided. */
  isDecided(decided: number): boolean {
    return this.#lines.every(({ places }) => places.every((place) => place < decided));
  }

  /** All outlet lines that begin with the decided parts. */
  begun(decided: number, partAt: PartAt): BegunLines {
    let key = '';
    const asked = this.#lines.map(({ tree, places }) => {
      const parts = tree.slots.filter((_, i) => places[i]! < decided).map(partAt);
      const last = parts.length === tree.slots.length ? parts.pop() : null;
      const at = tree.at(parts);
      const whole = last === null ? undefined : tree.whole(at, last);
      key += ` ${(whole ?? at).id}`;
      return { at, whole };
    });
    const known = this.#joined.get(key);
    if (known !== undefined) return known;
    const lines = this.#lines.map((line, i) => {
      const { at, whole } = asked[i]!;
      return whole === undefined ? this.#of(line, at) : this.#whole(line, at, whole);
    });
    const all = { lines, set: Math.max(0, ...lines.map((l) => l.set)), known: new Map<string, Point[]>() };
    return remember(this.#joined, key, all);
  }

  /** What outlet lines add besides their decided parts, with all that meets at the manifold under a pressure that it has at least. */
  met({ lines, known }: BegunLines, pump: Part | undefined, pressure: number): readonly Point[] {
    const { joints, pieces } = this.#parting;
    const key = `${portKeyOf(pump, 'out')} ${pieces.supply.level(pressure)}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const meetings = lines.reduce((n, l) => n * l.ways.length, 1);
    const points: Point[] = [];
    const visit = (k: number, ends: readonly LineEnd[], some: readonly Point[]): void => {
      const line = lines[k];
      if (line === undefined) {
        const node: Point = { ...joints.nodeFloor(ends, pump, pressure), margin: Infinity };
        for (const p of some) points.push(both(node, p));
      } else
        for (const { end, points: more } of line.ways)
          visit(
            k + 1,
            [...ends, end],
            some.length === 1 ? more.map((p) => both(some[0]!, p)) : joinedPoints(some, more),
          );
    };
    if (meetings <= MOST_MEETINGS) visit(0, [], [ORIGIN]);
    else {
      const ends = lines.map(({ ways }) => ways.map((w) => w.end));
      const node: Point = { ...joints.leastNode(ends, pump, pressure), margin: Infinity };
      const each = lines.map(({ ways }) => fewer(frontOf(ways.flatMap((w) => w.points))));
      for (const p of each.reduce((some, more) => fewer(joinedPoints(some, more)), [ORIGIN]))
        points.push(both(node, p));
    }
    const front = fewer(frontOf(points));
    known.set(key, front);
    return front;
  }

  #of(line: Line, at: Beginning): Begun {
    const known = line.known.get(at);
    if (known !== undefined) return known;
    const { tree } = line;
    const ways = new Map<LineEnd, Point[]>();
    let set = Infinity;
    const take = (part: Part | undefined, spare: number, rest: Begun): void => {
      const own = this.#parting.own(slot, part, partAt);
      const margin = this.#parting.spare(spare);
      set = Math.min(set, rest.set);
      for (const { end, points } of rest.ways)
        for (const p of points)
          addTo(ways, end, {
            cents: own.cents + p.cents,
            mass: own.mass + p.mass,
            late: Math.max(own.late, p.late),
            margin: Math.min(margin, p.margin),
          });
    };
    const slot = tree.slots[at.parts.length]!;
    // Of the parts beside it only those before it tell what a part adds.
    const partAt = tree.partAt(at.parts);
    if (tree.lacksOne(at))
      for (const whole of tree.wholes(at)) take(whole.part, whole.spare, this.#whole(line, at, whole));
    else for (const next of tree.next(at)) take(next.parts.at(-1), next.spare, this.#of(line, next));
    const begun = { ways: this.#fewerWays(ways), set };
    line.known.set(at, begun);
    return begun;
  }

  /** Joints along a line, and what its hoses ask under the pressure that it is set to at least. */
  #whole({ tree, wholes }: Line, of: Beginning, { part, set, joints }: WholeLine): Begun {
    const known = wholes[joints];
    if (known !== undefined) return known === NO_LINE || known.set === set ? known : { ...known, set: set! };
    const made = set === undefined ? undefined : this.#along(tree, [...of.parts, part], set);
    return (wholes[joints] = made ?? NO_LINE);
  }

  #along(tree: LineTree, parts: readonly (Part | undefined)[], set: number): Begun | undefined {
    const partAt = tree.partAt(parts);
    const pressure = this.#parting.pressed(set);
    const along = this.#parting.joints.along(tree.line, partAt, pressure);
    if (along === undefined) return undefined;
    const adds = plus(along.adds, this.#hosesUnder(tree.slots, partAt, pressure));
    return { ways: [{ end: this.#endOf(along.end), points: [{ ...adds, margin: Infinity }] }], set };
  }

  #hosesUnder(slots: readonly string[], at: PartAt, pressure: number): Adds {
    let adds: Adds = NOTHING;
    for (const slot of slots) {
      const part = at(slot);
      if (part?.kind !== 'hose') continue;
      const [weak, strong] = [0, pressure].map((p) => this.#parting.own(slot, part, at, p));
      adds = plus(adds, {
        cents: strong!.cents - weak!.cents,
        mass: strong!.mass - weak!.mass,
        late: strong!.late,
      });
    }
    return adds;
  }

  /** One of all ends that are joined alike. */
  #endOf(end: LineEnd): LineEnd {
    const key = `${endKey(end)} ${end.bends}`;
    const known = this.#ends.get(key);
    if (known === undefined) this.#ends.set(key, end);
    return known ?? end;
  }

  /** The same by their ports alone where they are too many: all but one of their bends, which the joint at the manifold may take. */
  #fewerWays(ways: Map<LineEnd, Point[]>): readonly Way[] {
    let kept = ways;
    if (ways.size > MOST_ENDS) {
      kept = new Map();
      for (const [end, points] of ways) {
        const bends: Point = { ...leastBends(end.elbows, Math.max(0, end.bends - 1)), margin: Infinity };
        const byPort = this.#endOf({ ...end, bends: 0, elbows: [] });
        for (const p of points) addTo(kept, byPort, both(bends, p));
      }
    }
    return [...kept].map(([end, points]) => ({ end, points: [...fewer(frontOf(points))] }));
  }
}

function treesOf(parting: Parting, limits: readonly Limit[]): readonly LineTree[] {
  const { coreSlots, space, joints, pieces } = parting;
  const used = new Set(usedOutlets(space.layout, space.brief).map((l) => l.id));
  return joints.outlets.map(
    (line) =>
      new LineTree({
        space,
        line,
        used: used.has(line.id),
        slots: coreSlots.filter((s) => line.run.includes(s)),
        limits,
        levelOf: (set) => pieces.hoseLevel(parting.pressed(set)),
      }),
  );
}

function addTo(ways: Map<LineEnd, Point[]>, end: LineEnd, point: Point): void {
  const points = ways.get(end);
  if (points === undefined) ways.set(end, [point]);
  else points.push(point);
}
