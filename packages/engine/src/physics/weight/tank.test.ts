import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxLiquidOnSideSlope,
  roundLiquidOnSideSlope,
  sloshFrequency,
  tankCapacity,
  tankContents,
  tankDepthForVolume,
  tankFreeSurface,
  tankTilted,
  tankUnusable,
  unusableOnFlatFloor,
  brakingSurface,
  type TankForm,
} from './index.ts';
import { contentsAtDepth } from './tank-contents.ts';
import { endDepth, tankExtent } from './tank-form.ts';
import { contentsBelow } from './tilted-contents.ts';

const DEG = Math.PI / 180;

const TANKS: Record<string, TankForm> = {
  round: { form: 'lying-round', diameter: 1.2, length: 2.5, ends: 'flat' },
  dished: { form: 'lying-round', diameter: 1.2, length: 2, ends: 'dished' },
  'shallow dish': { form: 'lying-round', diameter: 1, length: 1.5, ends: 'dished', endDepth: 0.08 },
  ellipsoidal: { form: 'lying-round', diameter: 1, length: 1.5, ends: 'ellipsoidal' },
  hemispherical: { form: 'lying-round', diameter: 0.8, length: 1.2, ends: 'hemispherical' },
  sphere: { form: 'lying-round', diameter: 1, length: 0, ends: 'hemispherical' },
  elliptical: { form: 'lying-elliptical', width: 1.4, height: 0.9, length: 2 },
  box: { form: 'box', length: 1.8, width: 1, height: 0.7 },
  'box with sump': {
    form: 'box',
    length: 1.2,
    width: 0.8,
    height: 0.5,
    sump: {
      topLength: 0.4,
      topWidth: 0.3,
      bottomLength: 0.2,
      bottomWidth: 0.2,
      depth: 0.15,
      x: -0.3,
      y: 0.1,
    },
  },
  upright: { form: 'upright-round', diameter: 1.1, height: 1.3 },
  'cone and dome': {
    form: 'upright-round',
    diameter: 1,
    height: 0.8,
    coneHeight: 0.4,
    outletDiameter: 0.05,
    domeHeight: 0.2,
  },
};
const NAMES = Object.keys(TANKS);

/** Whether a point lies in the tank, told from its shape alone: shares no formula with the code under test. */
function inside(tank: TankForm, x: number, y: number, z: number): boolean {
  switch (tank.form) {
    case 'lying-round': {
      const r = tank.diameter / 2;
      const e = endDepth(tank);
      const rho = Math.hypot(y, z - r);
      const beyond = Math.abs(x) - tank.length / 2;
      if (beyond <= 0) return rho <= r;
      if (tank.ends === 'flat') return false;
      if (tank.ends === 'dished') {
        const sphere = (r * r + e * e) / (2 * e);
        return Math.hypot(beyond + sphere - e, rho) <= sphere;
      }
      return (beyond / e) ** 2 + (rho / r) ** 2 <= 1;
    }
    case 'lying-elliptical': {
      if (Math.abs(x) > tank.length / 2) return false;
      return (y / (tank.width / 2)) ** 2 + (z / (tank.height / 2) - 1) ** 2 <= 1;
    }
    case 'box': {
      const s = tank.sump;
      const floor = s?.depth ?? 0;
      if (z >= floor) {
        return z <= floor + tank.height && Math.abs(x) <= tank.length / 2 && Math.abs(y) <= tank.width / 2;
      }
      if (!s || z < 0) return false;
      const k = z / s.depth;
      const l = s.bottomLength * (1 - k) + s.topLength * k;
      const w = s.bottomWidth * (1 - k) + s.topWidth * k;
      return Math.abs(x - (s.x ?? 0)) <= l / 2 && Math.abs(y - (s.y ?? 0)) <= w / 2;
    }
    case 'upright-round': {
      const { diameter, height, coneHeight = 0, outletDiameter = 0, domeHeight = 0 } = tank;
      const rho = Math.hypot(x, y);
      if (z < 0) return false;
      if (z < coneHeight)
        return rho <= outletDiameter / 2 + ((diameter - outletDiameter) / 2) * (z / coneHeight);
      if (z <= coneHeight + height) return rho <= diameter / 2;
      return (rho / (diameter / 2)) ** 2 + ((z - coneHeight - height) / domeHeight) ** 2 <= 1;
    }
  }
}

