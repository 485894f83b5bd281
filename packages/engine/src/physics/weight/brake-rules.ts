import { inRange } from '../in-range.ts';
import { oneOfChoices } from '../lists-in-range.ts';
import { MILE, POUND } from '../us-measure.ts';
import { FEDERAL_BRAKE_RULE, SURGE_BRAKE_RULE, TRAILER_BRAKE_RULES } from './brake-rules.data.ts';

const ROUNDING = 1 + 1e-9;

/**
 * Whether a state asks brakes on a trailer, as far as the stored table knows.
 *
 * @formula required when gross > threshold, unless a low-speed exemption applies
 * @param state state of registration, two letters [text]
 * @param gross gross trailer weight [kg] 0..1e6
 * @param speed highest speed at which it is drawn [m/s] 0..60
 * @result answer what the table says [one of required, not required, unknown]
 * @result reason why, with the threshold in pounds [text]
 * @result conflict whether two published tables disagree for this weight [yes/no]
 * @valid the tables are old and contradict each other: the answer is a prompt to check the state's law, never proof
 * @throws RangeError when a parameter is outside its range or the state is unknown
 * @source A secondary compilation (about 2000); Texas Department of Public Safety brakes page
 */
export function stateTrailerBrakes(state: string, gross: number, speed: number): TrailerBrakes {
  oneOfChoices('state', state, Object.keys(TRAILER_BRAKE_RULES));
  inRange('gross', gross, 0, 1e6, 'kg');
  inRange('speed', speed, 0, 60, 'm/s');
  const rule = TRAILER_BRAKE_RULES[state]!;
  const pounds = gross / POUND;
  const over = (limit: number): boolean => pounds > limit * ROUNDING;
  if (rule.thresholdLb === null)
    return { answer: 'unknown', reason: 'the table gives no weight', conflict: false };
  const conflict = rule.alsoPrintedLb !== undefined && over(rule.thresholdLb) !== over(rule.alsoPrintedLb);
  if (!over(rule.thresholdLb))
    return { answer: 'not required', reason: `at most ${rule.thresholdLb} lb`, conflict };
  const slow = rule.slowExemption;
  if (slow && !over(slow.maxGrossLb) && speed <= (slow.maxSpeedMph * MILE * ROUNDING) / 3600)
    return { answer: 'not required', reason: `drawn at most at ${slow.maxSpeedMph} mph`, conflict };
  return { answer: 'required', reason: `over ${rule.thresholdLb} lb`, conflict };
}

export interface TrailerBrakes {
  readonly answer: 'required' | 'not required' | 'unknown';
  readonly reason: string;
  readonly conflict: boolean;
}

/**
 * Whether the federal rule asks brakes on a trailer in interstate commercial use.
 *
 * @formula combination rated from 10001 lb: required, unless the trailer is at most 3000 lb and rests on the tow vehicle with at most 40 % of that vehicle's axle weights
 * @param combinationRating gross rating of the combination [kg] 0..1e6
 * @param gross gross trailer weight [kg] 0..1e6
 * @param tongue load resting on the tow vehicle [kg] 0..1e5
 * @param towAxleWeight sum of the tow vehicle's axle weights [kg] 1..1e6
 * @returns whether the federal rule asks brakes [yes/no]
 * @valid states rule below it: a no here does not mean that no brakes are asked
 * @throws RangeError when a parameter is outside its range
 * @source 49 CFR 393.42(b)(3) as quoted in an interpretation
 */
export function federalTrailerBrakes(
  combinationRating: number,
  gross: number,
  tongue: number,
  towAxleWeight: number,
): boolean {
  inRange('combinationRating', combinationRating, 0, 1e6, 'kg');
  inRange('gross', gross, 0, 1e6, 'kg');
  inRange('tongue', tongue, 0, 1e5, 'kg');
  inRange('towAxleWeight', towAxleWeight, 1, 1e6, 'kg');
  if (combinationRating < (FEDERAL_BRAKE_RULE.combinationFromLb * POUND) / ROUNDING) return false;
  const light = gross <= FEDERAL_BRAKE_RULE.exemptGrossLb * POUND * ROUNDING;
  return !(light && tongue <= FEDERAL_BRAKE_RULE.exemptShareOnTowVehicle * towAxleWeight);
}

/**
 * Smallest gross rating of a tow vehicle that may brake a trailer by surge brakes alone.
 *
 * @formula tow rating ≥ trailer rating / 1.75 to 12000 lb, / 1.25 to 20000 lb
 * @param trailerRating gross rating of the trailer [kg] 0..9071.85
 * @returns gross rating of the tow vehicle [kg]
 * @valid above 20000 lb the rule allows no surge brakes: refused
 * @throws RangeError when a parameter is outside its range
 * @source 49 CFR 393.48(d)
 */
export function surgeBrakeTowRating(trailerRating: number): number {
  const last = SURGE_BRAKE_RULE.steps.at(-1)!;
  inRange('trailerRating', trailerRating, 0, last.maxTrailerGvwrLb * POUND * ROUNDING, 'kg');
  const step =
    SURGE_BRAKE_RULE.steps.find((s) => trailerRating <= s.maxTrailerGvwrLb * POUND * ROUNDING) ?? last;
  return trailerRating / step.multiple;
}
