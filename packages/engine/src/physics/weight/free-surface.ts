import { inRange } from '../in-range.ts';
import { contentsAtDepth, GAUSS_W, GAUSS_X } from './tank-contents.ts';
import { checkTank, endDepth, tankExtent, type TankForm } from './tank-form.ts';

/**
 * Height at which the free liquid of a level tank acts when the rig rolls or pitches by a small angle.
 *
 * @formula rise = i / V with i the second moment of the surface; round about its axis: centroid + rise = the axis, at every fill
 * @param tank inside shape of the tank [tank form]
 * @param depth depth of liquid above the lowest point inside [m] 0..20
 * @result surfaceArea area of the liquid surface [m2]
 * @result rollInertia second moment of the surface about its fore-aft middle line [m4]
 * @result pitchInertia second moment of the surface about its crosswise middle line [m4]
 * @result rollRise virtual rise of the liquid in roll [m]
 * @result pitchRise virtual rise of the liquid in pitch [m]
 * @result rollHeight height above the lowest point inside at which the liquid acts in roll [m]
 * @valid small angles; exact at any angle for a round tank rolled about its axis. A nearly empty box gives a rise without bound: use tankTilted at the real slope there. Empty: rise 0, height 0 (axis for a lying round tank)
 * @throws RangeError when a size or the depth is outside its range
 * @source Ship stability texts (rise = i/V; a US Navy training manual gives the same); identity (c³/12)/A = d for a circle
 */
export function tankFreeSurface(tank: TankForm, depth: number): TankFreeSurface {
  checkTank(tank);
  const height = tankExtent(tank).height;
  inRange('depth', depth, 0, height, 'm');
  const { volume, momentZ } = contentsAtDepth(tank, depth);
  const { area, roll, pitch } = surfaceMoments(tank, depth);
  return {
    surfaceArea: area,
    rollInertia: roll,
    pitchInertia: pitch,
    rollRise: volume > 0 ? roll / volume : 0,
    pitchRise: volume > 0 ? pitch / volume : 0,
    rollHeight: tank.form === 'lying-round' ? tank.diameter / 2 : volume > 0 ? (momentZ + roll) / volume : 0,
  };
}

export interface TankFreeSurface {
  readonly surfaceArea: number;
  readonly rollInertia: number;
  readonly pitchInertia: number;
  readonly rollRise: number;
  readonly pitchRise: number;
  readonly rollHeight: number;
}

interface SurfaceMoments {
  area: number;
  roll: number;
  pitch: number;
}

function rectangle(length: number, width: number): SurfaceMoments {
  return { area: length * width, roll: (length * width ** 3) / 12, pitch: (width * length ** 3) / 12 };
}

function disc(radius: number): SurfaceMoments {
  const i = (Math.PI / 4) * radius ** 4;
  return { area: Math.PI * radius ** 2, roll: i, pitch: i };
}

function surfaceMoments(tank: TankForm, depth: number): SurfaceMoments {
  switch (tank.form) {
    case 'lying-round':
      return lyingRound(tank, depth);
    case 'lying-elliptical':
      return rectangle(tank.length, (tank.width / tank.height) * chord(tank.height, depth));
    case 'box': {
      const sump = tank.sump;
      if (!sump || depth > sump.depth) return rectangle(tank.length, tank.width);
      const k = depth / sump.depth;
      return rectangle(
        sump.bottomLength + (sump.topLength - sump.bottomLength) * k,
        sump.bottomWidth + (sump.topWidth - sump.bottomWidth) * k,
      );
    }
    case 'upright-round': {
      const { diameter, height, coneHeight = 0, outletDiameter = 0, domeHeight = 0 } = tank;
      const radius = diameter / 2;
      if (depth < coneHeight) {
        const r0 = outletDiameter / 2;
        return disc(r0 + ((radius - r0) * depth) / coneHeight);
      }
      const inDome = depth - coneHeight - height;
      return disc(inDome > 0 ? radius * Math.sqrt(Math.max(0, 1 - (inDome / domeHeight) ** 2)) : radius);
    }
  }
}

function chord(diameter: number, depth: number): number {
  return 2 * Math.sqrt(Math.max(0, depth * (diameter - depth)));
}

function lyingRound(tank: Extract<TankForm, { form: 'lying-round' }>, depth: number): SurfaceMoments {
  const sum = rectangle(tank.length, chord(tank.diameter, depth));
  const e = endDepth(tank);
  if (e === 0) return sum;
  const radius = tank.diameter / 2;
  const dished = tank.ends === 'dished';
  const sphere = (radius * radius + e * e) / (2 * e);
  const off = depth - radius;
  const steps = 32;
  // How far the surface reaches into the end, so that the slices cover just the wet part.
  const reach = dished
    ? Math.sqrt(Math.max(0, sphere * sphere - off * off)) - (sphere - e)
    : e * Math.sqrt(Math.max(0, 1 - (off / radius) ** 2));
  for (let i = 0; i < steps; i++)
    for (let k = 0; k < 4; k++) {
      const u = (i + (1 + GAUSS_X[k]!) / 2) / steps;
      const into = reach * (1 - u * u);
      const r2 = dished
        ? sphere * sphere - (sphere - e + into) ** 2
        : radius * radius * (1 - (into / e) ** 2);
      const c = 2 * Math.sqrt(Math.max(0, r2 - off * off));
      const w = (2 * reach * u * GAUSS_W[k]!) / 2 / steps;
      const x = tank.length / 2 + into;
      sum.area += 2 * w * c;
      sum.roll += (2 * w * c ** 3) / 12;
      sum.pitch += 2 * w * c * x * x;
    }
  return sum;
}
