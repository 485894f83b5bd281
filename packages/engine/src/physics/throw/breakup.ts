import { inRange } from '../in-range.ts';

/**
 * Distance at which the stream of a nozzle is half broken into pieces.
 *
 * @formula L = 207 d
 * @param jetDiameter diameter of the jet [m] 0.002..0.05
 * @returns break-up length [m]
 * @valid 163 to 251 diameters over all nozzles and pressures measured (25 %). Not the length over which drag stays small, which is 5 to 10 times longer
 * @throws RangeError when the diameter is outside its range
 * @source Middle of the table of Theobald, Fire Safety Journal 4 (1981) 1-13
 */
export function breakupLengthNozzle(jetDiameter: number): number {
  inRange('jetDiameter', jetDiameter, 0.002, 0.05, 'm');
  return 207 * jetDiameter;
}

/**
 * Distance at which the turbulent stream of a long pipe is broken into pieces.
 *
 * @formula L = 8.51 d We^0.31, We = ρ U² d / σ of the liquid
 * @param jetDiameter diameter of the jet [m] 0.0005..0.05
 * @param liquidWeber Weber number with the density of the liquid [-] 235..270000
 * @returns break-up length [m]
 * @valid fully developed turbulent pipe flow before the exit; nozzles see breakupLengthNozzle
 * @throws RangeError when a parameter is outside its range
 * @source Sallam, Dai and Faeth, Int. J. Multiphase Flow 28 (2002) 427-449, from memory; within 3 % of the measured point in the tests
 */
export function breakupLengthPipeSallam(jetDiameter: number, liquidWeber: number): number {
  inRange('jetDiameter', jetDiameter, 0.0005, 0.05, 'm');
  inRange('liquidWeber', liquidWeber, 235, 270000);
  return 8.51 * jetDiameter * liquidWeber ** 0.31;
}

/**
 * Share of water by volume on the axis of a fast stream, mixed with the air it carries along.
 *
 * @formula Y = min(1, 6.2 d sqrt(ρl/ρa)/s); c = (Y/ρl) / (Y/ρl + (1 - Y)/ρa)
 * @param distance distance from the nozzle [m] 0..100
 * @param jetDiameter diameter of the jet [m] 0.0002..0.1
 * @param density density of the liquid [kg/m3] 500..2500
 * @param airDensity density of the air [kg/m3] 0.5..2
 * @returns share of water by volume [-]
 * @valid order of magnitude only: it takes the water as finely mixed, as it is at tree-gun speeds
 * @throws RangeError when a parameter is outside its range
 * @source Decay of the round turbulent jet with the density-equivalent diameter (Ricou and Spalding 1961, from memory), with the constant of the throw model
 */
export function waterShareOnAxis(
  distance: number,
  jetDiameter: number,
  density: number,
  airDensity: number,
): number {
  inRange('distance', distance, 0, 100, 'm');
  inRange('jetDiameter', jetDiameter, 0.0002, 0.1, 'm');
  inRange('density', density, 500, 2500, 'kg/m3');
  inRange('airDensity', airDensity, 0.5, 2, 'kg/m3');
  const core = 6.2 * jetDiameter * Math.sqrt(density / airDensity);
  if (distance <= core) return 1;
  const mass = core / distance;
  return mass / density / (mass / density + (1 - mass) / airDensity);
}