/** Numerical integration: upright columns on a grid, each cut into even steps that start at a shifting place. */
function sampled(tank: TankForm, gx: number, gy: number, c: number) {
  const { halfLength, halfWidth, height } = tankExtent(tank);
  // A sump is a small part of the plan and wants a finer grid.
  const across = tank.form === 'box' && tank.sump ? 160 : 60;
  const up = 90;
  let n = 0;
  let sx = 0;
  let sy = 0;
  let sz = 0;
  for (let i = 0; i < across; i++)
    for (let j = 0; j < across; j++) {
      const x = ((2 * i + 1) / across - 1) * halfLength;
      const y = ((2 * j + 1) / across - 1) * halfWidth;
      const shift = ((i * across + j) * 0.6180339887498949) % 1;
      for (let k = 0; k < up; k++) {
        const z = ((k + shift) / up) * height;
        if (x * gx + y * gy + z > c || !inside(tank, x, y, z)) continue;
        n++;
        sx += x;
        sy += y;
        sz += z;
      }
    }
  const cell = (4 * halfLength * halfWidth * height) / (across * across * up);
  return { volume: n * cell, x: sx / n, y: sy / n, z: sz / n };
}

describe('tanks against numerical integration', () => {
  for (const name of NAMES) {
    const tank = TANKS[name]!;
    const { height, halfLength } = tankExtent(tank);

    it(`hold in the ${name} tank the volume and centroid that points inside it tell`, () => {
      for (const fill of [0.15, 0.5, 0.85]) {
        const got = tankContents(tank, fill * height);
        const want = sampled(tank, 0, 0, fill * height);
        expect(Math.abs(got.volume / want.volume - 1)).toBeLessThan(0.004);
        expect(Math.abs(got.centroidHeight - want.z)).toBeLessThan(0.003 * height);
        expect(Math.abs(got.centroidX - want.x)).toBeLessThan(0.003 * halfLength);
      }
    });

    it(`put the liquid of a tilted ${name} tank where points inside it tell`, () => {
      for (const [pitch, roll, share] of [
        [12 * DEG, 0, 0.4],
        [0, 18 * DEG, 0.3],
        [-25 * DEG, 10 * DEG, 0.7],
        [45 * DEG, -30 * DEG, 0.1],
      ] as const) {
        const volume = share * tankCapacity(tank);
        const got = tankTilted(tank, volume, pitch, roll);
        const gx = Math.tan(pitch);
        const gy = Math.tan(roll);
        const c = (got.surfaceFront + got.surfaceRear) / 2;
        const want = sampled(tank, gx, gy, c);
        expect(Math.abs(want.volume / volume - 1)).toBeLessThan(0.006);
        expect(Math.abs(got.centroidX - want.x)).toBeLessThan(0.004 * halfLength);
        expect(Math.abs(got.centroidY - want.y)).toBeLessThan(0.004);
        expect(Math.abs(got.centroidHeight - want.z)).toBeLessThan(0.004 * height);
      }
    });

    it(`agree in the ${name} tank between the exact level form and the slices`, () => {
      for (const fill of [0.05, 0.31, 0.62, 1]) {
        const exact = contentsAtDepth(tank, fill * height);
        const slices = contentsBelow(tank, { gx: 0, gy: 0, c: fill * height });
        expect(Math.abs(slices.volume / exact.volume - 1)).toBeLessThan(2e-4);
        expect(Math.abs(slices.momentZ / exact.momentZ - 1)).toBeLessThan(2e-4);
      }
    });
  }

  it('give the published volumes of full ends: π e (3R² + e²)/3 for two dishes, 4/3 π R² e for two half ellipsoids', () => {
    const dish = TANKS['shallow dish']!;
    expect(tankCapacity(dish) - Math.PI * 0.25 * 1.5).toBeCloseTo(
      (Math.PI * 0.08 * (3 * 0.25 + 0.08 ** 2)) / 3,
      9,
    );
    const ellipsoid = TANKS['ellipsoidal']!;
    expect(tankCapacity(ellipsoid) - Math.PI * 0.25 * 1.5).toBeCloseTo((4 / 3) * Math.PI * 0.25 * 0.25, 12);
  });
});

