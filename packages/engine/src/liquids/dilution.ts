import { inRange } from '../physics/index.ts';

/**
 * Stock to add to a tank that is too weak, for strengths in mass per volume.
 *
 * @formula V = v (C_want - c) / (C_stock - C_want)
 * @param volume volume in the tank [m3] 0..1000
 * @param strength strength in the tank [-] 0..1e6
 * @param wantedStrength strength wanted, in the same unit [-] 0..1e6
 * @param stockStrength strength of the stock, in the same unit [-] 0..1e6
 * @returns volume of stock to add [m3]
 * @throws RangeError when a parameter is outside its range, or the wanted strength does not lie between tank and stock
 * @source Conservation of mass, volumes adding up
 */
export function topUpVolume(
  volume: number,
  strength: number,
  wantedStrength: number,
  stockStrength: number,
): number {
  inRange('volume', volume, 0, 1000, 'm3');
  inRange('stockStrength', stockStrength, 0, 1e6);
  inRange('strength', strength, 0, 1e6);
  inRange('wantedStrength', wantedStrength, strength, stockStrength);
  if (wantedStrength === strength) return 0;
  if (wantedStrength === stockStrength)
    throw new RangeError(
      `wantedStrength is ${wantedStrength}, the strength of the stock itself: no addition reaches it`,
    );
  return (volume * (wantedStrength - strength)) / (stockStrength - wantedStrength);
}

/**
 * Water that brings a solution down to a strength, by weight.
 *
 * @formula m_water = m (w1 / w2 - 1)
 * @param mass mass of the solution [kg] 0..1e6
 * @param massFraction strength of the solution by mass [-] 0..1
 * @param wantedFraction strength wanted by mass [-] 1e-6..1
 * @returns mass of water [kg]
 * @valid for weight % and fertiliser grades; by volume the answer would be wrong: 100 gal of 32 % solution take 18.95 gal of water to 28 %, not 14.3
 * @throws RangeError when a parameter is outside its range or the solution is weaker than wanted
 * @source Conservation of mass
 */
export function waterMassForFraction(mass: number, massFraction: number, wantedFraction: number): number {
  inRange('mass', mass, 0, 1e6, 'kg');
  inRange('massFraction', massFraction, 0, 1);
  inRange('wantedFraction', wantedFraction, 1e-6, massFraction);
  return mass * (massFraction / wantedFraction - 1);
}

/**
 * Strength of two liquids poured together, by weight.
 *
 * @formula w = (m1 w1 + m2 w2) / (m1 + m2)
 * @param mass1 mass of the first [kg] 0..1e6
 * @param massFraction1 its strength by mass [-] 0..1
 * @param mass2 mass of the second [kg] 0..1e6
 * @param massFraction2 its strength by mass [-] 0..1
 * @returns strength of the mixture by mass [-]
 * @throws RangeError when a parameter is outside its range or there is nothing to mix
 * @source Conservation of mass
 */
export function mixedMassFraction(
  mass1: number,
  massFraction1: number,
  mass2: number,
  massFraction2: number,
): number {
  inRange('mass1', mass1, 0, 1e6, 'kg');
  inRange('massFraction1', massFraction1, 0, 1);
  inRange('mass2', mass2, 0, 1e6, 'kg');
  inRange('massFraction2', massFraction2, 0, 1);
  if (mass1 + mass2 === 0) throw new RangeError('mass1 and mass2 are both 0 kg; there is nothing to mix');
  return (mass1 * massFraction1 + mass2 * massFraction2) / (mass1 + mass2);
}

/**
 * Volume of a substance that holds a wanted mass of nutrient or active.
 *
 * @formula V = m / (ρ w)
 * @param mass mass wanted of nutrient or active [kg] 0..1e6
 * @param density density of the product [kg/m3] 100..5000
 * @param massFraction share of it in the product by mass [-] 1e-6..1
 * @returns volume of product [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; University of Nebraska-Lincoln, CropWatch 2016 (worked example)
 */
export function volumeForNutrient(mass: number, density: number, massFraction: number): number {
  inRange('mass', mass, 0, 1e6, 'kg');
  return mass / nutrientPerVolume(density, massFraction);
}

/**
 * Mass of nutrient or active in a volume of product.
 *
 * @formula c = ρ w
 * @param density density of the product [kg/m3] 100..5000
 * @param massFraction share of it in the product by mass [-] 1e-6..1
 * @returns mass per volume [kg/m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; University of Nebraska-Lincoln, CropWatch 2016 (worked example)
 */
export function nutrientPerVolume(density: number, massFraction: number): number {
  inRange('density', density, 100, 5000, 'kg/m3');
  inRange('massFraction', massFraction, 1e-6, 1);
  return density * massFraction;
}

/**
 * Concentrate for a mix that a label gives in per cent by volume.
 *
 * @formula V1 = φ V
 * @param volumeFraction share of concentrate by volume [-] 0..1
 * @param finalVolume volume of the finished mix [m3] 0..1000
 * @returns volume of concentrate [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; registered herbicide label
 */
export function concentrateVolume(volumeFraction: number, finalVolume: number): number {
  inRange('volumeFraction', volumeFraction, 0, 1);
  inRange('finalVolume', finalVolume, 0, 1000, 'm3');
  return volumeFraction * finalVolume;
}

/**
 * Product for a small dose in much water, its own volume not counted.
 *
 * @formula V1 = V d / C1
 * @param volume volume of water to be dosed [m3] 0..1e6
 * @param dose mass wanted in a volume [kg/m3] 0..1000
 * @param stockConcentration mass that a volume of product gives [kg/m3] 0.001..3000
 * @returns volume of product [m3]
 * @valid doses under a hundredth of the product's strength
 * @throws RangeError when a parameter is outside its range
 * @source Kansas Department of Health and Environment, disinfecting with household bleach (410 mg/L per fluid ounce in a gallon is 52.5 kg/m3)
 */
export function productVolumeForDose(volume: number, dose: number, stockConcentration: number): number {
  inRange('volume', volume, 0, 1e6, 'm3');
  inRange('dose', dose, 0, 1000, 'kg/m3');
  inRange('stockConcentration', stockConcentration, 0.001, 3000, 'kg/m3');
  return (volume * dose) / stockConcentration;
}
