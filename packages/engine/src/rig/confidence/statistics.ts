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
    deviation === 0 ? [] : [{ k, z: columns[k]!.map((x) => (x - mean) / deviation) }],
  );
  const root = cholesky(moving.map(({ z }) => Float64Array.from(moving, (other) => dot(z, other.z))));
  return (column) => {
    let sum = 0;
    let known = 0;
    for (const y of column) {
      if (Number.isNaN(y)) continue;
      sum += y;
      known++;
    }
    const off = column.map((y) => (Number.isNaN(y) ? 0 : y - sum / known));
    const found = solved(
      root,
      moving.map(({ z }) => dot(z, off)),
    );
    const slopes = new Float64Array(inputs.length);
    const line = new Float64Array(count);
    moving.forEach(({ k, z }, j) => {
      const slope = (slopes[k] = found[j]!);
      for (let i = 0; i < count; i++) line[i]! += slope * z[i]!;
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
  const sorted = column.filter((v) => !Number.isNaN(v)).sort();
  return (share) => {
    if (deviation === 0) return quantile(sorted, share);
    const limit = deviation * normalQuantile(share);
    let below = 0;
    for (const value of line) if (value <= limit) below++;
    return quantile(sorted, below / line.length);
  };
}
