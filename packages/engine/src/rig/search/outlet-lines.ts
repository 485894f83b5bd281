import type { LayoutLine, Part } from '../../catalogue/index.ts';
import { usedOutlets } from '../design/outlet-demands.ts';
import type { Parting } from './core.ts';
import type { Limit } from './limit.ts';
import { lineSet } from './line-needs.ts';
import { NOTHING, plus, type Adds } from './money.ts';
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
/** Lines kept that were judged. */
const MOST_JUDGED = 200_000;

/** What is known of a line that begins with some parts under any pressure of its pump: most spare, and for a whole one what it is set to. */
interface Judged {
  readonly spare: number;
  readonly set: number | undefined;
}

const judgedBy = new WeakMap<readonly Limit[], Map<string, Judged>>();

interface Line {
  readonly line: LayoutLine;
  readonly used: boolean;
  readonly slots: readonly string[];
  /** Conditions on its parts alone, by the slot with which they can be judged. */
  readonly limitsAt: readonly (readonly Limit[])[];
  readonly known: Map<string, Begun>;
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
  readonly #judged: Map<string, Judged>;

  constructor(parting: Parting, limits: readonly Limit[]) {
    this.#parting = parting;
    this.#judged = judgedBy.get(limits) ?? new Map<string, Judged>();
    judgedBy.set(limits, this.#judged);
    const { coreSlots, space, joints } = parting;
    const used = new Set(usedOutlets(space.layout, space.brief).map((l) => l.id));
    this.#lines = joints.outlets.map((line) => {
      const slots = coreSlots.filter((s) => line.run.includes(s));
      const own = limits.filter((l) => l.slots.every((s) => slots.includes(s)));
      return {
        line,
        used: used.has(line.id),
        slots,
        limitsAt: slots.map((_, i) =>
          own
            .filter((l) => Math.max(...l.slots.map((s) => slots.indexOf(s))) === i)
            .sort((a, b) => a.slots.length - b.slots.length),
        ),
        known: new Map<string, Begun>(),
      };
    });
  }

  /** Whether every slot of the outlet lines is among the first ones decided. */
  isDecided(decided: number): boolean {
    const { coreSlots } = this.#parting;
    return this.#lines.every(({ slots }) => slots.every((s) => coreSlots.indexOf(s) < decided));
  }

  /** All outlet lines that begin with the decided parts. */
  begun(decided: number, partAt: PartAt): BegunLines {
    const { coreSlots } = this.#parting;
    const chosen = this.#lines.map(({ slots }) =>
      slots.filter((s) => coreSlots.indexOf(s) < decided).map(partAt),
    );
    const key = this.#lines.map((l, i) => keyOf(l, chosen[i]!)).join(' / ');
    const known = this.#joined.get(key);
    if (known !== undefined) return known;
    const lines = this.#lines.map((line, i) => this.#of(line, chosen[i]!));
    const all = { lines, set: Math.max(0, ...lines.map((l) => l.set)), known: new Map<string, Point[]>() };
    return remember(this.#joined, key, all);
  }

  /** What outlet lines add besides their decided parts, with all that meets at the manifold under a pressure that it has at least. */
  met({ lines, known }: BegunLines, pump: Part | undefined, pressure: number): readonly Point[] {
    const { joints, pieces } = this.#parting;
    const key = `${portKeyOf(pump, 'out')} ${pieces.levels(pressure).join(' ')}`;
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

  #of(line: Line, chosen: readonly (Part | undefined)[]): Begun {
    const key = keyOf(line, chosen);
    const known = line.known.get(key);
    if (known !== undefined) return known;
    const begun = this.#reckoned(line, [...chosen]);
    // Whole lines are many, and no more than a look at their joints.
    if (chosen.length < line.slots.length) line.known.set(key, begun);
    return begun;
  }

  #reckoned(line: Line, chosen: (Part | undefined)[]): Begun {
    const at: PartAt = (slot) => chosen[line.slots.indexOf(slot)];
    const slot = line.slots[chosen.length];
    if (slot === undefined) return this.#whole(line, chosen, at);
    const ways = new Map<string, Way>();
    let set = Infinity;
    for (const part of this.#parting.space.slots.find((s) => s.id === slot)!.options) {
      chosen.push(part);
      const { spare } = this.#judge(line, chosen, at);
      if (spare >= 0) {
        const own: Point = { ...this.#parting.own(slot, part, at), margin: this.#parting.spare(spare) };
        const rest = this.#of(line, chosen);
        set = Math.min(set, rest.set);
        for (const { end, points } of rest.ways)
          for (const point of points) addTo(ways, end, both(own, point));
      }
      chosen.pop();
    }
    return { ways: fewerWays([...ways.values()]), set };
  }

  #judge(line: Line, chosen: readonly (Part | undefined)[], at: PartAt): Judged {
    const key = keyOf(line, chosen);
    const known = this.#judged.get(key);
    if (known !== undefined) return known;
    let spare = Infinity;
    for (const limit of line.limitsAt[chosen.length - 1]!)
      if (spare >= 0) spare = Math.min(spare, limit.margin(at));
    const isWhole = spare >= 0 && chosen.length === line.slots.length;
    const set = isWhole && line.used ? lineSet(this.#parting.space, line.line, at) : 0;
    return remember(this.#judged, key, { spare, set }, MOST_JUDGED);
  }

  /** Joints along a line, and what its hoses ask under the pressure that it is set to at least. */
  #whole(of: Line, chosen: readonly (Part | undefined)[], at: PartAt): Begun {
    const { joints } = this.#parting;
    const { line, slots } = of;
    const { set } = this.#judge(of, chosen, at);
    if (set === undefined) return NO_LINE;
    const pressure = this.#parting.pressed(set);
    const along = joints.along(line, at, pressure);
    if (along === undefined) return NO_LINE;
    const adds = plus(along.adds, this.#hosesUnder(slots, at, pressure));
    return { ways: [{ end: along.end, points: [{ ...adds, margin: Infinity }] }], set };
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
}

function keyOf({ line }: Line, chosen: readonly (Part | undefined)[]): string {
  return `${line.id} ${chosen.map((p) => p?.id ?? '-').join(' ')}`;
}

function addTo(ways: Map<string, Way>, end: LineEnd, point: Point): void {
  const key = endKey(end);
  const way = ways.get(key);
  if (way === undefined) ways.set(key, { end, points: [point] });
  else way.points.push(point);
}

/** The same by their ports alone where they are too many: all but one of their bends, which the joint at the manifold may take. */
function fewerWays(ways: readonly Way[]): readonly Way[] {
  let kept = ways;
  if (ways.length > MOST_ENDS) {
    const byPort = new Map<string, Way>();
    for (const { end, points } of ways) {
      const bends: Point = { ...leastBends(end.elbows, Math.max(0, end.bends - 1)), margin: Infinity };
      for (const p of points) addTo(byPort, { ...end, bends: 0, elbows: [] }, both(bends, p));
    }
    kept = [...byPort.values()];
  }
  return kept.map(({ end, points }) => ({ end, points: [...fewer(frontOf(points))] }));
}
