import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bleachHalfLife,
  bleachIonicStrength,
  bleachLossRate,
  bleachSpecificGravity,
  bleachStrengthAfter,
  bleachStrengthOnDay,
  closedBleachPressureRate,
  hypochloriteMassFraction,
  hypochloriteMolarity,
  hypochloriteRateConstant,
  tradePercentOfMassFraction,
  tradePercentOfMolarity,
} from './index.ts';

const DAY = 86400;

/** dC/dt = -f k2 C² stepped by the classical fourth-order rule: a second way to the strength. */
function integrated(
  tradePercent: number,
  history: readonly { days: number; temperatureC: number }[],
  f: number,
) {
  let c = hypochloriteMolarity(tradePercent);
  const ionicStrength = bleachIonicStrength(c);
  for (const { days, temperatureC } of history) {
    const k = f * hypochloriteRateConstant(temperatureC, ionicStrength);
    const rate = (x: number) => -k * x * x;
    const steps = 200;
    const h = (days * DAY) / steps;
    for (let i = 0; i < steps; i++) {
      const k1 = rate(c);
      const k2 = rate(c + (h / 2) * k1);
      const k3 = rate(c + (h / 2) * k2);
      const k4 = rate(c + h * k3);
      c += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    }
  }
  return tradePercentOfMolarity(c);
}

describe('decay of bleach', () => {
  it('agrees with numerical integration of the rate law over any temperature history', () => {
    const period = fc.record({
      days: fc.double({ min: 0, max: 60, noNaN: true }),
      temperatureC: fc.double({ min: 15, max: 45, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 15, noNaN: true }),
        fc.array(period, { minLength: 1, maxLength: 5 }),
        (tradePercent, history) => {
          const day = bleachStrengthOnDay({ tradePercent, history });
          expect(Math.abs(day.low - integrated(tradePercent, history, 1.3))).toBeLessThan(
            1e-6 * tradePercent,
          );
          expect(Math.abs(day.high - integrated(tradePercent, history, 1))).toBeLessThan(1e-6 * tradePercent);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('adds up: the order of the periods makes no difference, and two halves make the whole', () => {
    const a = { days: 10, temperatureC: 20 };
    const b = { days: 5, temperatureC: 38 };
    const one = bleachStrengthOnDay({ tradePercent: 12.5, history: [a, b] });
    expect(bleachStrengthOnDay({ tradePercent: 12.5, history: [b, a] }).low).toBeCloseTo(one.low, 12);
    const halves = [a, a, b, b].map((p) => ({ ...p, days: p.days / 2 }));
    expect(bleachStrengthOnDay({ tradePercent: 12.5, history: halves }).low).toBeCloseTo(one.low, 12);
    expect(one.days).toBe(15);
  });

  it('never falls to less with less time, less heat or less strength, and the band never crosses', () => {
    const d = (max: number, min = 0) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(d(15, 8), d(100), d(50, 15), (trade, days, temperatureC) => {
        const at = (x: number, y: number) =>
          bleachStrengthOnDay({ tradePercent: trade, history: [{ days: x, temperatureC: y }] });
        const base = at(days, temperatureC);
        expect(base.high).toBeGreaterThanOrEqual(base.low);
        expect(base.high).toBeLessThanOrEqual(trade + 1e-9);
        expect(at(days + 1, temperatureC).low).toBeLessThan(base.low);
        expect(at(days, temperatureC + 1).low).toBeLessThanOrEqual(base.low);
      }),
      { numRuns: 60 },
    );
  });

  it('loses 3-4 % of the strength of 12.5 trade % a day in a truck at 38 degC (Adam and Gordon 1999, factor 1 to 1.3)', () => {
    const lost = (f: number) => 1 - bleachStrengthAfter(12.5, 38, DAY, f) / 12.5;
    expect(lost(1)).toBeGreaterThan(0.024);
    expect(lost(1.3)).toBeLessThan(0.04);
  });

  it('rejects the reading of the rate law as three hypochlorite an event: the published table refuses it', () => {
    // Community strength table: 12.5 trade % after 30 days at 80 degF is 9.93; half-life of 10 % at 25 degC about 220 days.
    expect(bleachStrengthAfter(12.5, 26.667, 30 * DAY, 3)).toBeLessThan(9);
    expect(bleachHalfLife(10, 25, 1.3) / DAY).toBeGreaterThan(200);
    expect(bleachHalfLife(10, 25, 3) / DAY).toBeLessThan(110);
  });

  it('cuts the loss to 14 % when the strength is halved, not to the 25 % often quoted', () => {
    const ratio = bleachLossRate(6.25, 25) / bleachLossRate(12.5, 25);
    expect(ratio).toBeGreaterThan(0.13);
    expect(ratio).toBeLessThan(0.15);
  });

  it('counts a cold store as 15 degC and says so, warns below the law, and refuses above 55 degC', () => {
    const cold = bleachStrengthOnDay({ tradePercent: 12.5, history: [{ days: 30, temperatureC: 4 }] });
    expect(cold.low).toBeCloseTo(bleachStrengthAfter(12.5, 15, 30 * DAY, 1.3), 9);
    expect(cold.warnings[0]).toMatch(/count as 15 degC/);
    const old = bleachStrengthOnDay({ tradePercent: 10, history: [{ days: 200, temperatureC: 38 }] });
    expect(old.warnings.some((w) => w.includes('measure it'))).toBe(true);
    expect(() =>
      bleachStrengthOnDay({ tradePercent: 12.5, history: [{ days: 1, temperatureC: 60 }] }),
    ).toThrow(/history\[0\].temperatureC is 60 degC; it must be at most 55 degC/);
    expect(() => bleachStrengthAfter(3, 25, DAY)).toThrow(/tradePercent is 3/);
  });

  it.each([
    [25, 7500],
    [30, 15300],
    [35, 30400],
    [40, 59200],
  ])(
    'raises the pressure of a shut tank 90 %% full at %i degC by %i Pa a day without any metal',
    (temperatureC, wanted) => {
      // Worked from Adam and Gordon 1999 with the ideal gas law; within 1 %.
      const perDay = closedBleachPressureRate(12.5, temperatureC, 0.9) * DAY;
      expect(Math.abs(perDay / wanted - 1)).toBeLessThan(0.01);
    },
  );
});

describe('strength of bleach', () => {
  it('keeps the specific gravity within 3 % of each published pair', () => {
    const pairs: [number, number][] = [
      [6.17, 1.08],
      [10, 1.14],
      [12.5, 1.16],
      [14.2, 1.196],
      [15, 1.2],
    ];
    for (const [trade, gravity] of pairs)
      expect(Math.abs(bleachSpecificGravity(trade) / gravity - 1)).toBeLessThan(0.03);
  });

  it('goes from weight to trade per cent and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 15, noNaN: true }), (trade) => {
        const w = hypochloriteMassFraction(trade, bleachSpecificGravity(trade));
        expect(tradePercentOfMassFraction(w)).toBeCloseTo(trade, 9);
      }),
      { numRuns: 50 },
    );
  });
});
