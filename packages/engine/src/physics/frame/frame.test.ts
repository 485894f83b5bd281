import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  channelSection,
  coarseBolt,
  directLashings,
  chainWorkingLoad,
  evenLoadSag,
  filletWeldAluminium,
  filletWeldSteel,
  flatSection,
  frameMaterial,
  liftingLugCapacity,
  loadedBeam,
  overhangingRail,
  partlyWeldedStrength,
  railBending,
  RESTRAINT_SETS,
  restraintForces,
  roundSection,
  roundedTubeSection,
  skidBoltForces,
  slingLegTension,
  squareTubeSection,
  tiedownNumber,
  tiedownsForWorkingLoad,
  type CoarseBolt,
  type Section,
} from './index.ts';

const INCH = 0.0254;
const LB = 0.45359237;
const LBF = LB * 9.80665;
const FT = 0.3048;
const G = 9.80665;
const KSI = (1000 * LBF) / INCH ** 2;

/** Area and second moments by counting small squares: shares no formula with the code under test. */
function counted(width: number, depth: number, metal: (x: number, y: number) => boolean) {
  const n = 900;
  const dx = width / n;
  const dy = depth / n;
  let area = 0;
  let sx = 0;
  let xx = 0;
  let yy = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const x = (i + 0.5) * dx - width / 2;
      const y = (j + 0.5) * dy - depth / 2;
      if (!metal(x, y)) continue;
      area += dx * dy;
      sx += x * dx * dy;
      yy += y * y * dx * dy;
      xx += x * x * dx * dy;
    }
  return { area, inertiaX: yy, inertiaY: xx - (sx * sx) / area };
}

function roundedInside(x: number, y: number, w: number, h: number, r: number): boolean {
  const ax = Math.abs(x) - (w / 2 - r);
  const ay = Math.abs(y) - (h / 2 - r);
  if (ax > r || ay > r) return false;
  return ax <= 0 || ay <= 0 || Math.hypot(ax, ay) <= r;
}

describe('sections against counted squares', () => {
  const near = (section: Section, want: ReturnType<typeof counted>): void => {
    expect(section.area / want.area).toBeCloseTo(1, 2);
    expect(section.inertiaX / want.inertiaX).toBeCloseTo(1, 2);
    expect(section.inertiaY / want.inertiaY).toBeCloseTo(1, 2);
  };

  it('hold for square and rounded tube, channel, round and flat', () => {
    near(
      squareTubeSection(0.1, 0.05, 0.00625),
      counted(0.05, 0.1, (x, y) => Math.abs(x) > 0.01875 || Math.abs(y) > 0.04375),
    );
    const t = 0.006;
    near(
      roundedTubeSection(0.1, 0.05, t),
      counted(
        0.05,
        0.1,
        (x, y) => roundedInside(x, y, 0.05, 0.1, 2 * t) && !roundedInside(x, y, 0.05 - 2 * t, 0.1 - 2 * t, t),
      ),
    );
    near(
      channelSection(0.1, 0.045, 0.006, 0.0085),
      counted(0.045, 0.1, (x, y) => x < -0.0225 + 0.006 || Math.abs(y) > 0.05 - 0.0085),
    );
    near(
      roundSection(0.06, 0.05),
      counted(0.06, 0.06, (x, y) => Math.hypot(x, y) <= 0.03 && Math.hypot(x, y) >= 0.025),
    );
    near(
      flatSection(0.1, 0.012),
      counted(0.012, 0.1, () => true),
    );
  });

  it('keep square corners 12 % unsafe at design wall and 18 % at nominal wall for 4x2x1/4 cold-formed tube (AISC, from memory)', () => {
    const real = roundedTubeSection(4 * INCH, 2 * INCH, 0.233 * INCH).modulusX;
    expect(squareTubeSection(4 * INCH, 2 * INCH, 0.233 * INCH).modulusX / real).toBeCloseTo(1.12, 2);
    expect(squareTubeSection(4 * INCH, 2 * INCH, 0.25 * INCH).modulusX / real).toBeCloseTo(1.18, 2);
  });
});

