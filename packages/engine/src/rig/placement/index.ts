export type { PlacedPart, MassPoint } from './placed-part.ts';
export { massPoint, together } from './placed-part.ts';
export { rinseWaterAboard } from './hosts.ts';
export { placeParts } from './place.ts';
export { axleMiddle, carrierMasses, hitchPlace, standingOf } from './carrier-frame.ts';
export { tankLiquid, unusableLiquid } from './tank-liquid.ts';
export * from './loads.ts';
