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
import {
  bendingStress,
  cableDrop,
  overhangingRail,
  DESIGN_WALL_SHARE,
  roundedTubeSection,
  STANDARD_GRAVITY,
  tankTilted,
  threeSupportTipAngle,
} from '../../physics/index.ts';
import type { RigPromise } from '../promise.ts';
import { centreAt, hitchPlace, liquidPoint, shellAbove } from '../placement/index.ts';
import type { Rig } from '../rig-document.ts';
import { electricsPromises } from './electrics.ts';
import { guarded } from './guarded.ts';
import { loadedOf } from './loaded.ts';
import { placementOf } from './placement-data.ts';
import { stabilityPromises, tipAngle } from './stability.ts';
import { structurePromises } from './structure.ts';
import { weightPromises } from './weight.ts';

function promises(rig: Rig, density = 1000): RigPromise[] {
  const context = contextOf(rig, density);
  return [
    ...weightPromises(context),
    ...stabilityPromises(context),
    ...structurePromises(context),
    ...electricsPromises(context),
  ];
}

function promise(list: readonly RigPromise[], id: string): RigPromise {
  const found = list.find((p) => p.id === id);
  if (found === undefined) throw new Error(`no promise '${id}' among ${list.map((p) => p.id).join(', ')}`);
  return found;
}

function without<T extends object, K extends keyof T>(whole: T, key: K): Omit<T, K> {
  const rest = { ...whole };
  delete (rest as Partial<T>)[key];
  return rest;
}

const base = { tank: roundTank(0.9, 1.4), engine: engine(40), pump: pump(20) };
const trailer = { carrier: carrier('tandem-trailer'), ...base };
const TRACTOR = {
  frontAxleMass: 600,
  rearAxleMass: 900,
  wheelbase: 1.65,
  ballToAxle: 0.76,
  liftAt24in: 900,
  rearAxleRating: 2600,
};

