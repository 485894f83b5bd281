export type { PlacedPart, MassPoint } from './placed-part.ts';
export { massPoint, together } from './placed-part.ts';
export { piecesOf, rinseWaterAboard } from './hosts.ts';
export { arrangements, leastDeckLength } from './arrange.ts';
export { boxesOf } from './blocks.ts';
export { deckLoad, placeParts, withFittings } from './place.ts';
export { axleMiddle, carrierMasses, hitchPlace, standingOf } from './carrier-frame.ts';
export { tankLiquid, unusableLiquid } from './tank-liquid.ts';
export * from './loads.ts';
