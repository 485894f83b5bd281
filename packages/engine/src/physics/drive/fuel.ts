import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { HORSEPOWER, US_GALLON } from '../us-measure.ts';

/**
 * Fuel that an engine burns at a power, from its brake specific fuel consumption.
 *
 * @formula m = P b; q = m / ρ
 * @param power power given by the engine [W] 0..1e7
 * @param specificConsumption fuel mass per work; 0.5 to 0.8 lb/hp.h is 8.5e-8 to 1.4e-7 [kg/J] 1e-8..1e-6
 * @param fuelDensity density of the fuel [kg/m3] 500..1000
 * @result massRate fuel mass per time [kg/s]
 * @result volumeRate fuel volume per time [m3/s]
 * @valid the specific consumption of small petrol engines (0.5 to 0.8 lb/hp.h) is from memory; it rises at part load
 * @throws RangeError when a parameter is outside its range
 * @source Definition of brake specific fuel consumption
 */
export function fuelRateFromConsumption(
  power: number,
  specificConsumption: number,
  fuelDensity: number,
): FuelRate {
  inRange('power', power, 0, 1e7, 'W');
  inRange('specificConsumption', specificConsumption, 1e-8, 1e-6, 'kg/J');
  inRange('fuelDensity', fuelDensity, 500, 1000, 'kg/m3');
  const massRate = power * specificConsumption;
  return { massRate, volumeRate: massRate / fuelDensity };
}

export interface FuelRate {
  readonly massRate: number;
  readonly volumeRate: number;
}

/**
 * Average fuel that a tractor burns over a year of mixed work.
 *
 * @formula q[gal/h] = 0.044 P_pto[hp] for diesel, 0.060 for petrol
 * @param ratedPtoPower rated PTO power [W] 0..1e6
 * @param fuel fuel of the tractor [one of diesel, petrol]
 * @returns fuel volume per time [m3/s]
 * @valid a mean over a year, not the burn of one job
 * @throws RangeError when a parameter is outside its range
 * @source ASABE EP496: 0.044 seen in an extension calculator page; 0.060 for petrol (0.044/0.73) from memory
 */
export function tractorFuelRateAverage(ratedPtoPower: number, fuel: 'diesel' | 'petrol'): number {
  inRange('ratedPtoPower', ratedPtoPower, 0, 1e6, 'W');
  oneOfChoices('fuel', fuel, ['diesel', 'petrol']);
  const gallonsPerHour = (ratedPtoPower / HORSEPOWER) * (fuel === 'diesel' ? 0.044 : 0.06);
  return (gallonsPerHour * US_GALLON) / 3600;
}

/**
 * Fuel that a diesel tractor burns at part load and reduced engine speed.
 *
 * @formula q[L/h] = (0.22 X + 0.096)(1 + 0.0045 X N - 0.00877 N) P_pto[kW]
 * @param ratedPtoPower rated PTO power [W] 0..1e6
 * @param loadRatio power taken over rated power [-] 0.05..1
 * @param speedReduction engine speed below rated, percent of rated speed [-] 0..45
 * @returns fuel volume per time [m3/s]
 * @valid fitted to tractor tests; below a load ratio of 0.2 the fit is an extrapolation
 * @throws RangeError when a parameter is outside its range
 * @source Grisso, Kocher, Vaughan 2004, Predicting tractor fuel consumption; the equation is from memory
 */
export function tractorFuelRatePartLoad(
  ratedPtoPower: number,
  loadRatio: number,
  speedReduction: number,
): number {
  inRange('ratedPtoPower', ratedPtoPower, 0, 1e6, 'W');
  inRange('loadRatio', loadRatio, 0.05, 1, '-');
  inRange('speedReduction', speedReduction, 0, 45, '-');
  const speedFactor = 1 + 0.0045 * loadRatio * speedReduction - 0.00877 * speedReduction;
  const litresPerHour = (0.22 * loadRatio + 0.096) * speedFactor * (ratedPtoPower / 1000);
  return litresPerHour / 1000 / 3600;
}
