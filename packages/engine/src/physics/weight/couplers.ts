import { inRange } from '../in-range.ts';
import { listInRange, oneOfChoices, sameLength } from '../lists-in-range.ts';
import { POUND, POUND_FORCE } from '../us-measure.ts';
import {
  COUPLER_CLASSES,
  HITCH_TEST,
  SAFETY_CHAIN_RULES,
  type CouplerClass,
  type CouplerStrengthRow,
  type SafetyChainRule,
} from './couplers.data.ts';

/** So that a limit typed in pounds is met exactly after its conversion to kilograms. */
const ROUNDING = 1 + 1e-9;

/**
 * Smallest coupler class that covers a gross trailer weight.
 *
 * @formula class 1 to 2000 lb, 2 to 3500, 3 to 5000, 4 to 10000
 * @param gross gross trailer weight [kg] 0..1e6
 * @result class number of the class; 0 when no class covers it [-]
 * @result maxTongue most load on the tongue at this gross weight; 0 when no class covers it [kg]
 * @valid above class 4 no ball coupler of this table fits: other gear with its own rating is needed
 * @throws RangeError when a parameter is outside its range
 * @source Maryland COMAR 11.13.08.10 tables (SAE J684 kind)
 */
export function couplerClass(gross: number): { class: 0 | 1 | 2 | 3 | 4; maxTongue: number } {
  inRange('gross', gross, 0, 1e6, 'kg');
  const found = COUPLER_CLASSES.find((c) => gross <= c.maxGrossLb * POUND * ROUNDING);
  if (!found) return { class: 0, maxTongue: 0 };
  const maxTongue =
    found.maxTongueLb === undefined ? gross * (found.maxTongueShare ?? 0) : found.maxTongueLb * POUND;
  return { class: found.class, maxTongue };
}

/**
 * Least breaking strengths of a ball coupling of a class.
 *
 * @formula classes 1 to 3 by table; class 4: 3, 3, 1, 1.3, 1.4 times the gross trailer weight
 * @param couplerClassNumber class of the coupler [one of 1, 2, 3, 4]
 * @param maxGross largest gross trailer weight marked on it; counts in class 4 only [kg] 0..4535.93
 * @result longitudinalTension pull [N]
 * @result longitudinalCompression push [N]
 * @result transverse sideways thrust [N]
 * @result verticalTension lift [N]
 * @result verticalCompression down load [N]
 * @valid breaking strengths, not working loads; the 1.4 of class 4 is as printed, memory has 1.3
 * @throws RangeError when a parameter is outside its range
 * @source Maryland COMAR 11.13.08.10 tables (SAE J684 kind)
 */
export function couplerStrengths(
  couplerClassNumber: '1' | '2' | '3' | '4',
  maxGross: number,
): CouplerStrengthRow {
  oneOfChoices('couplerClassNumber', couplerClassNumber, ['1', '2', '3', '4']);
  const found = COUPLER_CLASSES[Number(couplerClassNumber) - 1] as CouplerClass;
  inRange('maxGross', maxGross, 0, found.maxGrossLb * POUND * ROUNDING, 'kg');
  const scale = found.strengthLb ? POUND_FORCE : (maxGross / POUND) * POUND_FORCE;
  const row = (found.strengthLb ?? found.strengthFactor) as CouplerStrengthRow;
  return {
    longitudinalTension: row.longitudinalTension * scale,
    longitudinalCompression: row.longitudinalCompression * scale,
    transverse: row.transverse * scale,
    verticalTension: row.verticalTension * scale,
    verticalCompression: row.verticalCompression * scale,
  };
}

/**
 * Forces that a hitch must stand in its test.
 *
 * @formula weight-carrying, lb: V = L = 0.47 R + 480; L = 0.23 R + 1530 with V = 0.15 R; T = 0.20 R + 500
 * @param gross gross trailer weight R [kg] 0..4535.93
 * @param type how the hitch carries [one of weight-carrying, weight-distributing]
 * @result verticalAndLongitudinal step 1: vertical and longitudinal force together [N]
 * @result longitudinal step 2: longitudinal force, both directions [N]
 * @result vertical step 2: vertical force with it [N]
 * @result transverse step 4: sideways force, each side [N]
 * @valid weight-distributing: step 1 is the vertical force alone
 * @throws RangeError when a parameter is outside its range
 * @source Maryland COMAR 11.13.08.10 tables (SAE J684 kind)
 */
export function hitchTestForces(
  gross: number,
  type: 'weight-carrying' | 'weight-distributing',
): HitchTestForces {
  inRange('gross', gross, 0, 10000 * POUND * ROUNDING, 'kg');
  oneOfChoices('type', type, Object.keys(HITCH_TEST));
  const rule = HITCH_TEST[type];
  const r = gross / POUND;
  const newtons = (law: { slope: number; constant: number }): number =>
    (law.slope * r + law.constant) * POUND_FORCE;
  return {
    verticalAndLongitudinal: newtons(rule.verticalAndLongitudinal),
    longitudinal: newtons(rule.longitudinal),
    vertical: rule.verticalShare * r * POUND_FORCE,
    transverse: newtons(rule.transverse),
  };
}

export interface HitchTestForces {
  readonly verticalAndLongitudinal: number;
  readonly longitudinal: number;
  readonly vertical: number;
  readonly transverse: number;
}

/**
 * Breaking strength that each of two safety chains must have.
 *
 * @formula F = share × gross: half under the federal guidance, whole under the stricter state rule
 * @param gross gross trailer weight [kg] 0..1e6
 * @param rule rule to use; the stricter one is the one to design to [one of us-federal, each-at-gross]
 * @returns breaking strength of each chain [N]
 * @valid breaking strength, not working load limit
 * @throws RangeError when a parameter is outside its range
 * @source FMCSA guidance on 49 CFR 393.70(d); New Hampshire RSA 266:63
 */
export function safetyChainStrength(gross: number, rule: SafetyChainRule): number {
  inRange('gross', gross, 0, 1e6, 'kg');
  oneOfChoices('rule', rule, Object.keys(SAFETY_CHAIN_RULES));
  return (gross / POUND) * POUND_FORCE * SAFETY_CHAIN_RULES[rule].shareEach;
}

/**
 * Rating of a chain of parts: the lowest of them.
 *
 * @formula R = min R_i
 * @param names name of each part [list of text]
 * @param ratings rating of each part: receiver, ball mount, ball, coupler, chains, axle, hub, wheel, tyres [list of kg] 0..1e6
 * @result rating the lowest rating [kg]
 * @result name the part that sets it [text]
 * @throws RangeError when a rating is outside its range, the lists differ in length or are empty
 * @source Common practice, no source: a towing chain is as strong as its weakest part
 */
export function lowestRating(
  names: readonly string[],
  ratings: readonly number[],
): { rating: number; name: string } {
  sameLength('names', names, 'ratings', ratings);
  if (ratings.length === 0) throw new RangeError('ratings has 0 entries; it must have at least 1');
  listInRange('ratings', ratings, 0, 1e6, 'kg');
  let at = 0;
  ratings.forEach((r, i) => {
    if (r < ratings[at]!) at = i;
  });
  return { rating: ratings[at]!, name: names[at]! };
}
