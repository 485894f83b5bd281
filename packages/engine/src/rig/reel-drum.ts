import type { PartOf } from '../catalogue/index.ts';
import { reelHoseLength, reelPackDiameter } from '../physics/index.ts';

/** Outer diameter of the pack when a length of hose is wound on the reel [m]. */
export function packDiameter(reel: PartOf<'reel'>, hose: PartOf<'hose'>, wound: number): number {
  return reelPackDiameter(reel.hubDiameter, reel.drumWidth, hose.outsideDiameter, wound);
}

/** Centreline diameter of the middle turn of the wound hose: what the coil's friction is reckoned with [m]. */
export function meanCoilDiameter(reel: PartOf<'reel'>, hose: PartOf<'hose'>, wound: number): number {
  return (reel.hubDiameter + packDiameter(reel, hose, wound)) / 2;
}

/** Length of hose that fills the reel to its flange [m]. */
export function reelCapacity(reel: PartOf<'reel'>, hose: PartOf<'hose'>): number {
  return reelHoseLength(reel.flangeDiameter, reel.hubDiameter, reel.drumWidth, hose.outsideDiameter);
}
