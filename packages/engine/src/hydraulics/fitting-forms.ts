/** Fittings by the name that the trade calls them, where no loss coefficient was measured. */
import {
  assumedLossCoefficientCoupling,
  lossCoefficientBallValve,
  lossCoefficientBallValveReduced,
  lossCoefficientElbow45,
  lossCoefficientElbow90,
  lossCoefficientEntrance,
  lossCoefficientExit,
  lossCoefficientGateValve,
  lossCoefficientLiftCheck,
  lossCoefficientSwingCheck,
  lossCoefficientTeeBranch,
  lossCoefficientTeeRun,
  lossCoefficientThreeWayStraight,
  lossCoefficientThreeWayTurned,
  screenCloggingFactor,
} from '../physics/index.ts';

/** Port of a standard-port ball valve over its pipe bore, and the half-angle of its cones. Common practice, no source. */
const STANDARD_PORT = 0.75;
const STANDARD_PORT_ANGLE = 0.35;
/** Open share of a clean strainer's screen, between common meshes: judgement, no source. */
const SCREEN_OPEN = 0.36;

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

/** Loss coefficient of a fitting by its form, on the velocity in its bore [m]; with its band where it is a guess. */
export function formLoss(
  form: FittingForm,
  bore: number,
): { readonly lossCoefficient: number; readonly guess?: readonly [low: number, high: number] } {
  if (form in MEASURED) return { lossCoefficient: MEASURED[form as keyof typeof MEASURED](bore) };
  const { lossCoefficient, low, high } = assumedLossCoefficientCoupling(form as (typeof GUESSED)[number]);
  return { lossCoefficient, guess: [low, high] };
}

export const CHECK_FORMS = ['swing', 'lift'] as const;

export function checkLoss(form: (typeof CHECK_FORMS)[number], bore: number): number {
  return form === 'swing' ? lossCoefficientSwingCheck(bore) : lossCoefficientLiftCheck(bore);
}

/** How many times its clean loss a strainer takes with this share of its openings blocked. */
export function blindedLoss(share: number): number {
  return screenCloggingFactor(SCREEN_OPEN, share);
}
