import { inRange, listInRange, sameLength } from '../physics/index.ts';

/**
 * Density of a mixture whose volumes add up.
 *
 * @formula 1/ρ = Σ w_i / ρ_i
 * @param massFractions share of each component by mass; they must add up to 1 [list of -] 0..1
 * @param densities density of each component [list of kg/m3] 100..10000
 * @returns density [kg/m3]
 * @valid suspensions and dilutions without a model of their own; salt solutions shrink by up to a few per cent when mixed
 * @throws RangeError when a parameter is outside its range or the fractions do not add up
 * @source Conservation of mass and volume
 */
export function idealMixDensity(massFractions: readonly number[], densities: readonly number[]): number {
  listInRange('massFractions', massFractions, 0, 1);
  listInRange('densities', densities, 100, 10000, 'kg/m3');
  sameLength('massFractions', massFractions, 'densities', densities);
  const whole = massFractions.reduce((sum, w) => sum + w, 0);
  if (Math.abs(whole - 1) > 1e-6)
    throw new RangeError(`massFractions add up to ${whole}; they must add up to 1`);
  return 1 / massFractions.reduce((sum, w, i) => sum + w / (densities[i] ?? NaN), 0);
}

/**
 * Viscosity of a blend that has no model: an estimate.
 *
 * @formula ln μ = Σ w_i ln μ_i
 * @param massFractions share of each component by mass; they must add up to 1 [list of -] 0..1
 * @param viscosities dynamic viscosity of each component [list of Pa.s] 1e-5..100
 * @returns dynamic viscosity [Pa.s]
 * @valid an estimate only: show it as one
 * @throws RangeError when a parameter is outside its range or the fractions do not add up
 * @source Arrhenius mixing rule, from memory; the form of Laliberté's model
 */
export function blendViscosity(massFractions: readonly number[], viscosities: readonly number[]): number {
  listInRange('massFractions', massFractions, 0, 1);
  listInRange('viscosities', viscosities, 1e-5, 100, 'Pa.s');
  sameLength('massFractions', massFractions, 'viscosities', viscosities);
  const whole = massFractions.reduce((sum, w) => sum + w, 0);
  if (Math.abs(whole - 1) > 1e-6)
    throw new RangeError(`massFractions add up to ${whole}; they must add up to 1`);
  return Math.exp(massFractions.reduce((sum, w, i) => sum + w * Math.log(viscosities[i] ?? NaN), 0));
}

/**
 * Viscosity of a thin suspension or emulsion.
 *
 * @formula μ = μ_0 (1 + 2.5 φ)
 * @param viscosity viscosity of the carrier [Pa.s] 1e-5..100
 * @param volumeFraction share of particles or drops by volume [-] 0..0.05
 * @returns dynamic viscosity [Pa.s]
 * @valid spheres far apart; above 5 % by volume it refuses
 * @throws RangeError when a parameter is outside its range
 * @source Einstein A., Ann. Phys. 1906, corrected 1911, from memory
 */
export function dispersionViscosityEinstein(viscosity: number, volumeFraction: number): number {
  inRange('viscosity', viscosity, 1e-5, 100, 'Pa.s');
  inRange('volumeFraction', volumeFraction, 0, 0.05);
  return viscosity * (1 + 2.5 * volumeFraction);
}

/**
 * Density of a product from what its label says.
 *
 * @formula ρ = c / w
 * @param massConcentration active substance in a volume [kg/m3] 0..3000
 * @param massFraction active substance by mass [-] 0.001..1
 * @returns density [kg/m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; a registered herbicide label states both
 */
export function densityFromLabel(massConcentration: number, massFraction: number): number {
  inRange('massConcentration', massConcentration, 0, 3000, 'kg/m3');
  inRange('massFraction', massFraction, 0.001, 1);
  return massConcentration / massFraction;
}
