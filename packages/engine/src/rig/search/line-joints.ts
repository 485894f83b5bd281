import { portKey, type Part, type Port, type LayoutLine } from '../../catalogue/index.ts';
import type { Core, CoreEnd, Group } from './core-types.ts';
import { NOTHING, plus, timesOver, type Adds } from './money.ts';
import { hoseLength, timesOf } from './part-rig.ts';
import { leastOf, type Pieces } from './pieces.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';
import { bendsOf, endKey, portClass, portKeyOf, portOf, type LineEnd } from './trims.ts';

/** Order of the lines at a node is that of the layout. */
const GAUGE = 'gauge';
/** Outlet lines kept with all that was found for them. */
const MOST_OUTLETS = 1000;
/** Cores kept, by their ends, with all that was found for them. */
const MOST_ENDS = 2000;

/** Joints along all outlet lines, and their ends at the manifold. */
interface OutletJoints {
  readonly adds: Adds;
  readonly ends: readonly LineEnd[];
}

/** What is joined along the outlet lines, and where all lines meet. */
export class LineJoints {
  readonly outlets: readonly LayoutLine[];
  readonly #space: SearchSpace;
  readonly #pieces: Pieces;
  readonly #lineCents: number;
  readonly #groups: readonly Group[];
  /** Ports with which the gauges of the space meet the manifold. */
  readonly #gaugePorts: readonly (Port | undefined)[];
  readonly #floors = new Map<string, Adds>();
  readonly #leastNodes = new Map<string, Adds>();
  readonly #outletJoints = new Map<string, OutletJoints | undefined>();
  readonly #coreEnds = new Map<string, readonly CoreEnd[]>();
  readonly #nodes = new WeakMap<readonly CoreEnd[], Map<string, Adds | undefined>>();

  constructor(space: SearchSpace, pieces: Pieces, groups: readonly Group[], lineCents: number) {
    this.#space = space;
    this.#pieces = pieces;
    this.#groups = groups;
    this.#lineCents = lineCents;
    const gauges = space.slots.find((s) => s.id === GAUGE)?.options ?? [undefined];
    const ports = new Map(gauges.map((g) => [portKeyOf(g, 'in'), portOf(g, 'in')]));
    this.#gaugePorts = [...ports.values()];
    this.outlets = space.layout.lines.filter((l) => l.to === 'air');
  }

