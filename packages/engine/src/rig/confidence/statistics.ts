import type { Draws } from './draws.ts';
import { normalQuantile } from './normal-quantile.ts';

/** Value below which a share of the sorted numbers lie, straight between neighbours; NaN of none. */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  const place = Math.min(1, Math.max(0, share)) * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below];
  if (low === undefined) return NaN;
  const high = sorted[below + 1] ?? low;
  return low + (place - below) * (high - low);
}

/** A column of figures beside the straight line through the draws that comes nearest to it. */
export interface Regression {
  /** Change of the figure per standard deviation of each input. */
  readonly slopes: Float64Array;
  /** Share of each input in the variance of the line; they add up to one, or are zero where nothing moves [-]. */
  readonly shares: Float64Array;
  /** Standard deviation of the line. */
  readonly deviation: number;
  /** The line less its mean, in each draw. */
  readonly line: Float64Array;
}

/**
 * Least squares on the inputs, which are independent: squared slopes tell how much of the doubt each input brings
 * (standardised regression coefficients: Saltelli and others, Global sensitivity analysis, 2008). What all columns of
 * the same draws share is worked out once.
 */
export function regressionOn({ count, inputs, columns }: Draws): (column: Float64Array) => Regression {
  const moving = inputs.flatMap(({ mean, deviation }, k) =>
    deviation === 0 ? [] : [{ k, z: standard(columns[k]!, mean, deviation) }],
  );
  const root = cholesky(
    moving.map(({ z }, i) => {
      const row = new Float64Array(moving.length);
      for (let j = 0; j <= i; j++) row[j] = dot(z, moving[j]!.z);
      return row;
    }),
  );
  return (column) => {
    const off = lessMean(column);
    const found = solved(
      root,
      moving.map(({ z }) => dot(z, off)),
    );
    const most = found.reduce((largest, slope) => Math.max(largest, Math.abs(slope)), 0);
    const slopes = new Float64Array(inputs.length);
    const line = new Float64Array(count);
    moving.forEach(({ k, z }, j) => {
      const slope = found[j]!;
      // What does not move the column has a slope too, by chance.
      if (Math.abs(slope) < BY_CHANCE * most) return;
      slopes[k] = slope;
      addTimes(line, slope, z);
    });
    const variance = dot(slopes, slopes);
    return {
      slopes,
      shares: variance > 0 ? slopes.map((s) => (s * s) / variance) : slopes,
      deviation: Math.sqrt(variance),
      line,
    };
  };
}

/** A slope below this share of the largest is left out of the line: a millionth of its variance. */
const BY_CHANCE = 1e-3;

/** Functions of their own, since a loop inside a closure is not made fast in time. */
function addTimes(sum: Float64Array, factor: number, of: Float64Array): void {
  for (let i = 0; i < sum.length; i++) sum[i]! += factor * of[i]!;
}

function countBelow(column: Float64Array, limit: number): number {
  let below = 0;
  for (let i = 0; i < column.length; i++) if (column[i]! <= limit) below++;
  return below;
}

function standard(column: Float64Array, mean: number, deviation: number): Float64Array {
  const z = new Float64Array(column.length);
  for (let i = 0; i < z.length; i++) z[i] = (column[i]! - mean) / deviation;
  return z;
}

/** A column less its mean; what is not a number counts as the mean. */
function lessMean(column: Float64Array): Float64Array {
  let sum = 0;
  let known = 0;
  for (let i = 0; i < column.length; i++) {
    const y = column[i]!;
    if (Number.isNaN(y)) continue;
    sum += y;
    known++;
  }
  const off = new Float64Array(column.length);
  for (let i = 0; i < off.length; i++) off[i] = Number.isNaN(column[i]) ? 0 : column[i]! - sum / known;
  return off;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** Lower root of a symmetric positive matrix, in its place. */
function cholesky(matrix: Float64Array[]): readonly Float64Array[] {
  matrix.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      let rest = row[j]!;
      for (let k = 0; k < j; k++) rest -= row[k]! * matrix[j]![k]!;
      row[j] = i === j ? Math.sqrt(rest) : rest / matrix[j]![j]!;
    }
  });
  return matrix;
}

function solved(root: readonly Float64Array[], right: readonly number[]): number[] {
  const x = [...right];
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) x[i]! -= root[i]![k]! * x[k]!;
    x[i]! /= root[i]![i]!;
  }
  for (let i = x.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < x.length; k++) x[i]! -= root[k]![i]! * x[k]!;
    x[i]! /= root[i]![i]!;
  }
  return x;
}

/**
 * Quantiles of a column. The line of its regression is normal, so its own quantiles are known: as much as the draws
 * missed these by, the column's are corrected (control variates for quantiles: Hesterberg and Nelson 1998).
 */
export function quantilesOf(
  column: Float64Array,
  { line, deviation }: Regression,
): (share: number) => number {
  // Sorted, numbers that are none come last.
  const all = column.slice().sort();
  let known = all.length;
  while (known > 0 && Number.isNaN(all[known - 1])) known--;
  const sorted = all.subarray(0, known);
  return (share) => {
    if (deviation === 0) return quantile(sorted, share);
    const limit = deviation * normalQuantile(share);
    return quantile(sorted, countBelow(line, limit) / line.length);
  };
}