describe('tank invariants', () => {
  const tankAndShares = fc.tuple(
    fc.constantFrom(...NAMES),
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  );

  it('more depth is never less volume nor a lower centroid, and the depth is found back from the volume', () => {
    fc.assert(
      fc.property(tankAndShares, ([name, a, b]) => {
        const tank = TANKS[name]!;
        const { height } = tankExtent(tank);
        const low = tankContents(tank, Math.min(a, b) * height);
        const high = tankContents(tank, Math.max(a, b) * height);
        // Just below the brim a dome closes flat: two depths hold the same volume but for its last digits.
        expect(high.volume).toBeGreaterThanOrEqual(low.volume * (1 - 1e-15));
        expect(high.centroidHeight).toBeGreaterThanOrEqual(low.centroidHeight - 1e-9);
        const depth = tankDepthForVolume(tank, low.volume);
        expect(tankContents(tank, depth).volume).toBeCloseTo(low.volume, 10);
      }),
      { numRuns: 300 },
    );
  });

  it('tilting changes no volume, lets the liquid run to the low side and never lowers its potential minimum', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...NAMES),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: 0.01, max: 0.6, noNaN: true }),
        fc.double({ min: 0.01, max: 0.6, noNaN: true }),
        (name, share, pitch, roll) => {
          const tank = TANKS[name]!;
          const volume = share * tankCapacity(tank);
          const t = tankTilted(tank, volume, pitch, roll);
          const c = (t.surfaceFront + t.surfaceRear) / 2;
          const held = contentsBelow(tank, { gx: Math.tan(pitch), gy: Math.tan(roll), c });
          expect(Math.abs(held.volume / volume - 1)).toBeLessThan(1e-9);
          const level = tankContents(tank, tankDepthForVolume(tank, volume));
          // Liquid at rest lies as low as it can: no other placing of the same volume, the level one included, is lower.
          const heightOf = (x: number, y: number, z: number) => x * Math.tan(pitch) + y * Math.tan(roll) + z;
          expect(heightOf(t.centroidX, t.centroidY, t.centroidHeight)).toBeLessThanOrEqual(
            heightOf(level.centroidX, level.centroidY, level.centroidHeight) + 2e-4,
          );
        },
      ),
      { numRuns: 150 },
    );
  });

  it('mirrors: a level lying or box tank holds V(h) + V(H - h) = capacity', () => {
    for (const name of ['round', 'dished', 'ellipsoidal', 'sphere', 'elliptical', 'box']) {
      const tank = TANKS[name]!;
      const { height } = tankExtent(tank);
      for (const h of [0.1, 0.37, 0.5])
        expect(
          tankContents(tank, h * height).volume + tankContents(tank, (1 - h) * height).volume,
        ).toBeCloseTo(tankCapacity(tank), 9);
    }
  });
});

