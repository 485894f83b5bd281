import type { Part } from '../../catalogue/index.ts';
import type { Parting } from './core.ts';
import type { Limit } from './limit.ts';
import type { Adds } from './money.ts';
import type { PartAt } from './space.ts';

/** Conditions on more slots than this take too long for a floor. */
const FEW = 3;
/** Points of a front; more are put together, each figure at its best. */
const MOST_POINTS = 24;

/** What some slots add at least, with the most spare that their parts allow one another. */
export interface Point extends Adds {
  readonly margin: number;
}

const ORIGIN: Point = { cents: 0, mass: 0, late: 0, margin: Infinity };

/** Core slots that hang together: an outlet line, the drive, tank and carrier. */
interface Block {
  readonly slots: readonly string[];
  /** Places of the slots among all of the core. */
  readonly places: readonly number[];
  /** Conditions on slots of the block alone that can be judged once so many of its slots are decided. */
  readonly limitsAt: readonly (readonly Limit[])[];
  readonly known: Map<string, readonly Point[]>;
}

/**
 * What the undecided slots of a core add: a front of points, at least one of which is as good as whatever may fill them.
 * What is cheapest in one slot often fits nothing cheap in the next, and the lightest is seldom the cheapest: a single
 * least sum of each figure would promise far too much.
 */
export class BlockFronts {
  readonly #parting: Parting;
  readonly #blocks: readonly Block[];
  readonly #joined = new Map<string, readonly Point[]>();

  constructor(parting: Parting, limits: readonly Limit[]) {
    this.#parting = parting;
    const { coreSlots, space } = parting;
    const lines = space.layout.lines.filter((l) => l.to === 'air').map((l) => l.run);
    const blockOf = (slot: string): string =>
      lines.find((run) => run.includes(slot))?.[0] ?? (['tank', 'carrier'].includes(slot) ? 'body' : 'drive');
    this.#blocks = [...new Set(coreSlots.map(blockOf))].map((name) => {
      const slots = coreSlots.filter((s) => blockOf(s) === name);
      const place = (slot: string) => slots.indexOf(slot);
      const within = limits.filter(
        (l) => l.costly !== true && l.slots.length <= FEW && l.slots.every((s) => slots.includes(s)),
      );
      const last = (l: Limit) => Math.max(...l.slots.map(place));
      return {
        slots,
        places: slots.map((s) => coreSlots.indexOf(s)),
        limitsAt: slots.map((_, i) => within.filter((l) => last(l) === i)),
        known: new Map(),
      };
    });
  }

  /** The front of all slots beyond those decided, in the order of the core; empty when nothing fills one of them. */
  beyond(decided: number, partAt: PartAt): readonly Point[] {
    const open = this.#blocks.flatMap((block) => {
      const within = block.places.filter((place) => place < decided).length;
      return within === block.slots.length
        ? []
        : [{ block, chosen: block.slots.slice(0, within).map(partAt) }];
    });
    const key = open.map(({ block, chosen }) => `${block.slots[0]} ${keyOf(chosen)}`).join(' / ');
    let points = this.#joined.get(key);
    if (points === undefined) {
      points = [ORIGIN];
      for (const { block, chosen } of open) {
        const front = this.#front(block, chosen);
        points = frontOf(points.flatMap((p) => front.map((q) => both(p, q))));
      }
      this.#joined.set(key, points);
    }
    return points;
  }

  #front(block: Block, chosen: (Part | undefined)[]): readonly Point[] {
    const slot = block.slots[chosen.length];
    if (slot === undefined) return [ORIGIN];
    const key = keyOf(chosen);
    let front = block.known.get(key);
    if (front !== undefined) return front;
    const at: PartAt = (id) => chosen[block.slots.indexOf(id)];
    const points: Point[] = [];
    const limits = block.limitsAt[chosen.length]!;
    for (const part of this.#parting.space.slots.find((s) => s.id === slot)!.options) {
      chosen.push(part);
      let margin = Infinity;
      for (const limit of limits) if (margin >= 0) margin = Math.min(margin, limit.margin(at));
      if (margin >= 0) {
        const own: Point = { ...this.#parting.own(slot, part, at), margin: this.#parting.spare(margin) };
        for (const rest of this.#front(block, chosen)) points.push(both(own, rest));
      }
      chosen.pop();
    }
    block.known.set(key, (front = frontOf(points)));
    return front;
  }
}

function keyOf(chosen: readonly (Part | undefined)[]): string {
  return chosen.map((p) => p?.id ?? '-').join(' ');
}

function both(a: Point, b: Point): Point {
  return {
    cents: a.cents + b.cents,
    mass: a.mass + b.mass,
    late: Math.max(a.late, b.late),
    margin: Math.min(a.margin, b.margin),
  };
}

/** Points that no other is as good as, cheapest first; where they are too many, neighbours are put together. */
function frontOf(points: Point[]): readonly Point[] {
  points.sort((a, b) => a.cents - b.cents || a.mass - b.mass || a.late - b.late || b.margin - a.margin);
  const kept: Point[] = [];
  for (const p of points)
    if (!kept.some((k) => k.mass <= p.mass && k.late <= p.late && k.margin >= p.margin)) kept.push(p);
  const each = Math.ceil(kept.length / MOST_POINTS);
  if (each <= 1) return kept;
  const fewer: Point[] = [];
  for (let i = 0; i < kept.length; i += each) fewer.push(kept.slice(i, i + each).reduce(best));
  return fewer;
}

function best(a: Point, b: Point): Point {
  return {
    cents: Math.min(a.cents, b.cents),
    mass: Math.min(a.mass, b.mass),
    late: Math.min(a.late, b.late),
    margin: Math.max(a.margin, b.margin),
  };
}
