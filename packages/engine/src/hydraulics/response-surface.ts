/**
 * Flows of a few outputs as polynomials of up to three variables over a box, fitted to solves at Chebyshev points.
 * Where flows are smooth in the parameters the coefficients die away fast, and where a law has a kink they do not: those of
 * the two highest degrees are the measure of what was left out.
 */

/** A box and the points in it at which to solve. */
export interface SurfaceGrid {
  readonly dimensions: number;
  readonly pointsPerSide: number;
  readonly points: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export interface Surface {
  readonly grid: SurfaceGrid;
  readonly outputs: number;
  /** Degrees of each kept term, `dimensions` per term. */
  readonly degrees: Uint8Array;
  /** Coefficients, `outputs` per term. */
  readonly coefficients: Float64Array;
  readonly basis: Float64Array;
}

/** A box of inputs with the same number of points on each side. */
export function surfaceGrid(low: Float64Array, high: Float64Array, pointsPerSide: number): SurfaceGrid {
  return { dimensions: low.length, pointsPerSide, points: pointsPerSide ** low.length, low, high };
}

/** Point number `index`, written to `out`. Neighbouring numbers are neighbouring points (the path turns at each edge). */
export function gridPoint(grid: SurfaceGrid, index: number, out: Float64Array): void {
  for (let d = 0; d < grid.dimensions; d++) {
    const x = Math.cos((Math.PI * stepAlong(grid, index, d)) / (grid.pointsPerSide - 1));
    out[d] = grid.low[d]! + ((x + 1) / 2) * (grid.high[d]! - grid.low[d]!);
  }
}

function stepAlong(grid: SurfaceGrid, index: number, dimension: number): number {
  const n = grid.pointsPerSide;
  const lap = Math.floor(index / n ** dimension);
  const step = lap % n;
  return Math.floor(lap / n) % 2 === 0 ? step : n - 1 - step;
}

/**
 * Fits the flows found at the grid's points, `outputs` per point in path order.
 * @returns undefined when terms of the highest degree still matter: more than `tolerance` of an output's own size (or of
 * `floor`, for outputs next to nothing).
 */
export function fitSurface(
  grid: SurfaceGrid,
  found: Float64Array,
  outputs: number,
  tolerance: number,
  floor: number,
): Surface | undefined {
  const n = grid.pointsPerSide;
  const toDegrees = chebyshevTransform(n);
  const spectrum = new Float64Array(found.length);
  for (let i = 0; i < grid.points; i++) {
    let place = 0;
    for (let d = grid.dimensions - 1; d >= 0; d--) place = place * n + stepAlong(grid, i, d);
    for (let k = 0; k < outputs; k++) spectrum[place * outputs + k] = found[i * outputs + k]!;
  }
  for (let d = 0; d < grid.dimensions; d++) transformAlong(spectrum, toDegrees, n, n ** d * outputs);

  const size = new Float64Array(outputs).fill(floor);
  for (let i = 0; i < found.length; i++) {
    const k = i % outputs;
    size[k] = Math.max(size[k]!, Math.abs(found[i]!));
  }
  const degrees: number[] = [];
  const coefficients: number[] = [];
  for (let t = 0; t < grid.points; t++) {
    const own = Array.from({ length: grid.dimensions }, (_, d) => Math.floor(t / n ** d) % n);
    let largest = 0;
    for (let k = 0; k < outputs; k++)
      largest = Math.max(largest, Math.abs(spectrum[t * outputs + k]!) / size[k]!);
    if (own.some((degree) => degree >= n - 2) && largest > tolerance) return undefined;
    if (largest <= tolerance / grid.points) continue;
    degrees.push(...own);
    for (let k = 0; k < outputs; k++) coefficients.push(spectrum[t * outputs + k]!);
  }
  return {
    grid,
    outputs,
    degrees: Uint8Array.from(degrees),
    coefficients: Float64Array.from(coefficients),
    basis: new Float64Array(grid.dimensions * n),
  };
}

/** Values at cos(pi j / (n-1)) -> coefficients of the Chebyshev polynomials; row i, column j. */
function chebyshevTransform(n: number): Float64Array {
  const m = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const ends = (j === 0 || j === n - 1 ? 0.5 : 1) * (i === 0 || i === n - 1 ? 0.5 : 1);
      m[i * n + j] = ((2 * ends) / (n - 1)) * Math.cos((Math.PI * i * j) / (n - 1));
    }
  }
  return m;
}

/** Applies the matrix to every line of n values that lie `stride` apart. */
function transformAlong(values: Float64Array, matrix: Float64Array, n: number, stride: number): void {
  const line = new Float64Array(n);
  for (let start = 0; start < values.length; start++) {
    if (Math.floor(start / stride) % n !== 0) continue;
    for (let j = 0; j < n; j++) line[j] = values[start + j * stride]!;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += matrix[i * n + j]! * line[j]!;
      values[start + i * stride] = sum;
    }
  }
}

/** Outputs at the row of values that starts at `from`, written to `out` at `to`. */
export function evaluateSurface(
  surface: Surface,
  values: Float64Array,
  from: number,
  out: Float64Array,
  to: number,
): void {
  const { grid, outputs, degrees, coefficients, basis } = surface;
  const n = grid.pointsPerSide;
  const dimensions = grid.dimensions;
  for (let d = 0; d < dimensions; d++) {
    const low = grid.low[d]!;
    const span = grid.high[d]! - low;
    const x = span > 0 ? (2 * (values[from + d]! - low)) / span - 1 : 0;
    const at = d * n;
    basis[at] = 1;
    basis[at + 1] = x;
    for (let i = 2; i < n; i++) basis[at + i] = 2 * x * basis[at + i - 1]! - basis[at + i - 2]!;
  }
  for (let k = 0; k < outputs; k++) out[to + k] = 0;
  const terms = degrees.length / dimensions;
  for (let t = 0, c = 0, g = 0; t < terms; t++) {
    let product = basis[degrees[g++]!]!;
    for (let d = 1; d < dimensions; d++) product *= basis[d * n + degrees[g++]!]!;
    for (let k = 0; k < outputs; k++) out[to + k]! += product * coefficients[c++]!;
  }
}
