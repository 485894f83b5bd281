/** Fittings by the name that the trade calls them, where no loss coefficient was measured. */
import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { assumedLossCoefficientCoupling } from './coupling-loss.ts';
import { lossCoefficientElbow45, lossCoefficientElbow90 } from './elbow-loss.ts';
import { lossCoefficientEntrance, lossCoefficientExit } from './entrance-loss.ts';
import { lossCoefficientTeeBranch, lossCoefficientTeeRun } from './tee-loss.ts';
import {
  lossCoefficientBallValve,
  lossCoefficientBallValveReduced,
  lossCoefficientGateValve,
  lossCoefficientLiftCheck,
  lossCoefficientSwingCheck,
  lossCoefficientThreeWayStraight,
  lossCoefficientThreeWayTurned,
} from './valve-loss.ts';

/** Port of a standard-port ball valve over its pipe bore, and the half-angle of its cones. Common practice, no source. */
const STANDARD_PORT = 0.75;
const STANDARD_PORT_ANGLE = 0.35;

/** Bores that the laws of fittings hold for [m]. */
export const FITTING_BORES = [0.0003, 0.5] as const;

const MEASURED = {
  'ball-valve-full-port': lossCoefficientBallValve,
  'ball-valve-standard-port': (bore: number) =>
    lossCoefficientBallValveReduced(bore, bore * STANDARD_PORT, STANDARD_PORT_ANGLE),
  'gate-valve': lossCoefficientGateValve,
  'three-way-valve-straight': lossCoefficientThreeWayStraight,
  'three-way-valve-turned': lossCoefficientThreeWayTurned,
  'elbow-90': lossCoefficientElbow90,
  'elbow-45': lossCoefficientElbow45,
  'tee-run': lossCoefficientTeeRun,
  'tee-branch': lossCoefficientTeeBranch,
  'bulkhead-flush': () => lossCoefficientEntrance('flush'),
  'bulkhead-projecting': () => lossCoefficientEntrance('projecting'),
  'open-end': lossCoefficientExit,
} as const satisfies Record<string, (bore: number) => number>;

/** Nobody has established what couplings lose: a guess with its band. */
const GUESSED = ['cam-lock', 'quick-coupling-open', 'quick-coupling-valved', 'hose-swivel'] as const;

export type FittingForm = keyof typeof MEASURED | (typeof GUESSED)[number];
export const FITTING_FORMS: readonly FittingForm[] = [
  ...(Object.keys(MEASURED) as (keyof typeof MEASURED)[]),
  ...GUESSED,
];

/** A loss coefficient, and the band it may lie in. */
export interface FittingLoss {
  readonly lossCoefficient: number;
  readonly low: number;
  readonly high: number;
  readonly basis: 'table' | 'judgement';
}

/**
 * Loss coefficient of a fitting by the name that the trade calls it.
 *
 * @formula a multiple of fT (Crane), a number, or a guess: valve 3 to 90, elbow 16 or 30, tee 20 or 60
 * @param form what it is [one of ball-valve-full-port, ball-valve-standard-port, gate-valve, three-way-valve-straight, three-way-valve-turned, elbow-90, elbow-45, tee-run, tee-branch, bulkhead-flush, bulkhead-projecting, open-end, cam-lock, quick-coupling-open, quick-coupling-valved, hose-swivel]
 * @param bore bore it is joined in [m] 0.0003..0.5
 * @result lossCoefficient K on the velocity in the bore [-]
 * @result low low end of the band; the same as K where a table has it [-]
 * @result high high end of the band; the same as K where a table has it [-]
 * @result basis whether a table has it or it is a guess of ours [one of table, judgement]
 * @valid turbulent flow; couplings and swivels were measured by nobody: enter a measured value where you can. A standard port is 0.75 of the bore (common practice, no source)
 * @throws RangeError when the form is not one of these or the bore is outside its range
 * @source Crane TP-410; Rennels and Hudson, Pipe Flow (2012); couplings: our judgement, no source
 */
export function lossCoefficientFitting(form: FittingForm, bore: number): FittingLoss {
  oneOfChoices('form', form, FITTING_FORMS);
  inRange('bore', bore, ...FITTING_BORES, 'm');
  if (!(form in MEASURED)) return assumedLossCoefficientCoupling(form as (typeof GUESSED)[number]);
  const lossCoefficient = MEASURED[form as keyof typeof MEASURED](bore);
  return { lossCoefficient, low: lossCoefficient, high: lossCoefficient, basis: 'table' };
}

export const CHECK_FORMS = ['swing', 'lift'] as const;

/**
 * Loss coefficient of a check valve by its form.
 *
 * @formula swing K = 100 fT; lift K = 600 fT
 * @param form how it shuts [one of swing, lift]
 * @param bore bore it is joined in [m] 0.0003..0.5
 * @returns K on the velocity in the bore [-]
 * @valid open wide, turbulent flow; springs add their cracking pressure
 * @throws RangeError when the form is not one of these or the bore is outside its range
 * @source Crane TP-410 A-27
 */
export function lossCoefficientCheckValve(form: (typeof CHECK_FORMS)[number], bore: number): number {
  oneOfChoices('form', form, CHECK_FORMS);
  inRange('bore', bore, ...FITTING_BORES, 'm');
  return form === 'swing' ? lossCoefficientSwingCheck(bore) : lossCoefficientLiftCheck(bore);
}
