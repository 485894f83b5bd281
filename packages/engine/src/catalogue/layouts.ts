import type { Layout } from './layout.ts';
import { LAYOUT_DOCUMENTS } from './layouts.data.ts';
import { readLayout } from './read-layout.ts';

/** The families that come with the program. */
export const LAYOUTS: readonly Layout[] = LAYOUT_DOCUMENTS.map((raw) => {
  const result = readLayout(raw);
  if (!result.ok)
    throw new RangeError(
      `layout '${raw.id}': ${result.problems.map((p) => `${p.path.join('.')}: ${p.message}`).join('; ')}`,
    );
  return result.layout;
});

/** A shop's own layouts beside those that come with the program; one with the same id stands in for that. */
export function withOwnLayouts(own: readonly Layout[]): readonly Layout[] {
  const named = new Map(own.map((l) => [l.id, l]));
  const known = new Set(LAYOUTS.map((l) => l.id));
  return [...LAYOUTS.map((l) => named.get(l.id) ?? l), ...own.filter((l) => !known.has(l.id))];
}
