import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { INCH } from '../us-measure.ts';
import { checkBore, checkReynolds } from './limits.ts';

/**
 * Loss coefficient of a fitting at any Reynolds number by the two-constant form.
 *
 * @formula K = K1/Re + K∞ (1 + 1/D), D in inches
 * @param laminarConstant K1 [-] 0..1e5
 * @param turbulentConstant K∞ [-] 0..1000
 * @param reynolds Reynolds number in the bore [-] 1e-6..1e9
 * @param bore bore [m] 0.0002..0.5
 * @returns loss coefficient on the bore [-]
 * @throws RangeError when a parameter is outside its range
 * @source Hooper, Chemical Engineering, 24 August 1981, 96
 */
export function lossCoefficientHooper(
  laminarConstant: number,
  turbulentConstant: number,
  reynolds: number,
  bore: number,
): number {
  inRange('laminarConstant', laminarConstant, 0, 1e5, '-');
  inRange('turbulentConstant', turbulentConstant, 0, 1000, '-');
  checkReynolds(reynolds);
  checkBore(bore);
  return laminarConstant / reynolds + turbulentConstant * (1 + INCH / bore);
}

/**
 * Loss coefficient of a fitting at any Reynolds number by the three-constant form.
 *
 * @formula K = K1/Re + Ki (1 + Kd/Dn^0.3), Dn the nominal size in inches
 * @param p.laminarConstant K1 [-] 0..1e5
 * @param p.turbulentConstant Ki [-] 0..1000
 * @param p.sizeConstant Kd [-] 0..100
 * @param p.reynolds Reynolds number in the bore [-] 1e-6..1e9
 * @param p.nominalSize nominal pipe size [m] 0.003..0.6
 * @returns loss coefficient on the bore [-]
 * @throws RangeError when a parameter is outside its range
 * @source Darby, Chemical Engineering Fluid Mechanics (2001), three-K method
 */
export function lossCoefficientDarby(p: {
  readonly laminarConstant: number;
  readonly turbulentConstant: number;
  readonly sizeConstant: number;
  readonly reynolds: number;
  readonly nominalSize: number;
}): number {
  inRange('laminarConstant', p.laminarConstant, 0, 1e5, '-');
  inRange('turbulentConstant', p.turbulentConstant, 0, 1000, '-');
  inRange('sizeConstant', p.sizeConstant, 0, 100, '-');
  checkReynolds(p.reynolds);
  inRange('nominalSize', p.nominalSize, 0.003, 0.6, 'm');
  return (
    p.laminarConstant / p.reynolds +
    p.turbulentConstant * (1 + p.sizeConstant / (p.nominalSize / INCH) ** 0.3)
  );
}

/** K1 and K∞ of the two-constant form. */
export interface HooperConstants {
  readonly laminar: number;
  readonly turbulent: number;
}

const HOOPER = {
  'elbow-90-threaded': { laminar: 800, turbulent: 0.4 },
  'tee-branch': { laminar: 800, turbulent: 0.8 },
  'tee-run': { laminar: 150, turbulent: 0.05 },
  'ball-valve-full': { laminar: 300, turbulent: 0.1 },
  'ball-valve-reduced': { laminar: 500, turbulent: 0.15 },
  'check-valve-swing': { laminar: 1500, turbulent: 1.5 },
  'check-valve-lift': { laminar: 2000, turbulent: 10 },
  entrance: { laminar: 160, turbulent: 0.5 },
} as const satisfies Record<string, HooperConstants>;

export type HooperFitting = keyof typeof HOOPER;

/**
 * Constants of a fitting for the two-constant form.
 *
 * @formula table
 * @param fitting fitting [one of elbow-90-threaded, tee-branch, tee-run, ball-valve-full, ball-valve-reduced, check-valve-swing, check-valve-lift, entrance]
 * @result laminar K1 [-]
 * @result turbulent K∞ [-]
 * @valid the turbulent constant of an entrance is not scaled with size in the source; the reduced ball valve there has a port of 0.9 of the bore
 * @throws RangeError when the fitting is not in the table
 * @source Hooper, Chemical Engineering, 24 August 1981, 96; full-port ball valve and entrance from memory
 */
export function hooperConstants(fitting: HooperFitting): HooperConstants {
  oneOfChoices('fitting', fitting, Object.keys(HOOPER));
  return HOOPER[fitting];
}

/**
 * Loss coefficient of a fitting at low Reynolds numbers, from its turbulent value and its laminar constant.
 *
 * @formula K = K1/Re + K
 * @param turbulentLossCoefficient loss coefficient above Reynolds number 1e4 [-] 0..1e6
 * @param laminarConstant K1 [-] 0..1e5
 * @param reynolds Reynolds number in the bore [-] 1e-6..1e9
 * @returns loss coefficient on the bore [-]
 * @valid makes the loss linear in a trickle, as it is; at Re 100 an elbow has about 9 instead of 0.8
 * @throws RangeError when a parameter is outside its range
 * @source Hooper 1981 for the form, with the turbulent part from Crane TP-410
 */
export function lossCoefficientAtReynolds(
  turbulentLossCoefficient: number,
  laminarConstant: number,
  reynolds: number,
): number {
  inRange('turbulentLossCoefficient', turbulentLossCoefficient, 0, 1e6, '-');
  inRange('laminarConstant', laminarConstant, 0, 1e5, '-');
  checkReynolds(reynolds);
  return turbulentLossCoefficient + laminarConstant / reynolds;
}
