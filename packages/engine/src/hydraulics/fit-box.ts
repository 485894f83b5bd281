/**
 * The flows over a box of variations as polynomials: one set where all laws stay on their parts, else a set for each
 * combination of parts found in it, with polynomials of what decides between them.
 */
import { largestFlow, solveAt } from './batch.ts';
import type { Batch } from './batch.ts';
import { endsOf, holdParts, measureOf, partsOf, sameMeasure } from './held-parts.ts';
import { regimeSize, writeRegime } from './regime.ts';
import { fitSurface, gridPoint, readSurface, setSurface } from './response-surface.ts';
import type { Surface, SurfaceGrid } from './response-surface.ts';

/** Size allowed to the terms of highest degree, as a share of a fitted flow: what is left out is smaller still. */
const FIT = 2e-8;
/** Difference from an exact solve that a fitted flow may show. */
const PROMISED = 1e-7;
/** An output below this share of the network's largest flow counts as that large. */
const LEAST_SIZE = 1e-4;
/** Rows of every box, for each set of polynomials, that are also solved exactly and compared. */
const CHECKS = 3;
/** Rows a box must hold for each point it costs. */
const ROWS_PER_POINT = 2;
/** Rows of a box whose corners differ that are looked at for further combinations of parts. */
const SAMPLES = 12;
/** Most combinations of parts in one box. */
const MOST_PIECES = 4;

/** The polynomials for one combination of parts. */
interface Piece {
  /** What decides whether the combination holds, then the flows. */
  readonly surface: Surface;
  /** Limits of what decides; none where no other combination can hold. */
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly at: Float64Array;
}

export interface FittedBox {
  readonly pieces: readonly Piece[];
}

/** Undefined where polynomials do not pay or do not hold. */
export function fitBox(batch: Batch, grid: SurfaceGrid, rows: Int32Array): FittedBox | undefined {
  if (rows.length < ROWS_PER_POINT * grid.points) return undefined;
  const combinations = combinationsIn(batch, grid, rows);
  if (combinations === undefined || rows.length < ROWS_PER_POINT * grid.points * combinations.length)
    return undefined;
  const pieces = fitPieces(batch, grid, combinations);
  if (pieces === undefined) return undefined;
  const box = { pieces };
  return agrees(batch, box, rows) ? box : undefined;
}

/** Flows of one row into `out` at `to`; false when none of the combinations holds there. */
export function evaluateBox(
  box: FittedBox,
  values: Float64Array,
  from: number,
  out: Float64Array,
  to: number,
): boolean {
  const { pieces } = box;
  for (let i = 0; i < pieces.length; i++) {
    const { surface, low, high, at } = pieces[i]!;
    setSurface(surface, values, from);
    readSurface(surface, 0, at.length, at, 0);
    let holds = true;
    for (let k = 0; k < at.length; k++) holds &&= at[k]! >= low[k]! && at[k]! < high[k]!;
    if (!holds) continue;
    readSurface(surface, at.length, surface.outputs, out, to);
    return true;
  }
  return false;
}

/** The different combinations of parts; undefined when there are too many or a point has no solution. */
function combinationsIn(batch: Batch, grid: SurfaceGrid, rows: Int32Array): Uint16Array[] | undefined {
  const found: Uint16Array[] = [];
  const note = (values: Float64Array, from: number): boolean => {
    if (!solveAt(batch, values, from)) return false;
    const parts = partsOf(batch.network);
    if (!found.some((known) => known.every((part, e) => part === parts[e]))) found.push(parts);
    return found.length <= MOST_PIECES;
  };
  const point = new Float64Array(grid.dimensions);
  for (let corner = 0; corner < 2 ** grid.dimensions; corner++) {
    for (let k = 0; k < point.length; k++) point[k] = ((corner >> k) & 1 ? grid.high : grid.low)[k]!;
    if (!note(point, 0)) return undefined;
  }
  // Where corners differ there may be more between them.
  for (let i = 0; i < SAMPLES && found.length > 1; i++) {
    const row = rows[Math.floor(((i + 0.5) * rows.length) / SAMPLES)]!;
    if (!note(batch.values, row * grid.dimensions)) return undefined;
  }
  return found;
}

function fitPieces(
  batch: Batch,
  grid: SurfaceGrid,
  combinations: readonly Uint16Array[],
): Piece[] | undefined {
  const { network } = batch;
  const free = new Uint16Array(network.elementCount);
  const deciding = Array.from(free.keys()).filter((e) =>
    combinations.some((parts) => parts[e] !== combinations[0]![e]),
  );
  const telling = deciding.filter((e, i) => !deciding.slice(0, i).some((d) => sameMeasure(network, d, e)));
  const regime = new Float64Array(regimeSize(network.circuit));
  regime[0] = NaN;
  const pieces: Piece[] = [];
  for (const parts of combinations) {
    // A network that stays on one combination need not be held: that it does is seen at every point.
    const held = free.map((_, e) => (deciding.includes(e) ? parts[e]! : 0));
    holdParts(network, held);
    const piece = fitPiece(batch, grid, parts, telling, regime);
    if (piece === undefined) break;
    pieces.push(piece);
  }
  holdParts(network, free);
  return pieces.length === combinations.length ? pieces : undefined;
}

/** `regime` is that of all points, shut branches and ruling regulators above all; the first one writes it. */
function fitPiece(
  batch: Batch,
  grid: SurfaceGrid,
  parts: Uint16Array,
  telling: readonly number[],
  regime: Float64Array,
): Piece | undefined {
  const { network, outputs } = batch;
  const point = new Float64Array(grid.dimensions);
  const here = new Float64Array(regime.length);
  const found = new Float64Array(grid.points * (telling.length + outputs.length));
  let at = 0;
  for (let i = 0; i < grid.points; i++) {
    gridPoint(grid, i, point);
    if (!solveAt(batch, point, 0)) return undefined;
    const first = Number.isNaN(regime[0]!);
    writeRegime(network.circuit, network.laws.coefficients, first ? regime : here);
    if (!first) for (let j = 0; j < here.length; j++) if (here[j] !== regime[j]) return undefined;
    for (let k = 0; k < telling.length; k++) found[at++] = measureOf(network, telling[k]!);
    for (let k = 0; k < outputs.length; k++) found[at++] = network.flow(outputs[k]!);
  }
  // What decides is a flow, or many times one, so that the flows' least size is small for it too.
  const least = LEAST_SIZE * largestFlow(network);
  const surface = fitSurface(grid, found, telling.length + outputs.length, FIT, least);
  if (surface === undefined) return undefined;
  const ends = telling.map((e) => endsOf(network, e, parts[e]!));
  return {
    surface,
    low: ends.map((end) => end[0]),
    high: ends.map((end) => end[1]),
    at: new Float64Array(telling.length),
  };
}

/** Compares some rows, spread over the box, with exact solves. */
function agrees(batch: Batch, box: FittedBox, rows: Int32Array): boolean {
  const { network, variables, outputs, one, values } = batch;
  const checks = CHECKS * box.pieces.length;
  for (let i = 0; i < checks; i++) {
    const from = rows[Math.floor(((i + 0.5) * rows.length) / checks)]! * variables.length;
    if (!evaluateBox(box, values, from, one, 0)) continue;
    if (!solveAt(batch, values, from)) return false;
    const floor = LEAST_SIZE * largestFlow(network);
    for (let k = 0; k < outputs.length; k++) {
      const exact = network.flow(outputs[k]!);
      if (!(Math.abs(one[k]! - exact) <= PROMISED * Math.max(Math.abs(exact), floor))) return false;
    }
  }
  return true;
}
