import { catalogueOf, type Catalogue, type Part } from '../catalogue/index.ts';
import { changed } from '../quantity/index.ts';
import type { RawRig } from './design/assemble.ts';
import { partById, putPart } from './part-edit.ts';

/** Pinned parts by their slots. */
export function pinsOf(rig: RawRig, catalogue: Catalogue): Map<string, Part> {
  return new Map(
    rig.items.flatMap(({ id, part, pinned }): [string, Part][] => {
      const found = pinned === true ? partById(rig, catalogue, part) : undefined;
      return found === undefined ? [] : [[id, found]];
    }),
  );
}

/** The catalogue as if each pinned slot took its part alone; one that is sold no more is there again. */
export function around(pins: ReadonlyMap<string, Part>, catalogue: Catalogue): Catalogue {
  const held = new Map([...pins.values()].map((part) => [part.id, part]));
  return catalogueOf(catalogue.name, catalogue.version, new Map([...catalogue.parts, ...held]).values(), {
    retired: new Set([...catalogue.retired].filter((id) => !held.has(id))),
    layouts: catalogue.layouts.map((layout) => ({
      ...layout,
      slots: layout.slots.map((slot) => {
        const pin = pins.get(slot.id);
        return pin === undefined ? slot : { ...slot, only: { id: [pin.id] } };
      }),
    })),
  });
}

/** Pinned items as they were; where the new rig left the slot empty they come back into its lines. */
export function withPins(
  next: RawRig,
  before: RawRig,
  pins: ReadonlyMap<string, Part>,
  catalogue: Catalogue,
): RawRig {
  let rig = next;
  for (const [slot, part] of pins) {
    if (!rig.items.some((i) => i.id === slot))
      rig = changed(rig, putPart(rig, catalogue, slot, part).change).document;
    const old = before.items.find((i) => i.id === slot)!;
    // How many there are follows from what they stand on.
    rig = {
      ...rig,
      items: rig.items.map((i) => {
        if (i.id !== slot) return i;
        const { count: _, ...settings } = old;
        return { ...i, ...settings };
      }),
    };
  }
  return rig;
}

/** What a rig keeps when its parts are chosen again. */
export function carried({ ownParts, pricing }: RawRig): Partial<RawRig> {
  return {
    ...(ownParts === undefined ? {} : { ownParts }),
    ...(pricing === undefined ? {} : { pricing }),
  };
}
