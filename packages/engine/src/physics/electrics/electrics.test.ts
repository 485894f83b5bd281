import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  WIRE_SIZES,
  batteryForRunTime,
  batteryRunTime,
  cableDrop,
  cableFor,
  capacityFromReserve,
  chargeBudget,
  coldCapacityShare,
  copperAreaForDrop,
  copperResistance,
  crankingVoltage,
  fuseFor,
  hoseDragForce,
  hoursToDepth,
  peukertExponent,
  rewindsFromBattery,
  stateOfCharge,
  wireAmpacity,
  wireGauge,
} from './index.ts';

const CMIL = (Math.PI / 4) * (0.001 * 0.0254) ** 2;

describe('wire', () => {
  it('follows the printed copper table: diameter, circular mils, ohms (ASTM B258 rule, IACS copper)', () => {
    for (const [gauge, inches, cmil, ohmPerThousandFeet] of [
      [20, 0.032, 1022, 10.1524],
      [14, 0.0641, 4107, 2.5254],
      [10, 0.1019, 10383, 0.9988],
      [4, 0.2043, 41741, 0.2485],
      [0, 0.3249, 105535, 0.0983],
      [-3, 0.46, 211600, 0.049],
    ] as const) {
      const wire = wireGauge(gauge);
      expect(wire.diameter / 0.0254).toBeCloseTo(inches, 4);
      expect(wire.area / CMIL / cmil).toBeCloseTo(1, 3);
      expect(copperResistance(wire.area, 304.8)).toBeCloseTo(ohmPerThousandFeet, 4);
    }
  });

  it('keeps SAE cable thinner than AWG of the same number, by 2.9 to 11.9 % in the printed columns', () => {
    const missing = WIRE_SIZES.map((s) => 1 - s.saeCmil / s.awgCmil);
    expect(Math.min(...missing)).toBeGreaterThan(0.028);
    expect(Math.max(...missing)).toBeLessThan(0.119);
    // A demand between the two columns of one number changes the size that must be bought.
    const between = 10000 * CMIL;
    expect(cableFor(between, 'AWG').label).toBe('10');
    expect(cableFor(between, 'SAE').label).toBe('8');
  });

  it('prints AWG columns within 3 % of the geometric rule, so that a typing error in the table would show', () => {
    for (const s of WIRE_SIZES)
      expect(Math.abs((s.awgCmil * CMIL) / wireGauge(s.gauge).area - 1)).toBeLessThan(0.03);
  });

  it('carries 0.85 as much in an engine space, rounded to whole amperes, and more the thicker it is', () => {
    WIRE_SIZES.forEach((s, i) => {
      expect(Math.abs(s.ampacityEngineSpace - 0.85 * s.ampacityOutside)).toBeLessThan(0.8);
      const next = WIRE_SIZES[i + 1];
      if (next) {
        expect(next.ampacityOutside).toBeGreaterThan(s.ampacityOutside);
        expect(next.saeCmil).toBeGreaterThan(s.awgCmil);
      }
    });
    expect(wireAmpacity(10, true)).toBe(51);
    expect(() => wireAmpacity(9, false)).toThrow('gauge is 9; it must be one of 18, 16');
  });

  it('is chosen by drop and by ampacity together', () => {
    const area = copperAreaForDrop(60, 3, 1.2);
    expect(cableFor(area, 'AWG').label).toBe('12');
    expect(cableFor(area, 'AWG', 60, true).label).toBe('8');
    expect(() => cableFor(area, 'AWG', 500)).toThrow('the thickest cable of the table');
  });

  it('loses voltage out and back, more when warm', () => {
    const area = 10e-6;
    expect(cableDrop(20, area, 5, 12).drop).toBeCloseTo((20 * 1.7241e-8 * 10) / area, 12);
    expect(cableDrop(20, area, 5, 12, 60).drop).toBeGreaterThan(cableDrop(20, area, 5, 12).drop);
  });
});

describe('fuses', () => {
  it('say that none fits when the cable is too thin, rather than choose one', () => {
    expect(fuseFor(40, 45, [30, 40, 50, 60])).toEqual({ minimumRating: 50, chosen: null, fits: false });
    expect(fuseFor(40, 68, [80, 60, 50, 30]).chosen).toBe(50);
  });
});