describe('weight', () => {
  it('breaks the gross rating and the axles with a heavy liquid, and says how much of it there is room for', () => {
    const strong = carrier('tandem-trailer', { grossRating: 1600 });
    const water = promise(promises(rigOf({ ...trailer, carrier: strong })), 'weight:gross');
    expect(water.state).toBe('kept');
    const brine = promise(promises(rigOf({ ...trailer, carrier: strong }), 1300), 'weight:gross');
    expect(brine.state).toBe('broken');
    expect(brine.cause).toContain('there is room for');
    const weak = carrier('tandem-trailer', {
      axles: [
        { position: 1.9, rating: 500, tyreRating: 260, tyres: 2, tyreDiameter: 0.6, track: 1.5 },
        { position: 2.8, rating: 700, tyreRating: 300, tyres: 2, tyreDiameter: 0.6, track: 1.5 },
      ],
    });
    const axle = promise(promises(rigOf({ ...trailer, carrier: weak })), 'weight:axle-1');
    expect(axle).toMatchObject({ state: 'broken', asked: { value: 500 } });
  });

  it('names the tyres when they carry less than the axle', () => {
    const tyres = carrier('cart', {
      axles: [{ position: 2.2, rating: 1500, tyreRating: 700, tyres: 2, tyreDiameter: 0.6, track: 1.5 }],
    });
    const axle = promise(promises(rigOf({ ...trailer, carrier: tyres })), 'weight:axle-1');
    expect(axle.asked?.value).toBe(1400);
    expect(axle.cause).toContain('tyres');
  });

  it('asks 10 to 15 % on the tongue from both sides, and that it never lifts (vehicle manuals)', () => {
    const at = (x: number) => promises(rigOf(trailer, { items: { tank: { at: { x } } } }));
    expect(promise(at(1), 'weight:tongue')).toMatchObject({
      state: 'broken',
      sense: 'at-most',
      asked: { value: 0.15 },
    });
    expect(promise(at(3.2), 'weight:tongue')).toMatchObject({
      state: 'broken',
      sense: 'at-least',
      asked: { value: 0.1 },
    });
    expect(promise(at(3.2), 'weight:tongue-lift').state).toBe('broken');
    expect(promise(promises(rigOf(trailer)), 'weight:tongue').state).toBe('kept');
  });

  it('asks the customer for what the vehicle may pull, and judges it when told', () => {
    expect(promise(promises(rigOf(trailer)), 'weight:vehicle')).toMatchObject({ state: 'unknown' });
    const told = promise(promises(rigOf(trailer, { carrier: { massLimit: 1000 } })), 'weight:vehicle');
    expect(told.state).toBe('broken');
  });

  it('never takes the category of a hitch for proof: without the lift of the tractor it is unknown', () => {
    const hitch = {
      carrier: carrier('three-point', { hitchCategory: '2' }),
      tank: boxTank(0.8, 0.8, 0.6),
      pump: pump(20),
    };
    const list = promises(rigOf(hitch, { carrier: { ptoPower: 24000 } }));
    for (const id of ['weight:lift', 'weight:front-axle', 'weight:front-axle-slope', 'weight:rear-axle'])
      expect(promise(list, id).state, id).toBe('unknown');
    expect(promise(list, 'weight:lift').cause).toContain('ask the dealer');
  });

  it('compares pins by category, asks for the one it lacks, and tells what each pin carries (statics; ISO 730-1 table)', () => {
    const hitch = (category: '2' | undefined, tractor: object) => {
      const frame = carrier('three-point', category === undefined ? {} : { hitchCategory: category });
      const rig = rigOf(
        { carrier: frame, tank: boxTank(0.8, 0.8, 0.6), pump: pump(20) },
        { carrier: tractor },
      );
      return { rig, pins: promise(promises(rig), 'weight:pins') };
    };
    expect(hitch(undefined, {}).pins).toMatchObject({ state: 'unknown' });
    const untold = hitch('2', {}).pins;
    expect(untold.state).toBe('unknown');
    expect(untold.cause).toContain('ask the customer');
    expect(hitch('2', { hitchCategory: '1' }).pins.state).toBe('broken');
    const { rig, pins } = hitch('2', { hitchCategory: '2' });
    expect(pins.state).toBe('kept');
    expect(pins.cause).toContain('not that the tractor can carry the rig');
    const { rig: loaded } = loadedOf(contextOf(rig, 1000))!;
    const full = centreAt(loaded, 1);
    const step = (text: string) => pins.working.find((s) => s.text.startsWith(text))!.figure!.value;
    // Moments about the lower pins: the top link, a mast of 610 mm up, holds what the weight behind them turns.
    const top = (full.mass * STANDARD_GRAVITY * (full.x - hitchPlace(loaded.carrier))) / 0.61;
    expect(step('pull of the top link when full')).toBeCloseTo(top, 6);
    expect(step('on each lower pin when full')).toBeCloseTo(
      1.25 * Math.hypot(full.mass * STANDARD_GRAVITY, top),
      6,
    );
  });

  it('puts the tongue on the jack: at the coupler it carries what the coupler does, nearer the axles more', () => {
    const jack = (position: number | undefined, rating = 400) =>
      promise(
        promises(
          rigOf({
            ...trailer,
            carrier: carrier('tandem-trailer', position === undefined ? {} : { jack: { position, rating } }),
          }),
        ),
        'weight:jack',
      );
    expect(jack(undefined)).toMatchObject({ state: 'unknown' });
    const own = carrier('tandem-trailer');
    const list = promises(rigOf({ ...trailer, carrier: own }));
    const tongue = promise(list, 'weight:tongue-lift').working.find(
      (s) => s.text === 'on the coupler when full',
    )!;
    const atCoupler = jack(own.coupler!.position).working.find((s) => s.text === 'on the jack when full')!;
    expect(atCoupler.figure!.value).toBeCloseTo(tongue.figure!.value, 6);
    expect(jack(0).has!.value).toBeGreaterThan(jack(own.coupler!.position).has!.value);
    expect(jack(0, 20).state).toBe('broken');
  });

  it('lifts an empty skid by two eyes of four at 60°: each leg pulls 0.577 of the weight (1 / (2 sin 60°))', () => {
    const skid = (lifting?: { points: number; workingLoad: number }) => {
      const rig = rigOf({
        carrier: carrier('skid', lifting === undefined ? {} : { lifting }),
        tank: boxTank(0.8, 0.8, 0.6),
        pump: pump(20),
      });
      return { rig, eyes: promise(promises(rig), 'structure:lifting') };
    };
    expect(skid().eyes.state).toBe('unknown');
    const { rig, eyes } = skid({ points: 4, workingLoad: 9000 });
    const { dry } = loadedOf(contextOf(rig, 1000))!.rig;
    expect(eyes.has!.value / (dry.mass * STANDARD_GRAVITY)).toBeCloseTo(0.577, 3);
    expect(eyes.state).toBe('kept');
    expect(eyes.cause).toContain('empty only');
    expect(skid({ points: 4, workingLoad: 100 }).eyes.state).toBe('broken');
  });

  it('lifts the front wheels of the small tractor of the published method, and says the ballast (200 gal on category 1)', () => {
    // Ballast method of several operators' manuals: front = [G_V (a + b) + T_V b - G_H (c + d)]/b.
    const hitch = {
      carrier: carrier('three-point', { size: { length: 3.8, width: 1.5, height: 1 } }),
      tank: boxTank(1, 0.9, 0.9),
      pump: pump(20),
    };
    const rig = rigOf(hitch, { carrier: TRACTOR });
    const list = promises(rig);
    const loaded = loadedOf(contextOf(rig))!.rig;
    const full = centreAt(loaded, 1);
    const front = (600 * 1.65 - full.mass * (0.76 + full.x + 0.2)) / 1.65;
    const axle = promise(list, 'weight:front-axle');
    expect(axle.has!.value).toBeCloseTo(front / 1500, 9);
    expect(axle.state).toBe('broken');
    expect(axle.cause).toContain('front ballast is needed');
    const needed = axle.working.find((s) => s.text === 'front ballast that is needed')!.figure!.value;
    const ballasted = promise(
      promises(rigOf(hitch, { carrier: { ...TRACTOR, ballast: needed } })),
      'weight:front-axle',
    );
    expect(ballasted.has!.value).toBeCloseTo(0.2, 9);
    expect(promise(list, 'weight:rear-axle').has!.value).toBeCloseTo(1500 + full.mass - front, 6);
  });

  it('adds w (wheelbase + e)/wheelbase to the rear axle of a vehicle that carries the rig behind it', () => {
    const vehicle = {
      frontAxleMass: 1500,
      rearAxleMass: 1100,
      rearAxleRating: 1900,
      wheelbase: 3.6,
      bedAheadOfAxle: 0.6,
    };
    const rig = rigOf({ carrier: carrier('skid'), ...base }, { carrier: vehicle });
    const full = centreAt(loadedOf(contextOf(rig))!.rig, 1);
    const e = full.x - 0.6;
    const axle = promise(promises(rig), 'weight:rear-axle');
    expect(axle.has!.value).toBeCloseTo(1100 + (full.mass * (3.6 + e)) / 3.6, 6);
    expect(axle.state).toBe('broken');
    const supports = placementOf(contextOf(rig))!.supports;
    expect(supports.map((s) => s.full).reduce((a, b) => a + b)).toBeCloseTo(2600 + full.mass, 6);
  });

  it('breaks the push of a heavy cart by hand on turf and keeps a light one on a hard road', () => {
    const cart = { carrier: carrier('cart'), ...base };
    expect(promise(promises(rigOf(cart, { carrier: { movedByHand: true } })), 'weight:hand').state).toBe(
      'broken',
    );
    const light = { carrier: carrier('cart', { mass: 30 }), tank: boxTank(0.4, 0.4, 0.3, 5) };
    const hand = promise(
      promises(rigOf(light, { carrier: { movedByHand: true, ground: 'hard-road', movedBy: 'men' } })),
      'weight:hand',
    );
    expect(hand.state).toBe('kept');
    // HSE guideline: 10 kgf to keep moving, men.
    expect(hand.asked!.value).toBeCloseTo(10 * STANDARD_GRAVITY, 9);
  });

  it('asks for brakes by the table of states, never in silence', () => {
    const none = { ...trailer, carrier: carrier('tandem-trailer', { brakes: 'none' }) };
    const id = 'weight:brakes';
    expect(promise(promises(rigOf(none)), id).state).toBe('unknown');
    // The compilation has 1500 lb for California and 4000 for Delaware; this rig weighs about 3300 lb.
    expect(promise(promises(rigOf(none, { carrier: { state: 'CA' } })), id).state).toBe('broken');
    expect(promise(promises(rigOf(none, { carrier: { state: 'DE' } })), id).state).toBe('kept');
    expect(promise(promises(rigOf(none, { carrier: { state: 'KS' } })), id).state).toBe('unknown');
    expect(
      promise(promises(rigOf({ ...trailer, carrier: carrier('tandem-trailer', { brakes: 'electric' }) })), id)
        .state,
    ).toBe('kept');
  });

  it('is unknown, not kept, when nobody knows the density', () => {
    const context = contextOf(rigOf(trailer));
    const doubt = {
      ...context,
      duties: context.duties.map((d) => ({ ...d, liquid: { ...d.liquid, missing: ['density: no data'] } })),
    };
    for (const p of weightPromises(doubt)) expect(['unknown', 'broken'], p.id).toContain(p.state);
    expect(promise(structurePromises(doubt), 'structure:tank').state).toBe('unknown');
  });
});

