import type { Cell } from './cell.ts';
import { stateOf, weightBy, type CopyState, type Factors } from './explained.ts';
import { inverseOf, product, sum, times, transposed, zeros, type Matrix } from './symmetric.ts';

/** Rounds of explaining, each after the last has settled the factors. */
const ROUNDS = 40;
/** Rounds after which each goes half way: two machines that contradict each other would take turns. */
const WHOLE = 6;
/** Factors that move by less than this share of their deviation have settled. */
const SETTLED = 1e-3;

/** Every part's factor, and every machine. */
export interface Settled extends Factors {
  /** Inverse covariance of each machine's readings, had the parts been known exactly. */
  readonly weights: readonly Matrix[];
  readonly states: readonly CopyState[];
}

/**
 * Factors of all parts, and the explanations of each machine's readings, in turn until none moves.
 *
 * A machine's readings are explained by what all others say of its parts, and then teach the parts by their information
 * averaged over the explanations. It begins with no machine at all, so that a reading gone wrong has no say in what is
 * expected of it.
 *
 * @param from what it settled at where the readings were straight near other values
 * @source expectation and maximisation over mixtures of normals, each machine left out of its own judgement as a site is
 * in expectation propagation; both textbook
 */
export function settle(cells: readonly Cell[], before: readonly { part: number }[], from?: Settled): Settled {
  let weights = from?.weights ?? cells.map(({ scatter }) => zeros(scatter.length, scatter.length));
  let found = partsBy(cells, weights, before);
  for (let round = 0; round < ROUNDS; round++) {
    const { mean } = found;
    weights = weights.map((weight, i) => {
      const now = weightBy(cells[i]!, othersOf(cells[i]!, weight, found));
      return round < WHOLE ? now : sum(weight, sum(now, weight, -1), 0.5);
    });
    found = partsBy(cells, weights, before);
    const { covariance } = found;
    if (found.mean.every((m, p) => Math.abs(m - mean[p]!) < SETTLED * Math.sqrt(covariance[p]![p]!))) break;
  }
  const states = cells.map((cell, i) => stateOf(cell, othersOf(cell, weights[i]!, found)));
  return { ...found, weights, states };
}

/** Posterior of all factors, each machine's readings with their weight. */
function partsBy(
  cells: readonly Cell[],
  weights: readonly Matrix[],
  before: readonly { part: number }[],
): Factors {
  const precision = zeros(before.length, before.length);
  before.forEach(({ part }, p) => (precision[p]![p] = 1 / part));
  const pull = new Float64Array(before.length);
  cells.forEach((cell, i) => {
    const said = saysOf(cell, weights[i]!);
    cell.places.forEach((p, a) => {
      pull[p]! += said.pull[a]!;
      cell.places.forEach((q, b) => (precision[p]![q]! += said.precision[a]![b]!));
    });
  });
  const covariance = inverseOf(precision);
  return { covariance, mean: times(covariance, pull) };
}

/** What one machine says of its parts. */
function saysOf({ shared, linear }: Cell, weight: Matrix): { precision: Matrix; pull: Float64Array } {
  const back = product(transposed(shared), weight);
  return { precision: product(back, shared), pull: times(back, linear.rest) };
}

/** What all other machines, and the tolerances, say of the parts of one. */
function othersOf(cell: Cell, weight: Matrix, { mean, covariance }: Factors): Factors {
  const { places } = cell;
  const said = saysOf(cell, weight);
  const all = inverseOf(places.map((p) => Float64Array.from(places, (q) => covariance[p]![q]!)));
  const pull = times(
    all,
    Float64Array.from(places, (p) => mean[p]!),
  );
  const without = inverseOf(sum(all, said.precision, -1));
  return {
    covariance: without,
    mean: times(
      without,
      pull.map((value, a) => value - said.pull[a]!),
    ),
  };
}
