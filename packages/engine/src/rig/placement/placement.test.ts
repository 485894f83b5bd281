import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  battery,
  boxTank,
  carrier,
  contextOf,
  engine,
  hose,
  pump,
  reel,
  rigOf,
  roundTank,
} from '../../../test/machine-rig.ts';
import { boxLiquidOnSideSlope, tankDepthForVolume } from '../../physics/index.ts';
import { loadedOf, type Loaded } from '../proof/loaded.ts';
import {
  axleMiddle,
  carrierMasses,
  centreAt,
  liquidPoint,
  massPoint,
  standingOf,
  supportLoads,
  tankLiquid,
  tongueAt,
} from './index.ts';

type Form = 'tandem-trailer' | 'cart' | 'wagon';
const FORMS: readonly Form[] = ['tandem-trailer', 'cart', 'wagon'];

function loaded(rig: Parameters<typeof contextOf>[0], density = 1000): Loaded {
  const found = loadedOf(contextOf(rig, density));
  if (found === undefined) throw new Error('the rig has no carrier');
  return found;
}

const wholeRig = (form: Form, masses = { engine: 40, pump: 20, reel: 40 }) => ({
  carrier: carrier(form),
  tank: roundTank(0.8, 1.4),
  engine: engine(masses.engine),
  pump: pump(masses.pump),
  reel: reel(masses.reel),
  hose: hose(),
  battery: battery(),
});

/** Unknown loads a, b of two supports by Cramer's rule from the balance of forces and of moments about x = 0. */
function solved(points: readonly { mass: number; x: number }[], xa: number, xb: number): [number, number] {
  const force = points.reduce((sum, p) => sum + p.mass, 0);
  const moment = points.reduce((sum, p) => sum + p.mass * p.x, 0);
  const det = xb - xa;
  return [(force * xb - moment) / det, (moment - force * xa) / det];
}

