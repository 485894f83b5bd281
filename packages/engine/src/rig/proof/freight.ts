import { freightClass, freightDensity } from '../../physics/index.ts';
import type { Placement } from './placement-data.ts';

/** A rig as a piece of freight, as it stands, without crate or pallet: an estimate. Lengths in m. */
export interface FreightEstimate {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** [kg] */
  readonly mass: number;
  /** [kg/m3] */
  readonly density: number;
  /** Class that the density alone suggests on the 13-level scale; item, handling and carrier rules can override it. */
  readonly freightClass: number;
}

/**
 * Outermost sizes of the placed parts and of the carrier with drawbar, hitch and wheels; undefined when they lie outside
 * what freight is reckoned for.
 */
export function freightOf(placement: Placement, dryMass: number): FreightEstimate | undefined {
  const { carrier, parts } = placement;
  const { size } = carrier;
  const own = Math.max(size.length, carrier.deckLength);
  const boxes = [
    ...parts
      .filter((p) => p.on === undefined)
      .map((p) => ({ x: p.x, y: p.y, length: p.length, width: p.width, top: p.z + p.height })),
    {
      // What a carrier is longer than its deck stands ahead of it: the drawbar, the hitch of a tractor.
      x: carrier.deckLength - own / 2,
      y: 0,
      length: own,
      width: Math.max(size.width, carrier.deckWidth),
      top: Math.max(size.height, carrier.deckHeight),
    },
  ];
  const extent = (low: (b: (typeof boxes)[number]) => number, high: (b: (typeof boxes)[number]) => number) =>
    Math.max(...boxes.map(high)) - Math.min(...boxes.map(low));
  const length = extent(
    (b) => b.x - b.length / 2,
    (b) => b.x + b.length / 2,
  );
  const width = extent(
    (b) => b.y - b.width / 2,
    (b) => b.y + b.width / 2,
  );
  const height = Math.max(...boxes.map((b) => b.top));
  try {
    const { density } = freightDensity(length, width, height, dryMass);
    return { length, width, height, mass: dryMass, density, freightClass: freightClass(density, '13-level') };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
