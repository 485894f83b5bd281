import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { waterBulkModulus, waterDensity, waterVapourPressure, waterViscosity } from './index.ts';

const temperature = fc.double({ min: 0, max: 100, noNaN: true });

describe('water', () => {
  it('follows the series as published, power by power, to 1e-12 (IAPWS SR6-08(2011) equations 2, 3 and 7, SR1-86(1992) equation 1; terms as in the engine)', () => {
    type Terms = readonly (readonly [number, number])[];
    const sum = (terms: Terms, x: number) => terms.reduce((total, [c, power]) => total + c * x ** power, 0);
    const volumeHot: Terms = [
      [6.74458446e3, 4],
      [-2.22521604e5, 5],
      [1.00231247e8, 7],
      [-1.63552118e9, 8],
      [8.32299658e9, 9],
    ];
    const volumeCold: Terms = [
      [1.93763157e-2, 0],
      [5.78545292e-3, 1],
      [-1.53195665e-2, 2],
      [3.11337859e-2, 3],
      [-4.23546241e-2, 4],
      [3.38713507e-2, 5],
      [-1.19946761e-2, 6],
    ];
    const compressionHot: Terms = [
      [-7.5245878e-6, 1],
      [-1.3767418e-2, 3],
      [1.0627293e1, 5],
      [-2.0457795e2, 6],
      [1.2037414e3, 7],
    ];
    const compressionCold: Terms = [
      [-3.109147e-6, 1],
      [2.8964919e-5, 3],
      [-1.3112763e-4, 4],
      [3.0410453e-4, 5],
      [-3.9034594e-4, 6],
      [2.3403117e-4, 7],
      [-4.8510101e-5, 9],
    ];
    const viscosity: Terms = [
      [280.68, -1.9],
      [511.45, -7.7],
      [61.131, -19.6],
      [0.45903, -40],
    ];
    const saturation: Terms = [
      [-7.85951783, 1],
      [1.84408259, 1.5],
      [-11.7866497, 3],
      [22.6807411, 3.5],
      [-15.9618719, 4],
      [1.80122502, 7.5],
    ];
    for (let t = 0; t <= 100; t += 0.25) {
      const kelvin = t + 273.15;
      const hot = 10 / (593 - kelvin);
      const cold = 10 / (kelvin - 232);
      const volume = 461.51805e-4 * (sum(volumeHot, hot) + sum(volumeCold, cold));
      const compression = 461.51805e-9 * (sum(compressionHot, hot) + sum(compressionCold, cold));
      const boiling = (647.096 / kelvin) * sum(saturation, 1 - kelvin / 647.096);
      for (const [got, published] of [
        [waterDensity(t), 1 / volume],
        [waterBulkModulus(t), -volume / compression],
        [waterViscosity(t), 1e-6 * sum(viscosity, kelvin / 300)],
        [waterVapourPressure(t), 22.064e6 * Math.exp(boiling)],
      ] as const)
        expect(Math.abs(got / published - 1), `${t} degC`).toBeLessThan(1e-12);
    }
  });

  it('boils at 0.363 psi at 70 degF: the 0.6331 of one stored table, two figures changed about, does not come out', () => {
    const psi = waterVapourPressure((70 - 32) / 1.8) / 6894.757;
    expect(psi).toBeCloseTo(0.3631, 3);
    expect(psi).not.toBeCloseTo(0.6331, 1);
  });

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
