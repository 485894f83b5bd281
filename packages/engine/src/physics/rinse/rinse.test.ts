import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  agedPumpFlow,
  agitationByRule,
  agitationSupply,
  AGITATION_RULES,
  airGap,
  antifreezeAfterResidual,
  antifreezeForCold,
  containerRinse,
  continuousRinseDilution,
  continuousRinseWater,
  expectedResidual,
  hopperTime,
  jetsForTank,
  pumpDemand,
  rinseDilution,
  rinsePlan,
  rinseTankVolume,
  rinseWaterForDilution,
  stockForBatch,
} from './index.ts';

const GAL = 231 * 0.0254 ** 3;

describe('Rinsing', () => {
  it('water for a dilution gives that dilution', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
        fc.double({ min: 1, max: 1e4, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        (residual, dilution, rinses) => {
          const water = rinseWaterForDilution(residual, dilution, rinses);
          if (water > 100) return;
          expect(rinseDilution(residual, water, rinses) / dilution).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('more rinses of the same water always thin more, and never more than the continuous rinse', () => {
    for (let n = 1; n < 20; n++)
      expect(rinseDilution(0.01, 0.1, n + 1)).toBeGreaterThan(rinseDilution(0.01, 0.1, n));
    expect(rinseDilution(0.01, 0.1, 20)).toBeLessThan(continuousRinseDilution(0.01, 0.1));
    expect(continuousRinseWater(0.01, continuousRinseDilution(0.01, 0.05))).toBeCloseTo(0.05, 12);
  });

  it('batch rinse agrees with adding water and spraying out, step by step', () => {
    let concentration = 1;
    for (let i = 0; i < 3; i++) concentration *= 0.01 / (0.01 + 0.04);
    expect(1 / rinseDilution(0.01, 0.12, 3)).toBeCloseTo(concentration, 12);
  });

  it('continuous rinse agrees with its differential equation', () => {
    let c = 1;
    const steps = 100_000;
    for (let i = 0; i < steps; i++) c -= (c / 0.01) * (0.05 / steps);
    expect(1 / continuousRinseDilution(0.01, 0.05)).toBeCloseTo(c, 5);
  });

  it('factor 300 takes 17.1 residuals in 3 rinses and 12.7 in 4 (mass balance)', () => {
    expect(rinseWaterForDilution(0.01, 300, 3) / 0.01).toBeCloseTo(17.08, 2);
    expect(rinseWaterForDilution(0.01, 300, 4) / 0.01).toBeCloseTo(12.65, 2);
  });

  it('plan says what is missing on board and lets the hose decide when it is the largest', () => {
    const p = {
      residual: 0.005,
      hose: 0.012,
      hoseChanges: 2,
      dilution: 50,
      rinses: 3,
      carried: 0.03,
      flow: 2e-4,
    };
    const plan = rinsePlan(p);
    expect(plan.reached).toBeGreaterThanOrEqual(50 * (1 - 1e-9));
    expect(plan.missing).toBeCloseTo(plan.water - 0.03, 12);
    expect(plan.time).toBeCloseTo(plan.water / 2e-4, 9);
    expect(rinsePlan({ ...p, hose: 0.1 }).water).toBeCloseTo(0.2, 12);
  });

  it('rinse tank takes either rule (ISO 16119-3:2013 excerpt)', () => {
    expect(rinseTankVolume(1, 0.007).least).toBeCloseTo(0.07, 12);
  });

  it('containers of 5 gal and more take a fifth, smaller ones a quarter (Montana)', () => {
    expect(containerRinse('montana', 4.99 * GAL).share).toBe(0.25);
    expect(containerRinse('montana', 5 * GAL).share).toBe(0.2);
    expect(containerRinse('montana', 2.5 * GAL).power).toBeCloseTo((0.5 * 3 * 2.5 * GAL) / 4, 12);
    expect(() => containerRinse('utah', 0.01)).toThrow(/rule is 'utah'; it must be one of montana/);
  });

  it('residual to expect holds the published sprayers (extension handout)', () => {
    for (const [tank, left] of [
      [159, 2.1],
      [396, 7.6],
    ] as const) {
      const { least, most } = expectedResidual(tank * GAL);
      expect((left * GAL) / least).toBeGreaterThan(0.99);
      expect((left * GAL) / most).toBeLessThan(1.01);
    }
  });
});

describe('Agitation and pump', () => {
  it('suspensions take more than solutions and jets let the return be half (GRDC; PT 2009)', () => {
    expect(agitationByRule('suspension', 1)).toBeGreaterThan(agitationByRule('solution', 1));
    expect(
      agitationByRule('netherlands-return-only', 1) / agitationByRule('netherlands-with-jets', 1),
    ).toBeCloseTo(2, 12);
    for (const { origin } of AGITATION_RULES) expect(origin.checkedBy.length).toBeGreaterThan(3);
    expect(() => agitationByRule('other', 1)).toThrow(/rule is 'other'/);
  });

  it('supply counts the entrained liquid only when a gain is given', () => {
    expect(agitationSupply(1e-4, 2e-4, 2, 5e-4)).toBeCloseTo(1, 12);
    expect(agitationSupply(1e-4, 2e-4, 2, 5e-4, 3)).toBeCloseTo(2.6, 12);
  });

  it('tanks of 55, 100 and 200 gal want 1, 3 and 5 jets, larger ones in proportion', () => {
    expect([55, 56, 100, 200, 400].map((g) => jetsForTank(g * GAL))).toEqual([1, 3, 3, 5, 10]);
  });

  it('pump demand holds outlets, stirring, eductor and wear', () => {
    expect(pumpDemand(1e-3, 5e-4, 0.2, 5e-4)).toBeCloseTo(2.4e-3, 12);
    expect(agedPumpFlow(1e-3, 2)).toBeCloseTo(1e-3 * 0.97 ** 2, 12);
  });
});

describe('Filling', () => {
  it('leaves an air gap of at least an inch', () => {
    expect(airGap(0.005)).toBeCloseTo(0.0254, 12);
    expect(airGap(0.0254)).toBeCloseTo(0.0508, 12);
  });
  it('hopper time is emptying, opening and rinsing', () => {
    expect(hopperTime(0.02, 5e-4, 2, 30, 0.005)).toBeCloseTo(40 + 2 * 40, 9);
  });
  it('stock and water make the batch', () => {
    expect(stockForBatch(1, 0.125, 0.03)).toBeCloseTo(0.24, 12);
    expect(() => stockForBatch(1, 0.03, 0.125)).toThrow(/target is 0.125; it must be at most 0.03/);
  });
});

describe('Winterising', () => {
  // An invented freezing table: the liquids layer brings the real one.
  const table = { shares: [0, 0.2, 0.4, 0.6], freezing: [273.15, 265, 250, 225] };

  it('puts in enough that the thinned mix still stands the cold', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0005, max: 0.05, noNaN: true }),
        fc.double({ min: 226, max: 272, noNaN: true }),
        (residual, lowest) => {
          const { antifreeze, share } = antifreezeForCold({ residual, strength: 0.95, lowest, ...table });
          expect(antifreeze).not.toBeNull();
          expect(antifreezeAfterResidual(antifreeze ?? 0, 0.95, residual)).toBeCloseTo(share, 9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('says when a weak antifreeze can never do it, and refuses to go beyond the table', () => {
    const p = { residual: 0.01, strength: 0.5, lowest: 230, ...table };
    expect(antifreezeForCold(p).antifreeze).toBeNull();
    expect(() => antifreezeForCold({ ...p, lowest: 220 })).toThrow(
      /lowest is 220 K; it must be at least 225 K/,
    );
    expect(() => antifreezeForCold({ ...p, freezing: [273, 280, 250, 225] })).toThrow(/freezing\[1\]/);
    expect(antifreezeForCold({ ...p, lowest: 273.5 }).antifreeze).toBe(0);
  });
});
