import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countedStrength, liquidProperties } from './index.ts';

const flag = (p: ReturnType<typeof liquidProperties>, property: string, kind: string) =>
  p.flags.find((f) => f.property === property && f.kind === kind);

describe('liquid properties', () => {
  it('does not extrapolate a brine beyond its table, and names the table', () => {
    const p = liquidProperties({
      liquid: 'mgcl2_brine',
      strength: 36,
      strengthUnit: 'weight %',
      temperatureC: 20,
    });
    expect(p.density).toBeUndefined();
    expect(p.viscosity).toBeUndefined();
    expect(flag(p, 'density', 'unknown')?.reason).toMatch(
      /outside the table of Magnesium chloride brine: 0 to 32 weight %/,
    );
  });

  it('never gives the nonsense of the MgCl2 polynomial at 30 % (8100 mPa s, -100 degC; Melinder as labelled in an open library)', () => {
    const p = liquidProperties({
      liquid: 'mgcl2_brine',
      strength: 30,
      strengthUnit: 'weight %',
      temperatureC: 20,
    });
    expect(1000 * (p.viscosity ?? NaN)).toBeCloseTo(7.135, 1);
    expect(p.coldLimitC).toBeUndefined();
    expect(flag(p, 'coldLimit', 'unknown')?.reason).toMatch(/the salt, not ice/);
  });

  it('does not continue the ice curve of CaCl2 past the eutectic (FHWA RD-95-202: 29.8 %)', () => {
    const at = (strength: number) =>
      liquidProperties({ liquid: 'cacl2_brine', strength, strengthUnit: 'weight %', temperatureC: 20 });
    expect(at(29).coldLimitC).toBeLessThan(-40);
    expect(at(29).coldLimit).toBe('ice');
    const above = at(34);
    expect(above.coldLimit).toBe('salt-out');
    expect(above.coldLimitC).toBeUndefined();
    expect(flag(above, 'coldLimit', 'unknown')?.high).toBe(0);
    // Recalled solubility: 39.3 % crystallises at 10 degC.
    expect(at(39.3).coldLimitC).toBeCloseTo(10, 1);
  });

  it('says that 38 % CaCl2 is not all liquid at 0 degC', () => {
    const p = liquidProperties({
      liquid: 'cacl2_brine',
      strength: 38,
      strengthUnit: 'weight %',
      temperatureC: 0,
    });
    expect(flag(p, 'coldLimit', 'frozen')?.reason).toMatch(/salt comes out/);
    expect(p.density).toBeUndefined();
  });

  it('leaves no step at 0 degC where the warm and the cold fit of a brine are joined', () => {
    for (const [liquid, strength] of [
      ['cacl2_brine', 28],
      ['mgcl2_brine', 19],
    ] as const) {
      const at = (temperatureC: number) =>
        liquidProperties({ liquid, strength, strengthUnit: 'weight %', temperatureC });
      const [below, above] = [at(-1e-6), at(1e-6)];
      expect(below.viscosity ?? NaN).toBeCloseTo(above.viscosity ?? NaN, 7);
      expect(below.density ?? NaN).toBeCloseTo(above.density ?? NaN, 3);
      expect(at(-15).viscosity ?? NaN).toBeGreaterThan(above.viscosity ?? NaN);
    }
  });

  it('holds the end of a fertiliser line a little past its table, flagged, and then refuses', () => {
    const at = (temperatureC: number) =>
      liquidProperties({ liquid: 'uan', strength: 32, strengthUnit: 'weight %', temperatureC });
    expect(at(26).flags.some((f) => f.property === 'density')).toBe(false);
    expect(flag(at(38), 'density', 'estimate')?.reason).toMatch(/end value is held/);
    expect(at(38).density).toBeCloseTo(at(26.7).density ?? NaN, 6);
    expect(at(60).density).toBeUndefined();
  });

  it('brackets an unknown viscosity by judgement and takes the supplier’s value instead when there is one', () => {
    const q = { liquid: 'uan', strength: 28, strengthUnit: 'weight %', temperatureC: 20 } as const;
    const unknown = liquidProperties(q);
    expect(unknown.viscosity).toBeUndefined();
    expect(flag(unknown, 'viscosity', 'unknown')?.low).toBeGreaterThan(1e-3);
    const entered = liquidProperties({ ...q, measured: { viscosity: 0.004 } });
    expect(entered.viscosity).toBe(0.004);
    expect(entered.flags.some((f) => f.property === 'viscosity')).toBe(false);
    const thick = liquidProperties({ ...q, measured: { powerLaw: { consistency: 0.5, index: 0.6 } } });
    expect(thick.powerLaw).toEqual({ consistency: 0.5, index: 0.6 });
    expect(thick.viscosity).toBeUndefined();
    expect(thick.flags.some((f) => f.property === 'viscosity')).toBe(false);
  });

  it('freezes water below 0 degC and keeps a safe vapour pressure for every liquid', () => {
    const ice = liquidProperties({ liquid: 'water', temperatureC: -5 });
    expect(flag(ice, 'coldLimit', 'frozen')).toBeDefined();
    expect(ice.density).toBeUndefined();
    const water = liquidProperties({ liquid: 'water', temperatureC: 30 });
    expect(water.flags).toEqual([]);
    const bleach = liquidProperties({
      liquid: 'naocl_12',
      strength: 12.5,
      strengthUnit: 'trade %',
      temperatureC: 30,
    });
    expect(bleach.vapourPressure).toBe(water.vapourPressure);
    expect(flag(bleach, 'vapourPressure', 'estimate')?.reason).toMatch(/gas/);
  });

  it('keeps trade %, weight % and g/L apart (bulk specification: 14.2 trade %, 142 g/L, 12.5 weight % NaOCl)', () => {
    const at = (strength: number, strengthUnit: 'trade %' | 'weight %' | 'g/L') => {
      const c = countedStrength({ liquid: 'naocl_12', strength, strengthUnit });
      return c.ok ? (c.tradePercent ?? NaN) : NaN;
    };
    expect(at(14.2, 'trade %')).toBe(14.2);
    expect(at(142, 'g/L')).toBeCloseTo(14.2, 9);
    expect(at(12.5, 'weight %')).toBeCloseTo(14.2, 0);
    expect(at(12.5, 'weight %') / 12.5).toBeGreaterThan(1.1);
  });

  it('turns g/L into a mass fraction by the liquid’s own density', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.45, noNaN: true }), (w) => {
        const byWeight = liquidProperties({
          liquid: 'cacl2_brine',
          strength: 100 * w,
          strengthUnit: 'weight %',
          temperatureC: 20,
        });
        const back = countedStrength({
          liquid: 'cacl2_brine',
          strength: 1 * w * (byWeight.density ?? NaN),
          strengthUnit: 'g/L',
        });
        expect(back.ok && back.massFraction).toBeCloseTo(w, 6);
      }),
      { numRuns: 30 },
    );
  });

  it('refuses what is impossible, by field, value and limit', () => {
    expect(() => liquidProperties({ liquid: 'watre', temperatureC: 20 })).toThrow(
      /liquid is 'watre'; it must be one of water/,
    );
    expect(() => liquidProperties({ liquid: 'water', temperatureC: NaN })).toThrow(
      /temperatureC is not a number/,
    );
    expect(() =>
      liquidProperties({ liquid: 'water', strength: 3, strengthUnit: 'weight %', temperatureC: 20 }),
    ).toThrow(/takes none/);
    expect(() => liquidProperties({ liquid: 'uan', temperatureC: 20 })).toThrow(/strength is missing/);
    expect(() => liquidProperties({ liquid: 'uan', strength: 28, temperatureC: 20 })).toThrow(
      /strengthUnit is missing/,
    );
    expect(() =>
      liquidProperties({ liquid: 'uan', strength: 28, strengthUnit: 'trade %', temperatureC: 20 }),
    ).toThrow(/strengthUnit is 'trade %'/);
    expect(() =>
      liquidProperties({ liquid: 'naoh', strength: -1, strengthUnit: 'weight %', temperatureC: 20 }),
    ).toThrow(/strength is -1 weight %; it must be at least 0/);
    expect(() => liquidProperties({ liquid: 'water', temperatureC: 20, measured: { density: 3 } })).toThrow(
      /measured.density is 3 kg\/m3/,
    );
  });

  it('never gives a number that is not finite, whatever strength and temperature', () => {
    const ids = [
      'cacl2_brine',
      'mgcl2_brine',
      'naoh',
      'copper_sulfate',
      'pg',
      'uan',
      'naocl_12',
      'citric',
      'hort_oil',
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...ids),
        fc.double({ min: 0, max: 25, noNaN: true }),
        fc.double({ min: -60, max: 100, noNaN: true }),
        (liquid, strength, temperatureC) => {
          const strengthUnit = liquid === 'naocl_12' ? 'trade %' : 'weight %';
          const p = liquidProperties({ liquid, strength, strengthUnit, temperatureC });
          for (const v of [p.density, p.viscosity, p.vapourPressure, p.coldLimitC])
            expect(v === undefined || Number.isFinite(v)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});
