import { inRange } from '../in-range.ts';
import { FOOT, INCH, POUND } from '../us-measure.ts';
import { LEGAL_SIZE } from './legal-size.data.ts';
import { wholeInRange } from '../whole-in-range.ts';

const ROUNDING = 1e-9;

/**
 * Overall width of a trailer and what follows from it on United States roads.
 *
 * @formula overall = frame + 2 (tyre + clearance + fender)
 * @param frameWidth width of frame or tank between the wheels [m] 0..5
 * @param tyreWidth width of a tyre, 0 when the wheels run under the frame [m] 0..1
 * @param clearance gap between frame and tyre, each side [m] 0..1
 * @param fender fender outside the tyre, each side [m] 0..0.5
 * @result overall overall width [m]
 * @result withinLimit whether it is at most 102 in [yes/no]
 * @result clearanceLamps whether it is 80 in or wider, where clearance lamps are asked [yes/no]
 * @valid 102 in holds on the national network; other roads may ask less
 * @throws RangeError when a parameter is outside its range
 * @source 23 CFR 658.15 (from memory); FMVSS 108: 80 in or wider, a state leaflet says over 80 in
 */
export function overallWidth(
  frameWidth: number,
  tyreWidth: number,
  clearance: number,
  fender: number,
): OverallWidth {
  inRange('frameWidth', frameWidth, 0, 5, 'm');
  inRange('tyreWidth', tyreWidth, 0, 1, 'm');
  inRange('clearance', clearance, 0, 1, 'm');
  inRange('fender', fender, 0, 0.5, 'm');
  const overall = frameWidth + 2 * (tyreWidth + clearance + fender);
  return {
    overall,
    withinLimit: overall <= LEGAL_SIZE.widthIn.value * INCH * (1 + ROUNDING),
    clearanceLamps: overall >= LEGAL_SIZE.clearanceLampsFromIn.value * INCH * (1 - ROUNDING),
  };
}

export interface OverallWidth {
  readonly overall: number;
  readonly withinLimit: boolean;
  readonly clearanceLamps: boolean;
}

/**
 * Largest weight that bridges allow on a group of axles.
 *
 * @formula W = 500 (L N/(N-1) + 12 N + 36) lb, L in ft, to the nearest 500 lb
 * @param length distance between the outer axles of the group [m] 1..40
 * @param axles number of axles in the group [-] 2..9
 * @returns weight, at most the gross limit of 80000 lb [kg]
 * @valid beside it the limits of 20000 lb per single axle and 34000 lb per tandem hold
 * @throws RangeError when a parameter is outside its range
 * @source Federal bridge gross weight formula; equation and 23 CFR 658 limits from memory
 */
export function bridgeFormulaWeight(length: number, axles: number): number {
  inRange('length', length, 1, 40, 'm');
  wholeInRange('axles', axles, 2, 9);
  const exact = 500 * (((length / FOOT) * axles) / (axles - 1) + 12 * axles + 36);
  const rounded = Math.round(exact / 500 + ROUNDING) * 500;
  return Math.min(rounded, LEGAL_SIZE.grossLb.value) * POUND;
}
