import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tipDensityFactor } from '../flow/index.ts';
import {
  CLASS_BORDERS,
  doseFromFlow,
  driftableShare,
  dropletClassAt,
  isAsCoarseAs,
  ISO_TIPS,
  isoTipColour,
  isoTipFlow,
  isoTipsForDose,
  liquidFlowFromWater,
  medianDiameterTrend,
  nozzleFlowAtPressure,
  nozzlePressureForFlow,
  speedRangeOfPressures,
  tipIsWorn,
} from './index.ts';

const LITRE_A_HECTARE = 1e-7;

describe('Tips', () => {
  it('flow and pressure are inverse of each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e5, max: 2e6, noNaN: true }), (pressure) => {
        const flow = nozzleFlowAtPressure(2e-5, 3e5, pressure);
        expect(nozzlePressureForFlow(2e-5, 3e5, flow) / pressure).toBeCloseTo(1, 9);
      }),
      { numRuns: 100 },
    );
  });

  it('1 to 5 bar is a speed range of only 2.2 to 1 (orifice law)', () => {
    expect(speedRangeOfPressures(1e5, 5e5)).toBeCloseTo(2.236, 3);
  });

  it('chosen for a dose lay that dose at the pressure they name, density counted once in the flow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 400, noNaN: true }),
        fc.double({ min: 1.2, max: 5, noNaN: true }),
        fc.double({ min: 800, max: 1400, noNaN: true }),
        (litres, speed, density) => {
          const dose = litres * LITRE_A_HECTARE;
          const p = { dose, speed, spacing: 0.5, density, leastPressure: 1e5, mostPressure: 5e5 };
          const choice = isoTipsForDose(p);
          choice.sizes.forEach((size, i) => {
            const pressure = choice.pressures[i] ?? NaN;
            const flow = liquidFlowFromWater(isoTipFlow(size, pressure), density);
            expect(doseFromFlow(flow, speed, 0.5) / dose).toBeCloseTo(1, 9);
            expect(speed).toBeGreaterThanOrEqual((choice.slowest[i] ?? NaN) * (1 - 1e-9));
            expect(speed).toBeLessThanOrEqual((choice.fastest[i] ?? NaN) * (1 + 1e-9));
          });
          expect(choice.waterFlow / choice.flow).toBeCloseTo(tipDensityFactor(density), 12);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('for 200 L/ha at 8 km/h on 0.5 m are 03 and its neighbours, and none for an absurd dose', () => {
    const p = {
      dose: 200 * LITRE_A_HECTARE,
      speed: 8 / 3.6,
      spacing: 0.5,
      density: 1000,
      leastPressure: 1e5,
      mostPressure: 5e5,
    };
    expect(isoTipsForDose(p).sizes).toContain('03');
    expect(isoTipsForDose({ ...p, dose: 0.5 }).sizes).toEqual([]);
  });

  it('of the series flow in proportion to their size and carry their colours', () => {
    for (const tip of ISO_TIPS) expect(isoTipFlow(tip.size, 3e5)).toBeCloseTo((tip.units * 0.4e-3) / 60, 15);
    expect(isoTipColour('025')).toBe('lilac');
    expect(() => isoTipFlow('07', 3e5)).toThrow(/size is '07'; it must be one of the ISO sizes 01, 015/);
  });

  it('are worn from 10 % over new on and never by giving too little', () => {
    expect(tipIsWorn(1e-5, 1.101e-5)).toBe(true);
    expect(tipIsWorn(1e-5, 1.099e-5)).toBe(false);
    expect(tipIsWorn(1e-5, 0.5e-5)).toBe(false);
  });
});

describe('Droplet class', () => {
  const pressures = [1e5, 2e5, 3e5, 5e5];
  const classes = ['very-coarse', 'coarse', 'medium', 'medium'] as const;

  it('is read from the data of the tip, the finer one between two pressures, unknown outside', () => {
    expect(dropletClassAt(pressures, classes, 2e5)).toBe('coarse');
    expect(dropletClassAt(pressures, classes, 1.5e5)).toBe('coarse');
    expect(dropletClassAt(pressures, classes, 4e5)).toBe('medium');
    expect(dropletClassAt(pressures, classes, 6e5)).toBe('unknown');
    expect(dropletClassAt(pressures, classes, 0.5e5)).toBe('unknown');
    expect(dropletClassAt([], [], 3e5)).toBe('unknown');
  });

  it('refuses lists that do not match and classes it does not know', () => {
    expect(() => dropletClassAt([1e5], [], 1e5)).toThrow(/classes has 0 entries/);
    expect(() => dropletClassAt([1e5], ['big' as 'fine'], 1e5)).toThrow(/classes\[0\] is 'big'/);
    expect(() => dropletClassAt([2e5, 1e5], ['fine', 'fine'], 1e5)).toThrow(/pressures\[1\] is 100000/);
  });

  it('has an order, five borders or more and a driftable share only where one is published (GRDC 2025)', () => {
    expect(isAsCoarseAs('coarse', 'medium')).toBe(true);
    expect(isAsCoarseAs('fine', 'medium')).toBe(false);
    expect(CLASS_BORDERS.length).toBe(6);
    expect(driftableShare('fine')).toBeNull();
    expect(driftableShare('medium')).toBe(0.2);
    expect(driftableShare('ultra-coarse')).toBe(0.05);
  });

  it('trend of the median goes down with pressure', () => {
    expect(medianDiameterTrend(3e-4, 2e5, 4e5)).toBeCloseTo(3e-4 * 2 ** -0.3, 12);
  });
});
