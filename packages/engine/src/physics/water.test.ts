import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { waterBulkModulus, waterDensity, waterVapourPressure, waterViscosity } from './index.ts';

const temperature = fc.double({ min: 0, max: 100, noNaN: true });

describe('water', () => {
  it('boils at 100 degC under 101.4 kPa (IAPWS-95: 101.418 kPa, from memory)', () => {
    expect(waterVapourPressure(100) / 101418).toBeCloseTo(1, 4);
  });

  it('is heaviest at 4 degC with 999.97 kg/m3 (handbook value, from memory)', () => {
    expect(waterDensity(4)).toBeGreaterThan(waterDensity(3));
    expect(waterDensity(4)).toBeGreaterThan(waterDensity(5));
    expect(waterDensity(4)).toBeCloseTo(999.97, 2);
  });

  it('has a bulk modulus of 2.18 GPa at 20 degC (compressibility 4.59e-10 /Pa, handbook value, from memory)', () => {
    expect(Math.abs(waterBulkModulus(20) * 4.59e-10 - 1)).toBeLessThan(0.005);
  });

  it('weighs about 8.3 lb a US gallon in a tank: 1000 gal are 8000 to 8400 lb (common practice, no source)', () => {
    const pounds = (waterDensity(15) * 1000 * 231 * 0.0254 ** 3) / 0.45359237;
    expect(pounds).toBeGreaterThan(8000);
    expect(pounds).toBeLessThan(8400);
  });

  it('gets thinner and boils more readily as it warms', () => {
    fc.assert(
      fc.property(temperature, temperature, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [cold, warm] = a < b ? [a, b] : [b, a];
        expect(waterViscosity(warm)).toBeLessThan(waterViscosity(cold));
        expect(waterVapourPressure(warm)).toBeGreaterThan(waterVapourPressure(cold));
      }),
    );
  });

  it('refuses ice, steam and what is not a number, by name, value and limit', () => {
    expect(() => waterDensity(-1)).toThrow('temperatureC is -1 degC; it must be at least 0 degC');
    expect(() => waterViscosity(101)).toThrow('temperatureC is 101 degC; it must be at most 100 degC');
    expect(() => waterVapourPressure(NaN)).toThrow('temperatureC is not a number');
  });
});
