import { describe, expect, it } from 'vitest';
import { levelTankLiquid, tankLevelOfVolume, tiltedTankLiquid, type TankSizes } from './index.ts';

const TANKS: TankSizes[] = [
  { form: 'lying-round', diameter: 1.2, length: 2.5 },
  { form: 'lying-round', diameter: 1, length: 0, ends: 'hemispherical' },
  { form: 'lying-elliptical', width: 1.4, height: 0.9, length: 2 },
  { form: 'box', width: 1, height: 0.7, length: 1.8 },
  { form: 'upright-round', diameter: 1, height: 0.8, coneHeight: 0.4, outletDiameter: 0.05 },
];

describe('tanks told by plain sizes', () => {
  it('hold the volumes of elementary geometry when full (cylinder, sphere, ellipse, box, cone frustum)', () => {
    const brim = TANKS.map((t) => levelTankLiquid({ ...t, depth: 0.1 }).brimVolume);
    const frustum = ((Math.PI * 0.4) / 12) * (1 + 0.05 + 0.0025);
    const want = [
      Math.PI * 0.36 * 2.5,
      Math.PI / 6,
      Math.PI * 0.7 * 0.45 * 2,
      1.26,
      frustum + Math.PI * 0.25 * 0.8,
    ];
    brim.forEach((v, i) => expect(v).toBeCloseTo(want[i]!, 9));
  });

  it('give the depth back from the volume, and the same centroid level or tilted by nothing', () => {
    for (const tank of TANKS) {
      const level = levelTankLiquid({ ...tank, depth: 0.37 });
      expect(tankLevelOfVolume({ ...tank, volume: level.volume })).toBeCloseTo(0.37, 9);
      const still = tiltedTankLiquid({ ...tank, volume: level.volume, pitch: 0, roll: 0 });
      expect(still.centroidHeight).toBeCloseTo(level.centroidHeight, 9);
      expect(still.surfaceFront).toBeCloseTo(0.37, 9);
    }
  });

  it('name the size that is missing or makes no sense, used or not, and the form that is none', () => {
    expect(() => levelTankLiquid({ form: 'box', length: 1, width: 1, depth: 0.1 })).toThrow(
      'height is missing; a tank of form box needs it',
    );
    expect(() => levelTankLiquid({ ...TANKS[3]!, diameter: NaN, depth: 0.1 })).toThrow(
      'diameter is not a number',
    );
    expect(() => levelTankLiquid({ ...TANKS[0]!, height: 21, depth: 0.1 })).toThrow(
      'height is 21 m; it must be at most 20 m',
    );
    expect(() => levelTankLiquid({ ...TANKS[3]!, ends: 'round' as 'flat', depth: 0.1 })).toThrow(
      "ends is 'round'; it must be one of",
    );
    expect(() => levelTankLiquid({ form: 'egg' as 'box', depth: 0.1 })).toThrow(
      "form is 'egg'; it must be one of",
    );
  });
});
