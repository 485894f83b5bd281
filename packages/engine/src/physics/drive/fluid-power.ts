import { inRange } from '../in-range.ts';

/**
 * Fluid power that a flow carries across a pressure rise.
 *
 * @formula P = Q Δp
 * @param flow volume flow [m3/s] 0..10
 * @param pressureRise pressure rise across the pump [Pa] 0..1e9
 * @returns fluid power [W]
 * @throws RangeError when a parameter is outside its range
 * @source Definition of work per time; in US units hp = gpm psi / 1714.29, of which the trade prints 1714
 */
export function fluidPower(flow: number, pressureRise: number): number {
  inRange('flow', flow, 0, 10, 'm3/s');
  inRange('pressureRise', pressureRise, 0, 1e9, 'Pa');
  return flow * pressureRise;
}
