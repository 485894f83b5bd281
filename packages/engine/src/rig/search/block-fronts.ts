import type { Part } from '../../catalogue/index.ts';
import type { Parting } from './core.ts';
import type { Limit } from './limit.ts';
import { both, fewer, frontOf, joinedPoints, ORIGIN, type Point } from './points.ts';
import { remember } from './remember.ts';
import type { PartAt } from './space.ts';

/** Conditions on more slots of a block than this take too long for a floor; so do those on more slots outside of it. */
const FEW = 3;
const FEW_OUTSIDE = 4;
/** Core slots that hang together: the drive, tank and carrier. */
interface Block {
  readonly slots: readonly string[];
  /** Places of the slots among all of the core. */
  readonly places: readonly number[];
  /** By how many slots of the core are decided. */
  readonly views: readonly View[];
}

/** What a block's open slots must keep once some slots of the core are decided. */
interface View {
  /** Conditions that can be judged once so many of the block's slots are decided. */
  readonly limitsAt: readonly (readonly Limit[])[];
  /** What these conditions read of slots outside the block. */
  readonly reads: readonly ((partAt: PartAt) => string)[];
  readonly known: Map<string, readonly Point[]>;
}

/**
 * What the undecided slots of a core add: a front of points, at least one of which is as good as whatever may fill them.
 * What is cheapest in one slot often fits nothing cheap in the next, and the lightest is seldom the cheapest: a single
 * least sum of each figure would promise far too much. Conditions that also read decided slots of other blocks count as
 * soon as these are decided: the drives that carry what the outlets ask, the carriers with room for tank and machinery.
 */
export class BlockFronts {
  readonly #parting: Parting;
  readonly #blocks: readonly Block[];
  readonly #joined = new Map<string, readonly Point[]>();

  constructor(parting: Parting, limits: readonly Limit[]) {
    this.#parting = parting;
    const { coreSlots, space } = parting;
    const outlets = space.layout.lines.filter((l) => l.to === 'air').flatMap((l) => l.run);
    const blockOf = (slot: string): string => (['tank', 'carrier'].includes(slot) ? 'body' : 'drive');
    const inCore = limits.filter((l) => l.slots.every((s) => coreSlots.includes(s)));
    const inBlocks = coreSlots.filter((s) => !outlets.includes(s));
    this.#blocks = [...new Set(inBlocks.map(blockOf))].map((name) => {
      const slots = inBlocks.filter((s) => blockOf(s) === name);
      return {
        slots,
        places: slots.map((s) => coreSlots.indexOf(s)),
        views: viewsOf(slots, coreSlots, inCore),
      };
    });
  }

  /** The front of all slots beyond those decided, in the order of the core; empty when nothing fills one of them. */
  beyond(decided: number, partAt: PartAt): readonly Point[] {
    const open: { block: Block; view: View; chosen: (Part | undefined)[]; read: string }[] = [];
    let key = '';
    for (const block of this.#blocks) {
      const within = block.places.filter((place) => place < decided).length;
      if (within === block.slots.length) continue;
      const view = block.views[decided]!;
      const chosen = block.slots.slice(0, within).map(partAt);
      const read = view.reads.map((r) => r(partAt)).join(' ');
      key += `${block.slots[0]} ${decided} ${keyOf(chosen)} ${read} / `;
      open.push({ block, view, chosen, read });
    }
    let points = this.#joined.get(key);
    if (points === undefined) {
      points = [ORIGIN];
      for (const { block, view, chosen, read } of open) {
        const front = this.#front(block, view, chosen, read, partAt);
        points = fewer(joinedPoints(points, front));
      }
      remember(this.#joined, key, points);
    }
    return points;
  }

  #front(
    block: Block,
    view: View,
    chosen: (Part | undefined)[],
    read: string,
    partAt: PartAt,
  ): readonly Point[] {
    const slot = block.slots[chosen.length];
    if (slot === undefined) return [ORIGIN];
    const key = `${keyOf(chosen)} ${read}`;
    let front = view.known.get(key);
    if (front !== undefined) return front;
    const at: PartAt = (id) => {
      const place = block.slots.indexOf(id);
      return place < 0 ? partAt(id) : chosen[place];
    };
    const points: Point[] = [];
    const limits = view.limitsAt[chosen.length]!;
    for (const part of this.#parting.space.slots.find((s) => s.id === slot)!.options) {
      chosen.push(part);
      let margin = Infinity;
      for (const limit of limits) if (margin >= 0) margin = Math.min(margin, limit.margin(at));
      if (margin >= 0) {
        const own: Point = { ...this.#parting.own(slot, part, at), margin: this.#parting.spare(margin) };
        for (const rest of this.#front(block, view, chosen, read, partAt)) points.push(both(own, rest));
      }
      chosen.pop();
    }
    front = fewer(frontOf(points));
    return remember(view.known, key, front);
  }
}

/** The views of a block by how many slots of the core are decided. */
function viewsOf(slots: readonly string[], coreSlots: readonly string[], limits: readonly Limit[]): View[] {
  const within = (l: Limit) => l.slots.filter((s) => slots.includes(s));
  const outside = (l: Limit) => l.slots.filter((s) => !slots.includes(s));
  const last = (l: Limit) => Math.max(...within(l).map((s) => slots.indexOf(s)));
  const usable = limits.filter((l) => {
    if (l.slow === true || within(l).length === 0 || within(l).length > FEW) return false;
    if (outside(l).length === 0) return l.costly !== true;
    return l.reads !== undefined || outside(l).length <= FEW_OUTSIDE;
  });
  return Array.from({ length: coreSlots.length + 1 }, (_, decided): View => {
    // Judged by the search itself are those whose slots are all decided.
    const now = usable.filter(
      (l) =>
        outside(l).every((s) => coreSlots.indexOf(s) < decided) &&
        within(l).some((s) => coreSlots.indexOf(s) >= decided),
    );
    const told = now.flatMap((l) => (l.reads === undefined || outside(l).length === 0 ? [] : [l.reads]));
    const parts = new Set(now.flatMap((l) => (l.reads === undefined ? outside(l) : [])));
    return {
      limitsAt: slots.map((__, i) => now.filter((l) => last(l) === i)),
      reads: [...new Set(told), ...[...parts].map((slot) => (partAt: PartAt) => partAt(slot)?.id ?? '-')],
      known: new Map(),
    };
  });
}

function keyOf(chosen: readonly (Part | undefined)[]): string {
  return chosen.map((p) => p?.id ?? '-').join(' ');
}
