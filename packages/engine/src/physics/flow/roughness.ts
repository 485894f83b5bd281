import { oneOfChoices } from '../lists-in-range.ts';
import { ROUGHNESS, type SurfaceRoughness } from './roughness.data.ts';

export { ROUGHNESS_ORIGIN, type SurfaceRoughness } from './roughness.data.ts';

export type WallSurface = keyof typeof ROUGHNESS;

/**
 * Absolute roughness of an inside wall.
 *
 * @formula table
 * @param surface inside wall [one of plastic, rubber, brass-or-copper-new, stainless-steel, steel-new, steel-galvanised]
 * @result low lowest listed [m]
 * @result typical customary value [m]
 * @result high highest listed [m]
 * @valid new, clean walls; the bore matters far more: 3 % less bore costs 17 % more loss
 * @throws RangeError when the surface is not in the table
 * @source Absolute roughness tables of four engineering pages (seen); see ROUGHNESS_ORIGIN
 */
export function wallRoughness(surface: WallSurface): SurfaceRoughness {
  oneOfChoices('surface', surface, Object.keys(ROUGHNESS));
  return ROUGHNESS[surface];
}