describe('beams', () => {
  const beam = {
    length: 2,
    supportA: 0,
    supportB: 2,
    pointLoads: [] as number[],
    pointPlaces: [] as number[],
    evenLoads: [] as number[],
    evenFrom: [] as number[],
    evenTo: [] as number[],
    stiffness: 2e5,
  };

  it('give the tabulated cases: even load, single load off the middle, equal overhangs (beam tables)', () => {
    const even = loadedBeam({ ...beam, evenLoads: [3000], evenFrom: [0], evenTo: [2] });
    expect(even.maxMoment).toBeCloseTo((3000 * 4) / 8, 6);
    expect(even.maxMomentPlace).toBeCloseTo(1, 9);
    expect(even.maxSag).toBeCloseTo(evenLoadSag(6000, 2, 2e11, 1e-6), 9);
    expect(even.maxShear).toBeCloseTo(3000, 4);
    const [a, b] = [0.5, 1.5];
    const single = loadedBeam({ ...beam, pointLoads: [1000], pointPlaces: [a] });
    expect(single.reactionA).toBeCloseTo((1000 * b) / 2, 9);
    expect(single.maxMoment).toBeCloseTo((1000 * a * b) / 2, 9);
    const sag = (1000 * a * (4 - a * a) ** 1.5) / (9 * Math.sqrt(3) * 2 * 2e5);
    expect(single.maxSag / sag).toBeCloseTo(1, 3);
    const over = { ...beam, supportA: 0.3, supportB: 1.7, evenLoads: [3000], evenFrom: [0], evenTo: [2] };
    const table = overhangingRail(2, 0.3, 3000);
    expect(loadedBeam(over).maxMoment).toBeCloseTo(table.midspanMoment, 6);
  });

  it('agree with a double integration of the moment by small steps, and with force and moment balance', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: 0, max: 5000, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true })),
          {
            minLength: 1,
            maxLength: 4,
          },
        ),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 1.2, max: 2, noNaN: true }),
        fc.double({ min: 10, max: 4000, noNaN: true }),
        (points, supportA, supportB, w) => {
          const p = {
            ...beam,
            supportA,
            supportB,
            pointLoads: points.map(([f]) => f),
            pointPlaces: points.map(([, x]) => x),
            evenLoads: [w],
            evenFrom: [0.4],
            evenTo: [1.5],
          };
          const got = loadedBeam(p);
          const total = p.pointLoads.reduce((s, f) => s + f, 0) + w * 1.1;
          expect(got.reactionA + got.reactionB).toBeCloseTo(total, 6);
          const n = 2000;
          const dx = 2 / n;
          const moment = (x: number): number => {
            let m = x > supportA ? got.reactionA * (x - supportA) : 0;
            if (x > supportB) m += got.reactionB * (x - supportB);
            p.pointLoads.forEach((f, i) => {
              if (x > p.pointPlaces[i]!) m -= f * (x - p.pointPlaces[i]!);
            });
            const to = Math.min(x, 1.5);
            if (to > 0.4) m -= w * (to - 0.4) * (x - (to + 0.4) / 2);
            return m;
          };
          let slope = 0;
          let y = 0;
          const ys: number[] = [0];
          let largest = 0;
          for (let i = 0; i < n; i++) {
            const m = moment((i + 0.5) * dx);
            largest = Math.max(largest, Math.abs(m));
            y += slope * dx + (m * dx * dx) / 2;
            slope += m * dx;
            ys.push(y);
          }
          expect(Math.abs(moment(2))).toBeLessThan(1e-6 * (1 + total));
          const at = (x: number): number => {
            const i = Math.min(n - 1, Math.floor(x / dx));
            return ys[i]! + (ys[i + 1]! - ys[i]!) * (x / dx - i);
          };
          const tilt = (at(supportB) - at(supportA)) / (supportB - supportA);
          const sag =
            Math.max(...ys.map((v, i) => Math.abs(v - at(supportA) - tilt * (i * dx - supportA)))) / 2e5;
          expect(Math.abs(got.maxMoment)).toBeGreaterThanOrEqual(largest - 1e-9);
          expect(Math.abs(got.maxMoment) - largest).toBeLessThan(0.002 * total);
          expect(Math.abs(got.maxSag - sag)).toBeLessThan(0.004 * sag + 1e-9 * total);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('fail the 1000 gal tank on two 4x2x1/4 rails over 96 in, as worked (8940 lb, factor 2: 47.7 against 27.5 ksi)', () => {
    const section = roundedTubeSection(4 * INCH, 2 * INCH, 0.93 * 0.25 * INCH);
    const { moment } = railBending(8940 * LB, 2, 96 * INCH);
    expect(moment / section.modulusX / KSI).toBeCloseTo(47.8, 0);
    expect(moment / section.modulusX).toBeGreaterThan(frameMaterial('steel-a500b').allowable);
  });

  it('want the supports at 0.2071 of the length: anywhere else the largest moment is larger', () => {
    const { bestOverhang } = overhangingRail(3, 0.5, 700);
    const worst = (a: number) => {
      const r = overhangingRail(3, a, 700);
      return Math.max(Math.abs(r.supportMoment), Math.abs(r.midspanMoment));
    };
    for (const off of [-0.2, -0.02, 0.02, 0.2])
      expect(worst(bestOverhang + off)).toBeGreaterThan(worst(bestOverhang));
  });
});

