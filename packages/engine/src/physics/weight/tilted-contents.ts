import { unitSegment } from './circle-segment.ts';
import { clippedRectangle } from './clipped-rectangle.ts';
import { GAUSS_W, GAUSS_X, type Contents } from './tank-contents.ts';
import { endDepth, type TankForm } from './tank-form.ts';

/** Liquid surface: the points with x gx + y gy + z = c; the liquid is below it. */
export interface TiltedSurface {
  readonly gx: number;
  readonly gy: number;
  readonly c: number;
}

/** Contents of a tank below a tilted surface, clipped at the tank's lid and floor, by slices. */
export function contentsBelow(tank: TankForm, surface: TiltedSurface): Contents {
  switch (tank.form) {
    case 'lying-round':
      return lyingRoundBelow(tank, surface);
    case 'lying-elliptical': {
      const sum = nothing();
      addEllipseBar(sum, tank.width / 2, tank.height / 2, tank.length, surface);
      return sum;
    }
    case 'box':
      return boxBelow(tank, surface);
    case 'upright-round':
      return uprightBelow(tank, surface);
  }
}

function nothing(): Contents {
  return { volume: 0, momentX: 0, momentY: 0, momentZ: 0 };
}

/** Adds weight times the slice of an ellipse (half axes a, b, middle at height zc) across the tank at x. */
function addEllipseSlice(
  sum: Contents,
  weight: number,
  x: number,
  a: number,
  b: number,
  zc: number,
  s: TiltedSurface,
): void {
  const ny = s.gy * a;
  const norm = Math.sqrt(ny * ny + b * b);
  if (norm === 0) return;
  const segment = unitSegment((s.c - s.gx * x - zc) / norm + 1);
  const area = weight * a * b;
  const v = area * segment.area;
  const m = (area * segment.moment) / norm;
  sum.volume += v;
  sum.momentX += v * x;
  sum.momentY += m * ny * a;
  sum.momentZ += v * zc + m * b * b;
}

/** Straight part of a lying tank. Pieces end where the surface meets the top or the bottom line, so each is smooth. */
function addEllipseBar(sum: Contents, a: number, b: number, length: number, s: TiltedSurface): void {
  const reach = Math.sqrt(s.gy * a * (s.gy * a) + b * b);
  const cuts = s.gx === 0 ? [] : [(s.c - b - reach) / s.gx, (s.c - b + reach) / s.gx];
  integrate(-length / 2, length / 2, cuts, s.gx === 0 ? 1 : 8, (x, w) =>
    addEllipseSlice(sum, w, x, a, b, b, s),
  );
}

function lyingRoundBelow(tank: Extract<TankForm, { form: 'lying-round' }>, s: TiltedSurface): Contents {
  const sum = nothing();
  const radius = tank.diameter / 2;
  const half = tank.length / 2;
  const e = endDepth(tank);
  addEllipseBar(sum, radius, radius, tank.length, s);
  if (e === 0) return sum;
  const dished = tank.ends === 'dished';
  const sphere = (radius * radius + e * e) / (2 * e);
  // u runs from crown to rim; squaring it removes the square root of the slice radius at the crown.
  integrate(0, 1, [], 12, (u, w) => {
    const fromCrown = e * u * u;
    const t = 1 - fromCrown / e;
    const r = dished
      ? Math.sqrt(fromCrown * (2 * sphere - fromCrown))
      : radius * Math.sqrt((1 - t) * (1 + t));
    const x = half + e - fromCrown;
    const weight = w * 2 * e * u;
    addEllipseSlice(sum, weight, x, r, r, radius, s);
    addEllipseSlice(sum, weight, -x, r, r, radius, s);
  });
  return sum;
}

