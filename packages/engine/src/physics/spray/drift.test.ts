import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  basicDrift,
  DRIFT_CROPS,
  DRIFT_ROWS,
  DRIFT_TABLE,
  DRIFT_TABLE_DISTANCES,
  driftBuffer,
  driftCurveFor,
  meanDrift,
  tabulatedDrift,
} from './index.ts';

const nearest = (crop: string) => (crop === 'arable' || crop === 'aerial' ? 1 : 3);

describe('Drift', () => {
  it('has all 49 published rows, one for each crop and number of applications (FOCUS Table B.1)', () => {
    expect(DRIFT_ROWS.length).toBe(49);
    expect(new Set(DRIFT_ROWS.map((r) => `${r.crop} ${r.applications}`)).size).toBe(49);
  });

  it('buffer is the inverse of the curve: no more than allowed there, more just before', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DRIFT_ROWS),
        fc.double({ min: -4, max: -0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.95, noNaN: true }),
        (row, exponent, reduction) => {
          const allowed = 10 ** exponent;
          const distance = driftBuffer(row.crop, row.applications, allowed, reduction);
          if (distance === null) {
            expect(basicDrift(row.crop, row.applications, 250) * (1 - reduction)).toBeGreaterThan(
              allowed * (1 - 1e-9),
            );
            return;
          }
          expect(basicDrift(row.crop, row.applications, distance) * (1 - reduction)).toBeLessThanOrEqual(
            allowed * (1 + 1e-8),
          );
          const before = distance * (1 - 1e-6);
          if (before > nearest(row.crop))
            expect(basicDrift(row.crop, row.applications, before) * (1 - reduction)).toBeGreaterThan(
              allowed * (1 - 1e-6),
            );
          // And it stays below farther out, which the step at the hinge could spoil.
          for (const farther of [1.01, 1.1, 1.5, 3])
            if (distance * farther <= 250)
              expect(
                basicDrift(row.crop, row.applications, distance * farther) * (1 - reduction),
              ).toBeLessThanOrEqual(allowed * (1 + 1e-8));
        },
      ),
      { numRuns: 500 },
    );
  });

  it('buffer grows when less is allowed and shrinks with a better tip', () => {
    const at = (allowed: number, reduction: number) =>
      driftBuffer('arable', 1, allowed, reduction) ?? Infinity;
    expect(at(0.001, 0)).toBeLessThan(at(0.0005, 0));
    expect(at(0.001, 0.5)).toBeLessThan(at(0.001, 0));
  });

  it('mean over a strip agrees with a fine sum, across the hinge too', () => {
    for (const [crop, from] of [
      ['hops', 14],
      ['fruit-early', 10.5],
      ['arable', 1],
    ] as const) {
      const width = 4;
      const n = 40_000;
      let sum = 0;
      for (let i = 0; i < n; i++) sum += basicDrift(crop, 1, from + ((i + 0.5) / n) * width);
      expect(meanDrift(crop, 1, from, width) / (sum / n)).toBeCloseTo(1, 4);
    }
  });

  it('regression meets the published table of one application (JKI 2010) within 5 %', () => {
    const pairs = [
      ['arable', 'field-crops'],
      ['fruit-early', 'fruit-early'],
      ['fruit-late', 'fruit-late'],
      ['vines-early', 'vines-early'],
      ['vines-late', 'vines-late'],
      ['hops', 'hops'],
    ] as const;
    for (const [crop, group] of pairs)
      DRIFT_TABLE_DISTANCES.forEach((distance, i) => {
        const percent = DRIFT_TABLE[group][i];
        if (percent === null || percent === undefined || distance > 30) return;
        // Half a digit of the printed value on top: the table is rounded to 0.01 %.
        expect(Math.abs(100 * basicDrift(crop, 1, distance) - percent)).toBeLessThan(0.05 * percent + 0.005);
      });
  });

  it('table is read exactly at its distances, falls between them and is never carried on', () => {
    expect(tabulatedDrift('area-crops-over-900-l-per-ha', 1)).toBeCloseTo(0.0444, 12);
    expect(tabulatedDrift('area-crops-over-900-l-per-ha', 10)).toBeCloseTo(0.0005, 12);
    const between = tabulatedDrift('area-crops-over-900-l-per-ha', 3);
    expect(between).toBeLessThan(0.0444);
    expect(between).toBeGreaterThan(0.0018);
    expect(() => tabulatedDrift('field-crops', 60)).toThrow(/distance is 60 m; it must be at most 50 m/);
    expect(() => tabulatedDrift('hops', 1)).toThrow(/distance is 1 m; it must be at least 3 m/);
  });

  it('says plainly that no published curve covers a high jet into trees', () => {
    for (const [work, height] of [
      ['high-jet', 15],
      ['hand-gun', 12],
      ['boomless', 0.3],
    ] as const) {
      const { curve, statement } = driftCurveFor(work, height);
      expect(curve).toBe('none');
      expect(statement).toContain('no published curve covers this');
    }
    expect(driftCurveFor('hand-gun', 0.4).curve).toBe('arable');
    expect(driftCurveFor('hand-gun', 1).curve).toBe('vines-late');
  });

  it('refuses what the tables do not have, by name', () => {
    expect(() => basicDrift('hops', 1, 1)).toThrow(/distance is 1 m; it must be at least 3 m/);
    expect(() => basicDrift('aerial', 2, 5)).toThrow(
      /applications is 2; the table for aerial has no such number/,
    );
    expect(() => basicDrift('rice' as 'hops', 1, 5)).toThrow(/crop is 'rice'/);
    expect(DRIFT_CROPS.length).toBe(7);
  });
});
