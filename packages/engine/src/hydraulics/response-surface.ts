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
  /** Points apart that neighbours along each side have, and where along it the points lie, 0 to 1. */
  readonly strides: readonly number[];
  readonly places: readonly number[];
  /** Values at the places -> coefficients of the Chebyshev polynomials, a row for each. */
  readonly toDegrees: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export interface Surface {
  readonly grid: SurfaceGrid;
  readonly outputs: number;
  /** Middle of the box, and one over half its width, 0 where it has none. */
  readonly middle: Float64Array;
  readonly perHalf: Float64Array;
  /** Highest degree kept in each variable. */
  readonly top: Uint8Array;
  /** Terms are kept in rows: all degrees of the first variable up to one, times one product of the others. How many in each. */
  readonly rows: Uint8Array;
  /** Where the factors of each row's product stand in `basis`, one for each further variable. */
  readonly factors: Uint8Array;
  /** Coefficients of all kept terms for the first output, then for the next. */
  readonly coefficients: Float64Array;
  /** Work space: the polynomials of each variable, `pointsPerSide` apart, and the terms. */
  readonly basis: Float64Array;
  readonly terms: Float64Array;
}

/** A box of inputs with the same number of points on each side. */
export function surfaceGrid(low: Float64Array, high: Float64Array, pointsPerSide: number): SurfaceGrid {
  const dimensions = low.length;
  const strides = Array.from({ length: dimensions }, (_, d) => pointsPerSide ** d);
  const places = Array.from(
    { length: pointsPerSide },
    (_, i) => (Math.cos((Math.PI * i) / (pointsPerSide - 1)) + 1) / 2,
  );
  const toDegrees = chebyshevTransform(pointsPerSide);
  return {
    dimensions,
    pointsPerSide,
    points: pointsPerSide ** dimensions,
    strides,
    places,
    toDegrees,
    low,
    high,
  };
}

/** Point number `index`, written to `out`. Neighbouring numbers are neighbouring points (the path turns at each edge). */
export function gridPoint(grid: SurfaceGrid, index: number, out: Float64Array): void {
  for (let d = 0; d < grid.dimensions; d++) {
    const place = grid.places[stepAlong(grid, index, d)]!;
    out[d] = grid.low[d]! + place * (grid.high[d]! - grid.low[d]!);
  }
}

function stepAlong(grid: SurfaceGrid, index: number, dimension: number): number {
  const n = grid.pointsPerSide;
  const lap = Math.floor(index / grid.strides[dimension]!);
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
  const spectrum = new Float64Array(found.length);
  for (let i = 0; i < grid.points; i++) {
    let place = 0;
    for (let d = grid.dimensions - 1; d >= 0; d--) place = place * n + stepAlong(grid, i, d);
    for (let k = 0; k < outputs; k++) spectrum[place * outputs + k] = found[i * outputs + k]!;
  }
  for (let d = 0; d < grid.dimensions; d++)
    transformAlong(spectrum, grid.toDegrees, n, grid.strides[d]! * outputs);

  const size = new Float64Array(outputs).fill(floor);
  for (let i = 0; i < found.length; i++) {
    const k = i % outputs;
    size[k] = Math.max(size[k]!, Math.abs(found[i]!));
  }
  const sizes = new Float64Array(grid.points);
  for (let t = 0; t < grid.points; t++) {
    for (let k = 0; k < outputs; k++)
      sizes[t] = Math.max(sizes[t]!, Math.abs(spectrum[t * outputs + k]!) / size[k]!);
    if (sizes[t]! > tolerance && highest(grid, t) >= n - 2) return undefined;
  }
  const kept = keptTerms(sizes, tolerance);
  const lengths = new Uint8Array(grid.points / n);
  for (const t of kept) lengths[Math.floor(t / n)] = Math.max(lengths[Math.floor(t / n)]!, (t % n) + 1);
  const rows = [...lengths.keys()].filter((row) => lengths[row]! > 0);
  const terms = rows.flatMap((row) => Array.from({ length: lengths[row]! }, (_, i) => row * n + i));
  const top = new Uint8Array(grid.dimensions);
  for (const t of terms) degreesOf(grid, t).forEach((degree, d) => (top[d] = Math.max(top[d]!, degree)));
  const factors = rows.flatMap((row) =>
    degreesOf(grid, row * n).flatMap((degree, d) => (d === 0 ? [] : [d * n + degree])),
  );
  const coefficients = new Float64Array(outputs * terms.length);
  for (let k = 0; k < outputs; k++)
    terms.forEach((t, i) => (coefficients[k * terms.length + i] = spectrum[t * outputs + k]!));
  return {
    grid,
    outputs,
    middle: grid.low.map((low, d) => (low + grid.high[d]!) / 2),
    perHalf: grid.low.map((low, d) => (grid.high[d]! > low ? 2 / (grid.high[d]! - low) : 0)),
    top,
    rows: Uint8Array.from(rows, (row) => lengths[row]!),
    factors: Uint8Array.from(factors),
    coefficients,
    basis: new Float64Array(grid.dimensions * n),
    terms: new Float64Array(terms.length),
  };
}