describe('liquid on a slope', () => {
  it('of a round tank hangs straight below the axis at every fill, angle and end (symmetry)', () => {
    for (const name of ['round', 'dished', 'ellipsoidal', 'hemispherical', 'sphere'])
      for (const share of [0.1, 0.5, 0.9])
        for (const angle of [5, 20, 50]) {
          const tank = TANKS[name]!;
          const radius = tankExtent(tank).height / 2;
          const t = tankTilted(tank, share * tankCapacity(tank), 0, angle * DEG);
          expect(-t.centroidY / (radius - t.centroidHeight)).toBeCloseTo(Math.tan(angle * DEG), 4);
        }
  });

  it('of a round tank acts at the axis: centroid plus i/V from the surface, for every end (identity (c³/12)/A = d)', () => {
    for (const name of ['round', 'dished', 'shallow dish', 'ellipsoidal', 'hemispherical', 'sphere'])
      for (const share of [0.05, 0.3, 0.5, 0.8]) {
        const tank = TANKS[name]!;
        const { height } = tankExtent(tank);
        const s = tankFreeSurface(tank, share * height);
        const c = tankContents(tank, share * height);
        expect(c.centroidHeight + s.rollRise).toBeCloseTo(height / 2, 5);
        expect(s.rollHeight).toBe(height / 2);
      }
  });

  it('shifts for small tilts by i/V times the angle, sideways and fore-and-aft, in every tank (ship stability texts)', () => {
    for (const name of NAMES) {
      const tank = TANKS[name]!;
      const { height } = tankExtent(tank);
      const depth = 0.55 * height;
      const { volume, centroidX, centroidY } = tankContents(tank, depth);
      const s = tankFreeSurface(tank, depth);
      const angle = 0.002;
      const rolled = tankTilted(tank, volume, 0, angle);
      const pitched = tankTilted(tank, volume, angle, 0);
      expect((centroidY - rolled.centroidY) / angle / s.rollRise).toBeCloseTo(1, 2);
      expect((centroidX - pitched.centroidX) / angle / s.pitchRise).toBeCloseTo(1, 2);
    }
  });

  it('in a box agrees with the exact wedge and triangle, and refuses when the lid gets wet', () => {
    const box: TankForm = { form: 'box', length: 2, width: 1.2, height: 1 };
    for (const [depth, angle] of [
      [0.45, 15],
      [0.1, 25],
    ] as const) {
      const exact = boxLiquidOnSideSlope(1.2, depth, angle * DEG, 1);
      const slices = tankTilted(box, depth * 1.2 * 2, 0, angle * DEG);
      expect(-slices.centroidY).toBeCloseTo(exact.lateralShift, 9);
      expect(slices.centroidHeight).toBeCloseTo(exact.centroidHeight, 9);
      expect(slices.lidWet).toBe(false);
    }
    expect(() => boxLiquidOnSideSlope(1.2, 0.9, 20 * DEG, 1)).toThrow('at most tankHeight 1 m');
    expect(tankTilted(box, 0.9 * 1.2 * 2, 0, 20 * DEG).lidWet).toBe(true);
  });

  it('leaves what the wedge says below the outlet: 71 L from mid-floor, 286 L from the high end, none at the low end', () => {
    const box: TankForm = { form: 'box', length: 1.8, width: 1, height: 0.7 };
    const stays = (outletX: number) => tankUnusable(box, outletX, 0, 0, 10 * DEG, 0);
    expect(stays(0)).toBeCloseTo(unusableOnFlatFloor(0.9, 1, 10 * DEG), 9);
    expect(stays(0)).toBeCloseTo(0.0714, 4);
    expect(stays(0.9)).toBeCloseTo(0.28565, 4);
    expect(stays(-0.9)).toBe(0);
    const sump: TankForm = {
      ...box,
      sump: { topLength: 0.3, topWidth: 0.3, bottomLength: 0.2, bottomWidth: 0.2, depth: 0.15 },
    };
    expect(tankUnusable(sump, 0, 0, 0, 10 * DEG, 0)).toBeLessThan(0.001);
  });

  it('moves forward under braking as the pitched surface says', () => {
    const box: TankForm = { form: 'box', length: 2.4, width: 1, height: 2 };
    const braked = tankTilted(box, 2.4, -Math.atan(0.4), 0);
    expect(braked.surfaceFront - 1).toBeCloseTo(brakingSurface(2.4, 0.4 * 9.80665).frontRise, 6);
    expect(braked.centroidX).toBeGreaterThan(0);
  });

  it('of a round tank stays inside the tank and vanishes in shift when full', () => {
    expect(roundLiquidOnSideSlope(1.2, 1.2, 0.3).lateralShift).toBeCloseTo(0, 12);
  });

  it('sloshes faster when a partition halves the length: 1.4 times deep, near 2 times shallow (linear waves, from memory)', () => {
    expect(sloshFrequency(1, 5) / sloshFrequency(2, 5)).toBeCloseTo(Math.SQRT2, 3);
    expect(sloshFrequency(1, 0.01) / sloshFrequency(2, 0.01)).toBeCloseTo(2, 2);
  });
});

describe('bad tanks', () => {
  it('are named by field, value and limit', () => {
    const round = TANKS['round']!;
    expect(() => tankContents(round, 1.3)).toThrow('depth is 1.3 m; it must be at most 1.2 m');
    expect(() => tankContents(round, NaN)).toThrow('depth is not a number');
    expect(() => tankDepthForVolume(round, 5)).toThrow('volume is 5 m3; it must be at most 2.82');
    expect(() => tankCapacity({ form: 'box', length: 1, width: -1, height: 1 })).toThrow(
      'tank.width is -1 m',
    );
    expect(() => tankCapacity({ form: 'egg' } as unknown as TankForm)).toThrow("tank.form is 'egg'");
    expect(() =>
      tankCapacity({
        form: 'box',
        length: 1,
        width: 1,
        height: 1,
        sump: { topLength: 2, topWidth: 0.3, bottomLength: 0.1, bottomWidth: 0.1, depth: 0.1 },
      }),
    ).toThrow('tank.sump.topLength is 2 m; it must be at most 1 m');
    expect(() => tankTilted(round, 1, 1.5, 0)).toThrow('pitch is 1.5 rad; it must be at most 1.2 rad');
  });
});
