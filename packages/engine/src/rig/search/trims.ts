import { portKey, type Part, type Port } from '../../catalogue/index.ts';
import { wholeFeet } from '../bill/index.ts';
import { plus, NOTHING, type Adds, type Money } from './money.ts';
import { leastBends, type Pieces } from './pieces.ts';
import { remember } from './remember.ts';
import type { SmallThings } from './small-things.ts';

/** A line's end at the manifold, and what its elbows may add. */
export interface LineEnd {
  readonly line: string;
  readonly port: Port;
  /** Port behind it through which the main goes on: an unloader with three ports. */
  readonly through?: Port;
  /** Bends that the line has, and what each of its own joints adds when it turns one; the joint at the manifold is one more. */
  readonly bends: number;
  readonly elbows: readonly Adds[];
}

/** One way to fill the slots of a group, with its best figures. */
export interface Trim {
  readonly parts: readonly (Part | undefined)[];
  readonly cents: number;
  /** [kg] */
  readonly mass: number;
  readonly late: number;
  /** Most spare that it allows, in steps. */
  readonly margin: number;
}

/** Ways that meet the manifold alike: all of them, and those of which no other is better in everything. */
export interface TrimFront {
  readonly end: LineEnd | undefined;
  readonly trims: readonly Trim[];
  readonly table: TrimTable;
  readonly margin: MarginOf;
}

/** What is joined with some parts of a group, whatever their price: the same for all parts with the same ports. */
interface Laid {
  readonly adds: Adds;
  readonly end: LineEnd | undefined;
}

/** A filter of one group in one rig: what its joints add, and the most spare that its parts allow, negative when refused. */
export interface TrimAsk {
  /** The same for two rigs: the same joints; and the same spare. */
  readonly joints: string;
  readonly key: string;
  readonly laid: (parts: readonly (Part | undefined)[]) => Laid | undefined;
  /** What a part says to its joints: its ports, and the outside of a hose. */
  readonly classOf: (part: Part | undefined) => string;
  readonly margins: () => MarginOf;
}

/** Most spare by the places of the parts in their slots' lists [steps]; below zero when refused. */
export type MarginOf = (parts: readonly (Part | undefined)[]) => number;

export function portOf(part: Part | undefined, id: string): Port | undefined {
  return part?.ports.find((p) => p.id === id);
}

/** Key of one port of a part; '' where it has none. */
export function portKeyOf(part: Part | undefined, id: string): string {
  const port = portOf(part, id);
  return port === undefined ? '' : portKey(port);
}

export function portClass(part: Part | undefined): string {
  if (part === undefined) return '-';
  const ports = part.ports.map((p) => `${p.id}=${portKey(p)}`).join(' ');
  return part.kind === 'hose' ? `${ports} ${part.outsideDiameter} ${part.longestPiece}` : ports;
}

/** Sums of some joints; undefined when one of them cannot be made. */
export function sumOf(joints: readonly ({ readonly adds: Adds } | undefined)[]): Adds | undefined {
  let adds = NOTHING;
  for (const joint of joints) {
    if (joint === undefined) return undefined;
    adds = plus(adds, joint.adds);
  }
  return adds;
}

/** Own price, mass and lateness of a part in a slot, with its labour and, for a hose, clamps. */
export interface Own extends Adds {
  readonly part: Part | undefined;
}

/** The sum of the cheapest elbows of a line; `more` is what an elbow in its joint at the manifold adds. */
export function bendsOf({ bends, elbows }: LineEnd, more: Adds | undefined): Adds {
  return leastBends(more === undefined ? elbows : [...elbows, more], bends);
}

const NO_PART: Own = { part: undefined, ...NOTHING };

/** What a part adds by itself. */
export class Owns {
  readonly #money: Money;
  readonly #pieces: Pieces;
  readonly #small: SmallThings;
  readonly #plain = new Map<Part, Map<number, Own>>();
  readonly #hoses = new Map<string, Own>();

  constructor(money: Money, pieces: Pieces, small: SmallThings) {
    this.#money = money;
    this.#pieces = pieces;
    this.#small = small;
  }

