import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hoseOf, tip, workContext, type WorkRig } from '../../../test/work-rig.ts';
import type { RigPromise } from '../promise.ts';
import { rinsePromises } from './rinse.ts';
import { fillingPromises } from './rinse-filling.ts';
import { residualOf } from './rinse-residual.ts';
import { strengthPromises } from './strength.ts';

const GALLON = 231 * 0.0254 ** 3;
const FOOT = 0.3048;
const base: WorkRig = {
  line: { hose: hoseOf(0.0127), tip: tip() },
  hoseLength: 300 * FOOT,
  outlet: { flow: 5e-4, tipPressure: 5e5 },
};
const named = (list: readonly RigPromise[], id: string): RigPromise => {
  const promise = list.find((p) => p.id === id);
  if (promise === undefined) throw new Error(`no promise '${id}' among ${list.map((p) => p.id).join(', ')}`);
  return promise;
};
const rinse = (w: WorkRig, id: string) => named(rinsePromises(workContext(w)), id);
const filling = (w: WorkRig, id: string) => named(fillingPromises(workContext(w)), id);

describe('what stays in the rig', () => {
  it('holds 1.02 gal in 100 ft of 1/2 in hose (NWCG) and 2 % of the tank', () => {
    const residual = residualOf(workContext(base));
    expect(residual.hoses / GALLON).toBeCloseTo(3.06, 2);
    expect(residual.body).toBeCloseTo(0.02 * 0.48, 9);
    expect(residual.total).toBeCloseTo(residual.hoses + residual.body, 12);
  });
});

