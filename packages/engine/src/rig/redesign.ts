import { catalogueOf, type Catalogue, type Part, type Shop } from '../catalogue/index.ts';
import { changed, type Problem } from '../quantity/index.ts';
import { designRig, type Design, type DesignOptions } from './design.ts';
import type { RawRig } from './design/assemble.ts';
import { partById, putPart } from './part-edit.ts';
import { proveRig } from './proof/prove.ts';
import { readRig } from './rig-document.ts';

/**
 * Chooses the parts of a rig again for the brief as it now stands. What is pinned stays, with its settings: the other
 * parts are chosen around it. Title, own parts and prices of the rig stay too.
 *
 * @returns the rig with its proof; problems when the brief cannot be read, when no rig is found around what is pinned,
 * or when the family that serves the brief has no place for it
 */
export function redesignRig(
  rig: RawRig,
  catalogue: Catalogue,
  shop: Shop,
  options: DesignOptions = {},
): Design {
  const pins = pinsOf(rig, catalogue);
  const design = designRig(rig.brief, pins.size === 0 ? catalogue : around(pins, catalogue), shop, options);
  if (!design.ok) return pins.size === 0 ? design : { ok: false, problems: named(design.problems, pins) };
  const strange = placeless(design.rig, pins, catalogue);
  if (strange.length > 0) return { ok: false, problems: strange };
  const next = withPins(
    { ...design.rig, id: rig.id, title: rig.title, ...carried(rig) },
    rig,
    pins,
    catalogue,
  );
  const bound = readRig(next, catalogue);
  if (!bound.ok) return bound;
  return { ok: true, rig: next, proof: proveRig(bound.rig, catalogue, shop, options), looked: design.looked };
}

/** Pinned parts by their slots. */
function pinsOf(rig: RawRig, catalogue: Catalogue): Map<string, Part> {
  return new Map(
    rig.items.flatMap(({ id, part, pinned }): [string, Part][] => {
      const found = pinned === true ? partById(rig, catalogue, part) : undefined;
      return found === undefined ? [] : [[id, found]];
    }),
  );
}

/** The catalogue as if each pinned slot took its part alone; one that is sold no more is there again. */
function around(pins: ReadonlyMap<string, Part>, catalogue: Catalogue): Catalogue {
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

function placeless(rig: RawRig, pins: ReadonlyMap<string, Part>, catalogue: Catalogue): Problem[] {
  const slots = catalogue.layouts.find((l) => l.id === rig.layout)?.slots ?? [];
  return [...pins].flatMap(([slot, part]): Problem[] =>
    slots.some((s) => s.id === slot)
      ? []
      : [
          {
            path: ['items'],
            code: 'no-rig',
            message: `"${part.name}" is pinned as '${slot}', and the family '${rig.layout}' has no such place: loosen it`,
          },
        ],
  );
}

/** Pinned items as they were; where the new rig left the slot empty they come back into its lines. */
function withPins(
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

function carried({ ownParts, pricing }: RawRig): Partial<RawRig> {
  return {
    ...(ownParts === undefined ? {} : { ownParts }),
    ...(pricing === undefined ? {} : { pricing }),
  };
}

function named(problems: readonly Problem[], pins: ReadonlyMap<string, Part>): Problem[] {
  const names = [...pins.values()].map((p) => `"${p.name}"`).join(', ');
  return problems.map((p) => (p.code === 'no-rig' ? { ...p, message: `${p.message}; pinned: ${names}` } : p));
}
