import { describe, expect, it } from 'vitest';
import { linearised, type Evidence } from './evidence.ts';

/** One reading of two inputs by a law of its own. */
function evidence(law: (x: ArrayLike<number>) => number, value: number): Evidence {
  const inputs = [0.1, -0.05].map((mean) => ({ mean, deviation: 0.2 })) as unknown as Evidence['inputs'];
  const predict = (x: ArrayLike<number>) => Float64Array.of(law(x));
  const model = { inputs, rows: [{}], predict } as unknown as Evidence['models'][number];
  const reading = { id: 'r', test: 0, row: 0, value, deviation: 0.01, slipped: 0.35 };
  return {
    inputs,
    models: [model],
    keys: ['a', 'b'],
    readings: [reading],
    unused: [],
  } as unknown as Evidence;
}
const NEAR = { mean: Float64Array.of(0.3, -0.1), deviation: Float64Array.of(0.2, 0.1) };

describe('readings near what is known', () => {
  it('are straight where the rig is, and then scatter no wider', () => {
    const { rest, slope, bent } = linearised(
      evidence((x) => 2 + 3 * x[0]! - x[1]!, 5),
      NEAR,
    );
    expect([...slope[0]!]).toEqual([expect.closeTo(3, 10), expect.closeTo(-1, 10)]);
    // What is left of 5 at the tolerances' middle: 2 + 3 · 0.1 + 0.05.
    expect(rest[0]).toBeCloseTo(5 - 2.35, 10);
    expect(bent[0]).toBeCloseTo(0, 12);
  });

  it('have the mean and the variance of a bent law over the doubt of its inputs', () => {
    const { rest, slope, bent } = linearised(
      evidence((x) => 4 * (x[0]! - 0.3) ** 2, 1),
      NEAR,
    );
    // Of c z² with z normal of deviation d: mean c d², variance 2 c² d⁴.
    expect(rest[0]).toBeCloseTo(1 - 4 * 0.2 ** 2, 10);
    expect(bent[0]).toBeCloseTo(2 * 4 ** 2 * 0.2 ** 4, 10);
    expect(slope[0]![0]).toBeCloseTo(0, 10);
  });

  it('scatter wider where a valve begins to open within the doubt, and keep its second moment', () => {
    const { rest, bent } = linearised(
      evidence((x) => Math.abs(x[0]! - 0.3), 0),
      NEAR,
    );
    expect(rest[0]! ** 2 + bent[0]!).toBeCloseTo(0.2 ** 2, 10);
    expect(bent[0]).toBeGreaterThan(0.01);
  });

  it('say nothing where the rig has no steady state', () => {
    const { rest, slope } = linearised(
      evidence(() => NaN, 1),
      NEAR,
    );
    expect([rest[0], ...slope[0]!]).toEqual([0, 0, 0]);
  });
});
