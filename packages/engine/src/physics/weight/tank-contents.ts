import { unitSegment } from './circle-segment.ts';
import type { TankForm, TaperedSump } from './tank-form.ts';
import { endDepth } from './tank-form.ts';

/** Volume, and first moment of the volume about the plane z = 0 and (for an eccentric sump) about x = 0 and y = 0. */
export interface Contents {
  volume: number;
  momentX: number;
  momentY: number;
  momentZ: number;
}

/** Exact contents of a level tank filled to a depth above its lowest point. */
export function contentsAtDepth(tank: TankForm, depth: number): Contents {
  switch (tank.form) {
    case 'lying-round':
      return lyingRound(tank.diameter, tank.length, endDepth(tank), tank.ends, depth);
    case 'lying-elliptical':
      return lyingPrism(tank.width, tank.height, tank.length, depth);
    case 'box':
      return box(tank, depth);
    case 'upright-round':
      return uprightRound(tank, depth);
  }
}

function centred(volume: number, momentZ: number): Contents {
  return { volume, momentX: 0, momentY: 0, momentZ };
}

function lyingPrism(width: number, height: number, length: number, depth: number): Contents {
  const a = width / 2;
  const b = height / 2;
  const s = unitSegment(depth / b);
  const volume = length * a * b * s.area;
  return centred(volume, volume * b + length * a * b * b * s.moment);
}

function lyingRound(diameter: number, length: number, e: number, ends: string, depth: number): Contents {
  const shell = lyingPrism(diameter, diameter, length, depth);
  if (e === 0) return shell;
  const heads =
    ends === 'dished' ? dishedHeads(diameter / 2, e, depth) : ellipsoidHeads(diameter / 2, e, depth);
  return centred(shell.volume + heads.volume, shell.momentZ + heads.momentZ);
}

/** Two half ellipsoids of depth e: together one ellipsoid, a sphere stretched by e/R. */
function ellipsoidHeads(radius: number, e: number, depth: number): Contents {
  const volume = (Math.PI * e * depth * depth * (3 * radius - depth)) / (3 * radius);
  const rim = depth * (2 * radius - depth);
  const momentAboutAxis = -(Math.PI / 4) * rim * rim * (e / radius);
  return centred(volume, volume * radius + momentAboutAxis);
}

/**
 * Two spherical caps on their sides. The closed form is long and loses digits in a shallow dish; each slice across the axis
 * is a circle segment, and their sum is within 1e-6 of the ends' whole volume at any depth.
 */
function dishedHeads(radius: number, e: number, depth: number): Contents {
  const sphere = (radius * radius + e * e) / (2 * e);
  const steps = 32;
  let volume = 0;
  let momentZ = 0;
  for (let i = 0; i < steps; i++) {
    for (let k = 0; k < 4; k++) {
      const u = (i + (1 + GAUSS_X[k]!) / 2) / steps;
      // x runs from the crown (0) to the rim (e); x = e u^2 makes the slice radius smooth in u.
      const x = e * u * u;
      const r = Math.sqrt(x * (2 * sphere - x));
      const weight = (2 * e * u * (GAUSS_W[k]! / 2)) / steps;
      const s = unitSegment((depth - radius) / r + 1);
      volume += weight * r * r * s.area;
      momentZ += weight * (r * r * s.area * radius + r * r * r * s.moment);
    }
  }
  return centred(2 * volume, 2 * momentZ);
}

/** Nodes and weights of the four-point Gauss rule on -1..1. */
export const GAUSS_X = [
  -0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526,
] as const;
export const GAUSS_W = [
  0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538,
] as const;

function box(tank: Extract<TankForm, { form: 'box' }>, depth: number): Contents {
  const sump = tank.sump;
  const sumpDepth = sump?.depth ?? 0;
  const below = sump ? taperedSump(sump, Math.min(depth, sumpDepth)) : centred(0, 0);
  const h = Math.max(0, depth - sumpDepth);
  const above = tank.length * tank.width * h;
  return {
    volume: below.volume + above,
    momentX: below.momentX,
    momentY: below.momentY,
    momentZ: below.momentZ + above * (sumpDepth + h / 2),
  };
}

/** Prismatoid: both sides taper linearly, each at its own rate, so the similar-frustum formula does not hold. */
function taperedSump(sump: TaperedSump, h: number): Contents {
  const sideAt = (bottom: number, top: number): number => bottom + ((top - bottom) * h) / sump.depth;
  const l0 = sump.bottomLength;
  const w0 = sump.bottomWidth;
  const l1 = sideAt(l0, sump.topLength);
  const w1 = sideAt(w0, sump.topWidth);
  const volume = (h / 6) * (2 * l0 * w0 + 2 * l1 * w1 + l0 * w1 + w0 * l1);
  const momentZ = ((h * h) / 12) * (l0 * w0 + 3 * l1 * w1 + l0 * w1 + w0 * l1);
  return { volume, momentX: volume * (sump.x ?? 0), momentY: volume * (sump.y ?? 0), momentZ };
}

function uprightRound(tank: Extract<TankForm, { form: 'upright-round' }>, depth: number): Contents {
  const { diameter, height, coneHeight = 0, outletDiameter = 0, domeHeight = 0 } = tank;
  const radius = diameter / 2;
  const r0 = outletDiameter / 2;
  let volume = 0;
  let momentZ = 0;
  if (coneHeight > 0) {
    const h = Math.min(depth, coneHeight);
    const r1 = r0 + ((radius - r0) * h) / coneHeight;
    volume += ((Math.PI * h) / 3) * (r0 * r0 + r0 * r1 + r1 * r1);
    momentZ += ((Math.PI * h * h) / 12) * (r0 * r0 + 2 * r0 * r1 + 3 * r1 * r1);
  }
  const shell = Math.PI * radius * radius * Math.min(Math.max(depth - coneHeight, 0), height);
  volume += shell;
  momentZ += shell * (coneHeight + Math.min(Math.max(depth - coneHeight, 0), height) / 2);
  const inDome = Math.min(Math.max(depth - coneHeight - height, 0), domeHeight);
  if (inDome > 0) {
    const k = inDome / domeHeight;
    const dome = Math.PI * radius * radius * inDome * (1 - (k * k) / 3);
    const aboutRim = Math.PI * radius * radius * inDome * inDome * (1 / 2 - (k * k) / 4);
    volume += dome;
    momentZ += dome * (coneHeight + height) + aboutRim;
  }
  return centred(volume, momentZ);
}
