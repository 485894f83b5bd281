import type { UnitSystem } from '../../quantity/index.ts';
import { figureText, type RigPromise } from '../promise.ts';
import type { Confidence, PromiseConfidence } from './confidence.ts';
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

/** Share below which "9 times in 10" may not be said. */
export const NINE_IN_TEN = 0.9;

/** Rounded down, so that nothing is made surer than it is. */
function times(kept: number): string {
  if (kept >= 0.99) return 'more than 99 times in 100';
  if (kept < 0.01) return 'not once in 100 times';
  return `${Math.floor(kept * 100)} times in 100`;
}

/** The odds of a promise in words; undefined where no doubtful input moves it. */
export function oddsOf(confidence: Confidence, promise: RigPromise, units: UnitSystem): Odds | undefined {
  const told = confidence.promises.find((p) => p.id === promise.id);
  const { has } = promise;
  if (told === undefined || has === undefined) return undefined;
  const text = (value: number) => figureText({ ...has, value }, units);
  const [low, , high] = told.band;
  return {
    share: told.kept,
    kept: `kept ${times(told.kept)}`,
    band: `5 to 95 %: ${text(low)} to ${text(high)}`,
    matters: mattersOf(confidence, told),
  };
}

function mattersOf({ inputs }: Confidence, { matters }: PromiseConfidence): Odds['matters'] {
  return matters.flatMap((m) => {
    const input = inputs.find((i) => i.id === m.input);
    return input === undefined
      ? []
      : [{ item: input.item, name: input.name, check: TOLERANCES[input.kind].check }];
  });
}
