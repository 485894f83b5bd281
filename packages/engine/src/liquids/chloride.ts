import { inRange, oneOfChoices } from '../physics/index.ts';

const CHLORINE = 35.453;
const MOLAR_MASS = { CaCl2: 110.98, MgCl2: 95.21 } as const;
/** Chloride above which crevices of a stainless steel corrode [kg/m3]; 304 at the cautious end of 100-200 mg/L. */
export const CREVICE_LIMITS = { ss304: 0.1, ss316: 1 } as const;

/**
 * Chloride in a brine.
 *
 * @formula c = ρ w × 2 × 35.453 / M
 * @param salt which salt [one of CaCl2, MgCl2]
 * @param density density of the brine [kg/m3] 900..1600
 * @param massFraction salt by mass [-] 0..0.51
 * @returns chloride [kg/m3]
 * @valid crevices of 304 are safe below 0.1-0.2 kg/m3, of 316 below 1 kg/m3
 * @throws RangeError when a parameter is outside its range
 * @source Molar masses; limits: Guidelines for selection of stainless steels, publ. 11003
 */
export function chlorideOfBrine(salt: 'CaCl2' | 'MgCl2', density: number, massFraction: number): number {
  oneOfChoices('salt', salt, Object.keys(MOLAR_MASS));
  inRange('density', density, 900, 1600, 'kg/m3');
  inRange('massFraction', massFraction, 0, 0.51);
  return (density * massFraction * 2 * CHLORINE) / MOLAR_MASS[salt];
}