describe('stability', () => {
  it('tips where the moments about the downhill wheels vanish with the liquid tilted (bisection, a second method)', () => {
    const wagon = { carrier: carrier('wagon'), tank: boxTank(1.2, 1.1, 0.9), pump: pump(20) };
    const rig = loadedOf(contextOf(rigOf(wagon)))!.rig;
    const track = 1.5;
    for (const share of [1, 0.5, 0.25]) {
      const turning = (slope: number): number => {
        const liquid = liquidPoint(rig, share);
        const tilted = tankTilted(rig.tank.shape, liquid.mass / rig.density, 0, slope);
        const height = rig.tankAt.z + shellAbove(rig) + tilted.centroidHeight;
        const dry = rig.dry.mass * ((track / 2) * Math.cos(slope) - rig.dry.z * Math.sin(slope));
        return (
          dry +
          liquid.mass *
            ((track / 2 - Math.abs(tilted.centroidY)) * Math.cos(slope) - height * Math.sin(slope))
        );
      };
      let [low, high] = [0.05, 1.1];
      for (let i = 0; i < 50; i++) {
        const middle = (low + high) / 2;
        if (turning(middle) > 0) low = middle;
        else high = middle;
      }
      // At the slope where it just tips, the angle that is reckoned for that slope is the slope itself.
      const tip = tipAngle(contextOf(rigOf(wagon)), rig, low);
      if ('missing' in tip) throw new Error('nothing should be missing');
      expect(tip.angle).toBeLessThanOrEqual(low + 1e-6);
      if (tip.fill === share) expect(tip.angle).toBeCloseTo(low, 6);
    }
  });

  it('of a cart on a ball is the three-support angle, less than T/2h', () => {
    const rig = rigOf({ carrier: carrier('cart'), ...base });
    const tip = tipAngle(contextOf(rig), loadedOf(contextOf(rig))!.rig, 0.26);
    if ('missing' in tip) throw new Error('nothing should be missing');
    expect(tip.angle).toBeLessThan(Math.atan(1.5 / 2 / tip.height));
    const { rig: loaded } = loadedOf(contextOf(rig))!;
    const x = centreAt(loaded, tip.fill).x + 1.2;
    expect(tip.angle).toBeCloseTo(threeSupportTipAngle(1.5, 3.4, x, tip.height, 0.45), 9);
  });

  it('falls as the tank is set higher, and is judged against the slope of the site or a start value that is named', () => {
    const at = (z: number) =>
      promise(promises(rigOf(trailer, { items: { tank: { at: { z } } } })), 'stability:slope');
    let before = Infinity;
    for (const z of [0, 0.3, 0.6, 1]) {
      expect(at(z).has!.value).toBeLessThan(before);
      before = at(z).has!.value;
    }
    expect(at(0).cause).toContain('start value of ours');
    const high = { tank: { at: { z: 1 } } };
    const told = promise(promises(rigOf(trailer, { site: { slope: 0.6 }, items: high })), 'stability:slope');
    expect(told.state).toBe('broken');
    expect(told.cause).not.toContain('start value');
  });

  it('of a mounted or carried rig asks for the vehicle first', () => {
    const skid = { carrier: carrier('skid'), ...base };
    expect(promise(promises(rigOf(skid)), 'stability:slope').cause).toContain('track');
    const vehicle = {
      frontAxleMass: 1500,
      rearAxleMass: 1100,
      wheelbase: 3.6,
      bedAheadOfAxle: 1.2,
      bedHeight: 0.9,
      track: 1.7,
      centreHeight: 0.7,
    };
    expect(promise(promises(rigOf(skid, { carrier: vehicle })), 'stability:slope').state).toBe('kept');
  });

  it('counts liquid below the outlet on the slope against the lowest level of a duty', () => {
    const flat = { carrier: carrier('cart'), tank: boxTank(2, 1, 0.4), pump: pump(20) };
    const low = promise(
      promises(rigOf(flat, { levels: [0.05], site: { slope: 0.26 } })),
      'stability:last-liquid',
    );
    expect(low.state).toBe('broken');
    // w l² tan t / 2 downhill of a mid-floor outlet (wedge geometry).
    expect(low.has!.value).toBeCloseTo((1 * 1 * Math.tan(0.26)) / 2, 6);
  });
});

