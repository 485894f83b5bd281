import { inRange } from '../in-range.ts';

/** The area a dose refers to: the wetted band itself, or the whole field with its untreated strips. */
export const AREA_BASES = ['treated', 'field'] as const;
export type AreaBasis = (typeof AREA_BASES)[number];

/** A dose is meaningless without its area: the two are stored together. */
export interface DoseOnArea {
  /** [m3/m2] */
  readonly dose: number;
  readonly basis: AreaBasis;
}

/**
 * Share of the field that bands cover.
 *
 * @formula s = b / r
 * @param band width of the treated band [m] 0.01..60
 * @param row spacing of the rows, at least the band [m] 0.01..60
 * @returns treated share of the field [-]
 * @throws RangeError when a parameter is outside its range
 * @source Geometry; True, Univ. of Minnesota Extension.
 */
export function bandShare(band: number, row: number): number {
  inRange('row', row, 0.01, 60, 'm');
  inRange('band', band, 0.01, row, 'm');
  return band / row;
}

/**
 * Dose over the whole field of a label dose that is laid down in bands only.
 *
 * @formula q_field = q_treated b / r
 * @param treated dose on the band, the label rate [m3/m2] 0..1
 * @param band width of the treated band [m] 0.01..60
 * @param row spacing of the rows [m] 0.01..60
 * @returns dose on the field area [m3/m2]
 * @throws RangeError when a parameter is outside its range
 * @source True, Univ. of Minnesota Extension, herbicide rates.
 */
export function fieldDose(treated: number, band: number, row: number): number {
  inRange('treated', treated, 0, 1, 'm3/m2');
  return treated * bandShare(band, row);
}

/**
 * Mass of product per area of field when it is laid down in bands only.
 *
 * @formula m_field = m_treated b / r
 * @param treated mass per area on the band [kg/m2] 0..10
 * @param band width of the treated band [m] 0.01..60
 * @param row spacing of the rows [m] 0.01..60
 * @returns mass per area of field [kg/m2]
 * @throws RangeError when a parameter is outside its range
 * @source True, Univ. of Minnesota Extension, herbicide rates.
 */
export function fieldMassDose(treated: number, band: number, row: number): number {
  inRange('treated', treated, 0, 10, 'kg/m2');
  return treated * bandShare(band, row);
}

/**
 * The same dose told on another area.
 *
 * @formula q_treated = q_field r / b
 * @param p.dose dose as it was given [m3/m2] 0..1
 * @param p.basis area it was given for [one of treated, field]
 * @param p.wanted area it is wanted for [one of treated, field]
 * @param p.band width of the treated band [m] 0.01..60
 * @param p.row spacing of the rows [m] 0.01..60
 * @returns dose on the wanted area [m3/m2]
 * @throws RangeError when a parameter is outside its range
 * @source Geometry; True, Univ. of Minnesota Extension.
 */
export function doseOnBasis(
  p: DoseOnArea & { readonly wanted: AreaBasis; readonly band: number; readonly row: number },
): number {
  inRange('dose', p.dose, 0, 1, 'm3/m2');
  const share = bandShare(p.band, p.row);
  if (p.basis === p.wanted) return p.dose;
  return p.wanted === 'field' ? p.dose * share : p.dose / share;
}
