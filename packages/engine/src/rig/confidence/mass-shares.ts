import type { Part } from '../../catalogue/index.ts';
import type { Rig, RigItem } from '../rig-document.ts';

/** What an item weighs by the catalogue, empty; hose by its length [kg]. */
function listedMass({ item, part }: { readonly item: RigItem; readonly part: Part }): number {
  return part.kind === 'hose'
    ? (part.mass / 0.3048) * (item.length ?? 0) * item.count
    : part.mass * item.count;
}

/** Share of each item in the mass of all items of a rig, empty: they add to 1 [-]. */
export function massShares(rig: Rig): ReadonlyMap<string, number> {
  const all = [...rig.items].map(([id, entry]) => [id, listedMass(entry)] as const);
  const sum = all.reduce((total, [, mass]) => total + mass, 0);
  return new Map(all.map(([id, mass]) => [id, mass / sum]));
}
