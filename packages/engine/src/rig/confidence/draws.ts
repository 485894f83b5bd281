import { normalQuantile } from './normal-quantile.ts';
import { sobolPoint } from './sobol.ts';
import type { UncertainInput } from './uncertain-inputs.ts';

/** Log factors of every input in many draws: one column an input. */
export interface Draws {
  readonly count: number;
  readonly inputs: readonly UncertainInput[];
  /** `columns[input][draw]` [-] */
  readonly columns: readonly Float64Array[];
}

/** Even, repeatable draws of all inputs at once: the same seed gives the same draws. */
export function evenDraws(inputs: readonly UncertainInput[], count: number, seed: number): Draws {
  return drawsFrom(inputs, count, (draw, input) => normalQuantile(sobolPoint(draw, input, seed)));
}

/** Draws from standard normal deviates of one's own. */
export function drawsFrom(
  inputs: readonly UncertainInput[],
  count: number,
  deviate: (draw: number, input: number) => number,
): Draws {
  const columns = inputs.map(({ mean, deviation }, k) => {
    const column = new Float64Array(count);
    for (let i = 0; i < count; i++) column[i] = mean + deviation * deviate(i, k);
    return column;
  });
  return { count, inputs, columns };
}
