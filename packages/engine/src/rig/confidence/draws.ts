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
  const deviates = inputs.map((_, input) => evenDeviates(input, count, seed));
  return drawsFrom(inputs, count, (draw, input) => deviates[input]![draw]!);
}

/** Most columns that are kept, so that another rig, or the same one after an edit, need not make them anew. */
const MOST_KEPT = 256;
const kept = new Map<string, Float64Array>();

function evenDeviates(dimension: number, count: number, seed: number): Float64Array {
  const key = `${dimension} ${count} ${seed}`;
  let column = kept.get(key);
  if (column === undefined) {
    column = new Float64Array(count);
    for (let i = 0; i < count; i++) column[i] = normalQuantile(sobolPoint(i, dimension, seed));
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(key, column);
  }
  return column;
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
