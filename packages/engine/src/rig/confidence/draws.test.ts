import { describe, expect, it } from 'vitest';
import { evenDraws } from './draws.ts';
import { normalQuantile } from './normal-quantile.ts';
import { sobolPoint } from './sobol.ts';
import { quantile, quantilesOf, regressionOn } from './statistics.ts';
import type { UncertainInput } from './uncertain-inputs.ts';

describe('Sobol points', () => {
  it('have one in each of 2^m equal parts of every dimension, whatever the seed', () => {
    for (const seed of [1, 2, 123456789])
      for (let dimension = 0; dimension < 11; dimension++) {
        const cells = Array.from({ length: 256 }, (_, i) => Math.floor(sobolPoint(i, dimension, seed) * 256));
        expect(new Set(cells).size).toBe(256);
      }
  });

  it('fill two neighbouring dimensions as a (0, m, 2)-net: one point in each box of area 2^-m', () => {
    const points = Array.from({ length: 64 }, (_, i) => [sobolPoint(i, 0, 5), sobolPoint(i, 1, 5)] as const);
    for (let k = 0; k <= 6; k++) {
      const boxes = points.map(([x, y]) => Math.floor(x * 2 ** k) * 64 + Math.floor(y * 2 ** (6 - k)));
      expect(new Set(boxes).size, `${2 ** k} by ${2 ** (6 - k)}`).toBe(64);
    }
  });

  it('differ from dimension to dimension and from seed to seed, without correlation', () => {
    const column = (dimension: number, seed: number) =>
      Array.from({ length: 1024 }, (_, i) => sobolPoint(i, dimension, seed) - 0.5);
    // Of evenly spread numbers the mean square is 1/12.
    const correlation = (a: number[], b: number[]) =>
      (12 / 1024) * a.reduce((sum, x, i) => sum + x * b[i]!, 0);
    const first = column(0, 1);
    for (let dimension = 1; dimension < 24; dimension++)
      expect(Math.abs(correlation(first, column(dimension, 1)))).toBeLessThan(0.12);
    expect(Math.abs(correlation(first, column(0, 2)))).toBeLessThan(0.12);
  });
});

describe('normal deviates', () => {
  // Abramowitz and Stegun 1964, table 26.5: deviates by the share above.
  it.each([
    [0.5, 0],
    [0.75, 0.67449],
    [0.9, 1.28155],
    [0.95, 1.64485],
    [0.975, 1.95996],
    [0.99, 2.32635],
    [0.999, 3.09023],
  ])('below which a share %s lies: %s', (share, deviate) => {
    expect(normalQuantile(share)).toBeCloseTo(deviate, 5);
    expect(normalQuantile(1 - share)).toBeCloseTo(-deviate, 5);
  });

  it('refuse a share that is none', () => {
    for (const share of [0, 1, -1, NaN]) expect(() => normalQuantile(share)).toThrow(RangeError);
  });
});

describe('draws of an input', () => {
  it('have its mean and deviation, and their quantiles are those of the normal distribution', () => {
    const { columns } = evenDraws([input('worn', 0.02, 0.03), input('rough', 0.7)], 1024, 9);
    const [wear, rough] = columns.map((c) => Float64Array.from(c).sort());
    expect(columns[0]!.reduce((sum, x) => sum + x, 0) / 1024).toBeCloseTo(0.03, 4);
    expect(quantile(wear!, 0.95)).toBeCloseTo(0.03 + 1.64485 * 0.02, 3);
    expect(quantile(rough!, 0.05)).toBeCloseTo(-1.64485 * 0.7, 2);
  });
});

describe('regression on the draws', () => {
  const inputs = [input('a', 0.5), input('b', 0.1), input('c', 0.2)];
  const draws = evenDraws(inputs, 1024, 3);
  const [a, b] = draws.columns as [Float64Array, Float64Array];

  it('finds what each input brings to a sum, and their shares of its variance', () => {
    const { slopes, shares, deviation } = regressionOn(draws)(a.map((x, i) => 7 + 2 * x - 10 * b[i]!));
    // Per deviation 2 x 0.5 and -10 x 0.1: half of the variance each.
    expect(slopes[0]).toBeCloseTo(1, 2);
    expect(slopes[1]).toBeCloseTo(-1, 2);
    expect(shares[0]).toBeCloseTo(0.5, 2);
    expect(shares[2]).toBeLessThan(0.01);
    expect(deviation).toBeCloseTo(Math.SQRT2, 2);
  });

  it('brings the quantiles of few draws near the true ones', () => {
    const few = evenDraws(inputs, 64, 3);
    const column = few.columns[0]!.map((x, i) => Math.exp(x + 3 * few.columns[1]![i]!));
    const deviation = Math.hypot(0.5, 0.3);
    const found = quantilesOf(column, regressionOn(few)(column))(0.9);
    expect(Math.abs(found / Math.exp(1.28155 * deviation) - 1)).toBeLessThan(0.1);
  });

  it('tells nothing of a column that does not move', () => {
    const still = regressionOn(draws)(new Float64Array(1024).fill(4));
    for (const share of still.shares) expect(Math.abs(share)).toBe(0);
    expect(quantilesOf(new Float64Array(1024).fill(4), still)(0.3)).toBe(4);
  });
});

function input(item: string, deviation: number, mean = 0): UncertainInput {
  return {
    id: `tip-flow:${item}`,
    kind: 'tip-flow',
    item,
    name: 'tip',
    mean,
    deviation,
    source: 'this test',
    taught: false,
  };
}
