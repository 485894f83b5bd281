import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airVapourPressure,
  airViscosity,
  dewPoint,
  dryAirDensity,
  humidAirDensity,
  humidityFromWetBulb,
  standardAtmospherePressure,
  standardAtmosphereTemperature,
  waterVapourPressure,
  wetBulbStull,
  windSpeedAtHeight,
  windSpeedAtHeightPowerLaw,
} from '../index.ts';

describe('air', () => {
  it('has the density and viscosity of the standard atmosphere at 0, 1500 and 3000 m (U.S. Standard Atmosphere 1976, computed with the fluids library 1.3.1)', () => {
    const rows = [
      [0, 1.2249991558877125, 1.789380278077583e-5],
      [1500, 1.0581038525932882, 1.74195899253745e-5],
      [3000, 0.9092539408451479, 1.693764616800102e-5],
    ] as const;
    for (const [altitude, density, viscosity] of rows) {
      const t = standardAtmosphereTemperature(altitude);
      expect(dryAirDensity(standardAtmospherePressure(altitude), t) / density).toBeCloseTo(1, 6);
      expect(airViscosity(t) / viscosity).toBeCloseTo(1, 9);
    }
  });

  it('keeps the vapour pressure over water within 0.35 % of the law of the liquid from 0 to 50 degC (two independent laws: WMO Magnus and IAPWS SR1-86)', () => {
    for (let t = 0; t <= 50; t++)
      expect(
        Math.abs(airVapourPressure(273.15 + t, 1) / waterVapourPressure(t) - 1),
        `${t} degC`,
      ).toBeLessThan(0.0035);
  });

  it('is lighter when humid: 1.1 % at 30 degC and saturated', () => {
    const dry = dryAirDensity(101325, 303.15);
    const humid = humidAirDensity(101325, 303.15, airVapourPressure(303.15, 1));
    expect(1 - humid / dry).toBeGreaterThan(0.013);
    expect(1 - humid / dry).toBeLessThan(0.018);
  });

  it('has its dew point at its temperature when saturated, and lower when drier', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 260, max: 320, noNaN: true }),
        fc.double({ min: 0.05, max: 0.99, noNaN: true }),
        (t, rh) => {
          expect(dewPoint(t, 1)).toBeCloseTo(t, 8);
          expect(dewPoint(t, rh)).toBeLessThan(t);
          if (dewPoint(t, rh) < 230) return;
          expect(airVapourPressure(dewPoint(t, rh), 1)).toBeCloseTo(airVapourPressure(t, rh), 6);
        },
      ),
    );
  });

  it('slows 3.2 m/s at 10 m to 2.4 m/s at 2 m over mown grass (FAO Irrigation and Drainage Paper 56, example 14)', () => {
    expect(Math.abs(windSpeedAtHeight(3.2, 10, 2) - 2.4)).toBeLessThan(0.02);
  });

  it('equals equation 47 of the same paper within 0.5 % from 0.7 to 30 m', () => {
    for (const z of [0.7, 1, 3, 10, 30])
      expect(
        Math.abs((windSpeedAtHeight(5, z, 2) * Math.log(67.8 * z - 5.42)) / (5 * 4.87) - 1),
      ).toBeLessThan(0.005);
  });

  it('agrees with the power law within 10 % between 2 and 20 m over grass', () => {
    for (const z of [2, 5, 10, 20])
      expect(Math.abs(windSpeedAtHeightPowerLaw(5, 10, z) / windSpeedAtHeight(5, 10, z) - 1)).toBeLessThan(
        0.1,
      );
  });

  it('thins with altitude and refuses heights inside the cover', () => {
    let before = Infinity;
    for (let z = -600; z <= 11000; z += 100) {
      expect(standardAtmospherePressure(z)).toBeLessThan(before);
      before = standardAtmospherePressure(z);
    }
    expect(() => windSpeedAtHeight(5, 10, 1, 1)).toThrow('height is 1 m; it must be at least 1.2 m');
    expect(() => standardAtmospherePressure(12000)).toThrow(
      'altitude is 12000 m; it must be at most 11000 m',
    );
  });
});

describe('humidity from two thermometers', () => {
  it('agrees with the wet bulb reckoned from the humidity within the error stated of it, -1 to +0.65 K (Stull 2011)', () => {
    for (const t of [10, 15, 20, 25, 30, 35, 40])
      for (const humidity of [0.2, 0.4, 0.6, 0.8, 0.95]) {
        const wet = wetBulbStull(t, humidity);
        const of = (w: number) => humidityFromWetBulb(273.15 + t, 273.15 + Math.min(w, t));
        expect(of(wet - 0.65), `${t} degC, ${humidity}`).toBeLessThan(humidity);
        expect(of(wet + 1), `${t} degC, ${humidity}`).toBeGreaterThan(humidity);
      }
  });

  it('is full when both read alike, and refuses a wet one colder than dry air can make it', () => {
    expect(humidityFromWetBulb(300, 300)).toBe(1);
    expect(() => humidityFromWetBulb(313, 280)).toThrow('wetBulb is 280 K; at 313 K even dry air');
    expect(() => humidityFromWetBulb(290, 291)).toThrow('wetBulb is 291 K; it must be at most 290 K');
  });
});
