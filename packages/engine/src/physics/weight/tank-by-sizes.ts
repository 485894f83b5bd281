import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { tankFreeSurface } from './free-surface.ts';
import { tankCapacity, tankContents, tankDepthForVolume } from './tank.ts';
import type { TankEnds, TankForm } from './tank-form.ts';
import { tankTilted, type TankTilted } from './tank-tilted.ts';

/** A tank told by its plain sizes, for a sum by hand; a rig uses the form itself. */
export interface TankSizes {
  readonly form: TankForm['form'];
  readonly length?: number;
  readonly width?: number;
  readonly height?: number;
  readonly diameter?: number;
  readonly ends?: TankEnds;
  readonly endDepth?: number;
  readonly coneHeight?: number;
  readonly outletDiameter?: number;
  readonly domeHeight?: number;
}

const SIZES = [
  ['length', 20],
  ['width', 20],
  ['height', 20],
  ['diameter', 20],
  ['endDepth', 10],
  ['coneHeight', 20],
  ['outletDiameter', 20],
  ['domeHeight', 20],
] as const;

/**
 * Volume, fill, centroid and working height of the liquid in a level tank, from the tank's plain sizes.
 *
 * @formula V(h) = integral of the cross-section; exact for every form; rise i/V with the surface's second moment i
 * @param p.form form of the tank [one of lying-round, lying-elliptical, box, upright-round]
 * @param p.depth depth of liquid above the lowest point inside [m] 0..20
 * @param p.length inside length: straight part of a lying tank, or of a box [m] 0..20
 * @param p.width inside width of an elliptical tank or a box [m] 0..20
 * @param p.height inside height of an elliptical tank or a box; straight height of an upright tank [m] 0..20
 * @param p.diameter inside diameter of a lying or upright round tank [m] 0..20
 * @param p.ends ends of a lying round tank; default flat [one of flat, dished, ellipsoidal, hemispherical]
 * @param p.endDepth depth of each dished or ellipsoidal end; default from its kind [m] 0..10
 * @param p.coneHeight cone under an upright tank; default 0 [m] 0..20
 * @param p.outletDiameter diameter at the cone's point; default 0 [m] 0..20
 * @param p.domeHeight ellipsoidal dome on an upright tank; default 0 [m] 0..20
 * @result volume volume of liquid [m3]
 * @result brimVolume volume of the full tank [m3]
 * @result fillFraction share of the brim volume [-]
 * @result centroidHeight centroid above the lowest point inside [m]
 * @result rollHeight height at which the free liquid acts in roll [m]
 * @valid inside sizes: take the wall off outside ones; a sphere is a lying-round tank of length 0 with hemispherical ends
 * @throws RangeError when a size that the form needs is missing or outside its range
 * @source Jones, Calculating Tank Volume; cone frustum formula; ship stability texts for the rise
 */
export function levelTankLiquid(p: TankSizes & { readonly depth: number }): LevelTankLiquid {
  const tank = tankOfSizes(p);
  const { volume, fillFraction, centroidHeight } = tankContents(tank, p.depth);
  const { rollHeight } = tankFreeSurface(tank, p.depth);
  return { volume, brimVolume: tankCapacity(tank), fillFraction, centroidHeight, rollHeight };
}

export interface LevelTankLiquid {
  readonly volume: number;
  readonly brimVolume: number;
  readonly fillFraction: number;
  readonly centroidHeight: number;
  readonly rollHeight: number;
}

/**
 * Depth at which a level tank holds a volume, from the tank's plain sizes.
 *
 * @formula the depth h with V(h) = V, by a bracketed root search
 * @param p.form form of the tank [one of lying-round, lying-elliptical, box, upright-round]
 * @param p.volume volume of liquid [m3] 0..1e4
 * @param p.length inside length: straight part of a lying tank, or of a box [m] 0..20
 * @param p.width inside width of an elliptical tank or a box [m] 0..20
 * @param p.height inside height of an elliptical tank or a box; straight height of an upright tank [m] 0..20
 * @param p.diameter inside diameter of a lying or upright round tank [m] 0..20
 * @param p.ends ends of a lying round tank; default flat [one of flat, dished, ellipsoidal, hemispherical]
 * @param p.endDepth depth of each dished or ellipsoidal end; default from its kind [m] 0..10
 * @param p.coneHeight cone under an upright tank; default 0 [m] 0..20
 * @param p.outletDiameter diameter at the cone's point; default 0 [m] 0..20
 * @param p.domeHeight ellipsoidal dome on an upright tank; default 0 [m] 0..20
 * @returns depth above the lowest point inside [m]
 * @throws RangeError when a size that the form needs is missing or outside its range, or the tank cannot hold the volume
 * @source Inverse of levelTankLiquid
 */
