import type { PartOf } from '../catalogue/index.ts';

/**
 * Outer diameter of the pack when a length of hose is wound on a drum: the turns fill the drum's width in layers,
 * each hose taking a square of its outside diameter.
 */
export function packDiameter(reel: PartOf<'reel'>, hose: PartOf<'hose'>, wound: number): number {
  return Math.sqrt(
    reel.hubDiameter ** 2 + (4 * wound * hose.outsideDiameter ** 2) / (Math.PI * reel.drumWidth),
  );
}

/** Centreline diameter of the middle turn of the wound hose: what the coil's friction is reckoned with [m]. */
export function meanCoilDiameter(reel: PartOf<'reel'>, hose: PartOf<'hose'>, wound: number): number {
  return (reel.hubDiameter + packDiameter(reel, hose, wound)) / 2;
}

/** Length of hose that fills the reel to its flange [m]. */
export function reelCapacity(reel: PartOf<'reel'>, hose: PartOf<'hose'>): number {
  return (
    ((reel.flangeDiameter ** 2 - reel.hubDiameter ** 2) * Math.PI * reel.drumWidth) /
    (4 * hose.outsideDiameter ** 2)
  );
}
