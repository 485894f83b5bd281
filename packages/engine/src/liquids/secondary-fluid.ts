import { inRange, oneOfChoices } from '../physics/index.ts';
import { SECONDARY_FLUIDS, type SecondaryFluid, type SecondaryFluidName } from './secondary-fluid.data.ts';

const CELSIUS_ZERO = 273.15;
const FLUID_NAMES = Object.keys(SECONDARY_FLUIDS);

/**
 * Temperature at which the first ice forms in a solution.
 *
 * @formula T = Σ a_j (w - w_b)^j
 * @param fluid what is dissolved [one of propylene glycol, CaCl2, MgCl2]
 * @param massFraction share of it by mass [-] 0..0.6
 * @returns freezing point [degC]
 * @valid to 0.60 propylene glycol, 0.298 CaCl2, 0.20 MgCl2: beyond the eutectic the salt comes out, not ice, and the curve must not be continued; it refuses. First ice, not the burst point
 * @throws RangeError when a parameter is outside its range
 * @source Melinder A., Properties of secondary working fluids for indirect systems, IIR 2010 (coefficients read in an open library)
 */
export function freezingPointMelinder(fluid: SecondaryFluidName, massFraction: number): number {
  const { freezing, baseFraction } = checked(fluid, massFraction);
  return polynomial(freezing, massFraction - baseFraction) - CELSIUS_ZERO;
}

/**
 * Density of an antifreeze or brine, also below 0 degC.
 *
 * @formula ρ = Σ_ij c_ij (t - t_b)^i (w - w_b)^j
 * @param fluid what is dissolved [one of propylene glycol, CaCl2, MgCl2]
 * @param massFraction share of it by mass [-] 0..0.6
 * @param temperatureC temperature, not below the freezing point [degC] -51..60
 * @returns density [kg/m3]
 * @valid fractions as for the freezing point; to 60 degC propylene glycol, 40 degC brines; outside it refuses
 * @throws RangeError when a parameter is outside its range
 * @source Melinder A., Properties of secondary working fluids for indirect systems, IIR 2010 (coefficients read in an open library)
 */
export function densityMelinder(
  fluid: SecondaryFluidName,
  massFraction: number,
  temperatureC: number,
): number {
  const spec = checked(fluid, massFraction);
  liquidRange(fluid, spec, massFraction, temperatureC);
  return surface(spec.density, temperatureC - spec.baseC, massFraction - spec.baseFraction);
}

/**
 * Viscosity of an antifreeze or brine, also below 0 degC.
 *
 * @formula ln(μ / mPa s) = Σ_ij c_ij (t - t_b)^i (w - w_b)^j
 * @param fluid what is dissolved [one of propylene glycol, CaCl2, MgCl2]
 * @param massFraction share of it by mass [-] 0..0.6
 * @param temperatureC temperature, not below the freezing point [degC] -51..60
 * @returns dynamic viscosity [Pa.s]
 * @valid fractions as for the freezing point; to 60 degC propylene glycol, 40 degC brines; outside it refuses
 * @throws RangeError when a parameter is outside its range
 * @source Melinder A., Properties of secondary working fluids for indirect systems, IIR 2010 (coefficients read in an open library)
 */
export function viscosityMelinder(
  fluid: SecondaryFluidName,
  massFraction: number,
  temperatureC: number,
): number {
  const spec = checked(fluid, massFraction);
  liquidRange(fluid, spec, massFraction, temperatureC);
  return (
    1e-3 * Math.exp(surface(spec.logViscosity, temperatureC - spec.baseC, massFraction - spec.baseFraction))
  );
}

function checked(fluid: SecondaryFluidName, massFraction: number): SecondaryFluid {
  oneOfChoices('fluid', fluid, FLUID_NAMES);
  const spec = SECONDARY_FLUIDS[fluid];
  inRange(`massFraction of ${fluid}`, massFraction, 0, spec.maxFraction);
  return spec;
}

function liquidRange(fluid: string, spec: SecondaryFluid, massFraction: number, temperatureC: number): void {
  const freezing = polynomial(spec.freezing, massFraction - spec.baseFraction) - CELSIUS_ZERO;
  inRange(`temperatureC of ${fluid} solution`, temperatureC, freezing, spec.maxC, 'degC');
}

function surface(rows: readonly (readonly number[])[], t: number, x: number): number {
  return polynomial(
    rows.map((row) => polynomial(row, x)),
    t,
  );
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, c) => sum * x + c, 0);
}
