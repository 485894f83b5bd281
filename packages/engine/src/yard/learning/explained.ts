import { directionsIn, type Cell, type Directions } from './cell.ts';
import { explanationsOf, type Explanation } from './explanations.ts';
import { inverseOf, product, sum, times, transposed, zeros, type Matrix } from './symmetric.ts';

/** A normal of some factors, less the tolerances' means. */
export interface Factors {
  readonly mean: Float64Array;
  readonly covariance: Matrix;
}

/** What the readings of one machine say of what is asked of its inputs, all explanations together. */
export interface CopyState {
  /** Of each that is asked, less the tolerances' means. */
  readonly mean: Float64Array;
  readonly deviation: Float64Array;
  /** Probability that each reading is sound [-]. */
  readonly sound: Float64Array;
}

/** The readings of a machine explained by what others say of its parts. */
interface Explained {
  /** What the readings are off what others expect. */
  readonly off: Float64Array;
  /** Covariance of each factor with each reading. */
  readonly toParts: Matrix;
  readonly by: Directions;
  readonly explanations: readonly Explanation[];
}

function explained({ linear, shared, copies, scatter, doubts }: Cell, others: Factors): Explained {
  const toParts = product(others.covariance, transposed(shared));
  const by = directionsIn(inverseOf(sum(scatter, product(shared, toParts))), copies);
  const expected = times(shared, others.mean);
  const off = linear.rest.map((value, r) => value - expected[r]!);
  return { off, toParts, by, explanations: explanationsOf(doubts, by.products, times(by.toward, off)) };
}

/** Inverse covariance of a machine's readings had the parts been known exactly, on the mean of its explanations. */
export function weightBy(cell: Cell, others: Factors): Matrix {
  const { doubts, known } = cell;
  const taken = zeros(doubts.length, doubts.length);
  for (const { so, probability } of explained(cell, others).explanations) {
    const inner = takenBy(cell, so, known);
    so.forEach((d, a) => so.forEach((e, b) => (taken[d]![e]! += probability * inner[a]![b]!)));
  }
  return sum(known.sharp, product(transposed(known.toward), product(taken, known.toward)), -1);
}

/**
 * Mean and deviation of the inputs of a copy and of what is asked of several together, and which readings are sound: of the
 * mixture of all explanations.
 */
export function stateOf(cell: Cell, others: Factors): CopyState {
  const { at, linear, copyVariance, doubts, asked } = cell;
  const { off, toParts, by, explanations } = explained(cell, others);
  const count = linear.rest.length;
  const sound = new Float64Array(count);
  const mean = new Float64Array(asked.length);
  const square = new Float64Array(asked.length);
  for (const { so, probability } of explanations) {
    for (let r = 0; r < count; r++) if (!so.includes(r)) sound[r]! += probability;
    const sharp = sharpBy(cell, so, by);
    const pull = times(sharp, off);
    const ownOf = (k: number) =>
      copyVariance[k]! + (so.includes(count + k) ? doubts[count + k]!.variance : 0);
    asked.forEach((weights, a) => {
      const along = new Float64Array(count);
      let [x, variance] = [0, 0];
      for (const [k, weight] of weights) {
        const part = at[k]!;
        const own = ownOf(k);
        x += weight * others.mean[part]!;
        variance += weight ** 2 * own;
        for (const [j, too] of weights) variance += weight * too * others.covariance[part]![at[j]!]!;
        for (let r = 0; r < count; r++)
          along[r]! += weight * (toParts[part]![r]! + own * linear.slope[r]![k]!);
      }
      const reach = times(sharp, along);
      for (let r = 0; r < count; r++) {
        x += along[r]! * pull[r]!;
        variance -= along[r]! * reach[r]!;
      }
      mean[a]! += probability * x;
      square[a]! += probability * (Math.max(0, variance) + x * x);
    });
  }
  const deviation = square.map((value, a) => {
    const least = asked[a]!.reduce((sum, [k, weight]) => sum + weight ** 2 * copyVariance[k]!, 0);
    return Math.sqrt(Math.max(1e-12 * least, value - mean[a]! ** 2));
  });
  return { mean, deviation, sound };
}

/** Inverse covariance of the readings when some doubts are so (Woodbury). */
function sharpBy(cell: Cell, so: readonly number[], by: Directions): Matrix {
  if (so.length === 0) return by.sharp;
  const some = so.map((d) => by.toward[d]!);
  return sum(by.sharp, product(transposed(some), product(takenBy(cell, so, by), some)), -1);
}

/** What doubts that are so take from an inverse covariance, between their directions. */
function takenBy({ doubts }: Cell, so: readonly number[], { products }: Directions): Matrix {
  return inverseOf(
    so.map((d) => Float64Array.from(so, (e) => products[d]![e]! + (d === e ? 1 / doubts[d]!.variance : 0))),
  );
}