function boxBelow(tank: Extract<TankForm, { form: 'box' }>, s: TiltedSurface): Contents {
  const sum = nothing();
  const z0 = tank.sump?.depth ?? 0;
  const side = (Math.abs(s.gy) * tank.width) / 2;
  const levels = [z0 - side, z0 + side, z0 + tank.height - side, z0 + tank.height + side];
  const cuts = s.gx === 0 ? [] : levels.map((level) => (s.c - level) / s.gx);
  integrate(-tank.length / 2, tank.length / 2, cuts, 1, (x, w) => {
    addBoxSlice(sum, w, x, tank.width, tank.height, z0, s.c - s.gx * x - z0, s.gy);
  });
  const sump = tank.sump;
  if (!sump) return sum;
  const atSump = s.c - s.gx * (sump.x ?? 0) - s.gy * (sump.y ?? 0);
  const across = (Math.abs(s.gx) * sump.topLength + Math.abs(s.gy) * sump.topWidth) / 2;
  integrate(0, sump.depth, [atSump - across, atSump, atSump + across], 8, (z, w) => {
    const k = z / sump.depth;
    const l = sump.bottomLength + (sump.topLength - sump.bottomLength) * k;
    const b = sump.bottomWidth + (sump.topWidth - sump.bottomWidth) * k;
    const cx = sump.x ?? 0;
    const cy = sump.y ?? 0;
    const cut = clippedRectangle(l, b, s.gx, s.gy, s.c - z - s.gx * cx - s.gy * cy);
    sum.volume += w * cut.area;
    sum.momentX += w * (cut.momentX + cut.area * cx);
    sum.momentY += w * (cut.momentY + cut.area * cy);
    sum.momentZ += w * cut.area * z;
  });
  return sum;
}

/** Slice of a box across x: columns over y of height k - gy y between floor and lid; the rule is exact on each piece. */
function addBoxSlice(
  sum: Contents,
  weight: number,
  x: number,
  width: number,
  height: number,
  z0: number,
  k: number,
  gy: number,
): void {
  const cuts = gy === 0 ? [] : [k / gy, (k - height) / gy];
  integrate(-width / 2, width / 2, cuts, 1, (y, w) => {
    const h = Math.min(Math.max(k - gy * y, 0), height);
    const v = weight * w * h;
    sum.volume += v;
    sum.momentX += v * x;
    sum.momentY += v * y;
    sum.momentZ += v * (z0 + h / 2);
  });
}

function uprightBelow(tank: Extract<TankForm, { form: 'upright-round' }>, s: TiltedSurface): Contents {
  const sum = nothing();
  const { height, coneHeight = 0, outletDiameter = 0, domeHeight = 0 } = tank;
  const radius = tank.diameter / 2;
  const r0 = outletDiameter / 2;
  const g = Math.sqrt(s.gx * s.gx + s.gy * s.gy);
  const cuts = [s.c, s.c - g * radius, s.c + g * radius];
  const slice = (z: number, w: number, r: number): void => {
    const gr = g * r;
    const depth = s.c - z;
    // A level surface either covers a level slice or leaves it dry.
    const segment = unitSegment(gr > 0 ? depth / gr + 1 : depth >= 0 ? 2 : 0);
    const v = w * r * r * segment.area;
    sum.volume += v;
    sum.momentZ += v * z;
    if (g === 0) return;
    const m = (w * r * r * r * segment.moment) / g;
    sum.momentX += m * s.gx;
    sum.momentY += m * s.gy;
  };
  const top = coneHeight + height;
  integrate(0, coneHeight, cuts, 8, (z, w) => slice(z, w, r0 + ((radius - r0) * z) / coneHeight));
  integrate(coneHeight, top, cuts, 8, (z, w) => slice(z, w, radius));
  integrate(top, top + domeHeight, cuts, 8, (z, w) => {
    const k = (z - top) / domeHeight;
    slice(z, w, radius * Math.sqrt(1 - k * k));
  });
  return sum;
}

/** Composite four-point Gauss rule over pieces that end at the given cuts. */
function integrate(
  from: number,
  to: number,
  cuts: readonly number[],
  panels: number,
  add: (x: number, weight: number) => void,
): void {
  if (to <= from) return;
  const ends = cuts.filter((c) => c > from && c < to).sort((p, q) => p - q);
  let start = from;
  for (let piece = 0; piece <= ends.length; piece++) {
    const end = ends[piece] ?? to;
    const step = (end - start) / panels;
    for (let i = 0; i < panels; i++) {
      const middle = start + (i + 0.5) * step;
      for (let k = 0; k < 4; k++) add(middle + (GAUSS_X[k]! * step) / 2, (GAUSS_W[k]! * step) / 2);
    }
    start = end;
  }
}
