/** Rows of a dense matrix. */
export type Matrix = readonly Float64Array[];

export const zeros = (rows: number, columns: number): Float64Array[] =>
  Array.from({ length: rows }, () => new Float64Array(columns));

/**
 * Inverse of a symmetric positive matrix, by its root (Cholesky).
 *
 * @throws RangeError when the matrix is not positive
 */
export function inverseOf(matrix: Matrix): Float64Array[] {
  const n = matrix.length;
  const root = rootOf(matrix);
  const inverse = zeros(n, n);
  const column = new Float64Array(n);
  for (let c = 0; c < n; c++) {
    for (let i = c; i < n; i++) {
      let rest = i === c ? 1 : 0;
      for (let k = c; k < i; k++) rest -= root[i]![k]! * column[k]!;
      column[i] = rest / root[i]![i]!;
    }
    for (let i = n - 1; i >= c; i--) {
      let rest = column[i]!;
      for (let k = i + 1; k < n; k++) rest -= root[k]![i]! * column[k]!;
      column[i] = rest / root[i]![i]!;
      inverse[i]![c] = inverse[c]![i] = column[i]!;
    }
  }
  return inverse;
}

/** Lower root L of a symmetric positive matrix: matrix = L Lᵀ. */
export function rootOf(matrix: Matrix): Float64Array[] {
  const n = matrix.length;
  const root = zeros(n, n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i]![j]!;
      for (let k = 0; k < j; k++) rest -= root[i]![k]! * root[j]![k]!;
      if (i === j && !(rest > 0))
        throw new RangeError(`row ${i} of the matrix is ${rest}; it must be positive`);
      root[i]![j] = i === j ? Math.sqrt(rest) : rest / root[j]![j]!;
    }
  return root;
}

/** The product of two matrices. */
export function product(a: Matrix, b: Matrix): Float64Array[] {
  const width = b[0]?.length ?? 0;
  return a.map((row) => {
    const out = new Float64Array(width);
    row.forEach((value, k) => {
      if (value === 0) return;
      const other = b[k]!;
      for (let j = 0; j < width; j++) out[j]! += value * other[j]!;
    });
    return out;
  });
}

/** A matrix times a column. */
export function times(a: Matrix, x: Float64Array): Float64Array {
  return Float64Array.from(a, (row) => row.reduce((sum, value, k) => sum + value * x[k]!, 0));
}

export function transposed(a: Matrix): Float64Array[] {
  return Array.from({ length: a[0]?.length ?? 0 }, (_, j) => Float64Array.from(a, (row) => row[j]!));
}
