import { inRange } from '../in-range.ts';
import { monotoneRoot } from './monotone-root.ts';
import { contentsAtDepth } from './tank-contents.ts';
import { checkTank, tankExtent, type TankForm } from './tank-form.ts';
import { contentsBelow } from './tilted-contents.ts';

/**
 * Where the liquid of a tank lies when the tank is pitched and rolled, or braked.
 *
 * @formula the plane x tan(pitch) + y tan(roll) + z = c below which the tank holds V; centroid by slices
 * @param tank inside shape of the tank [tank form]
 * @param volume volume of liquid [m3] 0..1e4
 * @param pitch nose-up pitch; braking at a deceleration a acts as -atan(a/g) [rad] -1.2..1.2
 * @param roll left-side-up roll [rad] -1.2..1.2
 * @result centroidX centroid forward of the middle of the plan, in the tank's frame [m]
 * @result centroidY centroid to the left of the middle of the plan, in the tank's frame [m]
 * @result centroidHeight centroid above the lowest point inside, square to the tank's floor [m]
 * @result surfaceFront height of the surface plane at the front end, middle of the width [m]
 * @result surfaceRear height of the surface plane at the rear end, middle of the width [m]
 * @result surfaceLeft height of the surface plane at the left side, middle of the length [m]
 * @result surfaceRight height of the surface plane at the right side, middle of the length [m]
 * @result lidWet whether the surface plane rises above the top height somewhere over the plan [yes/no]
 * @valid liquid at rest; the surface is clipped at lid and floor. A plane height below 0 or above the tank's height means that wall is dry or full there
 * @throws RangeError when a size, the volume or an angle is outside its range
 * @source Hydrostatics; slices checked by Monte Carlo and against the exact wedge
 */
export function tankTilted(tank: TankForm, volume: number, pitch: number, roll: number): TankTilted {
  checkTank(tank);
  const { halfLength, halfWidth, height } = tankExtent(tank);
  inRange('volume', volume, 0, contentsAtDepth(tank, height).volume * (1 + 1e-12), 'm3');
  inRange('pitch', pitch, -1.2, 1.2, 'rad');
  inRange('roll', roll, -1.2, 1.2, 'rad');
  const gx = Math.tan(pitch);
  const gy = Math.tan(roll);
  const spread = Math.abs(gx) * halfLength + Math.abs(gy) * halfWidth;
  const c =
    spread === 0
      ? monotoneRoot((depth) => contentsAtDepth(tank, depth).volume, volume, 0, height)
      : monotoneRoot((at) => contentsBelow(tank, { gx, gy, c: at }).volume, volume, -spread, height + spread);
  const held = spread === 0 ? contentsAtDepth(tank, c) : contentsBelow(tank, { gx, gy, c });
  const wet = held.volume > 0;
  return {
    centroidX: wet ? held.momentX / held.volume : 0,
    centroidY: wet ? held.momentY / held.volume : 0,
    centroidHeight: wet ? held.momentZ / held.volume : 0,
    surfaceFront: c - gx * halfLength,
    surfaceRear: c + gx * halfLength,
    surfaceLeft: c - gy * halfWidth,
    surfaceRight: c + gy * halfWidth,
    lidWet: volume > 0 && c + spread > height,
  };
}

export interface TankTilted {
  readonly centroidX: number;
  readonly centroidY: number;
  readonly centroidHeight: number;
  readonly surfaceFront: number;
  readonly surfaceRear: number;
  readonly surfaceLeft: number;
  readonly surfaceRight: number;
  readonly lidWet: boolean;
}

/**
 * Liquid that stays below the outlet of a tank on a slope and cannot be drawn.
 *
 * @formula volume below the plane x tan(pitch) + y tan(roll) + z through the outlet
 * @param tank inside shape of the tank [tank form]
 * @param outletX outlet forward of the middle of the plan [m] -10..10
 * @param outletY outlet to the left of the middle of the plan [m] -10..10
 * @param outletHeight outlet above the lowest point inside [m] 0..20
 * @param pitch nose-up pitch [rad] -1.2..1.2
 * @param roll left-side-up roll [rad] -1.2..1.2
 * @returns volume that stays [m3]
 * @valid at rest; a vortex or a moving surface uncovers the outlet earlier
 * @throws RangeError when a size or a parameter is outside its range
 * @source Hydrostatics; equals the wedge w l² tan t / 2 for a flat floor
 */
export function tankUnusable(
  tank: TankForm,
  outletX: number,
  outletY: number,
  outletHeight: number,
  pitch: number,
  roll: number,
): number {
  checkTank(tank);
  const { halfLength, halfWidth, height } = tankExtent(tank);
  inRange('outletX', outletX, -halfLength, halfLength, 'm');
  inRange('outletY', outletY, -halfWidth, halfWidth, 'm');
  inRange('outletHeight', outletHeight, 0, height, 'm');
  inRange('pitch', pitch, -1.2, 1.2, 'rad');
  inRange('roll', roll, -1.2, 1.2, 'rad');
  const gx = Math.tan(pitch);
  const gy = Math.tan(roll);
  if (gx === 0 && gy === 0) return contentsAtDepth(tank, outletHeight).volume;
  return contentsBelow(tank, { gx, gy, c: outletX * gx + outletY * gy + outletHeight }).volume;
}
