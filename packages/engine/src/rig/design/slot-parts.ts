import type { Catalogue, Kind, Layout, Part, PartOf, Slot } from '../../catalogue/index.ts';

const remembered = new WeakMap<Catalogue, WeakMap<Slot, readonly Part[]>>();

/** Parts that a slot may take, cheapest first. */
export function partsFor(catalogue: Catalogue, slot: Slot): readonly Part[] {
  let known = remembered.get(catalogue);
  if (known === undefined) {
    known = new WeakMap<Slot, readonly Part[]>();
    remembered.set(catalogue, known);
  }
  let parts = known.get(slot);
  if (parts === undefined) {
    parts = slot.kinds
      .flatMap((kind): readonly Part[] => catalogue.byKind[kind])
      .filter((part) => passes(part, slot))
      .sort((a, b) => a.priceCents - b.priceCents || (a.id < b.id ? -1 : 1));
    known.set(slot, parts);
  }
  return parts;
}

/** The same for a slot of the layout by its id, when the layout has it and its parts are of the kind. */
export function partsOfSlot<K extends Kind>(
  catalogue: Catalogue,
  layout: Layout,
  slotId: string,
  kind: K,
): readonly PartOf<K>[] {
  const slot = layout.slots.find((s) => s.id === slotId);
  if (slot === undefined || !slot.kinds.includes(kind)) return [];
  const parts = partsFor(catalogue, slot);
  return (slot.kinds.length === 1 ? parts : parts.filter((p) => p.kind === kind)) as readonly PartOf<K>[];
}

function passes(part: Part, slot: Slot): boolean {
  return Object.entries(slot.only ?? {}).every(([path, allowed]) => {
    let value: unknown = part;
    for (const step of path.split('.')) value = (value as Record<string, unknown> | undefined)?.[step];
    return typeof value === 'string' && allowed.includes(value);
  });
}
