import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blendViscosity,
  dispersionViscosityEinstein,
  glycolFractionForCold,
  glycolVolumeForCold,
  idealMixDensity,
  mixedMassFraction,
  proportionerDelivered,
  proportionerFraction,
  proportionerStockStrength,
  recipe,
  saltSolutionDensity,
  tankMixOrder,
  thinnedWithWater,
  topUpVolume,
  ureaAmmoniumNitrateDensity,
  waterMassForFraction,
  type RecipeQuery,
} from './index.ts';
import { tipDensityFactor, liquidMass, waterDensity } from '../physics/index.ts';

const GALLON = 231 * 0.0254 ** 3;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function made(q: RecipeQuery) {
  const outcome = recipe(q);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.recipe;
}

describe('mixes by mass', () => {
  it('takes 18.95 gal of water to cut 100 gal of 32 % UAN to 28 %, not the 14.3 gal of a dilution by volume (Virginia Tech densities)', () => {
    const solution = 100 * GALLON * ureaAmmoniumNitrateDensity(0.32, 15.556);
    const water = waterMassForFraction(solution, 0.32, 0.28) / waterDensity(15.556) / GALLON;
    expect(water).toBeCloseTo(18.95, 1);
    expect(Math.abs(water - 14.3)).toBeGreaterThan(4);
  });

  it('keeps the mass of salt and of water when brine is thinned, and shrinks a little', () => {
    fc.assert(
      fc.property(
        between(5, 45),
        between(0.01, 5),
        between(0, 5),
        between(1, 40),
        (strength, volume, waterVolume, t) => {
          const outcome = thinnedWithWater({
            liquid: 'cacl2_brine',
            strength,
            strengthUnit: 'weight %',
            volume,
            waterVolume,
            temperatureC: t,
          });
          if (!outcome.ok) return;
          const { thinned } = outcome;
          const before = thinnedWithWater({
            liquid: 'cacl2_brine',
            strength,
            strengthUnit: 'weight %',
            volume,
            waterVolume: 0,
            temperatureC: t,
          });
          if (!before.ok) throw new Error(before.reason);
          const water = waterVolume * waterDensity(t);
          expect(thinned.mass).toBeCloseTo(before.thinned.mass + water, 6);
          expect(thinned.mass * thinned.massFraction).toBeCloseTo((before.thinned.mass * strength) / 100, 6);
          expect(thinned.volume).toBeLessThanOrEqual((volume + waterVolume) * 1.0005);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('mixes to a strength between the two, whatever the masses', () => {
    fc.assert(
      fc.property(between(0.1, 1e4), between(0, 1), between(0.1, 1e4), between(0, 1), (m1, w1, m2, w2) => {
        const w = mixedMassFraction(m1, w1, m2, w2);
        expect(w).toBeGreaterThanOrEqual(Math.min(w1, w2) - 1e-12);
        expect(w).toBeLessThanOrEqual(Math.max(w1, w2) + 1e-12);
        expect(w * (m1 + m2)).toBeCloseTo(m1 * w1 + m2 * w2, 6);
      }),
    );
    expect(() => mixedMassFraction(0, 0.1, 0, 0.2)).toThrow(/nothing to mix/);
  });

  it('adds up the volumes of an ideal mix and refuses fractions that are not a whole', () => {
    expect(idealMixDensity([0.5, 0.5], [1000, 2000])).toBeCloseTo(1000 / 0.75, 9);
    expect(() => idealMixDensity([0.5, 0.4], [1000, 2000])).toThrow(/add up to 0.9/);
    expect(blendViscosity([0.5, 0.5], [0.001, 0.004])).toBeCloseTo(0.002, 9);
    expect(dispersionViscosityEinstein(0.001, 0.04)).toBeCloseTo(0.0011, 9);
    expect(() => dispersionViscosityEinstein(0.001, 0.2)).toThrow(/volumeFraction is 0.2/);
  });
});

describe('errors of published tables', () => {
  it('does not give a 12 lb/gal liquid the factor of a 14 lb/gal one (Oklahoma State table 1 repeats its 14 lb/gal row)', () => {
    expect(tipDensityFactor(12 * 119.826)).toBeCloseTo(1.2, 2);
    expect(tipDensityFactor(14 * 119.826)).toBeCloseTo(1.3, 2);
  });

  it('weighs 1000 gal of 30 % CaCl2 as 10 700 lb, 2370 lb more than water (Laliberté 2009)', () => {
    const brine = liquidMass(1000 * GALLON, saltSolutionDensity('CaCl2', 0.3, 20)) / 0.45359237;
    expect(Math.abs(brine - 10700)).toBeLessThan(20);
    expect(brine - liquidMass(1000 * GALLON, waterDensity(20)) / 0.45359237).toBeCloseTo(2370, -1);
  });
});

describe('winterising', () => {
  it('finds the strength for a cold, back from the freezing curve (Melinder 2010: 40 % freezes at -20.57 degC)', () => {
    expect(glycolFractionForCold(-20.57)).toBeCloseTo(0.4, 4);
    expect(() => glycolFractionForCold(-60)).toThrow(/temperatureC is -60 degC/);
  });

  it('pours enough that the thinned fluid freezes just at the target, whatever water is left', () => {
    fc.assert(
      fc.property(between(0.001, 0.5), between(-15, -2), (residual, target) => {
        const volume = glycolVolumeForCold(residual, 0.55, target);
        const outcome = thinnedWithWater({
          liquid: 'pg',
          strength: 55,
          strengthUnit: 'weight %',
          volume,
          waterVolume: residual,
          temperatureC: 20,
        });
        expect(outcome.ok && outcome.thinned.coldLimitC).toBeCloseTo(target, 4);
      }),
      { numRuns: 40 },
    );
    expect(() => glycolVolumeForCold(0.1, 0.28, -30)).toThrow(/massFraction is 0.28; it must be above/);
  });

  it('does not believe the -50 degF of a label for 28 % fluid: it slushes near -11 degC', () => {
    expect(glycolFractionForCold(-11)).toBeLessThan(0.28);
    expect(glycolFractionForCold(-45.6)).toBeGreaterThan(0.55);
  });
});

describe('recipe cards', () => {
  it('balances stock, water and what is in the tank, by volume for trade %', () => {
    fc.assert(
      fc.property(
        between(8, 15),
        between(0.2, 4),
        between(0.1, 5),
        between(0, 0.3),
        between(0, 1),
        (stock, want, v, share, c) => {
          const tank = { volume: share * v, strength: c };
          const outcome = recipe({
            liquid: 'naocl_wash',
            stockStrength: stock,
            wantedStrength: want,
            strengthUnit: 'trade %',
            finalVolume: v,
            temperatureC: 20,
            inTank: tank,
          });
          if (!outcome.ok) return;
          const r = outcome.recipe;
          expect(r.by).toBe('volume');
          expect(r.stock.volume + r.water.volume + r.inTank.volume).toBeCloseTo(v, 9);
          expect(stock * r.stock.volume + tank.strength * tank.volume).toBeCloseTo(want * v, 9);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('balances by mass for weight %: salt and mass are kept, the volumes are not', () => {
    const r = made({
      liquid: 'cacl2_brine',
      stockStrength: 38,
      wantedStrength: 28,
      strengthUnit: 'weight %',
      finalVolume: 4,
      temperatureC: 20,
      inTank: { volume: 0.5, strength: 20 },
    });
    const mass = (p: { mass: number | undefined }) => p.mass ?? NaN;
    expect(r.by).toBe('mass');
    expect(mass(r.stock) + mass(r.water) + mass(r.inTank)).toBeCloseTo(mass(r.mix), 9);
    expect(0.38 * mass(r.stock) + 0.2 * mass(r.inTank)).toBeCloseTo(0.28 * mass(r.mix), 9);
    expect(r.stock.volume + r.water.volume + r.inTank.volume).toBeGreaterThan(4);
  });

  it('gives steps whose volumes are those of the card, water first and the liquid into the water', () => {
    const r = made({
      liquid: 'naoh',
      stockStrength: 50,
      wantedStrength: 5,
      strengthUnit: 'weight %',
      finalVolume: 0.4,
      temperatureC: 20,
    });
    const water = r.steps.filter(
      (s) => /water/.test(s.text) && s.volume !== undefined && !/Add the stock/.test(s.text),
    );
    expect(water.reduce((sum, s) => sum + (s.volume ?? 0), 0)).toBeCloseTo(r.water.volume, 9);
    const first = r.steps.findIndex((s) => /water into the tank first/.test(s.text));
    const liquid = r.steps.findIndex((s) => /never water to the stock/.test(s.text));
    expect(first).toBeGreaterThanOrEqual(0);
    expect(liquid).toBeGreaterThan(first);
    expect(r.steps[liquid]?.mass).toBeCloseTo(r.stock.mass ?? NaN, 9);
    expect(r.cautions.some((c) => c.includes('hot'))).toBe(true);
  });

  it('says why a mix cannot be made', () => {
    const q = { liquid: 'naocl_12', strengthUnit: 'trade %', finalVolume: 1, temperatureC: 20 } as const;
    const reason = (o: ReturnType<typeof recipe>) => (o.ok ? '' : o.reason);
    expect(reason(recipe({ ...q, stockStrength: 10, wantedStrength: 12 }))).toMatch(
      /cannot be made from stock of 10/,
    );
    expect(
      reason(recipe({ ...q, stockStrength: 12, wantedStrength: 1, inTank: { volume: 0.9, strength: 3 } })),
    ).toMatch(/cannot be made weaker/);
    expect(
      reason(recipe({ ...q, stockStrength: 12, wantedStrength: 11, inTank: { volume: 0.9, strength: 0 } })),
    ).toMatch(/too weak/);
    expect(
      reason(
        recipe({ ...q, liquid: 'sulfamic', strengthUnit: 'weight %', stockStrength: 15, wantedStrength: 5 }),
      ),
    ).toMatch(/density of Sulfamic acid cleaner is not known/);
    expect(() => recipe({ ...q, stockStrength: 12, wantedStrength: 1, finalVolume: -1 })).toThrow(
      /finalVolume is -1 m3/,
    );
  });

  it('tops up a tank: the balance holds, and stock itself is never reached', () => {
    fc.assert(
      fc.property(between(0.1, 10), between(0, 1), between(1.1, 4), between(5, 15), (v, c, want, stock) => {
        const add = topUpVolume(v, c, want, stock);
        expect((v * c + add * stock) / (v + add)).toBeCloseTo(want, 9);
      }),
    );
    expect(topUpVolume(1, 2, 2, 2)).toBe(0);
    expect(() => topUpVolume(1, 1, 5, 5)).toThrow(/no addition reaches it/);
  });
});

describe('proportioners', () => {
  it('gives 1.25 or 1.136 trade % from 12.5 at 1:10 by what 1:10 means (University of Massachusetts; sellers)', () => {
    expect(proportionerDelivered(12.5, 10, 'one in N')).toBeCloseTo(1.25, 9);
    expect(proportionerDelivered(12.5, 10, 'one and N')).toBeCloseTo(1.136, 3);
  });

  it('goes back from the wanted strength to the stock in either convention', () => {
    fc.assert(
      fc.property(
        between(1, 500),
        between(0.01, 20),
        fc.constantFrom('one in N' as const, 'one and N' as const),
        (n, c, how) => {
          expect(proportionerDelivered(proportionerStockStrength(c, n, how), n, how)).toBeCloseTo(c, 9);
          expect(proportionerFraction(n, how)).toBeLessThanOrEqual(1);
        },
      ),
    );
    expect(() => proportionerFraction(10, 'either' as 'one in N')).toThrow(/convention is 'either'/);
  });
});

describe('tank-mix order', () => {
  const partners = [
    { name: 'oil', formulation: 'oil' },
    { name: 'soluble', formulation: 'soluble liquid' },
    { name: 'granule', formulation: 'water-dispersible granule' },
    { name: 'concentrate', formulation: 'emulsifiable concentrate' },
    { name: 'conditioner', formulation: 'water conditioner' },
    { name: 'flowable', formulation: 'suspension concentrate' },
  ] as const;

  it('puts conditioner, dry, flowable, concentrate, soluble and oil in that order (Missouri DOT, North Dakota guide 2021)', () => {
    const { steps } = tankMixOrder(partners);
    expect(steps.flatMap((s) => s.partners)).toEqual([
      'conditioner',
      'granule',
      'flowable',
      'concentrate',
      'soluble',
      'oil',
    ]);
  });

  it('states the dispute when both a concentrate and a soluble liquid are there, and only then', () => {
    const disputed = (o: ReturnType<typeof tankMixOrder>) => o.notes.some((n) => n.startsWith('Disputed'));
    expect(disputed(tankMixOrder(partners))).toBe(true);
    expect(disputed(tankMixOrder(partners.slice(0, 3)))).toBe(false);
  });

  it('advises against more than three products and keeps every partner once', () => {
    const order = tankMixOrder(partners);
    expect(order.notes.some((n) => n.includes('not more than 3'))).toBe(true);
    expect(order.steps.flatMap((s) => s.partners).sort()).toEqual(partners.map((p) => p.name).sort());
    expect(() => tankMixOrder([{ name: 'x', formulation: 'paste' as 'oil' }])).toThrow(
      /partners\[0\].formulation is 'paste'/,
    );
  });
});
