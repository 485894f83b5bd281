import type { PartOf } from '../../catalogue/index.ts';
import {
  tankCapacity,
  tankContents,
  tankFreeSurface,
  tankTilted,
  tankUnusable,
} from '../../physics/index.ts';
import { liquidDepth } from '../tank-level.ts';

type Tank = PartOf<'tank'>;

/** Where the liquid of a tank acts at one fill. */
export interface TankLiquid {
  readonly volume: number;
  /** Centroid when level, above the lowest point inside [m]. */
  readonly centroid: number;
  /**
   * Height at which it acts against rolling over on a slope: the axis of a lying round tank; else centroid and sideways
   * shift together, z + y / tan(slope), as they are on that slope [m].
   */
  readonly rollHeight: number;
}

const remembered = new WeakMap<Tank, Map<string, unknown>>();

/** Tilted liquid takes a root search over slices, and the same tank is asked again and again. */
function once<T>(tank: Tank, key: string, compute: () => T): T {
  let known = remembered.get(tank);
  if (known === undefined) remembered.set(tank, (known = new Map<string, unknown>()));
  let value = known.get(key) as T | undefined;
  if (value === undefined) known.set(key, (value = compute()));
  return value;
}

/** Volume of liquid at a share of the rated volume; never more than the inside holds. */
function liquidVolume(tank: Tank, share: number): number {
  return Math.min(
    share * tank.volume,
    once(tank, 'capacity', () => tankCapacity(tank.shape)),
  );
}

/** Centroid of the liquid when level and the height at which it acts on a side slope [rad]. */
export function tankLiquid(tank: Tank, share: number, slope: number): TankLiquid {
  return once(tank, `at ${share} on ${slope}`, () => {
    const volume = liquidVolume(tank, share);
    if (volume === 0) return { volume, centroid: 0, rollHeight: 0 };
    const depth = liquidDepth(tank, share);
    const centroid = tankContents(tank.shape, depth).centroidHeight;
    return { volume, centroid, rollHeight: rollHeight(tank, volume, depth, slope) };
  });
}

function rollHeight(tank: Tank, volume: number, depth: number, slope: number): number {
  // Nearly level the ratio of two small numbers loses its digits: the small-angle law serves there.
  if (tank.shape.form === 'lying-round' || slope < 0.02) return tankFreeSurface(tank.shape, depth).rollHeight;
  const { centroidY, centroidHeight } = tankTilted(tank.shape, volume, 0, slope);
  return centroidHeight + Math.abs(centroidY) / Math.tan(slope);
}

/** How far the liquid's centroid moves forward while braking, and how high it then stands above the lowest point [m]. */
export function surgeForward(
  tank: Tank,
  share: number,
  surfaceAngle: number,
): { forward: number; height: number } {
  return once(tank, `surge ${share} ${surfaceAngle}`, () => {
    const volume = liquidVolume(tank, share);
    if (volume === 0) return { forward: 0, height: 0 };
    const { centroidX, centroidHeight } = tankTilted(tank.shape, volume, -surfaceAngle, 0);
    return { forward: centroidX, height: centroidHeight };
  });
}

/** Liquid that lies below an outlet in the middle of the floor: uphill, downhill or across, whichever is most [m3]. */
export function unusableLiquid(tank: Tank, slope: number): number {
  return once(tank, `below ${slope}`, () =>
    Math.max(
      tankUnusable(tank.shape, 0, 0, 0, slope, 0),
      tankUnusable(tank.shape, 0, 0, 0, -slope, 0),
      tankUnusable(tank.shape, 0, 0, 0, 0, slope),
    ),
  );
}
