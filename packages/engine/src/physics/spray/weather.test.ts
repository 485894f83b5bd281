import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beaufortForce,
  deltaT,
  deltaTState,
  dropLifetime,
  exclusionDistance,
  EXCLUSION_RULES,
  fallBeforeDry,
  fallVelocityBest,
  fallVelocityMeasured,
  fallVelocitySphere,
  doseBand,
  singleDropDrift,
  wetBulbStull,
  windAgainstRule,
  WIND_RULES,
} from './index.ts';

describe('Falling drops', () => {
  it('table meets measured points that are not in it (Gunn & Kinzer 1949, from memory: 0.3, 1.6 and 4.0 mm)', () => {
    expect(fallVelocityMeasured(0.3e-3)).toBeCloseTo(1.17, 1);
    expect(fallVelocityMeasured(1.6e-3) / 5.65).toBeCloseTo(1, 2);
    expect(fallVelocityMeasured(4e-3) / 8.83).toBeCloseTo(1, 2);
  });

  it('three laws agree within their stated bands', () => {
    for (let d = 0.2e-3; d <= 1.6e-3; d += 0.1e-3)
      expect(Math.abs(fallVelocitySphere(d) / fallVelocityMeasured(d) - 1)).toBeLessThan(0.1);
    expect(fallVelocitySphere(4e-3) / fallVelocityMeasured(4e-3)).toBeCloseTo(1.12, 1);
    for (let d = 0.2e-3; d <= 6e-3; d += 0.1e-3)
      expect(Math.abs(fallVelocityBest(d) / fallVelocityMeasured(d) - 1)).toBeLessThan(0.05);
  });

  it('small balls fall by Stokes', () => {
    const d = 1e-5;
    const stokes = (9.80665 * (998.2 - 1.204) * d * d) / (18 * 1.82e-5);
    expect(fallVelocitySphere(d) / stokes).toBeCloseTo(1, 2);
  });

  it('bigger drops fall faster, dry up later and drift less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2e-5, max: 1.9e-4, noNaN: true }),
        fc.double({ min: 1.001, max: 1.05, noNaN: true }),
        (d, more) => {
          expect(fallVelocitySphere(d * more)).toBeGreaterThan(fallVelocitySphere(d));
          expect(singleDropDrift(d * more, 1, 4)).toBeLessThan(singleDropDrift(d, 1, 4));
          expect(dropLifetime(d * more, 5)).toBeGreaterThan(dropLifetime(d, 5));
          expect(fallBeforeDry(d * more, 5)).toBeGreaterThan(fallBeforeDry(d, 5));
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('Weather', () => {
  it('wet bulb stays below the air and Delta T falls with humidity', () => {
    for (const t of [5, 20, 35])
      for (let rh = 0.1; rh < 0.95; rh += 0.1) {
        expect(wetBulbStull(t, rh)).toBeLessThan(t + 0.65);
        expect(deltaT(t, rh + 0.04)).toBeLessThanOrEqual(deltaT(t, rh));
      }
    expect(() => wetBulbStull(20, 50)).toThrow(/humidity is 50; it must be at most 0.99/);
  });

  it('Delta T bands: 2 to 8 good, to 10 with care, above not (GRDC 2025)', () => {
    expect([1, 2, 8, 9, 10, 10.1].map(deltaTState)).toEqual(['care', 'good', 'good', 'care', 'care', 'stop']);
  });

  it('force follows speed: 6, 12 and 20 km/h begin forces 2, 3 and 4 (Victoria Dept of Health)', () => {
    expect([5.9, 6, 11.9, 12, 19.9, 20].map((kmh) => beaufortForce(kmh / 3.6))).toEqual([1, 2, 2, 3, 3, 4]);
  });

  it('wind read at 2 m is brought up to the 10 m of a rule', () => {
    const low = windAgainstRule('victoria', 16 / 3.6, 2);
    expect(low.wind * 3.6).toBeCloseTo(16 / 0.7478, 0);
    expect(low.state).toBe('stop');
    expect(windAgainstRule('victoria', 16 / 3.6, 10).state).toBe('good');
    expect(windAgainstRule('victoria', 20 / 3.6, 10).state).toBe('stop');
    expect(windAgainstRule('victoria', 3 / 3.6, 10).state).toBe('care');
  });

  it('a rule that does not state its height says so', () => {
    const verdict = windAgainstRule('uk-guide', 5 / 3.6, 2);
    expect(verdict.heightKnown).toBe(false);
    expect(verdict.reason).toMatch(/metres not stated/);
    expect(() => windAgainstRule('moon', 1, 2)).toThrow(/rule is 'moon'; it must be one of victoria/);
  });

  it('every rule carries place, edition, date and who checked', () => {
    for (const { origin } of [...WIND_RULES, ...EXCLUSION_RULES])
      for (const text of [origin.place, origin.edition, origin.date, origin.checkedBy, origin.source])
        expect(text.length).toBeGreaterThan(2);
  });
});

describe('Keeping people out', () => {
  it('a finer tip quadruples the distance and a low outlet needs none (40 CFR 170.405)', () => {
    const fine = exclusionDistance('us-2024', 'spray', 'fine', 1);
    expect(fine / exclusionDistance('us-2024', 'spray', 'medium', 1)).toBeCloseTo(4, 12);
    expect(exclusionDistance('us-2024', 'spray', 'coarse', 0.3)).toBe(0);
    expect(exclusionDistance('us-2024', 'air-blast', 'ultra-coarse', 0.3)).toBeCloseTo(30.48, 9);
    expect(() => exclusionDistance('us-1999', 'spray', 'fine', 1)).toThrow(/edition is 'us-1999'/);
  });

  it('dose bands end at quarters, their own ends included (Defra PB5621)', () => {
    expect([0.25, 0.251, 0.5, 0.75, 0.751, 1].map((s) => doseBand(s * 1e-6, 1e-6).band)).toEqual([
      0.25, 0.5, 0.5, 0.75, 1, 1,
    ]);
    expect(() => doseBand(2e-6, 1e-6)).toThrow(/dose is/);
  });
});
