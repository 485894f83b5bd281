import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  brineForDrySalt,
  crownVolume,
  DRENCH_DOSES,
  drenchError,
  doseFromFlow,
  doseOnBasis,
  drySaltDose,
  fieldDose,
  flowForDose,
  handGunStep,
  massOfDose,
  passesForDose,
  rowDoseOhio,
  SALT_BRINE,
  speedForDose,
  volumePerCrown,
  volumePerTree,
  waterDoseForLiquid,
  wateringControl,
} from './index.ts';

describe('Dose', () => {
  it('flow, speed and dose fit together whichever is asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e-3, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 0.2, max: 30, noNaN: true }),
        (dose, speed, width) => {
          const flow = flowForDose(dose, speed, width);
          if (flow > 1) return;
          expect(doseFromFlow(flow, speed, width) / dose).toBeCloseTo(1, 9);
          expect(speedForDose(flow, dose, width) / speed).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('keeps its area: treated to field and back is the same dose', () => {
    const treated = { dose: 2e-5, basis: 'treated', band: 0.25, row: 0.75 } as const;
    const field = doseOnBasis({ ...treated, wanted: 'field' });
    expect(field).toBeCloseTo(fieldDose(2e-5, 0.25, 0.75), 15);
    expect(doseOnBasis({ ...treated, dose: field, basis: 'field', wanted: 'treated' })).toBeCloseTo(2e-5, 15);
    expect(doseOnBasis({ ...treated, wanted: 'treated' })).toBe(2e-5);
    expect(() => fieldDose(2e-5, 0.8, 0.75)).toThrow(/band is 0.8 m; it must be at most 0.75 m/);
  });

  it('counts density twice where due: once for the orifice, once for the mass (UNL CropWatch 2016)', () => {
    const density = 1280;
    expect(waterDoseForLiquid(1e-5, density)).toBeCloseTo(1e-5 * Math.sqrt(density / 1000), 12);
    expect(massOfDose(1e-5, density)).toBeCloseTo(0.0128, 12);
  });

  it('of brine goes to dry salt and back', () => {
    const { density, massShare } = SALT_BRINE;
    const salt = drySaltDose(1e-4, density, massShare) * 3.6;
    expect(brineForDrySalt(salt, density, massShare)).toBeCloseTo(1e-4 * 3.6, 12);
  });

  it('of nursery and orchard by the Ohio equations differs by 4', () => {
    expect(rowDoseOhio(2, 2, 3, 'orchard') / rowDoseOhio(2, 2, 3, 'nursery')).toBeCloseTo(4, 12);
  });

  it('of a tree is the dose on its share of ground', () => {
    expect(volumePerTree(1e-4, 5, 4)).toBeCloseTo(0.002, 12);
  });

  it('of a lone crown follows its volume: a ball is pi/6 of its cube', () => {
    expect(crownVolume(2, 2, 'ellipsoid')).toBeCloseTo((Math.PI / 6) * 8, 12);
    expect(crownVolume(2, 2, 'cone') / crownVolume(2, 2, 'cylinder')).toBeCloseTo(1 / 3, 12);
    expect(volumePerCrown(100, 1e-4)).toBeCloseTo(0.01, 12);
  });

  it('of chloride needs more passes than one when the pump is small', () => {
    expect(passesForDose(0.001, 2, 3, 0.006)).toBe(1);
    expect(passesForDose(0.001, 2, 3, 0.0059)).toBe(2);
    expect(passesForDose(0, 2, 3, 0.006)).toBe(1);
  });

  it('watering control never goes below nothing', () => {
    expect(wateringControl(1e-6, 1, 1e6, 1e-5)).toBe(0);
  });

  it('drench timing of a fifth of a second at 2 gpm is a fifth of a 4 oz dose (computed)', () => {
    const dose = DRENCH_DOSES.rows[2].dose;
    expect(drenchError(dose, (2 * 231 * 0.0254 ** 3) / 60, 0.2)).toBeCloseTo(0.2133, 3);
  });

  it('hand gun passes step half the swath unless told otherwise', () => {
    expect(handGunStep(3)).toBe(1.5);
  });

  it('refuses bad input by name, value and limit, NaN too', () => {
    expect(() => flowForDose(-1, 1, 1)).toThrow('dose is -1 m3/m2; it must be at least 0 m3/m2');
    expect(() => flowForDose(NaN, 1, 1)).toThrow('dose is not a number');
    expect(() => doseFromFlow(1e-4, 0, 1)).toThrow(/speed is 0 m\/s/);
  });
});
