import type { Catalogue, Part, Slot } from '../../catalogue/index.ts';
import { partsFor } from '../design/slot-parts.ts';
import type { Rig } from '../rig-document.ts';

/** Slots of a rig in the order of its layout, empty ones too; then items that the layout does not know. */
export function slotsOf(rig: Rig): readonly Slot[] {
  const slots = rig.layout?.slots ?? [];
  const known = new Set(slots.map((s) => s.id));
  const own = [...rig.items.values()]
    .filter(({ item }) => !known.has(item.id))
    .map(({ item, part }): Slot => ({ id: item.id, kinds: [part.kind], name: item.id }));
  return [...slots, ...own];
}

/**
 * Parts that could be in a slot instead of the one that is there: those the rig brings itself, then those of the
 * catalogue, cheapest first; carriers only of the form that the brief asks.
 *
 * @throws RangeError when the rig has no such slot
 */
export function partsInstead(rig: Rig, catalogue: Catalogue, slotId: string): readonly Part[] {
  const slots = slotsOf(rig);
  const slot = slots.find((s) => s.id === slotId);
  if (slot === undefined)
    throw new RangeError(`slot is '${slotId}'; the rig has ${slots.map((s) => `'${s.id}'`).join(', ')}`);
  const there = rig.items.get(slotId)?.part.id;
  const { form } = rig.brief.carrier;
  const own = [...rig.ownParts.values()].flatMap(({ part }) =>
    slot.kinds.includes(part.kind) ? [part] : [],
  );
  return [...own, ...partsFor(catalogue, slot)].filter(
    (part) => part.id !== there && (part.kind !== 'carrier' || part.form === form),
  );
}