describe('loads on coupler and axles', () => {
  it('agree with a linear solve over every single mass, at any place and fill', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FORMS),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.double({ min: -0.5, max: 4, noNaN: true }),
        fc.double({ min: 10, max: 200, noNaN: true }),
        (form, share, tankX, reelX, engineMass) => {
          const parts = wholeRig(form, { engine: engineMass, pump: 20, reel: 40 });
          const { rig } = loaded(
            rigOf(parts, {
              items: { tank: { at: { x: tankX } }, reel: { at: { x: reelX } }, hose: { length: 60 } },
              levels: [Math.max(0.02, share)],
            }),
          );
          const points = [
            ...carrierMasses(rig.carrier),
            ...rig.parts.map(massPoint),
            liquidPoint(rig, Math.max(0.02, share)),
          ];
          const coupled = form !== 'wagon';
          const axles = rig.carrier.axles;
          const [a, b] = coupled
            ? solved(points, rig.carrier.coupler!.position, axleMiddle(rig.carrier))
            : solved(points, axles[0]!.position, axles[1]!.position);
          const supports = supportLoads(rig, [{ id: 'd', tankLevel: Math.max(0.02, share) }]);
          const load = (id: string) => supports.find((s) => s.id === id)!.byDuty['d']!;
          if (coupled) {
            expect(load('coupler')).toBeCloseTo(a, 6);
            expect(load('axle-1') * axles.length).toBeCloseTo(b, 6);
          } else {
            expect(load('axle-1')).toBeCloseTo(a, 6);
            expect(load('axle-2')).toBeCloseTo(b, 6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('count the clean water that rides along for rinsing: 12 gal weigh 100 lb (8.34 lb/gal)', () => {
    const rig = rigOf(wholeRig('cart'));
    const rinsed = (rinse: object) => ({ ...rig, brief: { ...rig.brief, rinse } }) as typeof rig;
    const full = (r: typeof rig) => centreAt(loaded(r).rig, 1).mass;
    const water = 12 * 231 * 0.0254 ** 3;
    const more = full(rinsed({ where: 'job', rinses: 3, water })) - full(rig);
    expect(more / 0.45359237).toBeCloseTo(12 * 8.34, 0);
    expect(full(rinsed({ where: 'yard', rinses: 3, water }))).toBe(full(rig));
  });

  it('add up to the weight of the rig full, half, empty and while braking', () => {
    for (const form of FORMS) {
      const { rig, supports } = loaded(rigOf(wholeRig(form), { items: { hose: { length: 60 } } }));
      for (const [fill, share] of [
        ['full', 1],
        ['half', 0.5],
        ['empty', 0],
        ['braking', 1],
      ] as const) {
        const sum = supports.reduce((total, s) => total + (s[fill] ?? 0), 0);
        expect(sum, `${form} ${fill}`).toBeCloseTo(centreAt(rig, share).mass, 6);
      }
    }
  });

  it('rise with the fill on the axles; on the coupler they rise with a tank ahead of the axles and fall with one behind', () => {
    for (const [x, sign] of [
      [1, 1],
      [3.2, -1],
    ] as const) {
      const { rig } = loaded(rigOf(wholeRig('tandem-trailer'), { items: { tank: { at: { x } } } }));
      for (let share = 0.1; share <= 1; share += 0.1) {
        expect((tongueAt(rig, share) - tongueAt(rig, share - 0.1)) * sign).toBeGreaterThan(0);
        const axles = (s: number) => centreAt(rig, s).mass - tongueAt(rig, s);
        expect(axles(share)).toBeGreaterThan(axles(share - 0.1));
      }
    }
  });

  it('shift by m Δx / X when one part is moved, and by nothing else', () => {
    const at = (x: number) => loaded(rigOf(wholeRig('cart'), { items: { engine: { at: { x } } } })).rig;
    const span = axleMiddle(at(1).carrier) - at(1).carrier.coupler!.position;
    const mass = at(1).parts.find((p) => p.item === 'engine')!.mass;
    expect(tongueAt(at(1), 1) - tongueAt(at(1.5), 1)).toBeCloseTo((mass * 0.5) / span, 9);
  });

  it('move forward on the coupler in hard braking, and with the liquid that runs forward more than the inertia alone', () => {
    const { rig, supports } = loaded(rigOf(wholeRig('tandem-trailer')));
    const coupler = supports[0]!;
    const pushed = centreAt(rig, 1);
    const inertia =
      (pushed.mass * 0.5 * (pushed.z - rig.carrier.coupler!.height)) /
      (axleMiddle(rig.carrier) - rig.carrier.coupler!.position);
    expect(coupler.braking! - coupler.full).toBeGreaterThan(inertia);
  });
});

describe('automatic places', () => {
  it('put 12.5 % on the tongue of a full trailer when the deck leaves room', () => {
    const { rig } = loaded(rigOf({ ...wholeRig('tandem-trailer'), tank: roundTank(0.9, 1.2) }));
    expect(tongueAt(rig, 1) / centreAt(rig, 1).mass).toBeCloseTo(0.125, 6);
  });

  it('load both axles of a full wagon alike, and centre a full skid', () => {
    const wagon = loaded(rigOf({ carrier: carrier('wagon'), tank: boxTank(1, 0.8, 0.6), pump: pump(20) }));
    expect(wagon.supports[0]!.full).toBeCloseTo(wagon.supports[1]!.full, 6);
    const skid = loaded(rigOf({ carrier: carrier('skid'), tank: boxTank(1, 0.8, 0.6), pump: pump(20) }));
    expect(centreAt(skid.rig, 1).x).toBeCloseTo(skid.rig.carrier.deckLength / 2, 6);
  });

  it('keep every part on a deck that has room, without two parts in one place', () => {
    for (const form of [...FORMS, 'skid', 'utility-bed', 'three-point'] as const) {
      const parts = { ...wholeRig('cart'), carrier: carrier(form) };
      const standing = loaded(rigOf(parts)).rig.parts.filter((p) => p.on === undefined);
      for (const p of standing) {
        expect(p.x - p.length / 2, `${form} ${p.item}`).toBeGreaterThanOrEqual(-1e-9);
        expect(p.x + p.length / 2, `${form} ${p.item}`).toBeLessThanOrEqual(3.6 + 1e-9);
      }
      for (const a of standing)
        for (const b of standing)
          if (a.item < b.item) {
            const apart =
              Math.abs(a.x - b.x) >= (a.length + b.length) / 2 - 1e-9 ||
              Math.abs(a.y - b.y) >= (a.width + b.width) / 2 - 1e-9 ||
              a.z >= b.z + b.height - 1e-9 ||
              b.z >= a.z + a.height - 1e-9;
            expect(apart, `${form}: ${a.item} and ${b.item}`).toBe(true);
          }
    }
  });

  it('stand the tank nearest the tractor on a three-point frame', () => {
    const parts = { carrier: carrier('three-point'), tank: boxTank(1, 0.8, 0.6), reel: reel(30) };
    const { rig } = loaded(rigOf(parts));
    expect(rig.tankAt.x).toBeCloseTo(0.5, 9);
    expect(rig.parts.find((p) => p.item === 'reel')!.x).toBeGreaterThan(rig.tankAt.x);
  });

  it('are the same twice, and give way to coordinates; what rides on a part goes with it', () => {
    const parts = wholeRig('tandem-trailer');
    expect(loaded(rigOf(parts)).rig.parts).toEqual(loaded(rigOf(parts)).rig.parts);
    const moved = loaded(
      rigOf(parts, { items: { reel: { at: { x: 3, y: 0.2, z: 0.1 } }, hose: { length: 30 } } }),
    ).rig.parts;
    const of = (item: string) => moved.find((p) => p.item === item)!;
    expect(of('reel')).toMatchObject({ x: 3, y: 0.2, z: 0.55 + 0.1, given: true });
    expect(of('hose')).toMatchObject({ on: 'reel', x: 3, y: 0.2, given: false });
  });

  it('weigh hose with its liquid and an engine with its fuel', () => {
    const { rig } = loaded(rigOf(wholeRig('cart'), { items: { hose: { length: 60 } } }), 1200);
    const mass = (item: string) => rig.parts.find((p) => p.item === item)!.mass;
    expect(mass('hose')).toBeCloseTo((0.15 / 0.3048) * 60 + (Math.PI / 4) * 0.025 ** 2 * 60 * 1200, 9);
    expect(mass('engine')).toBeCloseTo(40 + 0.004 * 745, 9);
    expect(centreAt(rig, 1).mass - centreAt(rig, 0).mass).toBeCloseTo(rig.tank.volume * 1200, 6);
  });

  it('know how each form stands', () => {
    expect(
      (['skid', 'utility-bed', 'three-point', 'cart', 'wagon', 'tandem-trailer'] as const).map((f) =>
        standingOf(carrier(f)),
      ),
    ).toEqual(['bed', 'bed', 'hitch', 'coupled', 'axles', 'coupled']);
  });
});

describe('liquid on a slope', () => {
  it('acts at the axis of a round tank at every fill', () => {
    const tank = roundTank(0.9, 1.5);
    for (const share of [0.1, 0.4, 0.7, 1])
      expect(tankLiquid(tank, share, 0.3).rollHeight).toBeCloseTo(0.45, 9);
  });

  it('acts in a box tank where the exact wedge puts it (wedge and triangle, a second method)', () => {
    const tank = boxTank(1, 0.9, 0.8);
    for (const [share, slope] of [
      [0.5, 0.2],
      [0.5, 0.4],
      [0.1, 0.3],
      [0.7, 0.25],
    ] as const) {
      const depth = tankDepthForVolume(tank.shape, share * tank.volume);
      const exact = boxLiquidOnSideSlope(0.9, depth, slope, 0.8);
      const height = exact.centroidHeight + exact.lateralShift / Math.tan(slope);
      expect(tankLiquid(tank, share, slope).rollHeight / height).toBeCloseTo(1, 4);
    }
  });
});
