import { inRange } from '../in-range.ts';

/**
 * Liquid that a pressure tank gives between the pressures at which a demand pump stops and starts.
 *
 * @formula V_d = V (p_c + p_a) (1/(p_on + p_a) - 1/(p_off + p_a))
 * @param volume gas volume of the empty tank [m3] 1e-5..1
 * @param charge charge of gas in the empty tank, gauge [Pa] 0..1e7
 * @param startPressure pressure at which the pump starts, gauge [Pa] 0..1e7
 * @param stopPressure pressure at which the pump stops, gauge [Pa] 0..1e7
 * @param airPressure pressure of the air outside, absolute; default sea level [Pa] 50000..110000
 * @returns volume of liquid given between two runs of the pump [m3]
 * @valid slow change, so that the gas keeps its temperature; a fast one gives some tenths less. Charged above the starting pressure the tank is empty before the pump starts: refused
 * @throws RangeError when a parameter is outside its range
 * @source Boyle's law
 */
export function pressureTankDrawdown(
  volume: number,
  charge: number,
  startPressure: number,
  stopPressure: number,
  airPressure = 101325,
): number {
  inRange('volume', volume, 1e-5, 1, 'm3');
  inRange('stopPressure', stopPressure, 0, 1e7, 'Pa');
  inRange('startPressure', startPressure, 0, stopPressure, 'Pa');
  inRange('charge', charge, 0, startPressure, 'Pa');
  inRange('airPressure', airPressure, 50000, 110000, 'Pa');
  const gas = volume * (charge + airPressure);
  return gas / (startPressure + airPressure) - gas / (stopPressure + airPressure);
}