describe('allowable stresses and welds', () => {
  it('of 6061-T6 beside a weld are 47 % of the unwelded, and a third of A500 B (from memory in part)', () => {
    const t6 = frameMaterial('aluminium-6061-t6').allowable;
    const welded = frameMaterial('aluminium-6061-t6-welded').allowable;
    expect(welded / t6).toBeCloseTo(0.467, 3);
    expect(frameMaterial('steel-a500b').allowable / welded).toBeCloseTo(3.03, 2);
  });

  it('lie between unwelded and welded for a partly welded section, in proportion', () => {
    expect(partlyWeldedStrength(240e6, 100e6, 0, 1e-3)).toBe(240e6);
    expect(partlyWeldedStrength(240e6, 100e6, 1e-3, 1e-3)).toBe(100e6);
    expect(partlyWeldedStrength(240e6, 100e6, 0.5e-3, 1e-3)).toBeCloseTo(170e6, 3);
  });

  it('weld aluminium at a fraction of steel of the same leg (0.6 × 70/2 = 21 against 17/1.95 = 8.7 ksi)', () => {
    const steel = filletWeldSteel(70 * KSI, 0.25 * INCH, 1).perLength;
    const aluminium = filletWeldAluminium('5356', 0.25 * INCH, 1).perLength;
    expect(steel / aluminium).toBeCloseTo(21 / (17 / 1.95), 6);
    expect(filletWeldAluminium('4043', 0.25 * INCH, 1).perLength).toBeLessThan(aluminium);
  });
});

describe('bolts', () => {
  it('reproduce the printed table of grades 2 and 5 (SAE J429 grade table)', () => {
    for (const [size, area, grade2, grade5, clamp5, torque5] of [
      ['1/4-20', 0.0318, 1750, 2705, 2029, 8.5],
      ['5/16-18', 0.0524, 2884, 4457, 3342, 17.4],
      ['3/8-16', 0.0775, 4262, 6587, 4940, 30.9],
      ['1/2-13', 0.1419, 7804, 12061, 9046, 75.4],
      ['5/8-11', 0.226, 12430, 19210, 14408, 150.1],
      ['3/4-10', 0.3345, 18395, 28429, 21322, 266.5],
    ] as readonly [CoarseBolt, number, number, number, number, number][]) {
      const two = coarseBolt(size, '2');
      const five = coarseBolt(size, '5');
      expect(five.stressArea / INCH ** 2).toBeCloseTo(area, 4);
      expect(two.proofLoad / LBF / grade2).toBeCloseTo(1, 3);
      expect(five.proofLoad / LBF / grade5).toBeCloseTo(1, 3);
      expect(five.clampLoad / LBF / clamp5).toBeCloseTo(1, 3);
      expect(five.torque / (LBF * FT)).toBeCloseTo(torque5, 1);
    }
  });

  it('of a braked skid balance its moment about the front bolts', () => {
    const f = skidBoltForces(1200, 0.8 * G, 0.9, 1, 0.5, 4);
    expect(2 * f.rearBoltUplift * 1 + 1200 * G * 0.5).toBeCloseTo(1200 * 0.8 * G * 0.9, 6);
    expect(() => skidBoltForces(1200, 8, 0.9, 1, 0.5, 5)).toThrow('bolts is 5; it must be even');
    expect(f.overturnMargin).toBeCloseTo(0.5 / (0.8 * 0.9), 12);
  });

  it('of a skid as low as its bolts have no margin to tell, for braking cannot turn it over', () => {
    for (const height of [0, Number.MIN_VALUE])
      expect(skidBoltForces(1200, 8, height, 1, 0.5, 4)).toMatchObject({
        rearBoltUplift: 0,
        overturnMargin: null,
      });
    expect(skidBoltForces(1200, 8, 0, 1, 0, 4).overturnMargin).toBeNull();
  });
});

