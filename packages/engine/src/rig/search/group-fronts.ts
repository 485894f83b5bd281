import type { Part, PartOf } from '../../catalogue/index.ts';
import { idealOf, type Group } from './core-types.ts';
import {
  agitationAsk,
  inductionAsk,
  mainPressure,
  returnAsk,
  suctionAsk,
  type CoreFacts,
} from './group-asks.ts';
import { mostHeld } from './held-most.ts';
import type { Limit } from './limit.ts';
import { NOTHING, plus, type Adds } from './money.ts';
import type { Pieces } from './pieces.ts';
import type { PartAt, SearchSpace } from './space.ts';
import {
  portClass,
  portKeyOf,
  tablesOf,
  type Own,
  type Trim,
  type TrimAsk,
  type TrimFront,
  type TrimTable,
} from './trims.ts';

type OwnOf = (slot: string, part: Part | undefined, partAt: PartAt, pressure?: number) => Own;

/** The ways to fill each group, worked out once for all cores that ask the same of it. */
export class GroupFronts {
  readonly #space: SearchSpace;
  readonly #pieces: Pieces;
  readonly #groups: readonly Group[];
  readonly #coreSlots: readonly string[];
  readonly #limits: readonly Limit[];
  readonly #cap: number;
  readonly #own: OwnOf;
  readonly #lineCents: number;
  readonly #regulated: boolean;
  /** Highest pressures by the flow that goes back and what is held. */
  readonly #held = new Map<string, readonly number[]>();
  readonly #fronts = new Map<string, readonly TrimFront[]>();
  readonly #tables = new Map<string, readonly TrimTable[]>();
  /** Least that fills a group whatever the core, by the group and its joints. */
  readonly #least = new Map<string, Omit<Trim, 'parts'>>();
  /** Of the same groups under any pressure: a suction line is the same there. */
  readonly #all: GroupFronts | undefined;

  constructor(from: {
    readonly space: SearchSpace;
    readonly pieces: Pieces;
    readonly groups: readonly Group[];
    readonly coreSlots: readonly string[];
    readonly limits: readonly Limit[];
    readonly cap: number;
    readonly own: OwnOf;
    readonly lineCents: number;
    /** The fronts of the same groups under any pressure, where these are of lower ones. */
    readonly all: GroupFronts | undefined;
  }) {
    this.#all = from.all;
    this.#space = from.space;
    this.#pieces = from.pieces;
    this.#groups = from.groups;
    this.#coreSlots = from.coreSlots;
    this.#limits = from.limits;
    this.#cap = from.cap;
    this.#own = from.own;
    this.#lineCents = from.lineCents;
    this.#regulated = from.space.slots.some((s) => s.id === 'regulator');
  }

