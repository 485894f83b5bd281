import { inRange } from '../in-range.ts';

/**
 * Swath to drive at with a boomless nozzle or cluster.
 *
 * @formula w_eff = s w_wetted
 * @param wettedWidth width of the wetted strip [m] 0..60
 * @param share share of it that counts [-] 0.1..1
 * @returns effective swath [m]
 * @valid The share defaults to 0.8. A measured pattern is better: see the uniformity of a measured swath.
 * @throws RangeError when a parameter is outside its range
 * @source Univ. of Kentucky ENTFACT-805 and LSU AgCenter 2020: 80 % of the wetted width.
 */
export function boomlessSwath(wettedWidth: number, share = 0.8): number {
  inRange('wettedWidth', wettedWidth, 0, 60, 'm');
  inRange('share', share, 0.1, 1);
  return wettedWidth * share;
}

/**
 * Step from pass to pass of a hand gun whose swaths overlap by a share.
 *
 * @formula w_step = w (1 - o)
 * @param swath width one sweep wets [m] 0..30
 * @param overlap share of the swath that is wetted twice [-] 0..0.95
 * @returns step between passes [m]
 * @valid The overlap defaults to 0.5, the extension advice for hand guns.
 * @throws RangeError when a parameter is outside its range
 * @source Mesa County (Colorado) and NC Extension (Buhler): overlap half of the swath.
 */
export function handGunStep(swath: number, overlap = 0.5): number {
  inRange('swath', swath, 0, 30, 'm');
  inRange('overlap', overlap, 0, 0.95);
  return swath * (1 - overlap);
}
