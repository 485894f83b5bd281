import { inRange } from '../in-range.ts';
import { checkDensity } from './limits.ts';

/**
 * Warming of the liquid that a pump drives round through its bypass while no gun is open.
 *
 * @formula ΔT = P t / (ρ V c)
 * @param power power put into the liquid and the pump, all of it heat [W] 0..1e6
 * @param time time with the guns shut [s] 0..36000
 * @param volume liquid that goes round: the tank's contents, or the short loop when the bypass leads back to the suction [m3] 1e-4..100
 * @param density density of the liquid [kg/m3] 500..2500
 * @param heatCapacity specific heat; default water's 4180 [J/(kg.K)] 1000..5000
 * @returns rise of temperature [K]
 * @valid nothing lost to the air: the worst case. A loop back to the suction warms within minutes, a full tank in hours
 * @throws RangeError when a parameter is outside its range
 * @source Energy balance; specific heat of water from memory
 */
export function bypassWarming(
  power: number,
  time: number,
  volume: number,
  density: number,
  heatCapacity = 4180,
): number {
  inRange('power', power, 0, 1e6, 'W');
  inRange('time', time, 0, 36000, 's');
  inRange('volume', volume, 1e-4, 100, 'm3');
  checkDensity(density);
  inRange('heatCapacity', heatCapacity, 1000, 5000, 'J/(kg.K)');
  return (power * time) / (density * volume * heatCapacity);
}