  /** Joints along an outlet line, without those at its bends; undefined when one cannot be made. */
  along(line: LayoutLine, partAt: PartAt, pressure: number): { adds: Adds; end: LineEnd } | undefined {
    const parts = line.run.flatMap((id) => {
      const part = partAt(id);
      return part === undefined ? [] : [{ id, part }];
    });
    const first = parts[0];
    const port = portOf(first?.part, 'in');
    if (first === undefined || port === undefined) return undefined;
    const elbows: Adds[] = [];
    let adds: Adds = { ...NOTHING, cents: this.#lineCents };
    for (let i = 1; i < parts.length; i++) {
      const [a, b] = [parts[i - 1]!.part, parts[i]!.part];
      const straight = ['gun', 'tip', 'nozzle'].some((k) => a.kind === k || b.kind === k);
      const shut = ['gun', 'valve'].includes(a.kind) || a.kind === 'boom';
      const joint = this.#pieces.joint(portOf(a, 'out'), portOf(b, 'in'), shut ? 0 : pressure);
      if (joint === undefined) return undefined;
      const times = timesOf(b, partAt);
      adds = plus(adds, timesOver(joint.adds, times));
      if (!straight && times === 1 && joint.elbow !== undefined) elbows.push(joint.elbow);
    }
    for (const { part, id } of parts)
      if (part.kind === 'hose') {
        const pieces = Math.ceil(hoseLength(this.#space, id) / part.longestPiece - 1e-6);
        const mender =
          pieces === 2 ? this.#pieces.joint(portOf(part, 'out'), portOf(part, 'in'), 0) : undefined;
        if (mender?.elbow !== undefined) elbows.push(mender.elbow);
      }
    const last = parts[parts.length - 1]!.part;
    const out = portOf(last, 'out');
    if (out !== undefined && (last.kind === 'hose' || last.kind === 'valve'))
      adds = plus(adds, this.#pieces.outside(out, 'male', 0)?.adds ?? NOTHING);
    return { adds, end: { line: line.id, port, bends: line.elbows ?? 0, elbows } };
  }

  /** The same along all outlet lines; the same answer for the same parts under the same ratings. */
  outletsAlong(partAt: PartAt, pressure = 0): OutletJoints | undefined {
    const parts = this.outlets.flatMap((line) => line.run.map((id) => partAt(id)?.id ?? '-'));
    const key = `${parts.join(' ')} ${this.#pieces.levels(pressure)[0]}`;
    const known = this.#outletJoints.get(key);
    if (known !== undefined || this.#outletJoints.has(key)) return known;
    return remember(this.#outletJoints, key, this.#outletsAlong(partAt, pressure), MOST_OUTLETS);
  }

  #outletsAlong(partAt: PartAt, pressure: number): OutletJoints | undefined {
    let adds = NOTHING;
    const ends: LineEnd[] = [];
    for (const line of this.outlets) {
      const along = this.along(line, partAt, pressure);
      if (along === undefined) return undefined;
      adds = plus(adds, along.adds);
      ends.push(along.end);
    }
    return { adds, ends };
  }

  /**
   * Least that what meets at the manifold adds to some outlets, with any pump when none is given, at a pressure that it
   * sees at least.
   */
  nodeFloor(outlets: readonly LineEnd[], pump: Part | undefined, pressure: number): Adds {
    // The most that it may see is the same for all.
    let key = `${portKeyOf(pump, 'out')} ${this.#pieces.supply.level(pressure)}`;
    for (const e of outlets) key += ` / ${endKey(e)} ${e.bends}`;
    let floor = this.#floors.get(key);
    if (floor === undefined) this.#floors.set(key, (floor = this.#nodeFloor(outlets, pump, pressure)));
    return floor;
  }

  /** The same with any of some ends of each outlet line. */
  leastNode(outlets: readonly (readonly LineEnd[])[], pump: Part | undefined, pressure: number): Adds {
    const ports = outlets.map((ends) =>
      ends
        .map((e) => portKey(e.port))
        .sort()
        .join(' '),
    );
    const key = `${portKeyOf(pump, 'out')} ${this.#pieces.levels(pressure).join(' ')} / ${ports.join(' / ')}`;
    const known = this.#leastNodes.get(key);
    if (known !== undefined) return known;
    const all: Adds[] = [];
    const visit = (k: number, chosen: readonly LineEnd[]): void => {
      const ends = outlets[k];
      if (ends === undefined) all.push(this.nodeFloor(chosen, pump, pressure));
      else for (const end of ends) visit(k + 1, [...chosen, { ...end, bends: 0, elbows: [] }]);
    };
    visit(0, []);
    return remember(this.#leastNodes, key, leastOf(all) ?? NOTHING);
  }

  #nodeFloor(outlets: readonly LineEnd[], pump: Part | undefined, pressure: number): Adds {
    const pumps = pump === undefined ? this.#space.slots.find((s) => s.id === 'pump')!.options : [pump];
    const feeds = new Map(pumps.flatMap((p) => portOf(p, 'out') ?? []).map((port) => [portKey(port), port]));
    const meeting = this.#groups.flatMap((g): (LineEnd | undefined)[][] => {
      if (g.line === undefined || g.id === 'suction') return [];
      const by = new Map<string, LineEnd | undefined>();
      for (const part of this.#space.slots.find((s) => s.id === g.slots[0])!.options) {
        const [port, through] = [portOf(part, 'in'), portOf(part, 'out')];
        const main = part?.kind === 'regulator' ? through : undefined;
        const end = port && { line: g.line.id, port, ...(main && { through: main }), bends: 0, elbows: [] };
        by.set(portClass(part), end);
      }
      return [[...by.values()]];
    });
    let best: Adds | undefined;
    const visit = (k: number, ends: readonly LineEnd[]): void => {
      const next = meeting[k];
      if (next !== undefined) {
        for (const end of next) visit(k + 1, end === undefined ? ends : [...ends, end]);
        return;
      }
      for (const port of feeds.values()) {
        const node = this.node({ ends: this.coreEnds(outlets, port), pressure }, ends);
        if (node !== undefined) best = best === undefined ? node : leastOf([best, node]);
      }
    };
    visit(0, []);
    return best ?? NOTHING;
  }

  /** What a core brings to the manifold; the same answer for outlets with the same ends and the same outlet of the pump. */
  coreEnds(outlets: readonly LineEnd[], feed: Port): readonly CoreEnd[] {
    const key = `${outlets.map(endKey).join(' / ')} ${portKey(feed)}`;
    const known = this.#coreEnds.get(key);
    if (known !== undefined) return known;
    const lines = outlets.map((e): CoreEnd => ({ line: e.line, port: e.port, feeds: false, bends: e }));
    const ends = [...lines, { line: 'pump', port: feed, feeds: true, bends: undefined }];
    return remember(this.#coreEnds, key, ends, MOST_ENDS);
  }

  /** What meets at the manifold, with the bends of the lines there and whichever gauge adds least. */
  node({ ends, pressure }: Pick<Core, 'ends' | 'pressure'>, trimEnds: readonly LineEnd[]): Adds | undefined {
    let known = this.#nodes.get(ends);
    if (known === undefined) this.#nodes.set(ends, (known = new Map<string, Adds | undefined>()));
    const key = `${this.#pieces.levels(pressure)[0]} ${trimEnds.map(endKey).join(' / ')}`;
    const before = known.get(key);
    if (before !== undefined || known.has(key)) return before;
    const node = leastOf(this.#gaugePorts.map((port) => this.#node({ ends, pressure }, trimEnds, port)));
    known.set(key, node);
    return node;
  }

  #node(
    core: Pick<Core, 'ends' | 'pressure'>,
    trimEnds: readonly LineEnd[],
    port: Port | undefined,
  ): Adds | undefined {
    interface End {
      readonly line: string;
      readonly port: Port;
      readonly feeds: boolean;
      readonly still: boolean;
    }
    const bends = new Map<string, LineEnd>();
    const byLine = new Map<string, End>();
    for (const e of core.ends) {
      byLine.set(e.line, { line: e.line, port: e.port, feeds: e.feeds, still: false });
      if (e.bends !== undefined) bends.set(e.line, e.bends);
    }
    for (const e of trimEnds) {
      byLine.set(e.line, { line: e.line, port: e.port, feeds: false, still: false });
      bends.set(e.line, e);
    }
    let ends = this.#space.layout.lines.flatMap((l) => byLine.get(l.id) ?? []);
    if (port !== undefined) ends.push({ line: GAUGE, port, feeds: false, still: true });
    let total: Adds = NOTHING;
    const main = trimEnds.find((e) => e.through !== undefined);
    if (main !== undefined) {
      const feed = ends.find((e) => e.feeds)!;
      const joint = this.#pieces.joint(feed.port, main.port, core.pressure);
      if (joint === undefined) return undefined;
      total = plus(total, joint.adds);
      ends = ends.flatMap((e) =>
        e.line === main.line ? [] : [e === feed ? { ...feed, port: main.through! } : e],
      );
    }
    const ordered = [...ends].sort(
      (a, b) =>
        Number(b.feeds) - Number(a.feeds) || Number(a.still) - Number(b.still) || b.port.size - a.port.size,
    );
    const row = ends.length === 2 ? ends : ordered;
    const node = this.#pieces.node(row, core.pressure);
    if (node === undefined) return undefined;
    total = plus(total, node.adds);
    for (const [line, end] of bends) {
      const i = row.findIndex((e) => e.line === line);
      total = plus(total, bendsOf(end, i < 0 ? undefined : node.joints[i]?.elbow));
    }
    return total;
  }
}