/** The highest degree that a term has in any variable. */
function highest(grid: SurfaceGrid, term: number): number {
  let most = 0;
  for (let d = 0; d < grid.dimensions; d++) most = Math.max(most, degreeIn(grid, term, d));
  return most;
}

function degreeIn(grid: SurfaceGrid, term: number, d: number): number {
  return Math.floor(term / grid.strides[d]!) % grid.pointsPerSide;
}

function degreesOf(grid: SurfaceGrid, term: number): number[] {
  return Array.from({ length: grid.dimensions }, (_, d) => degreeIn(grid, term, d));
}

/** The largest terms; those left out add up to the tolerance at most. */
function keptTerms(sizes: Float64Array, tolerance: number): number[] {
  const ascending = sizes.slice().sort();
  let left = 0;
  let first = 0;
  while (first < ascending.length && left + ascending[first]! <= tolerance) left += ascending[first++]!;
  const least = ascending[first] ?? Infinity;
  return [...sizes.keys()].filter((t) => sizes[t]! >= least);
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
  for (let block = 0; block < values.length; block += n * stride) {
    for (let start = block; start < block + stride; start++) {
      for (let j = 0; j < n; j++) line[j] = values[start + j * stride]!;
      for (let i = 0; i < n; i++) {
        let sum = 0;
        for (let j = 0; j < n; j++) sum += matrix[i * n + j]! * line[j]!;
        values[start + i * stride] = sum;
      }
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
  setSurface(surface, values, from);
  readSurface(surface, 0, surface.outputs, out, to);
}

/** Sets the surface to the row of values that starts at `from`; `readSurface` then reads outputs there. */
export function setSurface(surface: Surface, values: Float64Array, from: number): void {
  const { grid, middle, perHalf, top, rows, factors, basis, terms } = surface;
  const n = grid.pointsPerSide;
  const dimensions = grid.dimensions;
  for (let d = 0; d < dimensions; d++) {
    const x = (values[from + d]! - middle[d]!) * perHalf[d]!;
    let before = 1;
    let last = x;
    basis[d * n] = 1;
    basis[d * n + 1] = x;
    for (let i = d * n + 2, end = d * n + top[d]!; i <= end; i++) {
      const next = 2 * x * last - before;
      basis[i] = next;
      before = last;
      last = next;
    }
  }
  for (let r = 0, t = 0, f = 0; r < rows.length; r++) {
    let product = 1;
    for (let d = 1; d < dimensions; d++) product *= basis[factors[f++]!]!;
    for (let i = 0, end = rows[r]!; i < end; i++) terms[t++] = product * basis[i]!;
  }
}

/** Outputs from `first` up to `end` at the row last set, written to `out` at `to`. */
export function readSurface(
  surface: Surface,
  first: number,
  end: number,
  out: Float64Array,
  to: number,
): void {
  const { coefficients, terms } = surface;
  const n = terms.length;
  // Two at a time, so that every term is fetched once for both.
  for (let k = first; k < end; k += 2) {
    const c = k * n;
    const pair = k + 1 < end;
    const next = pair ? c + n : c;
    let one = 0;
    let other = 0;
    for (let t = 0; t < n; t++) {
      const term = terms[t]!;
      one += term * coefficients[c + t]!;
      other += term * coefficients[next + t]!;
    }
    out[to++] = one;
    if (pair) out[to++] = other;
  }
}
