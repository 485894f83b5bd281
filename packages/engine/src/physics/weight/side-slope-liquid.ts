import { inRange } from '../in-range.ts';
import { unitSegment } from './circle-segment.ts';
import { wholeInRange } from '../whole-in-range.ts';

/**
 * Shift of the liquid in a box tank that stands across a slope.
 *
 * @formula h ≥ (b/2) tan t: shift b² tan t/(12h), height h/2 + b² tan² t/(24h); else a triangle of base w = √(2bh/tan t): w/3 from the low wall, (w tan t)/3 up
 * @param width inside width of the tank across the slope [m] 0.01..20
 * @param depth depth of the liquid when level [m] 0.001..20
 * @param slope angle of the side slope [rad] 0..1.2
 * @param tankHeight inside height of the tank; the lid must stay dry; default unlimited [m] 0.01..
 * @result lateralShift centroid toward the low wall [m]
 * @result centroidHeight centroid above the floor, in the tank's frame [m]
 * @result floorWet whether the whole floor is wet [yes/no]
 * @valid only while the lid stays dry: use tankTilted beyond
 * @throws RangeError when a parameter is outside its range or the surface meets the lid
 * @source Exact geometry of wedge and triangle, checked by quadrature
 */
export function boxLiquidOnSideSlope(
  width: number,
  depth: number,
  slope: number,
  tankHeight = Infinity,
): BoxLiquidOnSideSlope {
  inRange('width', width, 0.01, 20, 'm');
  inRange('depth', depth, 0.001, 20, 'm');
  inRange('slope', slope, 0, 1.2, 'rad');
  inRange('tankHeight', tankHeight, 0.01, Infinity, 'm');
  const t = Math.tan(slope);
  const floorWet = depth >= (width / 2) * t;
  const base = floorWet ? width : Math.sqrt((2 * width * depth) / t);
  const highest = floorWet ? depth + (width / 2) * t : base * t;
  if (highest > tankHeight)
    throw new RangeError(
      `depth is ${depth} m; the surface at the low wall, ${highest} m, must be at most tankHeight ${tankHeight} m`,
    );
  return floorWet
    ? {
        lateralShift: (width * width * t) / (12 * depth),
        centroidHeight: depth / 2 + (width * width * t * t) / (24 * depth),
        floorWet,
      }
    : { lateralShift: width / 2 - base / 3, centroidHeight: (base * t) / 3, floorWet };
}

export interface BoxLiquidOnSideSlope {
  readonly lateralShift: number;
  readonly centroidHeight: number;
  readonly floorWet: boolean;
}

/**
 * Shift of the liquid in a lying round tank that is rolled about its axis.
 *
 * @formula d = (2/3)s³/A below the axis, always straight down; in the tank's frame sideways d sin t; rise for small angles d
 * @param diameter inside diameter [m] 0.01..20
 * @param depth depth of liquid when level [m] 0.001..20
 * @param slope angle of the side slope [rad] 0..1.5
 * @result centroidBelowAxis centroid under the axis [m]
 * @result lateralShift sideways shift in the tank's frame [m]
 * @result virtualRise rise of the liquid in roll: it acts at the axis [m]
 * @valid exact at any angle and fill; the depth may not exceed the diameter
 * @throws RangeError when a parameter is outside its range
 * @source Symmetry; identity (c³/12)/A = d, checked numerically
 */
export function roundLiquidOnSideSlope(
  diameter: number,
  depth: number,
  slope: number,
): RoundLiquidOnSideSlope {
  inRange('diameter', diameter, 0.01, 20, 'm');
  inRange('depth', depth, 0.001, diameter, 'm');
  inRange('slope', slope, 0, 1.5, 'rad');
  const radius = diameter / 2;
  const { area, moment } = unitSegment(depth / radius);
  const below = (-moment / area) * radius;
  return { centroidBelowAxis: below, lateralShift: below * Math.sin(slope), virtualRise: below };
}

export interface RoundLiquidOnSideSlope {
  readonly centroidBelowAxis: number;
  readonly lateralShift: number;
  readonly virtualRise: number;
}

/**
 * Virtual rise of the liquid in a box tank with fore-aft partitions.
 *
 * @formula rise = b²/(12 h n²)
 * @param width inside width across the rig [m] 0.01..20
 * @param depth depth of liquid [m] 0.001..20
 * @param compartments equal compartments side by side [-] 1..20
 * @returns rise of the liquid's centroid in roll [m]
 * @valid small angles; partitions across the tank do nothing in roll. For the whole rig multiply by liquid mass over total mass
 * @throws RangeError when a parameter is outside its range
 * @source Ship stability text, p. 203-207; US Navy training manual 14057
 */
export function boxFreeSurfaceRise(width: number, depth: number, compartments = 1): number {
  inRange('width', width, 0.01, 20, 'm');
  inRange('depth', depth, 0.001, 20, 'm');
  wholeInRange('compartments', compartments, 1, 20);
  return (width * width) / (12 * depth * compartments * compartments);
}

/**
 * Liquid that stays in a flat-floor tank on a slope, below its outlet.
 *
 * @formula V = w l² tan t / 2
 * @param floorDownhill length of floor downhill of the outlet [m] 0..20
 * @param width width of the floor [m] 0.01..20
 * @param slope slope along the floor [rad] 0..1.2
 * @returns volume that cannot be drawn [m3]
 * @valid flat floor, no sump, lid dry: use tankUnusable otherwise
 * @throws RangeError when a parameter is outside its range
 * @source Wedge geometry
 */
export function unusableOnFlatFloor(floorDownhill: number, width: number, slope: number): number {
  inRange('floorDownhill', floorDownhill, 0, 20, 'm');
  inRange('width', width, 0.01, 20, 'm');
  inRange('slope', slope, 0, 1.2, 'rad');
  return (width * floorDownhill * floorDownhill * Math.tan(slope)) / 2;
}