  /** @param length that a hose of the slot is cut to [m] */
  of(slot: string, part: Part | undefined, length: number, times = 1, pressure = 0): Own {
    if (part === undefined) return NO_PART;
    // Whatever the slot, a part that is not cut to its length adds the same.
    if (part.kind !== 'hose') {
      const byTimes = this.#plain.get(part) ?? remember(this.#plain, part, new Map<number, Own>(), Infinity);
      return (
        byTimes.get(times) ?? remember(byTimes, times, this.#own(part, length, times, pressure), Infinity)
      );
    }
    const key = `${slot} ${part.id} ${this.#pieces.hoseLevel(pressure)}`;
    return (
      this.#hoses.get(key) ?? remember(this.#hoses, key, this.#own(part, length, times, pressure), Infinity)
    );
  }

  #own(part: Part, length: number, times: number, pressure: number): Own {
    const bought = this.#money.bought(part, part.kind === 'hose' ? wholeFeet(length) : times);
    const ends = this.#pieces.hoseEnds(part, length, pressure);
    const work = { ...NOTHING, cents: this.#money.per('part', part.kind) };
    return { part, ...plus(bought, ends, work, this.#small.own(part)) };
  }
}

/** Every way to fill the slots of a group that meets the manifold alike, cheapest first; margins are reckoned when asked. */
export class TrimTable {
  readonly end: LineEnd | undefined;
  readonly #slots: readonly (readonly Own[])[];
  readonly #rows: readonly {
    readonly cents: number;
    readonly mass: number;
    readonly late: number;
    readonly at: number;
  }[];

  constructor(
    end: LineEnd | undefined,
    slots: readonly (readonly Own[])[],
    rows: { cents: number; mass: number; late: number; at: number }[],
  ) {
    this.end = end;
    this.#slots = slots;
    this.#rows = rows.sort((a, b) => a.cents - b.cents || a.mass - b.mass || a.late - b.late || a.at - b.at);
  }

  get size(): number {
    return this.#rows.length;
  }

  /** Ways that no other way is as good as in everything; most of them need no margin reckoned. */
  front(margin: MarginOf, cap: number): Trim[] {
    const kept: Trim[] = [];
    outer: for (const row of this.#rows) {
      for (const k of kept) if (k.mass <= row.mass && k.late <= row.late && k.margin >= cap) continue outer;
      const trim = this.#trim(row, margin);
      if (trim.margin < 0) continue;
      if (kept.some((k) => k.mass <= trim.mass && k.late <= trim.late && k.margin >= trim.margin)) continue;
      kept.push(trim);
    }
    return kept;
  }

  /**
   * All ways that a test lets through, until one says that no dearer one can pass; undefined when they are more than
   * some number.
   */
  where(
    margin: MarginOf,
    passes: (t: Omit<Trim, 'parts'>) => boolean,
    ends: (cents: number) => boolean,
    cap: number,
    most: number,
  ): Trim[] | undefined {
    const out: Trim[] = [];
    const trial = { cents: 0, mass: 0, late: 0, margin: cap };
    for (const row of this.#rows) {
      trial.cents = row.cents;
      trial.mass = row.mass;
      trial.late = row.late;
      if (!passes(trial)) {
        if (ends(row.cents)) break;
        continue;
      }
      const trim = this.#trim(row, margin);
      if (trim.margin < 0 || !passes(trim)) continue;
      if (out.length >= most) return undefined;
      out.push(trim);
    }
    return out;
  }

  #trim(
    { cents, mass, late, at }: { cents: number; mass: number; late: number; at: number },
    margin: MarginOf,
  ): Trim {
    const parts: (Part | undefined)[] = [];
    let rest = at;
    for (const owns of this.#slots) {
      parts.push(owns[rest % owns.length]!.part);
      rest = Math.floor(rest / owns.length);
    }
    return { parts, cents, mass, late, margin: margin(parts) };
  }
}

/** Every way to fill the slots of a group, by how it meets the manifold. */
export function tablesOf(
  slots: readonly (readonly Own[])[],
  ask: Pick<TrimAsk, 'laid' | 'classOf'>,
  lineCents: number,
): readonly TrimTable[] {
  let radix = 1;
  const classes = slots.map((owns) => {
    const by = new Map<string, { own: Own; at: number }[]>();
    owns.forEach((own, i) => {
      const key = ask.classOf(own.part);
      const list = by.get(key);
      const entry = { own, at: i * radix };
      if (list === undefined) by.set(key, [entry]);
      else list.push(entry);
    });
    radix *= owns.length;
    return [...by.values()];
  });
  interface Row {
    cents: number;
    mass: number;
    late: number;
    at: number;
  }
  const tables = new Map<string, { end: LineEnd | undefined; rows: Row[] }>();
  const take = (chosen: readonly (readonly { own: Own; at: number }[])[]): void => {
    const laid = ask.laid(chosen.map((list) => list[0]!.own.part));
    if (laid === undefined) return;
    const { end, adds } = laid;
    const key = end === undefined ? '' : endKey(end);
    let table = tables.get(key);
    if (table === undefined) tables.set(key, (table = { end, rows: [] }));
    const { rows } = table;
    const any = chosen.some((list) => list[0]!.own.part !== undefined);
    const go = (i: number, cents: number, mass: number, late: number, at: number): void => {
      const list = chosen[i];
      if (list === undefined) rows.push({ cents, mass, late, at });
      else
        for (const { own, at: more } of list)
          go(i + 1, cents + own.cents, mass + own.mass, Math.max(late, own.late), at + more);
    };
    go(0, adds.cents + (any ? lineCents : 0), adds.mass, adds.late, 0);
  };
  const choose = (i: number, chosen: (readonly { own: Own; at: number }[])[]): void => {
    const list = classes[i];
    if (list === undefined) take(chosen);
    else for (const c of list) choose(i + 1, [...chosen, c]);
  };
  choose(0, []);
  return [...tables.values()].map(({ end, rows }) => new TrimTable(end, slots, rows));
}

/** What two ends at the manifold must have in common to be joined there alike. */
export function endKey(end: LineEnd): string {
  let key = endKeys.get(end);
  if (key === undefined) {
    const { line, port, through, elbows } = end;
    const bends = elbows.map((e) => `${e.cents}/${e.mass.toFixed(3)}/${e.late}`).join(' ');
    key = `${line} ${portKey(port)} ${through === undefined ? '' : portKey(through)} ${bends}`;
    endKeys.set(end, key);
  }
  return key;
}

const endKeys = new WeakMap<LineEnd, string>();

/** Without what another one is as good as in everything; of those alike the first in order. */
export function unbeaten<T extends Omit<Trim, 'parts'>>(all: T[]): T[] {
  all.sort((a, b) => a.cents - b.cents || a.mass - b.mass || b.margin - a.margin || a.late - b.late);
  const kept: T[] = [];
  outer: for (const t of all) {
    for (const k of kept) if (k.mass <= t.mass && k.margin >= t.margin && k.late <= t.late) continue outer;
    kept.push(t);
  }
  return kept;
}