describe('structure', () => {
  it('bends the rails of a skid under an even load as the beam tables say', () => {
    // A tank as long as the deck, a massless frame: an even load on bearers at 0.2071 from both ends.
    const deck = carrier('skid', { mass: 0, deckLength: 2, size: { length: 2, width: 1.8, height: 0.5 } });
    const rig = rigOf({ carrier: deck, tank: boxTank(2, 1, 0.5) });
    const rails = promise(promises(rig), 'structure:rails');
    const mass = 2 * 1 * 0.5 * 0.96 * 1000 + 40;
    const load = (mass * STANDARD_GRAVITY * 2) / 2 / 2;
    const a = ((Math.SQRT2 - 1) / 2) * 2;
    const { supportMoment, midspanMoment } = overhangingRail(2, a, load);
    expect(Math.abs(supportMoment)).toBeCloseTo(midspanMoment, 6);
    const { modulusX } = roundedTubeSection(0.1, 0.05, 0.006 * DESIGN_WALL_SHARE);
    expect(rails.has!.value / bendingStress(midspanMoment, modulusX)).toBeCloseTo(1, 6);
    expect(rails.sentence).toContain('a qualified person must approve the frame');
  });

  it('takes welded aluminium at about half of the unwelded, and steel above both', () => {
    const allowable = (material: NonNullable<ReturnType<typeof carrier>['rail']>['material']) =>
      promise(
        promises(
          rigOf({
            ...trailer,
            carrier: carrier('tandem-trailer', {
              rail: { material, height: 0.1, width: 0.05, wall: 0.006, count: 2 },
            }),
          }),
        ),
        'structure:rails',
      ).asked!.value;
    const [welded, whole, steel] = [
      allowable('aluminium-6061-t6-welded'),
      allowable('aluminium-6061-t6'),
      allowable('steel-a500b'),
    ];
    // 9.1 of 19.5 ksi: 49 CFR 178.46 and the Aluminum Design Manual's factors.
    expect(welded / whole).toBeCloseTo(0.466, 2);
    expect(steel).toBeGreaterThan(whole);
  });

  it('is unknown without rails, and broken for a tank rated for less than the liquid', () => {
    const bare = without(carrier('cart'), 'rail');
    expect(promise(promises(rigOf({ ...base, carrier: bare })), 'structure:rails').state).toBe('unknown');
    expect(promise(promises(rigOf(trailer), 1600), 'structure:tank').state).toBe('broken');
  });

  it('breaks when parts stand out over the deck, in each other, or below the ground', () => {
    const small = carrier('cart', { deckLength: 1.6 });
    expect(promise(promises(rigOf({ ...base, carrier: small })), 'structure:fit').state).toBe('broken');
    const clash = promise(
      promises(rigOf(trailer, { items: { pump: { at: { x: 2, y: 0 } }, tank: { at: { x: 2, y: 0 } } } })),
      'structure:fit',
    );
    expect(clash).toMatchObject({ state: 'broken' });
    expect(clash.cause).toContain('same place');
    const buried = promise(promises(rigOf(trailer, { items: { pump: { at: { z: -1 } } } })), 'structure:fit');
    expect(buried.cause).toContain('below the ground');
  });

  it('holds the tank by working load limits and a bolted rig by breaking strength, never mixed', () => {
    const skid = { carrier: carrier('skid'), ...base };
    const list = promises(rigOf(skid));
    expect(promise(list, 'structure:tank-straps').method).toContain('working load limit');
    expect(promise(list, 'structure:bolts').method).toMatch(/0\.8 g.*breaking strength/);
    const strapped = promises(rigOf(skid, { carrier: { heldBy: 'straps' } }));
    expect(promise(strapped, 'structure:rig-straps').state).toBe('unknown');
  });

  it('is held by the rule that the brief names, each with its own strength (a force balance by hand)', () => {
    const skid = { carrier: carrier('skid'), ...base };
    const held = (tieDownRule?: 'australia' | 'europe') =>
      promise(
        promises(rigOf(skid, { carrier: { heldBy: 'straps', ...(tieDownRule && { tieDownRule }) } })),
        'structure:rig-straps',
      );
    expect(held().source).toContain('49 CFR 393.106');
    for (const [rule, edition] of [
      ['australia', 'Load Restraint Guide 2018'],
      ['europe', 'EN 12195-1:2010'],
    ] as const) {
      const told = held(rule);
      expect(told.source).toContain(edition);
      expect(told.method).toContain('lashing capacity');
      expect(told.state).toBe('unknown');
      const needed = told.working.find((s) => s.text === 'force forward')!.figure!.value;
      // A strap of 2000 lbf at 45 degrees up and 45 degrees out holds half of its strength.
      const each = 1000 * 0.45359237 * 9.80665;
      const straps = Number(/^\d+/.exec(told.sentence)![0]);
      expect(straps).toBe(Math.max(4, 2 * Math.ceil(needed / each)));
    }
    const bolted = promise(promises(rigOf(skid, { carrier: { tieDownRule: 'europe' } })), 'structure:bolts');
    expect(bolted.source).toContain('EN 12195-1:2010');
  });
});

