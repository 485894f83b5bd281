import type { Proof } from '../proof/prove.ts';
import type { Rig } from '../rig-document.ts';

/** The rig with every part given the place where its proof has put it, so that what changes a part moves none. */
export function inPlace(rig: Rig, { placement }: Pick<Proof, 'placement'>): Rig {
  if (placement === undefined) return rig;
  const items = new Map(rig.items);
  for (const { item, x, y, z } of placement.parts) {
    const entry = items.get(item);
    if (entry === undefined) continue;
    const at = { x, y, z: z - placement.carrier.deckHeight };
    items.set(item, { ...entry, item: { ...entry.item, at } });
  }
  return { ...rig, items };
}