export function tankLevelOfVolume(p: TankSizes & { readonly volume: number }): number {
  return tankDepthForVolume(tankOfSizes(p), p.volume);
}

/**
 * Where the liquid of a tilted tank lies, from the tank's plain sizes.
 *
 * @formula the plane x tan(pitch) + y tan(roll) + z = c below which the tank holds V; centroid by slices
 * @param p.form form of the tank [one of lying-round, lying-elliptical, box, upright-round]
 * @param p.volume volume of liquid [m3] 0..1e4
 * @param p.pitch nose-up pitch; braking at a deceleration a acts as -atan(a/g) [rad] -1.2..1.2
 * @param p.roll left-side-up roll [rad] -1.2..1.2
 * @param p.length inside length: straight part of a lying tank, or of a box [m] 0..20
 * @param p.width inside width of an elliptical tank or a box [m] 0..20
 * @param p.height inside height of an elliptical tank or a box; straight height of an upright tank [m] 0..20
 * @param p.diameter inside diameter of a lying or upright round tank [m] 0..20
 * @param p.ends ends of a lying round tank; default flat [one of flat, dished, ellipsoidal, hemispherical]
 * @param p.endDepth depth of each dished or ellipsoidal end; default from its kind [m] 0..10
 * @param p.coneHeight cone under an upright tank; default 0 [m] 0..20
 * @param p.outletDiameter diameter at the cone's point; default 0 [m] 0..20
 * @param p.domeHeight ellipsoidal dome on an upright tank; default 0 [m] 0..20
 * @result centroidX centroid forward of the middle of the plan [m]
 * @result centroidY centroid to the left of the middle of the plan [m]
 * @result centroidHeight centroid above the lowest point inside, square to the floor [m]
 * @result surfaceFront height of the surface plane at the front end [m]
 * @result surfaceRear height of the surface plane at the rear end [m]
 * @result surfaceLeft height of the surface plane at the left side [m]
 * @result surfaceRight height of the surface plane at the right side [m]
 * @result lidWet whether the surface plane rises above the top height somewhere over the plan [yes/no]
 * @valid liquid at rest; the surface is clipped at lid and floor
 * @throws RangeError when a size that the form needs is missing or outside its range, or the tank cannot hold the volume
 * @source Hydrostatics; slices checked by numerical integration and against the exact wedge
 */
export function tiltedTankLiquid(
  p: TankSizes & { readonly volume: number; readonly pitch: number; readonly roll: number },
): TankTilted {
  return tankTilted(tankOfSizes(p), p.volume, p.pitch, p.roll);
}

function tankOfSizes(p: TankSizes): TankForm {
  oneOfChoices('form', p.form, ['lying-round', 'lying-elliptical', 'box', 'upright-round']);
  checkGiven(p);
  const need = (name: 'length' | 'width' | 'height' | 'diameter'): number => {
    const value = p[name];
    if (value === undefined) throw new RangeError(`${name} is missing; a tank of form ${p.form} needs it`);
    return value;
  };
  switch (p.form) {
    case 'lying-round':
      return {
        form: p.form,
        diameter: need('diameter'),
        length: need('length'),
        ends: p.ends ?? 'flat',
        endDepth: p.endDepth,
      };
    case 'lying-elliptical':
      return { form: p.form, width: need('width'), height: need('height'), length: need('length') };
    case 'box':
      return { form: p.form, width: need('width'), height: need('height'), length: need('length') };
    case 'upright-round':
      return {
        form: p.form,
        diameter: need('diameter'),
        height: need('height'),
        coneHeight: p.coneHeight,
        outletDiameter: p.outletDiameter,
        domeHeight: p.domeHeight,
      };
  }
}

/** Refuses every size that makes no sense, also one that the form has no use for: a slip of the pen must show. */
function checkGiven(p: TankSizes): void {
  if (p.ends !== undefined) oneOfChoices('ends', p.ends, ['flat', 'dished', 'ellipsoidal', 'hemispherical']);
  for (const [name, max] of SIZES) {
    const size = p[name];
    if (size !== undefined) inRange(name, size, 0, max, 'm');
  }
}
