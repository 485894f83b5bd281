import { evaluateSurface, fitSurface, gridPoint, surfaceGrid, type Surface } from '../../hydraulics/index.ts';
import type { Target } from '../brief.ts';
import { reachTowards, type ThrowConditions } from '../gun-throw.ts';

/** Sides of the grids tried, in turn. */
const SIDES = [4, 6];
/** Terms of the two highest degrees may be this share of the logarithm of the reach; what is left out is smaller still. */
const FIT = 1.5e-4;
/** Below this pressure no stream is reckoned with: such a draw is thrown exactly [Pa]. */
const LEAST = 1000;

/** The same gun with a tip that passes more by a factor. */
export function widened(c: ThrowConditions, factor: number): ThrowConditions {
  return { ...c, tip: { ...c.tip, flowAtOneBar: c.tip.flowAtOneBar * factor } };
}

/**
 * Reach of one gun towards one target [m] by pressure [Pa] and factor on the tip, over the range that the draws span:
 * from a polynomial in their logarithms where the throw is smooth, and thrown anew in every draw where it is not (a
 * stream that stops clearing an edge).
 */
export function throwSurface(
  conditions: ThrowConditions,
  target: Target,
  aim: 'wetted' | 'touched',
  pressures: Float64Array,
  factors: Float64Array,
): (pressure: number, factor: number) => number {
  const exact = (pressure: number, factor: number): number => {
    const reach = reachTowards(widened(conditions, factor), pressure, target, aim);
    return reach === undefined ? 0 : aim === 'touched' ? reach.farthest : reach.bulk;
  };
  const [low, high] = [rangeOf(pressures), rangeOf(factors)].reduce<[number[], number[]]>(
    ([l, h], [a, b]) => [
      [...l, Math.log(a)],
      [...h, Math.log(b)],
    ],
    [[], []],
  );
  if (!(low[0]! >= Math.log(LEAST))) return exact;
  const surface = surfaceOf(Float64Array.from(low), Float64Array.from(high), exact);
  if (surface === undefined) return exact;
  const at = new Float64Array(2);
  const out = new Float64Array(1);
  return (pressure, factor) => {
    at[0] = Math.log(pressure);
    at[1] = Math.log(factor);
    evaluateSurface(surface, at, 0, out, 0);
    return Math.exp(out[0]!);
  };
}

function rangeOf(values: Float64Array): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const v of values) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return [low, high];
}

function surfaceOf(
  low: Float64Array,
  high: Float64Array,
  exact: (pressure: number, factor: number) => number,
): Surface | undefined {
  for (const side of SIDES) {
    const grid = surfaceGrid(low, high, side);
    const found = new Float64Array(grid.points);
    const point = new Float64Array(2);
    for (let i = 0; i < grid.points; i++) {
      gridPoint(grid, i, point);
      found[i] = Math.log(exact(Math.exp(point[0]!), Math.exp(point[1]!)));
    }
    if (!found.every(Number.isFinite)) return undefined;
    const surface = fitSurface(grid, found, 1, FIT, 1);
    if (surface !== undefined) return surface;
  }
  return undefined;
}
