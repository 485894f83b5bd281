import { inRange } from '../in-range.ts';
import { ISO_TIPS, type IsoTip } from './iso-tips.data.ts';
import { nozzleFlowAtPressure } from './nozzle-flow.ts';

/** Rated flow of one unit of ISO size at 3 bar [m3/s]. */
const UNIT_FLOW = 0.4e-3 / 60;
/** Pressure at which ISO sizes are rated [Pa]. */
export const ISO_RATED_PRESSURE = 3e5;

/** The tip of a size of the series; throws naming the sizes there are. */
function isoTip(size: string): IsoTip {
  const tip = ISO_TIPS.find((t) => t.size === size);
  if (tip === undefined)
    throw new RangeError(
      `size is '${size}'; it must be one of the ISO sizes ${ISO_TIPS.map((t) => t.size).join(', ')}`,
    );
  return tip;
}

/**
 * Water flow of a tip of the ISO size series at a pressure.
 *
 * @formula Q = 0.4 L/min n sqrt(p / 3 bar)
 * @param size ISO size of the tip [one of 01, 015, 02, 025, 03, 04, 05, 06, 08, 10, 15, 20]
 * @param pressure pressure at the tip [Pa] 0..2e6
 * @returns flow of water [m3/s]
 * @valid The US statement, 0.10 gpm a unit at 40 psi, is 1.3 % less: allow for both. Not for tips with more than one metering part.
 * @throws RangeError when a parameter is outside its range
 * @source ISO 10625 (0.4 L/min at 3 bar from memory); Univ. of Arizona 2012 Table 1 (0.10 gpm at 40 psi, seen).
 */
export function isoTipFlow(size: string, pressure: number): number {
  inRange('pressure', pressure, 0, 2e6, 'Pa');
  return nozzleFlowAtPressure(isoTip(size).units * UNIT_FLOW, ISO_RATED_PRESSURE, pressure);
}

/**
 * Colour of a tip of the ISO size series.
 *
 * @formula table
 * @param size ISO size of the tip [one of 01, 015, 02, 025, 03, 04, 05, 06, 08, 10, 15, 20]
 * @returns colour [text]
 * @throws RangeError when a parameter is outside its range
 * @source Univ. of Arizona 2012 Table 1 (01 to 08 seen; 10 to 20 from memory).
 */
export function isoTipColour(size: string): string {
  return isoTip(size).colour;
}
