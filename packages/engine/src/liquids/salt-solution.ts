import { inRange, oneOfChoices, waterDensity, waterViscosity } from '../physics/index.ts';
import { SALTS, type Salt, type SaltCoefficients } from './salt-solution.data.ts';

const SALT_NAMES = Object.keys(SALTS);

/**
 * Density of a salt dissolved in water.
 *
 * @formula ρ_app = (c0 w + c1) exp(1e-6 (t + c4)²) / (w + c2 + c3 t); 1/ρ = (1 - w)/ρ_w + w/ρ_app
 * @param salt what is dissolved [one of CaCl2, MgCl2, NaCl, NaOH, CuSO4, ammonium sulfate]
 * @param massFraction salt in the solution by mass [-] 0..0.51
 * @param temperatureC temperature [degC] 0..60
 * @returns density [kg/m3]
 * @valid mass fraction to 0.51 CaCl2, 0.32 MgCl2, 0.26 NaCl, 0.50 NaOH, 0.28 CuSO4, 0.42 ammonium sulfate; from 4 degC NaOH, 10 degC CuSO4, 15 degC ammonium sulfate; outside it refuses. CaCl2 below 15 degC lies outside the fitted data and was compared with the Melinder fit: within 0.3 %. 50 % NaOH reads 0.6 % low
 * @throws RangeError when a parameter is outside its range
 * @source Laliberté M., J. Chem. Eng. Data 54(6):1725-1760, 2009 (coefficients and ranges read in an open library's data file)
 */
export function saltSolutionDensity(salt: Salt, massFraction: number, temperatureC: number): number {
  const { density, maxFraction, densityRange } = coefficientsOf(salt);
  inRange(`massFraction of ${salt}`, massFraction, 0, maxFraction);
  inRange(`temperatureC of the density of ${salt} solution`, temperatureC, ...densityRange, 'degC');
  const water = waterDensity(temperatureC);
  if (massFraction === 0) return water;
  const [c0, c1, c2, c3, c4] = density;
  const apparent =
    ((c0 * massFraction + c1) * Math.exp(1e-6 * (temperatureC + c4) ** 2)) /
    (massFraction + c2 + c3 * temperatureC);
  return 1 / ((1 - massFraction) / water + massFraction / apparent);
}

/**
 * Viscosity of a salt dissolved in water.
 *
 * @formula μ_app = exp((v1 w^v2 + v3)/(v4 t + 1)) / (v5 w^v6 + 1) mPa s; ln μ = (1 - w) ln μ_w + w ln μ_app
 * @param salt what is dissolved [one of CaCl2, MgCl2, NaCl, NaOH, CuSO4, ammonium sulfate]
 * @param massFraction salt in the solution by mass [-] 0..0.51
 * @param temperatureC temperature [degC] 0..60
 * @returns dynamic viscosity [Pa.s]
 * @valid mass fraction as for the density; from 5 degC NaCl, 10 degC CuSO4, 12.5 degC NaOH, 15 degC ammonium sulfate; outside it refuses. Within 11 % of the Melinder fit for CaCl2, 20 % for MgCl2 (below 15 degC outside the fitted data)
 * @throws RangeError when a parameter is outside its range
 * @source Laliberté M., J. Chem. Eng. Data 54(6):1725-1760, 2009 (equation, coefficients and ranges read in an open library); water by IAPWS
 */
export function saltSolutionViscosity(salt: Salt, massFraction: number, temperatureC: number): number {
  const { viscosity, maxFraction, viscosityRange } = coefficientsOf(salt);
  inRange(`massFraction of ${salt}`, massFraction, 0, maxFraction);
  inRange(`temperatureC of the viscosity of ${salt} solution`, temperatureC, ...viscosityRange, 'degC');
  const water = waterViscosity(temperatureC);
  if (massFraction === 0) return water;
  const [v1, v2, v3, v4, v5, v6] = viscosity;
  const apparent =
    (1e-3 * Math.exp((v1 * massFraction ** v2 + v3) / (v4 * temperatureC + 1))) /
    (v5 * massFraction ** v6 + 1);
  return Math.exp((1 - massFraction) * Math.log(water) + massFraction * Math.log(apparent));
}

/** Coefficients and ranges of a salt. */
function coefficientsOf(salt: Salt): SaltCoefficients {
  oneOfChoices('salt', salt, SALT_NAMES);
  return SALTS[salt];
}
