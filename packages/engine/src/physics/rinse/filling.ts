import { inRange } from '../in-range.ts';
import { wholeInRange } from '../whole-in-range.ts';
import { AIR_GAP_RULE } from './filling.data.ts';

/**
 * Gap to leave between a fill pipe and the overflow level of the tank.
 *
 * @formula g = max(2 d, 1 in)
 * @param bore bore of the fill pipe [m] 0.001..0.3
 * @returns air gap [m]
 * @throws RangeError when a parameter is outside its range
 * @source Capital Regional District (BC), air-gap backflow prevention, kept as data.
 */
export function airGap(bore: number): number {
  inRange('bore', bore, 0.001, 0.3, 'm');
  return Math.max(AIR_GAP_RULE.timesBore * bore, AIR_GAP_RULE.least);
}

/**
 * Time a flow takes to fill or empty a volume.
 *
 * @formula t = V / Q
 * @param volume volume [m3] 0..1000
 * @param flow flow [m3/s] 1e-7..1
 * @returns time [s]
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function fillTime(volume: number, flow: number): number {
  inRange('volume', volume, 0, 1000, 'm3');
  inRange('flow', flow, 1e-7, 1, 'm3/s');
  return volume / flow;
}

/**
 * Filling many small tanks from one metered hose.
 *
 * @formula t = n (V / Q + t_h)
 * @param count tanks to fill [-] 0..1000
 * @param volume volume of one [m3] 0..10
 * @param flow flow of the hose [m3/s] 1e-7..1
 * @param handling time to change over to the next [s] 0..3600
 * @result each time to fill one [s]
 * @result total time for all [s]
 * @result volume volume given out [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function meteredFilling(
  count: number,
  volume: number,
  flow: number,
  handling: number,
): { each: number; total: number; volume: number } {
  wholeInRange('count', count, 0, 1000);
  inRange('volume', volume, 0, 10, 'm3');
  inRange('handling', handling, 0, 3600, 's');
  const each = fillTime(volume, flow);
  return { each, total: count * (each + handling), volume: count * volume };
}

/**
 * Time to take product in through a hopper and rinse the hopper after it.
 *
 * @formula t = V_p / Q_s + n (t_o + V_r / Q_s)
 * @param product product taken in [m3] 0..10
 * @param suction flow that the eductor draws from the hopper [m3/s] 1e-6..0.1
 * @param containers containers emptied one after another [-] 0..200
 * @param opening time to open, pour and set aside one [s] 0..3600
 * @param rinse rinse water a container [m3] 0..1
 * @returns time [s]
 * @valid The eductor's suction at its motive pressure is data of the part; powders are slower (unknown).
 * @throws RangeError when a parameter is outside its range
 * @source Definition.
 */
export function hopperTime(
  product: number,
  suction: number,
  containers: number,
  opening: number,
  rinse: number,
): number {
  inRange('product', product, 0, 10, 'm3');
  inRange('suction', suction, 1e-6, 0.1, 'm3/s');
  wholeInRange('containers', containers, 0, 200);
  inRange('opening', opening, 0, 3600, 's');
  inRange('rinse', rinse, 0, 1, 'm3');
  return product / suction + containers * (opening + rinse / suction);
}
