import { inRange } from '../in-range.ts';
import { monotoneRoot } from './monotone-root.ts';
import { contentsAtDepth } from './tank-contents.ts';
import { checkTank, tankExtent, type TankForm } from './tank-form.ts';

/**
 * Volume of a tank filled to the brim, from its inside sizes.
 *
 * @formula integral of the cross-section; exact for every form
 * @param tank inside shape of the tank [tank form]
 * @returns volume [m3]
 * @valid outside sizes overstate it: take the wall off first; rated gallons of a moulded tank are not the brim volume
 * @throws RangeError when a size is outside its range
 * @source Jones, Calculating Tank Volume; cone frustum and prismatoid formulas
 */
export function tankCapacity(tank: TankForm): number {
  checkTank(tank);
  return contentsAtDepth(tank, tankExtent(tank).height).volume;
}

/**
 * Volume and centroid of the liquid in a level tank.
 *
 * @formula lying round: A = R² acos((R-h)/R) - (R-h)s, s = √(2Rh-h²), centroid (2/3)s³/A below the axis; two ellipsoidal ends πeh²(3R-h)/(3R)
 * @param tank inside shape of the tank [tank form]
 * @param depth depth of liquid above the lowest point inside [m] 0..20
 * @result volume volume of liquid [m3]
 * @result fillFraction share of the brim volume [-]
 * @result centroidX centroid forward of the middle of the plan [m]
 * @result centroidY centroid to the left of the middle of the plan [m]
 * @result centroidHeight centroid above the lowest point inside; 0 when empty [m]
 * @valid the depth may not exceed the tank's height
 * @throws RangeError when a size or the depth is outside its range
 * @source Jones, Calculating Tank Volume; cone frustum and prismatoid formulas; checked by quadrature
 */
export function tankContents(tank: TankForm, depth: number): TankContents {
  checkTank(tank);
  const height = tankExtent(tank).height;
  inRange('depth', depth, 0, height, 'm');
  const { volume, momentX, momentY, momentZ } = contentsAtDepth(tank, depth);
  return {
    volume,
    fillFraction: volume / contentsAtDepth(tank, height).volume,
    centroidX: volume > 0 ? momentX / volume : 0,
    centroidY: volume > 0 ? momentY / volume : 0,
    // Rounding in a nearly empty tank must not put the centroid outside the liquid.
    centroidHeight: volume > 0 ? Math.min(depth, Math.max(0, momentZ / volume)) : 0,
  };
}

export interface TankContents {
  readonly volume: number;
  readonly fillFraction: number;
  readonly centroidX: number;
  readonly centroidY: number;
  readonly centroidHeight: number;
}

/**
 * Depth at which a level tank holds a volume.
 *
 * @formula the depth h with V(h) = V, by a bracketed root search
 * @param tank inside shape of the tank [tank form]
 * @param volume volume of liquid [m3] 0..1e4
 * @returns depth above the lowest point inside [m]
 * @valid the volume may not exceed the brim volume
 * @throws RangeError when a size or the volume is outside its range
 * @source Inverse of tankContents
 */
export function tankDepthForVolume(tank: TankForm, volume: number): number {
  checkTank(tank);
  const height = tankExtent(tank).height;
  inRange('volume', volume, 0, contentsAtDepth(tank, height).volume * (1 + 1e-12), 'm3');
  return monotoneRoot((depth) => contentsAtDepth(tank, depth).volume, volume, 0, height);
}
