import { inRange } from '../in-range.ts';

/**
 * Parts of water for one part of stock that thin it to a target strength.
 *
 * @formula N = c_s / c_t - 1
 * @param stock strength of the stock [-] 1e-6..1
 * @param target strength wanted, not above the stock [-] 1e-6..1
 * @returns parts of water a part of stock [-]
 * @valid By volume, densities ignored. A proportioner dial may mean 1 to N or 1 in N: see the part.
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance.
 */
export function waterPartsForStrength(stock: number, target: number): number {
  inRange('stock', stock, 1e-6, 1);
  inRange('target', target, 1e-6, stock);
  return stock / target - 1;
}

/**
 * Stock in a batch of a target strength.
 *
 * @formula V_s = V c_t / c_s
 * @param batch volume of the batch [m3] 0..1000
 * @param stock strength of the stock [-] 1e-6..1
 * @param target strength wanted, not above the stock [-] 1e-6..1
 * @returns stock to put in [m3]
 * @valid By volume, densities ignored.
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance.
 */
export function stockForBatch(batch: number, stock: number, target: number): number {
  inRange('batch', batch, 0, 1000, 'm3');
  return batch / (waterPartsForStrength(stock, target) + 1);
}
