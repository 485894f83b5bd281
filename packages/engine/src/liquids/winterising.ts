import { inRange, waterDensity } from '../physics/index.ts';
import { SECONDARY_FLUIDS } from './secondary-fluid.data.ts';
import { densityMelinder, freezingPointMelinder } from './secondary-fluid.ts';

/** Temperature at which fluid and water are poured together [degC]. */
const POURING_C = 20;
const GLYCOL = 'propylene glycol';

/**
 * Strength of propylene glycol whose first ice forms at a temperature.
 *
 * @formula w with T_freezing(w) = t
 * @param temperatureC coldest temperature to stand without ice [degC] -50..-0.1
 * @returns propylene glycol by mass [-]
 * @valid first ice, not the burst point; colder than the 60 % mixture it refuses
 * @throws RangeError when a parameter is outside its range
 * @source Inverse of the freezing curve of Melinder A., IIR 2010
 */
export function glycolFractionForCold(temperatureC: number): number {
  inRange('temperatureC', temperatureC, -50, -0.1, 'degC');
  let [low, high] = [0, SECONDARY_FLUIDS[GLYCOL].maxFraction as number];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (freezingPointMelinder(GLYCOL, middle) > temperatureC) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Glycol fluid that still stands the cold after the water left in the rig has thinned it.
 *
 * @formula V = ρ_w R w / (ρ (s - w)), w the strength that stands the cold
 * @param residualWater water left in pump, hose and fittings [m3] 0..10
 * @param massFraction strength of the fluid by mass [-] 0.01..0.6
 * @param temperatureC coldest temperature to stand without ice [degC] -50..-0.1
 * @returns volume of fluid [m3]
 * @valid poured and mixed evenly at 20 degC; fluid that is itself too weak is refused
 * @throws RangeError when a parameter is outside its range or the fluid is too weak for the cold
 * @source Conservation of mass with the curves of Melinder A., IIR 2010
 */
export function glycolVolumeForCold(
  residualWater: number,
  massFraction: number,
  temperatureC: number,
): number {
  inRange('residualWater', residualWater, 0, 10, 'm3');
  inRange('massFraction', massFraction, 0.01, 0.6);
  const needed = glycolFractionForCold(temperatureC);
  if (massFraction <= needed)
    throw new RangeError(
      `massFraction is ${massFraction}; it must be above ${needed.toFixed(3)}, the strength that stands ${temperatureC} degC unthinned`,
    );
  const fluid = densityMelinder(GLYCOL, massFraction, POURING_C);
  return (waterDensity(POURING_C) * residualWater * needed) / (fluid * (massFraction - needed));
}