  /** Least that fills groups but for some, whatever the core, by the inlet of the pump; by '' for any pump. */
  floors(without: ReadonlySet<Group['id']>): Map<string, Trim> {
    const tanks = this.#representatives('tank', portClass);
    const out = new Map<string, Trim>();
    const any = emptyFloor();
    for (const [inlet, pump] of this.#representatives('pump', (p) => portKeyOf(p, 'in'))) {
      const floor = { ...emptyFloor(), cents: 0, mass: 0, late: 0 };
      for (const group of this.#groups) {
        if (without.has(group.id)) continue;
        const least = emptyFloor();
        for (const [, tank] of tanks)
          if (tank.kind === 'tank') lower(least, this.#leastOf(group, this.#anyCore(tank, pump)));
        floor.cents += finite(least.cents);
        floor.mass += finite(least.mass);
        floor.late = Math.max(floor.late, finite(least.late));
      }
      lower(any, floor);
      out.set(inlet, floor);
    }
    out.set('', any);
    return out;
  }

  #leastOf(group: Group, facts: CoreFacts): Omit<Trim, 'parts'> {
    if (group.id === 'suction' && this.#all !== undefined) return this.#all.#leastOf(group, facts);
    const key = `${group.id} ${this.#ask(group, facts, () => undefined).joints}`;
    const known = this.#least.get(key);
    if (known !== undefined) return known;
    const least = idealOf(this.#floor(group, facts));
    this.#least.set(key, least);
    return least;
  }

  /** Least that fills a group that does not meet the pump, by the part in one of its slots; what nothing joins is left out. */
  leastBy(group: Group, place: number): Map<Part | undefined, Adds> {
    const out = new Map<Part | undefined, Adds>();
    const [pump] = this.#options('pump');
    for (const part of this.#options(group.slots[place]!)) {
      const least = emptyFloor();
      for (const [, tank] of this.#representatives('tank', portClass))
        if (tank.kind === 'tank')
          lower(least, idealOf(this.#floor(group, this.#anyCore(tank, pump!), { place, part })));
      if (Number.isFinite(least.cents)) out.set(part, least);
    }
    return out;
  }

  #representatives(id: string, key: (part: Part) => string): [string, Part][] {
    const by = new Map<string, Part>();
    for (const part of this.#options(id))
      if (part !== undefined && !by.has(key(part))) by.set(key(part), part);
    return [...by];
  }

  /** A core of which no more is known than a tank and a pump. */
  #anyCore(tank: PartOf<'tank'>, pump: Part): CoreFacts {
    const space = this.#space;
    return {
      space,
      partAt: () => undefined,
      pieces: this.#pieces,
      tank,
      pump,
      flow: { least: space.brief.duties.map(() => 0), most: 0, slowest: 0 },
      needs: undefined,
      rated: { near: Infinity, far: Infinity },
      lifted: 0,
      cap: this.#cap,
    };
  }

  /** What may fill a group, whatever promises it breaks, with the least of each class in place of its parts. */
  #floor(
    group: Group,
    facts: CoreFacts,
    held?: { readonly place: number; readonly part: Part | undefined },
  ): readonly TrimFront[] {
    const ask = this.#ask(group, facts, () => undefined);
    const owns = group.slots.map((slot, place) => {
      const by = new Map<string, { part: Part | undefined; cents: number; mass: number; late: number }>();
      for (const part of held?.place === place ? [held.part] : this.#options(slot)) {
        const own = this.#own(slot, part, () => undefined);
        const key = ask.classOf(part);
        const least = by.get(key);
        if (least === undefined) by.set(key, { ...own, part });
        else lower(least, own);
      }
      return [...by.values()];
    });
    const line = group.line === undefined || group.id === 'suction' ? 0 : this.#lineCents;
    return tablesOf(owns, ask, line).map((table) => ({
      end: table.end,
      table,
      margin: () => this.#cap,
      trims: table.front(() => this.#cap, this.#cap),
    }));
  }

  /** The ways to fill a group in one core. */
  of(group: Group, facts: CoreFacts, partAt: PartAt): readonly TrimFront[] {
    if (group.id === 'suction' && this.#all !== undefined) return this.#all.of(group, facts, partAt);
    const ask = this.#ask(group, facts, partAt);
    const joints = `${group.id} ${ask.joints}`;
    const key = `${joints} / ${ask.key}`;
    let front = this.#fronts.get(key);
    if (front !== undefined) return front;
    let tables = this.#tables.get(joints);
    const pressure = group.id === 'agitation' ? mainPressure(facts.needs, this.#regulated) : 0;
    if (tables === undefined) {
      const owns = group.slots.map((slot) =>
        this.#options(slot).map((part): Own => {
          const own = this.#own(slot, part, partAt, pressure);
          const wires = group.id === 'battery' ? facts.wires?.get(part) : undefined;
          return wires === undefined ? own : { part, ...plus(own, wires) };
        }),
      );
      const line = group.line === undefined || group.id === 'suction' ? 0 : this.#lineCents;
      tables = tablesOf(owns, ask, line);
      this.#tables.set(joints, tables);
    }
    const margin = this.#refusing(group, ask, partAt).margins();
    front = tables
      .map((table) => ({ end: table.end, table, margin, trims: table.front(margin, this.#cap) }))
      .filter((f) => f.trims.length > 0);
    this.#fronts.set(key, front);
    return front;
  }

  #options(slot: string): readonly (Part | undefined)[] {
    return this.#space.slots.find((s) => s.id === slot)?.options ?? [];
  }

  /** The same with what the conditions on the group's slots refuse. */
  #refusing(group: Group, ask: TrimAsk, partAt: PartAt): TrimAsk {
    const limits = this.#limits.filter(
      (l) =>
        (l.rule === true || l.slots.some((s) => this.#coreSlots.includes(s))) &&
        l.slots.some((s) => group.slots.includes(s)) &&
        l.slots.every((s) => group.slots.includes(s) || this.#coreSlots.includes(s)),
    );
    return {
      ...ask,
      margins: () => {
        const margin = ask.margins();
        return (parts) => {
          const at: PartAt = (slot) => {
            const i = group.slots.indexOf(slot);
            return i < 0 ? partAt(slot) : parts[i];
          };
          for (const l of limits) if (l.margin(at) < 0) return -1;
          return margin(parts);
        };
      },
    };
  }

  #ask(group: Group, facts: CoreFacts, partAt: PartAt): TrimAsk {
    switch (group.id) {
      case 'suction':
        return suctionAsk(facts, group.line!);
      case 'return':
        return returnAsk(facts, group.line!);
      case 'agitation':
        return agitationAsk(facts, group.line!, this.#highest(facts));
      case 'induction':
        return inductionAsk(facts, group.line!);
      case 'gauge':
        return this.#single(`${facts.needs?.pressure.toPrecision(6)}`);
      case 'battery':
        return this.#single(
          [partAt('engine'), partAt('reel')]
            .map((p) => p !== undefined && ('start' in p ? p.start : 'rewind' in p ? p.rewind : ''))
            .join(' '),
          [...(facts.wires ?? [])]
            .map(([b, { cents, mass }]) => `${b?.id} ${cents}/${mass.toFixed(6)}`)
            .join(' '),
        );
    }
  }

  #single(key: string, joints = ''): TrimAsk {
    return {
      joints,
      key,
      classOf: portClass,
      laid: () => ({ adds: NOTHING, end: undefined }),
      margins: () => () => this.#cap,
    };
  }

  /** Highest pressure at the manifold by duty [Pa]. */
  #highest(facts: CoreFacts): readonly number[] {
    const { needs, flow } = facts;
    if (this.#regulated && needs !== undefined) {
      // In steps of 5 %, so that pumps much alike ask the same.
      const q = 1.05 ** Math.ceil(Math.log(Math.max(flow.most, 1e-9)) / Math.log(1.05));
      const key = `${q} ${needs.sets.join(' ')}`;
      let held = this.#held.get(key);
      if (held === undefined) this.#held.set(key, (held = mostHeld(this.#space, needs.sets, q)));
      return held;
    }
    // In steps of 2 %, so that outlets and pumps much alike ask the same.
    if (facts.falling !== undefined)
      return facts.falling.highest.map((p) => 1.02 ** Math.ceil(Math.log(Math.max(p, 1)) / Math.log(1.02)));
    return this.#space.brief.duties.map(() => Infinity);
  }
}

function emptyFloor() {
  return { parts: [], cents: Infinity, mass: Infinity, late: Infinity, margin: 0 };
}

function lower(
  a: { cents: number; mass: number; late: number },
  b: Pick<Trim, 'cents' | 'mass' | 'late'>,
): void {
  a.cents = Math.min(a.cents, b.cents);
  a.mass = Math.min(a.mass, b.mass);
  a.late = Math.min(a.late, b.late);
}

/** A group that nothing fills adds nothing to a bound: what refuses it is told elsewhere. */
function finite(value: number): number {
  return Number.isFinite(value) ? value : 0;
}
