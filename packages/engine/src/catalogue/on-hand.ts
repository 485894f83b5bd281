import { catalogueOf, type Catalogue } from './catalogue.ts';

/**
 * A catalogue whose stock is what is on hand: what was laid in and everything that moved since.
 *
 * @param moved pieces or feet by part, below nought for what was taken; what never moved is not among them
 */
export function withMoved(catalogue: Catalogue, moved: Readonly<Record<string, number>>): Catalogue {
  const changed = Object.entries(moved).filter(([id, by]) => by !== 0 && catalogue.parts.has(id));
  if (changed.length === 0) return catalogue;
  const parts = new Map(catalogue.parts);
  for (const [id, by] of changed) {
    const part = parts.get(id)!;
    // More taken than was there is a count that is due, not parts that are owed.
    parts.set(id, { ...part, stock: Math.max(0, part.stock + by) });
  }
  return catalogueOf(catalogue.name, catalogue.version, parts.values(), catalogue);
}