describe('electrics', () => {
  const electric = {
    ...trailer,
    reel: reel(60, { rewind: 'electric', rewindCurrent: 50 }),
    hose: hose(),
    battery: battery({ capacity: 100 * 3600 }),
    engine: engine(50, { start: 'electric', startingCurrent: 110, chargingCurrent: 5 }),
  };
  const items = { hose: { length: 55 } };

  it('say nothing of a rig that has none', () => {
    expect(electricsPromises(contextOf(rigOf(trailer)))).toEqual([]);
  });

  it('empty the battery as a simulation of the day second by second does (a second method)', () => {
    const use = { rewindsPerHour: 6, startsPerDay: 8, workHours: 6, controlCurrent: 3 };
    const rig = rigOf(electric, { items, carrier: use });
    const day = promise(promises(rig), 'electrics:day');
    const cold = 0.8 + (0.2 * 20) / 27;
    const capacity = 100 * 3600 * cold;
    const drawn = (current: number) => (current <= 5 ? current : current * (current / 5) ** 0.2);
    const rewind = 55 / 0.61;
    let charge = capacity;
    for (let hour = 0; hour < 6; hour++) {
      let reeled = 0;
      for (let second = 0; second < 3600; second++) {
        charge += 5 * 0.8 * 0.85 - 3;
        // Rewinds follow each other at even distances; their last second may be part of one.
        const into = second % 600;
        const on = Math.min(1, Math.max(0, rewind - into));
        charge -= drawn(50) * on;
        reeled += on;
      }
      expect(reeled).toBeCloseTo(6 * rewind, 6);
    }
    charge -= 8 * 4 * drawn(110);
    expect(day.has!.value).toBeCloseTo(Math.min(1, charge / capacity), 6);
    expect(day.state).toBe('broken');
  });

  it('keep the battery with a larger coil, and say what they assume', () => {
    const rig = rigOf(
      { ...electric, engine: engine(50, { start: 'electric', startingCurrent: 110, chargingCurrent: 20 }) },
      { items },
    );
    const day = promise(promises(rig), 'electrics:day');
    expect(day.state).toBe('kept');
    expect(day.cause).toContain('start values of ours');
  });

  it('say when nothing feeds an electric reel', () => {
    const none = without(electric, 'battery');
    expect(promise(promises(rigOf(none, { items })), 'electrics:day').state).toBe('unknown');
    const fed = promises(rigOf(none, { items, carrier: { supplyCurrent: 20 } }));
    expect(promise(fed, 'electrics:day').state).toBe('broken');
  });

  it('choose a cable within its drop whose fuse lies between 125 % of the load and what the cable carries', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 150, noNaN: true }), (current) => {
        const rig = rigOf(
          { ...electric, reel: reel(60, { rewind: 'electric', rewindCurrent: current }) },
          { items },
        );
        const cable = promise(promises(rig), 'electrics:cable:reel');
        expect(cable.state).not.toBe('broken');
        const figure = (text: string) => cable.working.find((s) => s.text.includes(text))!.figure!.value;
        expect(figure('fuse')).toBeGreaterThanOrEqual(1.25 * current);
        expect(figure('carries')).toBeGreaterThanOrEqual(figure('fuse'));
        expect(cable.has!.value).toBeLessThanOrEqual(cable.asked!.value);
        expect(cable.has!.value).toBeGreaterThan(0);
      }),
      { numRuns: 30 },
    );
    expect(cableDrop(30, 1e-5, 2, 12).drop).toBeGreaterThan(0);
  });
});

