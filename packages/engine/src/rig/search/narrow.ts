import type { Part } from '../../catalogue/index.ts';
import type { Limit } from './limit.ts';
import type { PartAt, SearchSlot, SearchSpace } from './space.ts';

/** Sets of parts of a few slots that are tried to find what a part can stand with. */
const MOST_TRIED = 60_000;
/** The same where each takes long. */
const MOST_COSTLY = 600;

/** A space without the parts that no rig can have, and what refused them. */
export interface Narrowed {
  readonly space: SearchSpace;
  /** Sets of parts that went, by the condition that refused them. */
  readonly refused: ReadonlyMap<string, number>;
  /** Parts that went, by slot. */
  readonly parts: readonly RefusedParts[];
}

/** Parts of one slot that one condition refused. */
export interface RefusedParts {
  readonly slot: string;
  readonly why: string;
  readonly parts: number;
}

/**
 * Takes out every part that a condition refuses with whatever else may stand in the condition's slots: no rig that keeps
 * its promises has it. It goes on until nothing more goes, since a part that has gone may have been another's only mate.
 */
export function narrowed(space: SearchSpace, limits: readonly Limit[]): Narrowed {
  const options = new Map(space.slots.map((s) => [s.id, s.options]));
  const refused = new Map<string, number>();
  const gone: RefusedParts[] = [];
  const size = () => [...options.values()].reduce((n, o) => n * o.length, 1);
  const byLength = [...limits].sort((a, b) => a.slots.length - b.slots.length);
  for (let again = true; again && size() > 0;) {
    again = false;
    for (const limit of byLength) {
      const tried = limit.slots.reduce((n, s) => n * options.get(s)!.length, 1);
      if (tried > (limit.costly === true ? MOST_COSTLY : MOST_TRIED)) continue;
      const before = size();
      const supported = supportedBy(limit, options);
      for (const slot of limit.slots) {
        const kept = options.get(slot)!.filter((p) => supported.get(slot)!.has(p));
        const parts = options.get(slot)!.length - kept.length;
        if (parts > 0) gone.push({ slot, why: limit.why, parts });
        again ||= parts > 0;
        options.set(slot, kept);
      }
      const sets = before - size();
      if (sets > 0) refused.set(limit.why, sets + (refused.get(limit.why) ?? 0));
      // With a slot that nothing can fill, everything else would go too, and tell nothing.
      if (size() === 0) break;
    }
  }
  const slots = space.slots.map(({ id }): SearchSlot => ({ id, options: options.get(id)! }));
  return { space: { ...space, slots, size: size() }, refused, parts: gone };
}

/** For each slot of a condition the options that stand with at least one choice of the others. */
function supportedBy(
  { slots, margin }: Limit,
  options: ReadonlyMap<string, SearchSlot['options']>,
): Map<string, Set<Part | undefined>> {
  const supported = slots.map(() => new Set<Part | undefined>());
  const parts = new Map<string, Part | undefined>();
  const partAt: PartAt = (slot) => parts.get(slot);
  /** Whether no choice for the slots from a depth on tells anything new: each part of it stands with something already. */
  const isTold = (depth: number): boolean =>
    slots.every((s, i) =>
      i < depth ? supported[i]!.has(parts.get(s)) : supported[i]!.size === options.get(s)!.length,
    );
  const visit = (depth: number): void => {
    const slot = slots[depth];
    if (slot === undefined) {
      if (margin(partAt) >= 0) slots.forEach((s, i) => supported[i]!.add(parts.get(s)));
      return;
    }
    for (const part of options.get(slot)!) {
      parts.set(slot, part);
      if (!isTold(depth + 1)) visit(depth + 1);
    }
  };
  visit(0);
  return new Map(slots.map((s, i) => [s, supported[i]!]));
}
