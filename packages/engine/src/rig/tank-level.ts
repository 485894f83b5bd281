import type { PartOf } from '../catalogue/index.ts';
import { tankCapacity, tankDepthForVolume } from '../physics/index.ts';

const depths = new WeakMap<PartOf<'tank'>, Map<number, number>>();

/**
 * Depth of liquid above the tank's lowest point when it holds this share of its rated volume [m].
 *
 * The rated volume may exceed what the inside shape holds to the brim by rounding; then the tank is simply full.
 * Depths are remembered per tank, since every condition of a duty asks the same one.
 */
export function liquidDepth(tank: PartOf<'tank'>, share: number): number {
  let known = depths.get(tank);
  if (known === undefined) {
    known = new Map<number, number>();
    depths.set(tank, known);
  }
  let depth = known.get(share);
  if (depth === undefined) {
    depth = tankDepthForVolume(tank.shape, Math.min(share * tank.volume, tankCapacity(tank.shape)));
    known.set(share, depth);
  }
  return depth;
}
