import { inRange } from '../physics/index.ts';
import { hypochloriteMolarity, tradePercentOfMolarity } from './hypochlorite-strength.ts';

const GAS_CONSTANT = 8.314;
const CELSIUS_ZERO = 273.15;
const LITRES = 1e3;
/** Moles of excess caustic in a litre of fresh bleach, usual. */
export const USUAL_EXCESS_CAUSTIC = 100;
/** Field factor that reproduces an independent strength table and the usual half-lives. */
export const FIELD_FACTOR_DEFAULT = 1.3;
/** Between the pure-solution law and the field: the band every strength is shown with. */
export const FIELD_FACTOR_BAND = [1, 1.3] as const;
/** Hypochlorite molarities of the published law [mol/m3]. */
export const DECAY_MOLARITY_RANGE = [700, 3000] as const;
/** Temperatures of the published law [degC]. */
export const DECAY_TEMPERATURE_RANGE = [15, 55] as const;

/**
 * Ionic strength of fresh bleach: hypochlorite and chloride in equal moles, with excess caustic.
 *
 * @formula I = 2 C0 + excess NaOH
 * @param molarity hypochlorite when fresh [mol/m3] 0..3500
 * @param excessCaustic excess sodium hydroxide [mol/m3] 0..1000
 * @returns ionic strength; it stays while the bleach decays [mol/m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition for an equimolar solution
 */
export function bleachIonicStrength(molarity: number, excessCaustic: number = USUAL_EXCESS_CAUSTIC): number {
  inRange('molarity', molarity, 0, 3500, 'mol/m3');
  inRange('excessCaustic', excessCaustic, 0, 1000, 'mol/m3');
  return 2 * molarity + excessCaustic;
}

/**
 * Rate constant of the second-order decay of hypochlorite to chlorate.
 *
 * @formula log10 k2 = 0.149 I + log10[2.083e10 T exp(-1.018e5/(R T)) exp(-56.5/R)] (k2 in L/(mol s), I in mol/L, T in K)
 * @param temperatureC temperature of the bleach [degC] 15..55
 * @param ionicStrength ionic strength [mol/m3] 1000..6000
 * @returns rate constant: dC/dt = -k2 C² [m3/(mol.s)]
 * @valid pH 9-14, 0.7-3.0 mol/L, no dissolved metals; outside the range it refuses. The rate is of hypochlorite lost, not a third of it
 * @throws RangeError when a parameter is outside its range
 * @source Adam L.C., Gordon G., Inorg. Chem. 38(6):1299-1304, 1999 (abstract read)
 */
export function hypochloriteRateConstant(temperatureC: number, ionicStrength: number): number {
  inRange('temperatureC', temperatureC, ...DECAY_TEMPERATURE_RANGE, 'degC');
  inRange('ionicStrength', ionicStrength, 1000, 6000, 'mol/m3');
  const kelvin = temperatureC + CELSIUS_ZERO;
  const atZero =
    2.083e10 * kelvin * Math.exp(-1.018e5 / (GAS_CONSTANT * kelvin)) * Math.exp(-56.5 / GAS_CONSTANT);
  return (10 ** ((0.149 * ionicStrength) / LITRES) * atZero) / LITRES;
}

/**
 * Strength of bleach after a time in store at one temperature.
 *
 * @formula 1/C = 1/C0 + f k2 t
 * @param tradePercent strength when delivered, grams of available chlorine in 100 mL [-] 5..21
 * @param temperatureC temperature of the store [degC] 15..55
 * @param time time in store [s] 0..1e8
 * @param fieldFactor how much faster than the pure solution: 1 is the published law, 1.3 fits field tables [-] 1..3
 * @param excessCaustic excess sodium hydroxide when fresh [mol/m3] 0..1000
 * @returns strength, grams of available chlorine in 100 mL [-]
 * @valid no metals, no sunlight; below about 5 trade % the published range ends and wash mixes go faster
 * @throws RangeError when a parameter is outside its range
 * @source Adam L.C., Gordon G., Inorg. Chem. 38(6), 1999, integrated; field factor fitted to a published strength table
 */
export function bleachStrengthAfter(
  tradePercent: number,
  temperatureC: number,
  time: number,
  fieldFactor: number = FIELD_FACTOR_DEFAULT,
  excessCaustic: number = USUAL_EXCESS_CAUSTIC,
): number {
  inRange('time', time, 0, 1e8, 's');
  const { molarity, rate } = decay(tradePercent, temperatureC, fieldFactor, excessCaustic);
  return tradePercentOfMolarity(1 / (1 / molarity + rate * time));
}

/**
 * Time in which bleach loses half its strength.
 *
 * @formula t½ = 1 / (f k2 C0)
 * @param tradePercent strength when fresh, grams of available chlorine in 100 mL [-] 5..21
 * @param temperatureC temperature of the store [degC] 15..55
 * @param fieldFactor 1 is the published law, 1.3 fits field tables [-] 1..3
 * @param excessCaustic excess sodium hydroxide when fresh [mol/m3] 0..1000
 * @returns half-life [s]
 * @throws RangeError when a parameter is outside its range
 * @source Adam L.C., Gordon G., Inorg. Chem. 38(6), 1999, integrated
 */
export function bleachHalfLife(
  tradePercent: number,
  temperatureC: number,
  fieldFactor: number = FIELD_FACTOR_DEFAULT,
  excessCaustic: number = USUAL_EXCESS_CAUSTIC,
): number {
  const { molarity, rate } = decay(tradePercent, temperatureC, fieldFactor, excessCaustic);
  return 1 / (rate * molarity);
}

/**
 * How fast bleach is losing hypochlorite.
 *
 * @formula -dC/dt = f k2 C²
 * @param tradePercent strength of fresh bleach, grams of available chlorine in 100 mL [-] 5..21
 * @param temperatureC temperature [degC] 15..55
 * @param fieldFactor 1 is the published law, 1.3 fits field tables [-] 1..3
 * @param excessCaustic excess sodium hydroxide when fresh [mol/m3] 0..1000
 * @returns hypochlorite lost [mol/(m3.s)]
 * @valid halving the strength cuts the loss to about 14 %, not the 25 % often quoted, since the ionic strength falls too
 * @throws RangeError when a parameter is outside its range
 * @source Adam L.C., Gordon G., Inorg. Chem. 38(6), 1999; Chlorine Institute, Dilution of sodium hypochlorite solutions, 2003 (25 %)
 */
export function bleachLossRate(
  tradePercent: number,
  temperatureC: number,
  fieldFactor: number = FIELD_FACTOR_DEFAULT,
  excessCaustic: number = USUAL_EXCESS_CAUSTIC,
): number {
  const { molarity, rate } = decay(tradePercent, temperatureC, fieldFactor, excessCaustic);
  return rate * molarity ** 2;
}

function decay(tradePercent: number, temperatureC: number, fieldFactor: number, excessCaustic: number) {
  inRange('tradePercent', tradePercent, 5, 21, '%');
  inRange('fieldFactor', fieldFactor, 1, 3);
  const molarity = hypochloriteMolarity(tradePercent);
  const rate =
    fieldFactor * hypochloriteRateConstant(temperatureC, bleachIonicStrength(molarity, excessCaustic));
  return { molarity, rate };
}
