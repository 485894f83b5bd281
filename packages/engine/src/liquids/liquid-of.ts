import type { Liquid, LiquidId } from './liquid.ts';
import { LIQUIDS } from './liquids.data.ts';
import type { Material } from './material.ts';
import { MATERIALS, type MaterialId } from './materials.data.ts';

const LIQUIDS_BY_ID: ReadonlyMap<string, Liquid> = new Map(LIQUIDS.map((l) => [l.id, l]));
const MATERIALS_BY_ID: ReadonlyMap<string, Material> = new Map(MATERIALS.map((m) => [m.id, m]));

/** Whether the layer knows a liquid of this id. */
export const isLiquid = (id: string): id is LiquidId => LIQUIDS_BY_ID.has(id);

/** Whether the layer knows a material of this id. */
export const isMaterial = (id: string): id is MaterialId => MATERIALS_BY_ID.has(id);

/**
 * The liquid with this id.
 *
 * @throws RangeError naming the id and the ids there are.
 */
export function liquidOf(id: string): Liquid {
  const liquid = LIQUIDS_BY_ID.get(id);
  if (liquid === undefined)
    throw new RangeError(`liquid is '${id}'; it must be one of ${[...LIQUIDS_BY_ID.keys()].join(', ')}`);
  return liquid;
}

/**
 * The material with this id.
 *
 * @throws RangeError naming the id and the ids there are.
 */
export function materialOf(id: string): Material & { readonly id: MaterialId } {
  const material = MATERIALS_BY_ID.get(id);
  if (material === undefined)
    throw new RangeError(`material is '${id}'; it must be one of ${[...MATERIALS_BY_ID.keys()].join(', ')}`);
  return material as Material & { readonly id: MaterialId };
}
