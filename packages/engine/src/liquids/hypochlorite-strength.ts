import { inRange } from '../physics/index.ts';

/** Grams of a mole of Cl2. */
const CHLORINE_MOLAR_MASS = 0.070906;
/** NaOCl (74.44) for each available Cl2 (70.906). */
const HYPOCHLORITE_PER_CHLORINE = 1.0499;
/** Rise of specific gravity with each trade % of fresh equimolar bleach. */
const GRAVITY_PER_TRADE_PERCENT = 0.0134;
const WATER_DENSITY = 1000;

/**
 * Available chlorine that a trade percentage stands for.
 *
 * @formula c = 10 × trade % (g/L)
 * @param tradePercent grams of available chlorine in 100 mL, as the trade counts it [-] 0..25
 * @returns available chlorine, mass per volume [kg/m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of trade per cent; White, Handbook of Chlorination, 1972, as quoted in a product profile
 */
export function availableChlorine(tradePercent: number): number {
  inRange('tradePercent', tradePercent, 0, 25, '%');
  return 10 * tradePercent;
}

/**
 * Available chlorine by weight.
 *
 * @formula w_Cl2 = trade % / SG / 100
 * @param tradePercent grams of available chlorine in 100 mL [-] 0..25
 * @param specificGravity density over that of water at 1000 kg/m3 [-] 0.99..1.4
 * @returns mass fraction of available chlorine [-]
 * @throws RangeError when a parameter is outside its range
 * @source White, Handbook of Chlorination, 1972, as quoted in a product profile
 */
export function chlorineMassFraction(tradePercent: number, specificGravity: number): number {
  inRange('tradePercent', tradePercent, 0, 25, '%');
  inRange('specificGravity', specificGravity, 0.99, 1.4);
  return tradePercent / specificGravity / 100;
}

/**
 * Sodium hypochlorite by weight: what a label calls "per cent sodium hypochlorite".
 *
 * @formula w_NaOCl = 1.0499 trade % / SG / 100
 * @param tradePercent grams of available chlorine in 100 mL [-] 0..25
 * @param specificGravity density over that of water at 1000 kg/m3 [-] 0.99..1.4
 * @returns mass fraction of NaOCl [-]
 * @throws RangeError when a parameter is outside its range
 * @source Ratio of the molar masses of NaOCl and Cl2; a bulk specification (11.9 % Cl2 with 12.5 % NaOCl) agrees
 */
export function hypochloriteMassFraction(tradePercent: number, specificGravity: number): number {
  return HYPOCHLORITE_PER_CHLORINE * chlorineMassFraction(tradePercent, specificGravity);
}

/**
 * Molarity of hypochlorite.
 *
 * @formula C = 10 trade % / 70.906 (mol/L)
 * @param tradePercent grams of available chlorine in 100 mL [-] 0..25
 * @returns hypochlorite [mol/m3]
 * @throws RangeError when a parameter is outside its range
 * @source Molar mass of Cl2
 */
export function hypochloriteMolarity(tradePercent: number): number {
  return availableChlorine(tradePercent) / CHLORINE_MOLAR_MASS;
}

/**
 * Trade percentage of a molarity.
 *
 * @formula trade % = 70.906 C / 10 (C in mol/L)
 * @param molarity hypochlorite [mol/m3] 0..3500
 * @returns grams of available chlorine in 100 mL [-]
 * @throws RangeError when a parameter is outside its range
 * @source Molar mass of Cl2
 */
export function tradePercentOfMolarity(molarity: number): number {
  inRange('molarity', molarity, 0, 3500, 'mol/m3');
  return (molarity * CHLORINE_MOLAR_MASS) / 10;
}

/**
 * Specific gravity of fresh bleach, when the supplier does not state it.
 *
 * @formula SG = 1 + 0.0134 × trade %
 * @param tradePercent grams of available chlorine in 100 mL [-] 0..15
 * @returns specific gravity against 1000 kg/m3 [-]
 * @valid within 3 % of the published pairs from 6.17 to 15 trade %; above 15 it refuses. Ask the supplier
 * @throws RangeError when a parameter is outside its range
 * @source Line through published pairs: 6.17/1.08, 10/1.14, 12.5/1.16, 14.2/1.196, 15/1.20 (water treatment pages, a bulk specification)
 */
export function bleachSpecificGravity(tradePercent: number): number {
  inRange('tradePercent', tradePercent, 0, 15, '%');
  return 1 + GRAVITY_PER_TRADE_PERCENT * tradePercent;
}

/**
 * Trade percentage of a bleach labelled by weight of sodium hypochlorite.
 *
 * @formula trade % = 100 w SG / 1.0499 with SG = 1 + 0.0134 trade %, solved for trade %
 * @param massFraction NaOCl by mass [-] 0..0.1312
 * @returns grams of available chlorine in 100 mL [-]
 * @valid rests on the estimated specific gravity: within 3 %
 * @throws RangeError when a parameter is outside its range
 * @source Inverse of the mass fraction of NaOCl with the estimated specific gravity
 */
export function tradePercentOfMassFraction(massFraction: number): number {
  inRange('massFraction', massFraction, 0, 0.1312);
  const perCent = (100 * massFraction) / HYPOCHLORITE_PER_CHLORINE;
  return perCent / (1 - GRAVITY_PER_TRADE_PERCENT * perCent);
}

/**
 * Density of fresh bleach or of a wash mix.
 *
 * @formula ρ = ρ_w(t) + 13.4 × trade %, t = 20 degC
 * @param tradePercent grams of available chlorine in 100 mL [-] 0..15
 * @returns density near 20 degC [kg/m3]
 * @valid within 3 % (1 % below 4 trade %); no temperature dependence was published
 * @throws RangeError when a parameter is outside its range
 * @source The specific gravity line on water of 998 kg/m3
 */
export function bleachDensity(tradePercent: number): number {
  return WATER_DENSITY * bleachSpecificGravity(tradePercent) - 1.8;
}
