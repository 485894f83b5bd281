import { describe, expect, it } from 'vitest';
import {
  FREIGHT_SCALES,
  bridgeFormulaWeight,
  freightClass,
  freightDensity,
  freightTarget,
  overallWidth,
  type FreightScaleId,
} from './index.ts';

const LB = 0.45359237;
const FT = 0.3048;
const INCH = 0.0254;
const LB_FT3 = LB / FT ** 3;

describe('freight', () => {
  it('falls into the next class exactly at each printed density, on both scales', () => {
    for (const id of Object.keys(FREIGHT_SCALES) as FreightScaleId[]) {
      const { steps } = FREIGHT_SCALES[id];
      steps.forEach(([below, freight], i) => {
        const next = steps[i + 1];
        if (!next) return;
        expect(freightClass(below * LB_FT3, id)).toBe(next[1]);
        expect(freightClass((below - 1e-4) * LB_FT3, id)).toBe(freight);
        expect(next[1]).toBeLessThan(freight);
      });
    }
  });

  it('differs between the scales at 8.9 lb/ft3: 100 now, 110 before (scale of 19 July 2025)', () => {
    expect(freightClass(8.9 * LB_FT3, '13-level')).toBe(100);
    expect(freightClass(8.9 * LB_FT3, '18-level')).toBe(110);
  });

  it('reaches the target density by mass or by height', () => {
    const t = freightTarget(1.5, 1.2, 1.3, 400, 192);
    expect(freightDensity(1.5, 1.2, 1.3, t.massAtHeight).density).toBeCloseTo(192, 9);
    expect(freightDensity(1.5, 1.2, t.heightAtMass, 400).density).toBeCloseTo(192, 9);
  });

  it('names bad sizes', () => {
    expect(() => freightDensity(0, 1, 1, 1)).toThrow('length is 0 m; it must be at least 0.01 m');
    expect(() => freightClass(100, '20-level' as FreightScaleId)).toThrow("scale is '20-level'");
  });
});

describe('legal size', () => {
  it('turns at 102 in of width and at 80 in for lamps (23 CFR 658.15 from memory; FMVSS 108)', () => {
    const at = (inches: number) => overallWidth(inches * INCH, 0, 0, 0);
    expect(at(102)).toMatchObject({ withinLimit: true, clearanceLamps: true });
    expect(at(102.1).withinLimit).toBe(false);
    expect(at(80).clearanceLamps).toBe(true);
    expect(at(79.9).clearanceLamps).toBe(false);
  });

  it('allows more weight with length and with axles, in steps of 500 lb, and never over 80000 (federal formula, from memory)', () => {
    for (let axles = 2; axles <= 7; axles++) {
      let before = 0;
      for (let feet = 8; feet <= 60; feet++) {
        const pounds = bridgeFormulaWeight(feet * FT, axles) / LB;
        expect(pounds).toBeGreaterThanOrEqual(before);
        expect(pounds / 500).toBeCloseTo(Math.round(pounds / 500), 6);
        expect(pounds).toBeLessThanOrEqual(80000 * (1 + 1e-12));
        before = pounds;
      }
    }
    expect(() => bridgeFormulaWeight(3, 2.5)).toThrow('axles is 2.5; it must be a whole number');
  });
});
