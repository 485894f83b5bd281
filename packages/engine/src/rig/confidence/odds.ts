import type { UnitSystem } from '../../quantity/index.ts';
import { figureText, type RigPromise } from '../promise.ts';
import type { Band, Confidence, PromiseConfidence } from './confidence.ts';
import { NO_ODDS, NOT_DRAWN, NOT_KNOWN } from './no-odds.data.ts';
import { TOLERANCES } from './tolerances.data.ts';

/** How sure one promise is, in words that a page, a paper and a terminal share. */
export interface Odds {
  /** Share of the draws in which it is kept [-]. */
  readonly share: number;
  /** "kept 97 times in 100". */
  readonly kept: string;
  /** "5 to 95 %: 55.8 ft to 86.0 ft". */
  readonly band: string;
  /** What decides most, strongest first, each with what takes the doubt away. */
  readonly matters: readonly { readonly item: string; readonly name: string; readonly check: string }[];
}

/** Why a promise has no odds: "no odds: the price is the sum of the bill, and stands as quoted". */
export interface NoOdds {
  readonly none: string;
}

/** Share below which "9 times in 10" may not be said. */
export const NINE_IN_TEN = 0.9;

/** Rounded down, so that nothing is made surer than it is. */
function times(kept: number): string {
  if (kept >= 0.99) return 'more than 99 times in 100';
  if (kept < 0.01) return 'not once in 100 times';
  return `${Math.floor(kept * 100)} times in 100`;
}

/** The odds of a promise in words, or why it has none. */
export function oddsOf(confidence: Confidence, promise: RigPromise, units: UnitSystem): Odds | NoOdds {
  const told = confidence.promises.find((p) => p.id === promise.id);
  if (promise.state === 'unknown' && promise.asked === undefined) return { none: `no odds: ${NOT_KNOWN}` };
  if (told === undefined) return { none: `no odds: ${whyNone(promise)}` };
  return {
    share: told.kept,
    kept: `kept ${times(told.kept)}`,
    band: bandText(told, units),
    matters: mattersOf(confidence, told),
  };
}

/** The same in whole sentences, for a paper: "Kept 97 times in 100; 5 to 95 %: 55.8 ft to 86.0 ft. Decided most by ..." */
export function oddsSentences(odds: Odds | NoOdds): string {
  if ('none' in odds) return `${upperFirst(odds.none)}.`;
  const matters = odds.matters.map(({ name, check }) => `${name} (${check})`);
  const decided = matters.length === 0 ? '' : ` Decided most by ${matters.join(', and by ')}.`;
  return `${upperFirst(odds.kept)}; ${odds.band}.${decided}`;
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function whyNone({ id, state }: RigPromise): string {
  if (state === 'unknown') return NOT_KNOWN;
  return NO_ODDS.find((n) => id.startsWith(n.id))?.why ?? NOT_DRAWN;
}

function bandText({ band, asked, shown }: PromiseConfidence, units: UnitSystem): string {
  const text = (value: number) => figureText({ ...shown, value }, units);
  const span = ([low, , high]: Band) =>
    text(low) === text(high) ? text(low) : `${text(low)} to ${text(high)}`;
  if (asked !== undefined) return `5 to 95 %: ${span(band)}, against ${span(asked)} asked`;
  return band[0] === band[2] ? `no tolerance moves it from ${text(band[1])}` : `5 to 95 %: ${span(band)}`;
}

function mattersOf({ inputs }: Confidence, { matters }: PromiseConfidence): Odds['matters'] {
  return matters.flatMap((m) => {
    const input = inputs.find((i) => i.id === m.input);
    return input === undefined
      ? []
      : [{ item: input.item, name: input.name, check: TOLERANCES[input.kind].check }];
  });
}
