import { describe, expect, it } from 'vitest';
import {
  COUPLER_CLASSES,
  HITCH_CATEGORIES,
  TRAILER_BRAKE_RULES,
  couplerClass,
  couplerStrengths,
  dualMarkedTyreCapacity,
  federalTrailerBrakes,
  hitchTestForces,
  lowestRating,
  stateTrailerBrakes,
  surgeBrakeTowRating,
  tyreForAxle,
  tyreLoad,
  tyreLoadLaw,
} from './index.ts';

const LB = 0.45359237;
const LBF = LB * 9.80665;

describe('tyre load index', () => {
  it('guards the misprints of single copies: 83 = 478, 61 = 265, 62 = 165, 135 = 2190 (four stored copies compared)', () => {
    expect([83, 61, 62, 135].map(tyreLoad)).toEqual([487, 257, 265, 2180]);
  });

  it('rises with every index and stays within 1.8 % of the preferred-number law', () => {
    for (let i = 60; i <= 150; i++) {
      if (i > 60) expect(tyreLoad(i)).toBeGreaterThan(tyreLoad(i - 1));
      expect(Math.abs(tyreLoad(i) / tyreLoadLaw(i) - 1)).toBeLessThan(0.018);
    }
  });

  it('chooses the lowest index that carries the axle: the one below does not', () => {
    for (const rating of [600, 1588, 3175, 5000]) {
      const t = tyreForAxle(rating, 2);
      expect(t.axleByTyres).toBeGreaterThanOrEqual(rating);
      expect(2 * tyreLoad(t.loadIndex - 1)).toBeLessThan(rating);
    }
    expect(() => tyreForAxle(6700, 1)).toThrow('with 1 tyres it must be at most 3350 kg');
    expect(() => tyreLoad(83.5)).toThrow('loadIndex is 83.5; it must be a whole number');
    expect(() => tyreLoad(151)).toThrow('loadIndex is 151; it must be at most 150');
    expect(dualMarkedTyreCapacity(96, 94, 1)).toBe(1420);
    expect(() => dualMarkedTyreCapacity(96, 151, 1)).toThrow('multiIndex is 151; it must be at most 150');
  });
});

describe('couplers', () => {
  it('change class exactly at the printed weights and end at class 4 (Maryland COMAR 11.13.08.10)', () => {
    for (const row of COUPLER_CLASSES) {
      expect(couplerClass(row.maxGrossLb * LB).class).toBe(row.class);
      expect(couplerClass((row.maxGrossLb + 1) * LB).class).toBe(row.class === 4 ? 0 : row.class + 1);
    }
    expect(couplerClass(2000 * LB).maxTongue).toBeCloseTo(200 * LB, 9);
    expect(couplerClass(5000 * LB).maxTongue).toBeCloseTo(750 * LB, 9);
  });

  it('keep the class 4 asymmetry as printed: 1.4 down against 1.3 up (memory has 1.3 for both)', () => {
    const s = couplerStrengths('4', 10000 * LB);
    expect(s.verticalCompression / s.verticalTension).toBeCloseTo(1.4 / 1.3, 12);
    expect(couplerStrengths('2', 1000).longitudinalTension).toBeCloseTo(10500 * LBF, 6);
    expect(() => couplerStrengths('1', 2500 * LB)).toThrow('maxGross is');
  });

  it('test weight-distributing hitches with the printed laws (V = 0.045 R + 1650; L = 0.067 R + 2070)', () => {
    const f = hitchTestForces(5000 * LB, 'weight-distributing');
    expect(f.verticalAndLongitudinal / LBF).toBeCloseTo(0.045 * 5000 + 1650, 6);
    expect(f.longitudinal / LBF).toBeCloseTo(0.067 * 5000 + 2070, 6);
  });

  it('are rated by the weakest part of the chain', () => {
    expect(lowestRating(['receiver', 'ball', 'coupler'], [2268, 1588, 2268])).toEqual({
      rating: 1588,
      name: 'ball',
    });
    expect(() => lowestRating([], [])).toThrow('ratings has 0 entries');
  });
});

describe('brake rules', () => {
  it('show that published lists disagree where they do, and say unknown where they say nothing', () => {
    expect(stateTrailerBrakes('CO', 2000 * LB, 20)).toMatchObject({ answer: 'required', conflict: true });
    expect(stateTrailerBrakes('AK', 4000 * LB, 20)).toMatchObject({ answer: 'required', conflict: true });
    expect(stateTrailerBrakes('CO', 3500 * LB, 20).conflict).toBe(false);
    expect(stateTrailerBrakes('KS', 9000 * LB, 20).answer).toBe('unknown');
    expect(Object.keys(TRAILER_BRAKE_RULES)).toHaveLength(51);
    expect(() => stateTrailerBrakes('XX', 1000, 20)).toThrow("state is 'XX'");
  });

  it('exempt a light trailer that rests little on its tow vehicle from the federal rule (49 CFR 393.42(b)(3))', () => {
    const tow = 6000 * LB;
    expect(federalTrailerBrakes(9000 * LB, 5000 * LB, 500 * LB, tow)).toBe(false);
    expect(federalTrailerBrakes(10001 * LB, 3000 * LB, 400 * LB, tow)).toBe(false);
    expect(federalTrailerBrakes(10001 * LB, 3001 * LB, 400 * LB, tow)).toBe(true);
    expect(federalTrailerBrakes(10001 * LB, 3000 * LB, 2401 * LB, tow)).toBe(true);
  });

  it('step the surge brake ratio at 12000 lb and refuse above 20000 (49 CFR 393.48(d))', () => {
    expect(surgeBrakeTowRating(12000 * LB) / LB).toBeCloseTo(12000 / 1.75, 6);
    expect(surgeBrakeTowRating(12001 * LB) / LB).toBeCloseTo(12001 / 1.25, 6);
    expect(() => surgeBrakeTowRating(20001 * LB)).toThrow('trailerRating is');
  });
});

describe('hitch categories', () => {
  it('guard the spans misquoted in single copies: category 3 is 965 mm, not 960 (two of three manuals)', () => {
    const span = (c: string) => HITCH_CATEGORIES.find((h) => h.category === c)!.lowerSpanMm;
    expect(span('3')).toBe(965);
    expect(span('2')).toBe(825);
    expect(span('3N')).toBe(span('2'));
  });

  it('state no lift: nothing in a category can be read as proof that a tractor carries the rig', () => {
    for (const row of HITCH_CATEGORIES)
      expect(Object.keys(row).join(' ')).not.toMatch(/lift|capacity|mass|load/i);
  });
});
