import { inRange } from '../in-range.ts';
import { DELTA_T_RULE, WIND_RULES } from './weather-limits.data.ts';
import { windSpeedAtHeight } from '../air/wind-profile.ts';

export type WeatherState = 'good' | 'care' | 'stop';

/** A wind held against a rule, at the rule's own height. */
export interface WindVerdict {
  readonly state: WeatherState;
  readonly wind: number;
  readonly heightKnown: boolean;
  readonly reason: string;
}

/**
 * A measured wind held against a rule for spraying, brought to the height the rule is meant at.
 *
 * @formula u at the rule's height against its bounds
 * @param rule whose rule [one of victoria, uk-guide, south-australia-24d]
 * @param wind measured wind [m/s] 0..60
 * @param height height of the measurement [m] 0.5..100
 * @result state may it be sprayed [one of good, care, stop]
 * @result wind wind at the height of the rule [m/s]
 * @result heightKnown whether the rule states its height; if not the measured wind is compared as it is [yes/no]
 * @result reason why, in one line [text]
 * @valid Brought to the rule's height over mown grass in neutral air. Label and local law come before any of these.
 * @throws RangeError when a parameter is outside its range
 * @source The rule's own origin, kept with it as data: place, edition and who checked.
 */
export function windAgainstRule(rule: string, wind: number, height: number): WindVerdict {
  const found = WIND_RULES.find((r) => r.id === rule);
  if (found === undefined)
    throw new RangeError(`rule is '${rule}'; it must be one of ${WIND_RULES.map((r) => r.id).join(', ')}`);
  inRange('wind', wind, 0, 60, 'm/s');
  inRange('height', height, 0.5, 100, 'm');
  const heightKnown = found.height !== null;
  const there = found.height === null ? wind : windSpeedAtHeight(wind, height, found.height);
  const told = `${(there * 3.6).toFixed(1)} km/h ${heightKnown ? `at ${found.height} m` : 'as measured: ' + found.heightNote}`;
  // The slack keeps a typed 20 km/h at 20 after its conversion.
  const verdict = (state: WeatherState, why: string): WindVerdict => ({
    state,
    wind: there,
    heightKnown,
    reason: `${told}; ${why} (${found.origin.source})`,
  });
  if (found.stop !== null && there >= found.stop - 1e-9) return verdict('stop', 'too windy to spray');
  if (there > found.most + 1e-9) return verdict('care', 'more than the rule likes');
  if (there < found.least - 1e-9) return verdict('care', 'so still that the air may be layered');
  return verdict('good', 'within the rule');
}

/**
 * What Delta T says of spraying.
 *
 * @formula 2 to 8 good, to 10 with care, above not; below 2 drops live long
 * @param difference Delta T of the air [K] 0..40
 * @returns may it be sprayed [one of good, care, stop]
 * @throws RangeError when a parameter is outside its range
 * @source Australian met service scale in the GRDC Spray Application Manual 2025.
 */
export function deltaTState(difference: number): WeatherState {
  inRange('difference', difference, 0, 40, 'K');
  if (difference > DELTA_T_RULE.stop) return 'stop';
  return difference >= DELTA_T_RULE.least && difference <= DELTA_T_RULE.good ? 'good' : 'care';
}
