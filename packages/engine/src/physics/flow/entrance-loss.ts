import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { interpolatePoints, type Point } from './interpolate-points.ts';

/** Loss coefficient of an open end, where all the velocity is lost. */
const EXIT = 1;

const ENTRANCES = {
  flush: 0.57,
  'flush-crane': 0.5,
  projecting: 0.78,
} as const;

export type EntranceForm = keyof typeof ENTRANCES;

/**
 * Loss coefficient of the way from a tank into a bulkhead fitting.
 *
 * @formula table
 * @param form shape of the entrance: flush with the wall, the same by the older value, or projecting into the tank [one of flush, flush-crane, projecting]
 * @returns loss coefficient on the bore [-]
 * @valid Reynolds number above 1e4; use `flush` on suction lines, it is the safer of the two flush values
 * @throws RangeError when the form is not in the table
 * @source Rennels and Hudson, Pipe Flow (2012): 0.57; Crane TP-410: 0.5 and 0.78
 */
export function lossCoefficientEntrance(form: EntranceForm): number {
  oneOfChoices('form', form, Object.keys(ENTRANCES));
  return ENTRANCES[form];
}

/** K of a rounded flush entrance by its edge radius over bore. */
const ROUNDED: readonly Point[] = [
  [0, 0.5],
  [0.02, 0.28],
  [0.04, 0.24],
  [0.06, 0.15],
  [0.1, 0.09],
  [0.15, 0.04],
];

/**
 * Loss coefficient of a flush entrance with a rounded edge.
 *
 * @formula table of r/D, straight lines between its points
 * @param radiusRatio edge radius over bore [-] 0..1
 * @returns loss coefficient on the bore [-]
 * @valid from r/D 0.15 up it stays at 0.04
 * @throws RangeError when a parameter is outside its range
 * @source Crane TP-410 A-29
 */
export function lossCoefficientEntranceRounded(radiusRatio: number): number {
  inRange('radiusRatio', radiusRatio, 0, 1, '-');
  return interpolatePoints(ROUNDED, radiusRatio);
}

/**
 * Loss coefficient of an open end into a tank or the air.
 *
 * @formula K = 1
 * @returns loss coefficient on the bore [-]
 * @valid turbulent flow; twice that in laminar flow
 * @source Borda-Carnot into infinite width
 */
export function lossCoefficientExit(): number {
  return EXIT;
}
