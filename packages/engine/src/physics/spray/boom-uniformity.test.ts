import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boomFanWidth, boomUniformity, heightForOverlap, PATTERN_SHAPES } from './index.ts';
import { patternDensity } from './pattern-shape.ts';

/** A small generator with a seed, so that the Monte Carlo is the same on every run (mulberry32). */
function seeded(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

describe('Evenness of a boom', () => {
  // The second method throws drops, drawn from the single pattern of every tip in reach, into fine bins.
  for (const shape of PATTERN_SHAPES)
    for (const [width, spacing] of [
      [0.84, 0.5],
      [1.43, 0.5],
      [0.6, 0.5],
    ] as const)
      it(`agrees with a Monte Carlo of thrown drops: ${shape}, ${width} m wide, ${spacing} m apart`, () => {
        const random = seeded(7);
        const bins = 5;
        const count = new Array<number>(bins).fill(0);
        const drops = 400_000;
        const peak = 2 / width;
        for (let n = 0; n < drops;) {
          const x = (random() - 0.5) * width;
          if (random() * peak > patternDensity(shape, width, x)) continue;
          n++;
          const wrapped = x - Math.floor(x / spacing) * spacing;
          const bin = Math.min(bins - 1, Math.floor((wrapped / spacing) * bins));
          count[bin] = (count[bin] ?? 0) + 1;
        }
        const mean = drops / bins;
        const variance = count.reduce((sum, c) => sum + (c - mean) ** 2, 0) / bins;
        const cv = Math.sqrt(variance) / mean;
        // Chance alone makes sqrt(bins / drops) = 0.35 %; three times that is allowed.
        expect(Math.abs(cv - boomUniformity(shape, width, spacing, spacing / bins).grooves)).toBeLessThan(
          0.011,
        );
      });

  it('of triangular patterns twice the spacing wide is perfect, flat ones that wide as well', () => {
    expect(boomUniformity('triangular', 1, 0.5).continuous).toBeLessThan(1e-6);
    expect(boomUniformity('flat', 1, 0.5).continuous).toBeLessThan(1e-6);
    expect(boomUniformity('parabolic', 1, 0.5).continuous).toBeGreaterThan(0.03);
  });

  it('depends on the shape: one and a half times the spacing is bad for flat patterns', () => {
    // Flat fans of 1.5 S: half the ground gets one share, half gets two: CV = 1/3 (by hand).
    expect(boomUniformity('flat', 0.75, 0.5).continuous).toBeCloseTo(1 / 3, 9);
  });

  it('meets the table of heights and angles within a tenth of a per cent (computed from fan geometry)', () => {
    const rows = [
      [65, 0.4, 55.5],
      [65, 0.5, 29.7],
      [65, 0.6, 12.8],
      [80, 0.4, 24.3],
      [80, 0.5, 6.5],
      [110, 0.4, 3.0],
      [110, 0.5, 6.7],
      [110, 0.6, 3.2],
    ] as const;
    for (const [angle, height, cv] of rows) {
      const width = boomFanWidth((angle * Math.PI) / 180, height);
      expect(100 * boomUniformity('triangular', width, 0.5).continuous).toBeCloseTo(cv, 0);
    }
  });

  it('grooves never show more than the continuous pattern and their mean is the dose', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PATTERN_SHAPES),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        fc.integer({ min: 2, max: 10 }),
        (shape, width, grooves) => {
          const r = boomUniformity(shape, width, 0.5, 0.5 / grooves);
          expect(r.grooves).toBeLessThanOrEqual(r.continuous + 1e-9);
          expect(r.most).toBeGreaterThanOrEqual(1 - 1e-9);
          expect(r.least).toBeLessThanOrEqual(1 + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('works when the spacing is no whole number of grooves', () => {
    const r = boomUniformity('triangular', 0.84, 0.5, 0.07);
    expect(r.grooves).toBeGreaterThan(0.01);
    expect(r.grooves).toBeLessThan(r.continuous);
  });

  it('turns overlap into height and back', () => {
    const angle = (110 * Math.PI) / 180;
    expect(boomFanWidth(angle, heightForOverlap(angle, 0.5, 2))).toBeCloseTo(1, 12);
  });

  it('refuses a shape it does not know and a spacing out of range, by name', () => {
    expect(() => boomUniformity('round' as 'flat', 1, 0.5)).toThrow(/shape is 'round'/);
    expect(() => boomUniformity('flat', 1, 0)).toThrow(/spacing is 0 m; it must be at least 0.05 m/);
  });
});
