import { describe, expect, it } from 'vitest';
import { boomUniformity, swathUniformity, widestEvenSwath } from './index.ts';

const triangle = Array.from({ length: 21 }, (_, i) => 10 - Math.abs(i - 10));

describe('Evenness of overlapping passes from a measured pattern', () => {
  it('of a measured triangle equals the ideal triangle of the same width', () => {
    // Cups 0.5 m apart: the triangle is 10 m wide and falls to nothing at both ends.
    for (const swath of [4, 5, 6, 8]) {
      const ideal = boomUniformity('triangular', 10, 5, 0.1);
      const measured = swathUniformity(triangle, 0.5, swath, 'round-and-round');
      if (swath === 5) expect(measured).toBeCloseTo(ideal.continuous, 3);
      expect(swathUniformity(triangle, 0.5, swath, 'there-and-back')).toBeCloseTo(measured, 9);
    }
  });

  it('of a lopsided pattern depends on how the passes lie', () => {
    const slope = Array.from({ length: 11 }, (_, i) => 10 - i);
    const round = swathUniformity(slope, 0.5, 5, 'round-and-round');
    const back = swathUniformity(slope, 0.5, 5, 'there-and-back');
    expect(Math.abs(round - back)).toBeGreaterThan(0.01);
  });

  it('finds the widest swath that is even enough, or none', () => {
    const swath = widestEvenSwath(triangle, 0.5, 'there-and-back', 0.1);
    expect(swath).not.toBeNull();
    expect(swathUniformity(triangle, 0.5, swath ?? 1, 'there-and-back')).toBeLessThanOrEqual(0.1);
    expect(swathUniformity(triangle, 0.5, (swath ?? 1) + 0.25, 'there-and-back')).toBeGreaterThan(0.1);
    expect(widestEvenSwath([0, 1, 0], 1, 'there-and-back', 0.01)).not.toBe(0);
  });

  it('refuses cups that caught nothing and a negative catch, by place', () => {
    expect(() => swathUniformity([0, 0, 0], 1, 2, 'round-and-round')).toThrow(/sum of catches/);
    expect(() => swathUniformity([1, -1, 1], 1, 2, 'round-and-round')).toThrow(/catches\[1\] is -1/);
  });
});
