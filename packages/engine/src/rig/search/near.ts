import type { Part } from '../../catalogue/index.ts';
import type { Limit } from './limit.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Slots of a core whose parts must fit each other: a change of one alone seldom goes. */
const COUPLED: readonly (readonly [string, string])[] = [
  ['gun', 'tip'],
  ['hose', 'reel'],
  ['boom', 'nozzle'],
  ['pump', 'reduction'],
  ['reduction', 'engine'],
  ['pump', 'pto'],
  ['tank', 'carrier'],
];

export type CoreParts = ReadonlyMap<string, Part | undefined>;

/** A core, then those that differ from it in one slot, or in two that hang together. */
export function* coresNear(
  { slots }: SearchSpace,
  coreSlots: readonly string[],
  parts: CoreParts,
): Generator<CoreParts> {
  const optionsOf = (id: string) => slots.find((s) => s.id === id)!.options;
  yield parts;
  for (const id of coreSlots) for (const part of optionsOf(id)) yield new Map(parts).set(id, part);
  for (const [a, b] of COUPLED) {
    if (!coreSlots.includes(a) || !coreSlots.includes(b)) continue;
    for (const one of optionsOf(a))
      for (const other of optionsOf(b)) yield new Map(parts).set(a, one).set(b, other);
  }
}

/** Most spare that conditions allow a core; below zero when one refuses it. */
export function limitedTo(limits: readonly Limit[], partAt: PartAt): number {
  let margin = Infinity;
  for (const limit of limits) {
    margin = Math.min(margin, limit.margin(partAt));
    if (margin < 0) break;
  }
  return margin;
}