describe('the rinse', () => {
  it('asks 17.1 times the residual in three rinses for the factor 300 of ISO 16119-4', () => {
    const w = { ...base, brief: { rinse: { water: '50 gal' } } };
    const residual = residualOf(workContext(w)).total;
    const promise = rinse(w, 'rinse:plan');
    expect(promise.asked!.value / residual).toBeCloseTo(17.08, 2);
    expect(promise.state).toBe('broken');
  });

  it('is unknown until somebody says what water rides along, and kept at the yard', () => {
    expect(rinse(base, 'rinse:plan')).toMatchObject({ state: 'unknown' });
    expect(rinse({ ...base, brief: { rinse: { where: 'yard' } } }, 'rinse:plan').state).toBe('kept');
  });

  it('never asks more water for more rinses, for a shorter hose or for less dilution', () => {
    const water = (rinses: number, dilution: number, length: number) =>
      rinse(
        { ...base, hoseLength: length, brief: { rinse: { water: '1 gal', rinses, dilution } } },
        'rinse:plan',
      ).asked!.value;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 11 }),
        fc.double({ min: 2, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 200, noNaN: true }),
        (rinses, dilution, length) => {
          const asked = water(rinses, dilution, length);
          expect(water(rinses + 1, dilution, length)).toBeLessThanOrEqual(asked + 1e-12);
          expect(water(rinses, dilution * 1.5, length)).toBeGreaterThanOrEqual(asked - 1e-12);
          expect(water(rinses, dilution, length * 1.5)).toBeGreaterThan(asked);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('flushing', () => {
  const two = (a: object, b: object, more: object = {}) => ({
    ...base,
    brief: {
      liquids: [
        { id: 'mix', name: 'First', ...a },
        { id: 'b', name: 'Second', ...b },
        { id: 'rinse', name: 'Water', liquid: 'water', use: 'flush' },
      ],
      ...more,
    },
  });
  const bleach = { liquid: 'naocl_12', strength: 12.5, strengthUnit: 'trade %' };
  const acid = { liquid: 'citric', strength: 5, strengthUnit: 'weight %' };

  it('asks for a recorded decision before bleach follows acid, and is thin with it', () => {
    const open = rinse(two(bleach, acid), 'rinse:flush');
    expect(open).toMatchObject({ state: 'unknown', decisions: ['flush:citric:naocl_12'] });
    const decisions = [
      {
        about: 'flush:citric:naocl_12',
        who: 'A. Builder',
        why: 'water until no smell is left',
        when: 'on 1 March',
      },
    ];
    expect(rinse(two(bleach, acid, { decisions }), 'rinse:flush').state).toBe('thin');
  });

  it('names the steps after each liquid, and the missing water', () => {
    const kept = rinse(base, 'rinse:flush');
    expect(kept.state).toBe('kept');
    expect(kept.working.map((s) => s.text).join()).toContain('Triple rinse');
    const dry = { ...base, brief: { liquids: [{ id: 'mix', name: 'Mix', liquid: 'glyphosate_mix' }] } };
    expect(rinse(dry, 'rinse:flush')).toMatchObject({
      state: 'unknown',
      cause: 'the brief names no water to flush with',
    });
  });
});

describe('the winter', () => {
  const glycol = (volume: string | undefined, strength = 60) => ({
    ...base,
    site: { temperature: '68 F', humidity: '50 %', coldest: '-20 °C' },
    brief: {
      liquids: [
        { id: 'mix', name: 'Mix', liquid: 'glyphosate_mix' },
        { id: 'rinse', name: 'Water', liquid: 'water', use: 'flush' },
        { id: 'pg', name: 'Glycol', liquid: 'pg', strength, strengthUnit: 'weight %', use: 'winterise' },
      ],
      rinse: { where: 'yard', ...(volume === undefined ? {} : { antifreeze: volume }) },
    },
  });

  it('judges the freezing point after the water left inside has thinned it (Melinder, IIR 2010)', () => {
    expect(rinse(glycol('20 gal'), 'rinse:winter').state).toBe('kept');
    const short = rinse(glycol('5 gal'), 'rinse:winter');
    expect(short.state).toBe('broken');
    expect(short.has!.value).toBeGreaterThan(short.asked!.value);
    expect(rinse(glycol(undefined), 'rinse:winter').cause).toContain('it takes');
    expect(rinse(glycol('20 gal', 20), 'rinse:winter')).toMatchObject({ state: 'unknown' });
  });

  it('is asked for wherever it freezes, unless it is decided that the rig is drained', () => {
    const cold = { ...base, site: { temperature: '68 F', humidity: '50 %', coldest: '-10 °C' } };
    expect(rinse(cold, 'rinse:winter')).toMatchObject({ state: 'unknown', decisions: ['rinse:drained-dry'] });
    const decisions = [
      { about: 'rinse:drained-dry', who: 'A. Builder', why: 'blown out', when: 'on 1 March' },
    ];
    expect(rinse({ ...cold, brief: { decisions } }, 'rinse:winter').state).toBe('thin');
    const warm = { ...base, site: { temperature: '68 F', humidity: '50 %', coldest: '40 F' } };
    expect(rinsePromises(workContext(warm)).some((p) => p.id === 'rinse:winter')).toBe(false);
  });
});

describe('filling', () => {
  it('keeps the mix out of the mains by a gap of twice the bore, at least an inch (Capital Regional District)', () => {
    const fill = (protection: string | undefined) =>
      filling({ ...base, brief: { fill: { from: 'mains', protection, bore: '2 in' } } }, 'rinse:backflow');
    expect(fill('air-gap').state).toBe('kept');
    expect(fill('air-gap').cause).toContain('4.0 in');
    expect(fill('reduced-pressure-assembly').state).toBe('kept');
    expect(fill('none').state).toBe('broken');
    expect(fill(undefined).state).toBe('unknown');
    expect(filling(base, 'rinse:backflow').state).toBe('unknown');
  });

  it('fills another sprayer in volume over flow, and says when there is no eductor', () => {
    const brief = { transfer: { duty: 'work', volume: '100 gal', within: '10 min' } };
    const promise = filling({ ...base, brief }, 'day:transfer');
    expect(promise.has!.value).toBeCloseTo((100 * GALLON) / 5e-4, 6);
    const hopper = { product: '5 gal', within: '5 min' };
    expect(filling({ ...base, brief: { hopper } }, 'day:hopper').state).toBe('unknown');
  });
});

describe('bleach on the day of use', () => {
  const bleach = (store?: object) =>
    named(
      strengthPromises(
        workContext({
          ...base,
          liquid: {
            liquid: 'naocl_12',
            strength: 12.5,
            strengthUnit: 'trade %',
            ...(store === undefined ? {} : { store }),
          },
        }),
      ),
      'liquid:strength:mix',
    );

  it('loses more with time and warmth, by the law of Adam and Gordon 1999', () => {
    const after = (days: number, temperature: string) => bleach({ days, temperature, least: 8 }).has!.value;
    expect(after(0, '75 F')).toBeCloseTo(0.125, 9);
    expect(after(30, '75 F')).toBeLessThan(after(10, '75 F'));
    expect(after(30, '95 F')).toBeLessThan(after(30, '75 F'));
  });

  it('breaks when it is too weak, carries its band, and is unknown while nobody says how old it is', () => {
    const weak = bleach({ days: 60, temperature: '90 F', least: 11 });
    expect(weak.state).toBe('broken');
    expect(weak.band![0]).toBeLessThanOrEqual(weak.band![1]);
    expect(bleach()).toMatchObject({ state: 'unknown' });
    expect(bleach({ days: 10, temperature: '130 F', least: 11 }).state).not.toBe('unknown');
  });
});
