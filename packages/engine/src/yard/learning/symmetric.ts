/** Rows of a dense matrix. */
export type Matrix = readonly Float64Array[];

export function zeros(rows: number, columns: number): Float64Array[] {
  const out: Float64Array[] = [];
  for (let i = 0; i < rows; i++) out.push(new Float64Array(columns));
  return out;
}

/**
 * Inverse of a symmetric positive matrix, by its root (Cholesky).
 *
 * @throws RangeError when the matrix is not positive
 */
export function inverseOf(matrix: Matrix): Float64Array[] {
  const n = matrix.length;
  const root = rootOf(matrix);
  const back = transposed(root);
  const inverse = zeros(n, n);
  const column = new Float64Array(n);
  for (let c = 0; c < n; c++) {
    for (let i = c; i < n; i++) {
      const row = root[i]!;
      let rest = i === c ? 1 : 0;
      for (let k = c; k < i; k++) rest -= row[k]! * column[k]!;
      column[i] = rest / row[i]!;
    }
    for (let i = n - 1; i >= c; i--) {
      const row = back[i]!;
      let rest = column[i]!;
      for (let k = i + 1; k < n; k++) rest -= row[k]! * column[k]!;
      inverse[i]![c] = inverse[c]![i] = column[i] = rest / row[i]!;
    }
  }
  return inverse;
}

/** Lower root L of a symmetric positive matrix: matrix = L Lᵀ. */
export function rootOf(matrix: Matrix): Float64Array[] {
  const n = matrix.length;
  const root = zeros(n, n);
  for (let i = 0; i < n; i++) {
    const row = root[i]!;
    for (let j = 0; j <= i; j++) {
      const other = root[j]!;
      let rest = matrix[i]![j]!;
      for (let k = 0; k < j; k++) rest -= row[k]! * other[k]!;
      if (i === j && !(rest > 0))
        throw new RangeError(`row ${i} of the matrix is ${rest}; it must be positive`);
      row[j] = i === j ? Math.sqrt(rest) : rest / other[j]!;
    }
  }
  return root;
}

/** The product of two matrices. */
export function product(a: Matrix, b: Matrix): Float64Array[] {
  const out = zeros(a.length, b[0]?.length ?? 0);
  for (let i = 0; i < a.length; i++) for (let k = 0; k < b.length; k++) addTimes(out[i]!, a[i]![k]!, b[k]!);
  return out;
}

/** A matrix times a column. */
export function times(a: Matrix, x: Float64Array): Float64Array {
  const out = new Float64Array(a.length);
  for (let i = 0; i < a.length; i++) out[i] = dot(a[i]!, x);
  return out;
}

/** A matrix and a second one, times a factor. */
export function sum(a: Matrix, b: Matrix, factor = 1): Float64Array[] {
  const out: Float64Array[] = [];
  for (let i = 0; i < a.length; i++) {
    out.push(new Float64Array(a[i]!));
    addTimes(out[i]!, factor, b[i]!);
  }
  return out;
}

export function transposed(a: Matrix): Float64Array[] {
  const out = zeros(a[0]?.length ?? 0, a.length);
  for (let i = 0; i < a.length; i++) for (let j = 0; j < out.length; j++) out[j]![i] = a[i]![j]!;
  return out;
}

/** Functions of their own, since a loop inside a closure is not made fast in time. */
function addTimes(to: Float64Array, factor: number, row: Float64Array): void {
  if (factor === 0) return;
  for (let j = 0; j < to.length; j++) to[j]! += factor * row[j]!;
}

function dot(a: Float64Array, b: Float64Array): number {
  let total = 0;
  for (let k = 0; k < a.length; k++) total += a[k]! * b[k]!;
  return total;
}
