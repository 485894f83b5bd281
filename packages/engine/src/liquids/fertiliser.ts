import { inRange } from '../physics/index.ts';

const POUND_PER_GALLON = 119.826427;
const REFERENCE_F = 60;
/** Temperatures between which the published lines were printed [degC]: 30 and 80 degF. */
export const FERTILISER_TABLE_RANGE = [-1.2, 26.7] as const;
const NITROGEN_GRADES: readonly (readonly [number, number])[] = [
  [0.28, 10.67],
  [0.3, 10.9],
  [0.32, 11.06],
];
const SALT_OUT: readonly (readonly [number, number])[] = [
  [0.28, -18],
  [0.3, -10],
  [0.32, -2],
];
const POLYPHOSPHATE_SALT_OUT_C = -23.3;

/**
 * Density of urea-ammonium nitrate solution.
 *
 * @formula ρ = ρ_60 - 0.003 (F - 60) lb/gal; ρ_60 is 10.67 at 28, 10.90 at 30, 11.06 at 32 % N
 * @param nitrogenFraction nitrogen by mass: the grade [-] 0.28..0.32
 * @param temperatureC temperature [degC] -1.2..26.7
 * @returns density [kg/m3]
 * @valid between the printed grades interpolated; outside 28-32 and 30-80 degF it refuses
 * @throws RangeError when a parameter is outside its range
 * @source Reiter M., Virginia Tech SPES-199NP, Table 1; slope from an extension sheet
 */
export function ureaAmmoniumNitrateDensity(nitrogenFraction: number, temperatureC: number): number {
  inRange('nitrogenFraction of urea-ammonium nitrate', nitrogenFraction, 0.28, 0.32);
  inRange('temperatureC of the urea-ammonium nitrate table', temperatureC, ...FERTILISER_TABLE_RANGE, 'degC');
  return (
    (interpolate(NITROGEN_GRADES, nitrogenFraction) - 0.003 * (fahrenheit(temperatureC) - REFERENCE_F)) *
    POUND_PER_GALLON
  );
}

/**
 * Temperature at which salt comes out of urea-ammonium nitrate solution: its cold limit.
 *
 * @formula -18 degC at 28, -10 at 30, -2 at 32 % N
 * @param nitrogenFraction nitrogen by mass: the grade [-] 0.28..0.32
 * @returns salt-out temperature [degC]
 * @valid between the printed grades interpolated
 * @throws RangeError when a parameter is outside its range
 * @source UNIDO and IFDC, Fertilizer Manual, 1998, as quoted in an encyclopaedia
 */
export function ureaAmmoniumNitrateSaltOut(nitrogenFraction: number): number {
  inRange('nitrogenFraction of urea-ammonium nitrate', nitrogenFraction, 0.28, 0.32);
  return interpolate(SALT_OUT, nitrogenFraction);
}

/**
 * Density of ammonium polyphosphate 10-34-0.
 *
 * @formula ρ = 11.65 - 0.002 (F - 60) lb/gal
 * @param temperatureC temperature [degC] -1.2..26.7
 * @returns density [kg/m3]
 * @valid the heavier of two published values, for loads: others print 11.4 lb/gal at 60 degF; outside 30-80 degF it refuses
 * @throws RangeError when a parameter is outside its range
 * @source Extension sheet, Estimated physical characteristics of fertilizer material; University of Nebraska, CropWatch 2016 (11.4)
 */
export function ammoniumPolyphosphateDensity(temperatureC: number): number {
  inRange('temperatureC of the 10-34-0 table', temperatureC, ...FERTILISER_TABLE_RANGE, 'degC');
  return (11.65 - 0.002 * (fahrenheit(temperatureC) - REFERENCE_F)) * POUND_PER_GALLON;
}

/** Salt-out of 10-34-0: -10 degF. */
export const ammoniumPolyphosphateSaltOutC = POLYPHOSPHATE_SALT_OUT_C;

const fahrenheit = (temperatureC: number): number => temperatureC * 1.8 + 32;

function interpolate(points: readonly (readonly [number, number])[], x: number): number {
  for (let i = 1; i < points.length; i++) {
    const [x0, y0] = points[i - 1] ?? [0, 0];
    const [x1, y1] = points[i] ?? [0, 0];
    if (x <= x1) return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
  }
  throw new RangeError(`${x} lies beyond the table`);
}
