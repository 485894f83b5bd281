import { inRange, oneOfChoices } from '../physics/index.ts';

/**
 * What a proportioner's "1:N" means. Extension texts mean one part of stock in N parts of finished mix; some sellers
 * mean one part of stock and N parts of water. The part must say which.
 */
export const PROPORTIONER_CONVENTIONS = ['one in N', 'one and N'] as const;
export type ProportionerConvention = (typeof PROPORTIONER_CONVENTIONS)[number];

/**
 * Share of stock in what a proportioner delivers.
 *
 * @formula one in N: 1/N; one and N: 1/(1 + N)
 * @param ratio the N of 1:N [-] 1..10000
 * @param convention what 1:N means [one of one in N, one and N]
 * @returns volume fraction of stock [-]
 * @throws RangeError when a parameter is outside its range
 * @source University of Massachusetts Extension, Ratios and concentrations for using water-soluble fertilizers (one in N); sellers' usage, common practice (one and N)
 */
export function proportionerFraction(ratio: number, convention: ProportionerConvention): number {
  oneOfChoices('convention', convention, PROPORTIONER_CONVENTIONS);
  inRange('ratio', ratio, 1, 10000);
  return convention === 'one in N' ? 1 / ratio : 1 / (1 + ratio);
}

/**
 * Stock that a proportioner draws for a volume of finished mix.
 *
 * @formula V1 = V × fraction
 * @param finalVolume volume of finished mix [m3] 0..1000
 * @param ratio the N of 1:N [-] 1..10000
 * @param convention what 1:N means [one of one in N, one and N]
 * @returns volume of stock [m3]
 * @throws RangeError when a parameter is outside its range
 * @source University of Massachusetts Extension, Ratios and concentrations for using water-soluble fertilizers
 */
export function proportionerStockVolume(
  finalVolume: number,
  ratio: number,
  convention: ProportionerConvention,
): number {
  inRange('finalVolume', finalVolume, 0, 1000, 'm3');
  return finalVolume * proportionerFraction(ratio, convention);
}

/**
 * Strength that a proportioner delivers.
 *
 * @formula C2 = C1 × fraction
 * @param stockStrength strength of the stock in mass per volume, any unit [-] 0..1e6
 * @param ratio the N of 1:N [-] 1..10000
 * @param convention what 1:N means [one of one in N, one and N]
 * @returns strength delivered, in the unit of the stock [-]
 * @valid 12.5 trade % at 1:10 gives 1.25 or 1.136 trade % according to the convention
 * @throws RangeError when a parameter is outside its range
 * @source University of Massachusetts Extension, Ratios and concentrations for using water-soluble fertilizers
 */
export function proportionerDelivered(
  stockStrength: number,
  ratio: number,
  convention: ProportionerConvention,
): number {
  inRange('stockStrength', stockStrength, 0, 1e6);
  return stockStrength * proportionerFraction(ratio, convention);
}

/**
 * Strength of stock from which a proportioner delivers what is wanted.
 *
 * @formula C1 = C2 / fraction
 * @param wantedStrength strength wanted in mass per volume, any unit [-] 0..1e6
 * @param ratio the N of 1:N [-] 1..10000
 * @param convention what 1:N means [one of one in N, one and N]
 * @returns strength of the stock, in the same unit [-]
 * @throws RangeError when a parameter is outside its range
 * @source University of Massachusetts Extension, Ratios and concentrations for using water-soluble fertilizers
 */
export function proportionerStockStrength(
  wantedStrength: number,
  ratio: number,
  convention: ProportionerConvention,
): number {
  inRange('wantedStrength', wantedStrength, 0, 1e6);
  return wantedStrength / proportionerFraction(ratio, convention);
}