describe('restraint', () => {
  it('keeps each set with its own strength, so that 0.8 g never meets a working load limit (49 CFR 393.102)', () => {
    const breaking = restraintForces(1000, 'breaking');
    const working = restraintForces(1000, 'working-load');
    expect([breaking.forward, breaking.rearward, breaking.sideways].map((f) => f / (1000 * G))).toEqual([
      0.8, 0.5, 0.5,
    ]);
    expect([working.forward, working.rearward, working.sideways].map((f) => f / (1000 * G))).toEqual([
      0.435, 0.5, 0.25,
    ]);
    expect(breaking.strengthBasis).toBe('breaking strength');
    expect(working.strengthBasis).toBe('working load limit');
  });

  it('takes 0.8, 0.5 and 0.5 g against lashing capacity in Australia, with 0.2 g of lift (Load Restraint Guide 2018, as its publisher tells it)', () => {
    const f = restraintForces(1000, 'australia');
    expect([f.forward, f.rearward, f.sideways, f.downward].map((x) => x / (1000 * G))).toEqual([
      0.8, 0.5, 0.5, 0.2,
    ]);
    expect([f.strengthBasis, f.aggregateWorkingLoad]).toEqual(['lashing capacity', 0]);
  });

  it('takes the same in Europe, and 0.6 g sideways for what would tip (EN 12195-1:2010, second-hand)', () => {
    const f = restraintForces(1000, 'europe');
    expect([f.forward, f.rearward, f.sideways, f.sidewaysTipping].map((x) => x / (1000 * G))).toEqual([
      0.8, 0.5, 0.5, 0.6,
    ]);
    expect([f.strengthBasis, f.downward]).toEqual(['lashing capacity', 0]);
  });

  it('says of each set where it holds, and that nobody has checked it', () => {
    for (const { origin } of Object.values(RESTRAINT_SETS)) {
      expect(origin.edition.length).toBeGreaterThan(5);
      expect(origin.checkedBy).toContain('nobody yet');
    }
  });

  it('finds as many direct lashings as keep a load in balance, and one fewer lets it slide (vectors and Coulomb friction)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('breaking', 'working-load', 'australia', 'europe'),
        fc.constantFrom('forward', 'rearward', 'sideways'),
        fc.double({ min: 100, max: 6000, noNaN: true }),
        fc.double({ min: 0, max: 1.2, noNaN: true }),
        fc.double({ min: 0, max: 1.2, noNaN: true }),
        fc.double({ min: 0, max: 0.24, noNaN: true }),
        (set, direction, mass, slope, turn, friction) => {
          const strength = 9000;
          const { number, strengthBasis } = directLashings({
            mass,
            set,
            direction,
            strength,
            slope,
            turn,
            friction,
          });
          expect(strengthBasis).toBe(RESTRAINT_SETS[set].strengthBasis);
          // Unit vector of a lashing: against the way, across it, down.
          const along = Math.cos(slope) * Math.cos(turn);
          const down = Math.sin(slope);
          const holds = (n: number) =>
            n * strength * along +
            friction * (mass * G + n * strength * down) -
            RESTRAINT_SETS[set][direction] * mass * G;
          expect(holds(number)).toBeGreaterThanOrEqual(-1e-5 * mass);
          expect(number === 0 || holds(number - 1) < 1e-5 * mass).toBe(true);
        },
      ),
    );
  });

  it('keeps 5/16 in grade 80 chain below grade 70 as printed, and refuses what is not printed (49 CFR 393.108)', () => {
    expect(chainWorkingLoad('5/16', '80') / LBF).toBeCloseTo(4500, 6);
    expect(chainWorkingLoad('5/16', '70') / LBF).toBeCloseTo(4700, 6);
    expect(() => chainWorkingLoad('7/16', '80')).toThrow(
      "grade is '80'; for 7/16 in chain it must be one of 30, 43, 70",
    );
  });

  it('steps the number of tiedowns at 5, 10 and 20 ft and at 1100 lb (49 CFR 393.110, agency rules)', () => {
    const ties = (feet: number, pounds: number, blocked = false) =>
      tiedownNumber(feet * FT, pounds * LB, blocked);
    expect(ties(5, 1100)).toBe(1);
    expect(ties(5, 1101)).toBe(2);
    expect(ties(5.1, 100)).toBe(2);
    expect(ties(10, 9000)).toBe(2);
    expect(ties(10.1, 100)).toBe(3);
    expect(ties(20, 100)).toBe(3);
    expect(ties(20.1, 100)).toBe(4);
    expect(ties(10, 9000, true)).toBe(1);
    expect(ties(20.1, 100, true)).toBe(3);
  });

  it('counts a strap from anchor to load half', () => {
    expect(tiedownsForWorkingLoad(2000 * LB, 1000 * LBF, 'over').number).toBe(1);
    expect(tiedownsForWorkingLoad(2000 * LB, 1000 * LBF, 'direct').number).toBe(2);
    expect(tiedownsForWorkingLoad(2001 * LB, 1000 * LBF, 'over').number).toBe(2);
  });
});