describe('batteries', () => {
  it('give at the rated current exactly the rated hours: the 14.5 h of t = C/I^k does not come out', () => {
    expect(batteryRunTime(100, 20, 1.2, 5)).toBe(20);
    expect(100 / 5 ** 1.2).toBeCloseTo(14.5, 1);
  });

  it('give less charge the harder they are drawn, and their exponent is found back from two run times', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.01, max: 1.5, noNaN: true }),
        fc.double({ min: 1, max: 50, noNaN: true }),
        fc.double({ min: 1.2, max: 5, noNaN: true }),
        (k, low, ratio) => {
          const high = low * ratio;
          const slow = batteryRunTime(100, 20, k, low);
          const fast = batteryRunTime(100, 20, k, high);
          expect(fast * high).toBeLessThan(slow * low);
          expect(peukertExponent(low, slow, high, fast)).toBeCloseTo(k, 9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('of the size asked for last just the time, when their share is used up', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1.5, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0.5, max: 12, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (k, current, hours, share) => {
          const capacity = batteryForRunTime(current, hours, share, 20, k);
          expect((share * batteryRunTime(capacity, 20, k, current)) / hours).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('refuse two ratings that do not belong together', () => {
    expect(() => peukertExponent(5, 20, 25, 6)).toThrow('exponent of these two ratings is 0.74');
    expect(() => peukertExponent(25, 3, 5, 20)).toThrow(
      'currentHigh is 5 A; it must be above currentLow: 25 A',
    );
  });

  it('convert reserve minutes at their own 25 A, not at the 20 h rate', () => {
    expect(capacityFromReserve(7200)).toBe(50);
  });

  it('lose capacity in the cold along the stored points (from memory)', () => {
    expect(coldCapacityShare(-18)).toBeCloseTo(0.6, 12);
    expect(coldCapacityShare(0)).toBeCloseTo(0.8, 12);
    expect(coldCapacityShare(-9)).toBeCloseTo(0.7, 12);
    expect(coldCapacityShare(40)).toBe(1);
    expect(() => coldCapacityShare(-30)).toThrow('temperatureC is -30 degC; it must be at least -18 degC');
  });

  it('of no charge left over never go below empty nor above full', () => {
    expect(stateOfCharge(100, 0.5, -13.1, 8)).toBe(0);
    expect(stateOfCharge(100, 0.9, 10, 8)).toBe(1);
    const budget = {
      rewindCurrent: 50,
      rewindTime: 90,
      rewindsPerHour: 10,
      controlCurrent: 4,
      coilCurrent: 5,
    };
    const { net } = chargeBudget(budget);
    expect(stateOfCharge(100, 1, net, hoursToDepth(100, 0.5, net)!)).toBeCloseTo(0.5, 12);
  });

  it('never reach their planned depth when as much goes in as comes out', () => {
    for (const net of [3, 0, -0, -Number.MIN_VALUE]) expect(hoursToDepth(100, 0.5, net)).toBeNull();
  });
});

describe('reels and starters', () => {
  it('pull the hose in at constant force by its weight, never push it', () => {
    expect(hoseDragForce(90, 0.6, 0.5)).toBeCloseTo(90 * 0.6 * 9.80665 * 0.5, 9);
    expect(hoseDragForce(90, 0.6, 0.1, -0.5)).toBe(0);
  });

  it('count whole rewinds only', () => {
    const r = rewindsFromBattery(85, 20, 1.25, 45, 60, 0.5);
    expect(r.rewinds).toBe(Math.floor((0.5 * r.runTime) / 60));
  });

  it('leave the starter what cable and joints do not take, and never less than nothing', () => {
    const c = crankingVoltage(150, wireGauge(4).area, 1.5, 0.001, 10.2);
    expect(c.cableDrop + c.jointDrop + c.starterVoltage).toBeCloseTo(10.2, 12);
    expect(crankingVoltage(1500, 1e-6, 5, 0.01, 10).starterVoltage).toBe(0);
  });

  it('refuse rewinds that do not fit into their hour, by name', () => {
    expect(() =>
      chargeBudget({
        rewindCurrent: 45,
        rewindTime: 120,
        rewindsPerHour: 40,
        controlCurrent: 0,
        coilCurrent: 5,
      }),
    ).toThrow('rewindTime × rewindsPerHour is 4800 s; it must be at most 3600 s');
  });
});
