/** Many variations of one network: on polynomials fitted to some of them where that holds, one after another elsewhere. */
import type { Variable } from './compiled-network.ts';
import { limitBroken, limitsOf } from './element-parameters.ts';
import type { NetworkState } from './network-state.ts';
import { change, solveAt } from './batch.ts';
import type { Batch } from './batch.ts';
import { evaluateBox, fitBox } from './fit-box.ts';
import type { FittedBox } from './fit-box.ts';
import { surfaceGrid } from './response-surface.ts';

/** Most variables that are fitted. */
const MOST_DIMENSIONS = 3;
/** Solve points along each side of a box, for the whole range and after each halving of it. */
const POINTS = [9, 8, 7, 6, 5];
/** Halved down to so many, rows are near enough to each other to be solved one after another, and too few to fit. */
const NEIGHBOURS = 24;

/** Of a tank's surface [m]. */
const SURFACE = { min: -1e4, max: 1e4 };

/** See `CompiledNetwork.solveMany`. */
export function solveRows(
  network: NetworkState,
  variables: readonly Variable[],
  values: Float64Array,
  outputs: readonly number[],
  flows: Float64Array,
  failed?: Uint8Array,
): number {
  const width = variables.length;
  const rows = width === 0 ? 0 : Math.floor(values.length / width);
  if (flows.length < rows * outputs.length)
    throw new RangeError(`flows has ${flows.length} places; ${rows * outputs.length} are needed`);
  const slots = variables.map((v) =>
    v.parameter === 'surface' ? v.node : network.slotOf(v.element, v.parameter),
  );
  checkValues(network, variables, values);
  const before = variables.map((v, k) =>
    v.parameter === 'surface' ? network.fixedHead[v.node]! : network.values[slots[k]!]!,
  );
  network.applyChanges();
  const one = new Float64Array(outputs.length);
  const batch: Batch = { network, variables, slots, values, outputs, flows, failed, one, missed: 0 };
  const all = new Int32Array(rows);
  for (let i = 0; i < rows; i++) all[i] = i;
  solveBox(batch, all, 0);
  for (let k = 0; k < width; k++) change(batch, k, before[k]!);
  network.solve();
  return batch.missed;
}

/** Fits the box around these rows; where that fails halves it; where too few are left solves them. */
function solveBox(batch: Batch, rows: Int32Array, halvings: number): void {
  const width = batch.variables.length;
  if (rows.length <= NEIGHBOURS) return solveEach(batch, rows);
  const [low, high] = boundsOf(batch, rows);
  const side = POINTS[Math.min(Math.floor(halvings / width), POINTS.length - 1)]!;
  if (width <= MOST_DIMENSIONS) {
    const box = fitBox(batch, surfaceGrid(low, high, side), rows);
    if (box !== undefined) return evaluateEach(batch, box, rows);
  }
  let widest = 0;
  for (let k = 1; k < width; k++) if (spread(low, high, k) > spread(low, high, widest)) widest = k;
  const split = partition(batch, rows, widest, (low[widest]! + high[widest]!) / 2);
  if (split === 0 || split === rows.length) return solveEach(batch, rows);
  solveBox(batch, rows.subarray(0, split), halvings + 1);
  solveBox(batch, rows.subarray(split), halvings + 1);
}

/** Brings the rows whose variable is up to `limit` to the front, in place; returns how many. */
function partition(batch: Batch, rows: Int32Array, variable: number, limit: number): number {
  const width = batch.variables.length;
  let end = 0;
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i]!;
    if (batch.values[row * width + variable]! > limit) continue;
    rows[i] = rows[end]!;
    rows[end++] = row;
  }
  return end;
}

function evaluateEach(batch: Batch, box: FittedBox, rows: Int32Array): void {
  const width = batch.variables.length;
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i]!;
    if (!evaluateBox(box, batch.values, row * width, batch.flows, row * batch.outputs.length))
      solveOne(batch, row);
    else if (batch.failed !== undefined) batch.failed[row] = 0;
  }
}

function spread(low: Float64Array, high: Float64Array, k: number): number {
  const size = Math.max(Math.abs(low[k]!), Math.abs(high[k]!));
  return size > 0 ? (high[k]! - low[k]!) / size : 0;
}

function boundsOf(batch: Batch, rows: Int32Array): [Float64Array, Float64Array] {
  const width = batch.variables.length;
  const low = new Float64Array(width);
  const high = new Float64Array(width);
  for (let k = 0; k < width; k++) {
    let least = Infinity;
    let most = -Infinity;
    for (let i = 0; i < rows.length; i++) {
      const value = batch.values[rows[i]! * width + k]!;
      if (value < least) least = value;
      if (value > most) most = value;
    }
    low[k] = least;
    high[k] = most;
  }
  return [low, high];
}

/** Each from the last. */
function solveEach(batch: Batch, rows: Int32Array): void {
  for (let i = 0; i < rows.length; i++) solveOne(batch, rows[i]!);
}

function solveOne(batch: Batch, row: number): void {
  const { network, variables, outputs, values, flows } = batch;
  const converged = solveAt(batch, values, row * variables.length);
  if (!converged) batch.missed++;
  if (batch.failed !== undefined) batch.failed[row] = converged ? 0 : 1;
  for (let k = 0; k < outputs.length; k++)
    flows[row * outputs.length + k] = converged ? network.flow(outputs[k]!) : 0;
}

/** All of them before anything is changed. */
function checkValues(network: NetworkState, variables: readonly Variable[], values: Float64Array): void {
  const width = variables.length;
  variables.forEach((variable, k) => {
    const { min, max } = variable.parameter === 'surface' ? SURFACE : limitsOf(variable.parameter);
    for (let i = k; i < values.length; i += width) {
      const value = values[i]!;
      if (value >= min && value <= max) continue;
      const row = Math.floor(i / width);
      if (variable.parameter === 'surface')
        throw new RangeError(`surface in row ${row} is ${value} m; it must be ${min} to ${max} m`);
      const wrong = limitBroken(variable.parameter, value);
      throw new RangeError(`element '${network.elements[variable.element]!.id}' in row ${row}: ${wrong}`);
    }
  });
}