describe('lifting', () => {
  it('pulls harder the flatter the legs, and at 30° each of two legs pulls the whole weight (statics)', () => {
    expect(slingLegTension(700, 2, Math.PI / 6)).toBeCloseTo(700 * G, 6);
    expect(slingLegTension(700, 2, 0.6)).toBeGreaterThan(slingLegTension(700, 2, 1));
    expect(() => slingLegTension(700, 2, 0.1)).toThrow('legAngle is 0.1 rad; it must be at least 0.35 rad');
  });

  it('takes the least of four capacities, halves with twice the design factor and loses by a round edge (ASME BTH-1)', () => {
    const p = {
      yieldStrength: 36 * KSI,
      ultimateStrength: 58 * KSI,
      designFactor: 2,
      thickness: 0.75 * INCH,
      edgeBeyondHole: 3.3125 * INCH,
      sideEdge: 1.66 * INCH,
      holeDiameter: 1.6875 * INCH,
      pinDiameter: 1.375 * INCH,
      curvedEdge: true,
    };
    const c = liftingLugCapacity(p);
    expect(c.allowable).toBe(Math.min(c.tension, c.splitting, c.doubleShear, c.bearing));
    expect(liftingLugCapacity({ ...p, designFactor: 4 }).allowable).toBeCloseTo(c.allowable / 2, 6);
    expect(liftingLugCapacity({ ...p, curvedEdge: false }).doubleShear).toBeGreaterThan(c.doubleShear);
    expect(() => liftingLugCapacity({ ...p, pinDiameter: 2 * INCH })).toThrow('pinDiameter is');
  });
});

describe('bad frames', () => {
  it('are named by field, value and limit', () => {
    expect(() => squareTubeSection(0.1, 0.05, 0.03)).toThrow('wall is 0.03 m; it must be at most 0.025 m');
    expect(() => railBending(-1, 2, 1)).toThrow('mass is -1 kg; it must be at least 0 kg');
    expect(() =>
      loadedBeam({
        length: 2,
        supportA: 1,
        supportB: 0.5,
        pointLoads: [],
        pointPlaces: [],
        evenLoads: [],
        evenFrom: [],
        evenTo: [],
        stiffness: 1e5,
      }),
    ).toThrow('supportB is 0.5 m; it must be at least 1.01 m');
    expect(() => frameMaterial('wood' as 'steel-a36')).toThrow(
      "material is 'wood'; it must be one of steel-a36",
    );
  });
});
