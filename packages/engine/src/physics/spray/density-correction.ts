import { tipDensityFactor } from '../flow/tip.ts';
import { inRange } from '../in-range.ts';

/** Density of the water that tips are rated with, the same as in the law of the tip [kg/m3]. */
export const RATING_WATER_DENSITY = 1000;

/**
 * Density of a liquid against that of the water which tips are rated with.
 *
 * @formula SG = rho / rho_w
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns specific gravity [-]
 * @valid Against 1000 kg/m3; water of 20 degC is 998.2, the trade's 8.34 lb/gal is 999.4.
 * @throws RangeError when a parameter is outside its range
 * @source Definition; UNL CropWatch 2016 Table 1 within 0.2 %.
 */
export function specificGravity(density: number): number {
  inRange('density', density, 500, 2500, 'kg/m3');
  return density / RATING_WATER_DENSITY;
}

/**
 * Rate on water to pick a tip for, so that the liquid comes out at the wanted rate.
 *
 * @formula q_w = q sqrt(SG)
 * @param dose dose of the liquid [m3/m2] 0..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns dose to look up in a water table [m3/m2]
 * @throws RangeError when a parameter is outside its range
 * @source UNL CropWatch 2016, Examples 1-2.
 */
export function waterDoseForLiquid(dose: number, density: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  return dose * tipDensityFactor(density);
}

/**
 * Flow of a liquid through an orifice whose water flow at that pressure is known.
 *
 * @formula Q = Q_w / sqrt(SG)
 * @param waterFlow flow of water at the same pressure [m3/s] 0..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns flow of the liquid [m3/s]
 * @throws RangeError when a parameter is outside its range
 * @source UNL CropWatch 2016, Examples 1-2.
 */
export function liquidFlowFromWater(waterFlow: number, density: number): number {
  inRange('waterFlow', waterFlow, 0, 1, 'm3/s');
  return waterFlow / tipDensityFactor(density);
}

/**
 * Mass laid on an area: the second place where density counts.
 *
 * @formula m = q rho
 * @param dose volume per area [m3/m2] 0..1
 * @param density density of the liquid [kg/m3] 500..2500
 * @returns mass per area [kg/m2]
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function massOfDose(dose: number, density: number): number {
  inRange('dose', dose, 0, 1, 'm3/m2');
  inRange('density', density, 500, 2500, 'kg/m3');
  return dose * density;
}