describe('the proof of weight as a whole', () => {
  it('is unknown without a carrier and out of range with an impossible one, and never throws', () => {
    const bare = contextOf(rigOf(base));
    expect(weightPromises(bare)).toMatchObject([{ state: 'unknown' }]);
    expect(placementOf(bare)).toBeUndefined();
    const odd = carrier('cart', {
      axles: [{ position: -1.2, rating: 500, tyreRating: 300, tyres: 2, tyreDiameter: 0.6, track: 1.5 }],
    });
    const context = contextOf(rigOf({ ...base, carrier: odd }));
    const list = guarded('weight', 'Carrier and vehicle carry the rig', () => weightPromises(context));
    expect(list).toMatchObject([{ id: 'weight:out-of-range', state: 'unknown' }]);
    expect(list[0]!.cause).toContain('axlePlace');
    expect(placementOf(contextOf(rigOf({ ...base, carrier: odd })))).toBeUndefined();
  });

  it('tells cause, method and source of every promise, with unlike ids', () => {
    for (const form of ['skid', 'three-point', 'cart', 'wagon', 'tandem-trailer', 'utility-bed'] as const) {
      const list = promises(rigOf({ ...base, carrier: carrier(form), reel: reel(30) }, { carrier: TRACTOR }));
      expect(new Set(list.map((p) => p.id)).size, form).toBe(list.length);
      for (const p of list) {
        expect(p.cause, p.id).not.toBe('');
        expect(p.source, p.id).not.toBe('');
        for (const figure of [p.asked, p.has])
          if (figure !== undefined) expect(figure.value, p.id).not.toBeNaN();
      }
    }
  });

  it('gives drawings every part, support, centre of mass and the tip angle as plain data', () => {
    const placement = placementOf(contextOf(rigOf(trailer)))!;
    expect(JSON.parse(JSON.stringify(placement))).toEqual(placement);
    expect(placement.parts.map((p) => p.item).sort()).toEqual(['engine', 'pump', 'tank']);
    expect(placement.supports.map((s) => s.id)).toEqual(['coupler', 'axle-1', 'axle-2']);
    expect(placement.tip!.angle).toBeGreaterThan(0.2);
  });
});
