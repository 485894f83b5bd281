import type { Catalogue, Part, Shop } from '../catalogue/index.ts';
import type { Problem } from '../quantity/index.ts';
import { designRig, type Design, type DesignOptions } from './design.ts';
import type { RawRig } from './design/assemble.ts';
import { around, carried, pinsOf, withPins } from './pins.ts';
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

function named(problems: readonly Problem[], pins: ReadonlyMap<string, Part>): Problem[] {
  const names = [...pins.values()].map((p) => `"${p.name}"`).join(', ');
  return problems.map((p) => (p.code === 'no-rig' ? { ...p, message: `${p.message}; pinned: ${names}` } : p));
}
