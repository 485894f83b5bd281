import { describe, expect, it } from 'vitest';
import { boom, hoseOf, nozzle, tip, workContext, type WorkRig } from '../../../test/work-rig.ts';
import type { RigPromise } from '../promise.ts';
import { patternPromises } from './pattern.ts';
import { pumpReservePromises } from './pump-reserve.ts';

const GALLON = 231 * 0.0254 ** 3;
const GPM = GALLON / 60;
const FOOT = 0.3048;
const ACRE = 43560 * FOOT ** 2;
const POUND = 0.45359237;
const PSI = 6894.757293168;

function found(w: WorkRig, id: string): RigPromise {
  const list = patternPromises(workContext(w));
  const promise = list.find((p) => p.id === id);
  if (promise === undefined) throw new Error(`no promise '${id}' among ${list.map((p) => p.id).join(', ')}`);
  return promise;
}

/** Twelve nozzles of 0.2 gpm at 40 psi, 20 in apart. */
const boomLine = { hose: hoseOf(0.0127), boom: boom(12, 20 * 0.0254), nozzle: nozzle() };
const pasture: WorkRig = {
  line: boomLine,
  count: 12,
  outlet: { flow: 12 * 0.2 * GPM, tipPressure: 40 * PSI },
  duty: { application: { rate: '14 gal/acre', speed: '4 mph', width: '20 ft' } },
};
const gunLine = { hose: hoseOf(0.0127), tip: tip() };
const gun: WorkRig = { line: gunLine, outlet: { flow: 2 * GPM, tipPressure: 60 * PSI } };

describe('dose', () => {
  it('is GPA = 5940 gpm / (mph in) (Univ. of Missouri Extension G1270a)', () => {
    const promise = found(pasture, 'pattern:dose:work');
    expect((promise.has!.value * ACRE) / GALLON).toBeCloseTo((5940 * 0.2) / (4 * 20), 1);
    expect(promise.state).toBe('kept');
    const more = {
      ...pasture,
      duty: { application: { rate: '15.5 gal/acre', speed: '4 mph', width: '20 ft' } },
    };
    expect(found(more, 'pattern:dose:work').state).toBe('broken');
  });

  it('counts a rate on treated bands, and three times as much on them as on the field (True, Univ. of Minnesota)', () => {
    const bands = { speed: '4 mph', width: '20 ft', band: '10 in', row: '30 in' };
    const onBands = found(
      { ...pasture, duty: { application: { ...bands, rate: '40 gal/acre', basis: 'treated' } } },
      'pattern:dose:work',
    );
    const onField = found(
      { ...pasture, duty: { application: { ...bands, rate: '13 gal/acre', basis: 'field' } } },
      'pattern:dose:work',
    );
    expect(onBands.has!.value).toBeCloseTo(3 * onField.has!.value, 12);
    expect(onBands.sentence).toContain('treated bands');
    expect(onField.sentence).toContain('whole field');
  });

  it('says to set the pressure that gives the rate, and breaks when even the least pressure gives too much', () => {
    const less = {
      ...pasture,
      duty: { application: { rate: '10 gal/acre', speed: '4 mph', width: '20 ft' } },
    };
    // Orifice law: p = 40 psi (10 / 14.85)^2 = 18 psi.
    expect(found(less, 'pattern:dose:work').cause).toContain('set 18 psi');
    const little = {
      ...pasture,
      duty: { application: { rate: '5 gal/acre', speed: '4 mph', width: '20 ft' } },
    };
    expect(found(little, 'pattern:dose:work')).toMatchObject({ state: 'broken', sense: 'at-most' });
  });

  it('counts 80 % of the wetted width of a boomless nozzle (Univ. of Kentucky ENTFACT-805)', () => {
    const line = { hose: hoseOf(0.02), nozzle: nozzle({ pattern: 'boomless', wettedWidth: 30 * FOOT }) };
    const duty = (width: string) => ({
      open: ['boom'],
      application: { rate: '14 gal/acre', speed: '4 mph', width },
    });
    const boomless = { ...pasture, line, count: 1 };
    expect(found({ ...boomless, duty: duty('24 ft') }, 'pattern:width:work').state).toBe('kept');
    const wide = found({ ...boomless, duty: duty('25 ft') }, 'pattern:width:work');
    expect(wide.state).toBe('broken');
    expect(wide.has!.value / FOOT).toBeCloseTo(24, 9);
    expect(found({ ...boomless, duty: duty('24 ft') }, 'pattern:even:work:gun').state).toBe('unknown');
  });

  it('holds its rate only where the pressure of the slowest and fastest speed suits the nozzle', () => {
    const speeds = (slowest: string, fastest: string) => ({
      ...pasture,
      duty: { application: { rate: '14 gal/acre', speed: '4 mph', width: '20 ft', slowest, fastest } },
    });
    expect(found(speeds('3 mph', '4.5 mph'), 'pattern:speeds:work:boom').state).toBe('kept');
    // p goes with v^2: 2 mph needs a quarter of 35.5 psi, the nozzle needs 14.5 psi.
    expect(found(speeds('2 mph', '4.5 mph'), 'pattern:speeds:work:boom')).toMatchObject({
      state: 'broken',
      sense: 'at-least',
    });
    expect(found(speeds('3 mph', '8 mph'), 'pattern:speeds:work:boom')).toMatchObject({
      state: 'broken',
      sense: 'at-most',
    });
  });
});

describe('trees, pots and lanes', () => {
  it('gives a dense crown one gallon for 1000 ft3 (Landers, Cornell Univ.)', () => {
    const duty = { trees: { crownHeight: '20 ft', crownWidth: '20 ft', time: '2 min' } };
    const promise = found({ ...gun, duty }, 'pattern:tree:work');
    expect(promise.asked!.value / GALLON).toBeCloseTo((Math.PI / 6) * 8, 6);
    expect(promise.has!.value / GALLON).toBeCloseTo(4, 9);
    expect(promise.state).toBe('broken');
  });

  it('asks how long the gun stays when nobody said', () => {
    const duty = { trees: { crownHeight: '20 ft', crownWidth: '20 ft' } };
    expect(found({ ...gun, duty }, 'pattern:tree:work')).toMatchObject({ state: 'unknown' });
  });

  it('holds a rate against the volume of the rows, TRV = H W 43560 / S (Landers, Cornell Univ.)', () => {
    const trees = { crownHeight: '12 ft', crownWidth: '10 ft', rowSpacing: '20 ft', canopy: 'pruned' };
    const application = { rate: '200 gal/acre', speed: '2 mph', width: '20 ft' };
    const promise = found({ ...gun, duty: { trees, application } }, 'pattern:rows:work');
    expect((promise.asked!.value * ACRE) / GALLON).toBeCloseTo((0.7 * ((12 * 10 * 43560) / 20)) / 1000, 6);
  });

  it('takes 0.2 s of the hand against the time of a drench', () => {
    const duty = { drench: { dose: '4 fl oz', within: '10 %' } };
    const promise = found({ ...gun, duty }, 'pattern:drench:work');
    // 2 gpm is 4.27 fl oz a second.
    expect(promise.has!.value).toBeCloseTo((0.2 * (256 / 60)) / 4, 9);
    expect(promise.state).toBe('broken');
  });

  it('counts the dry salt of a brine: 23.3 % at 9.81 lb/gal holds 2.29 lb/gal (Turf Magazine)', () => {
    const lane = { drySalt: '100 lb/mi', speed: '10 mph' };
    const brine = { liquid: 'cacl2_brine', strength: 23.3, strengthUnit: 'weight %' };
    const density = (9.81 * POUND) / GALLON;
    const promise = found({ ...pasture, liquid: brine, density, duty: { lane } }, 'pattern:lane:work');
    const perMile = (2.4 * 60 * 2.2857) / 10;
    expect((promise.has!.value / POUND) * 1609.344).toBeCloseTo(perMile, 1);
    expect(found({ ...pasture, duty: { lane } }, 'pattern:lane:work').state).toBe('unknown');
  });
});

describe('evenness and droplets', () => {
  const at = (height: string, more: object = {}) =>
    found(
      {
        ...pasture,
        line: { ...boomLine, boom: boom(12, 0.5), nozzle: nozzle(more) },
        duty: { boomHeight: height },
      },
      'pattern:even:work:boom',
    );

  it('is uneven with a low 80° boom at 0.5 m and even higher up (superposition, computed twice)', () => {
    expect(at('0.4 m').state).toBe('broken');
    expect(at('0.5 m').state).toBe('kept');
    // Continuous 6.5 % for 80°, 0.5 m, 0.5 m; grooves of 100 mm lower it by 1 to 4 points.
    const grooves = at('0.5 m').has!.value;
    expect(grooves).toBeGreaterThan(0.025);
    expect(grooves).toBeLessThan(0.055);
  });

  it('asks for the test report of a nozzle that has no ideal pattern, and takes the shape when it is given', () => {
    const flood = { ...pasture, line: { ...boomLine, nozzle: nozzle({ pattern: 'flood' }) } };
    expect(found(flood, 'pattern:even:work:boom').state).toBe('unknown');
    const measured = { ...flood, duty: { patternShape: 'triangular', boomHeight: '23.8 in' } };
    expect(found(measured, 'pattern:even:work:boom').state).toBe('kept');
  });

  it('takes the droplet class at the pressure the rate asks, the finer between two, unknown outside the data', () => {
    const asked = (rate: string, droplets: string) =>
      found(
        { ...pasture, duty: { droplets, application: { rate, speed: '4 mph', width: '20 ft' } } },
        'pattern:droplets:work:boom',
      );
    // 14 gal/acre at 35.5 psi (2.4 bar): between coarse and medium.
    expect(asked('14 gal/acre', 'medium').state).toBe('kept');
    expect(asked('14 gal/acre', 'coarse').state).toBe('broken');
    const far = { ...pasture, outlet: { ...pasture.outlet, tipPressure: 6e5 }, duty: { droplets: 'fine' } };
    expect(found(far, 'pattern:droplets:work:boom').state).toBe('unknown');
    const ofGun = found({ ...gun, duty: { droplets: 'fine' } }, 'pattern:droplets:work:gun');
    expect(ofGun.state).toBe('unknown');
    // The classes are defined by reference fan nozzles (ASABE S572, ISO 25358).
    expect(ofGun.cause).toContain('no published class covers this gun');
  });
});

describe('evenness of passes from the cups of one', () => {
  const line = { hose: hoseOf(0.02), nozzle: nozzle({ pattern: 'boomless', wettedWidth: 30 * FOOT }) };
  const at = (width: string, catches: readonly number[], more: object = {}) => {
    const application = { rate: '14 gal/acre', speed: '4 mph', width };
    const cups = { pitch: '1 ft', catches, ...more };
    const duty = { open: ['boom'], application, cups };
    return found({ ...pasture, line, count: 1, duty }, 'pattern:even:work:gun');
  };
  // A triangle 20 ft wide lies even at every 10 ft, and in a peak and a valley at 18 ft.
  const triangle = Array.from({ length: 19 }, (_, i) => 10 - Math.abs(i - 9));

  it('is even where triangles meet at half height and uneven further apart (superposition, by hand)', () => {
    expect(at('10 ft', triangle)).toMatchObject({ state: 'kept', sense: 'at-most' });
    expect(at('10 ft', triangle).has!.value).toBeLessThan(1e-9);
    const wide = at('18 ft', triangle);
    expect(wide.state).toBe('broken');
    expect(wide.working.map((w) => w.text)).toContain('widest distance that is even enough');
  });

  it('tells a lopsided nozzle driven there and back from one driven round and round', () => {
    const slope = Array.from({ length: 10 }, (_, i) => 10 - i);
    const back = at('8 ft', slope).has!.value;
    const round = at('8 ft', slope, { manner: 'round-and-round' }).has!.value;
    expect(Math.abs(back - round)).toBeGreaterThan(0.01);
  });

  it('refuses cups that caught nothing, at the field', () => {
    expect(() => at('10 ft', [0, 0, 0])).toThrow(/caught anything/);
  });
});

describe('drift and weather', () => {
  it('keeps 1 % of a boom’s rate at 2.8 m, by the field crop curve (FOCUS SWS Appendix B, Table B.1)', () => {
    const near = found({ ...pasture, site: { neighbour: '2 m' } }, 'pattern:drift:boom');
    // 2.7593 x^-0.9778 = 1 gives x = 2.82 m.
    expect(near.asked!.value).toBeCloseTo(2.7593 ** (1 / 0.9778), 3);
    expect(near.state).toBe('broken');
    expect(found({ ...pasture, site: { neighbour: '10 m' } }, 'pattern:drift:boom').state).toBe('kept');
    expect(found(pasture, 'pattern:drift:boom')).toMatchObject({ state: 'unknown' });
  });

  it('says plainly that no published curve covers a high jet into trees', () => {
    const target = { aim: 'height', height: '50 ft', standoff: '12 ft' };
    const promise = found(
      { ...gun, duty: { target }, site: { neighbour: '500 ft' } },
      'pattern:drift:high-jet',
    );
    expect(promise.state).toBe('unknown');
    expect(promise.cause).toContain('no published curve covers this');
  });

  it('asks nothing of drift where only water or fertiliser is sprayed', () => {
    const list = patternPromises(workContext({ ...pasture, liquid: { liquid: 'water' } }));
    expect(list.filter((p) => /drift|wind|delta/.test(p.id))).toEqual([]);
  });

  it('stops at 20 km/h at 10 m, is doubtful in still air, and brings a low reading up (Victoria Dept of Health)', () => {
    const wind = (site: object) =>
      found({ ...pasture, site: { temperature: '68 F', humidity: '50 %', ...site } }, 'pattern:wind');
    expect(wind({ wind: '20 km/h' }).state).toBe('broken');
    expect(wind({ wind: '12 km/h' }).state).toBe('kept');
    expect(wind({ wind: '4 km/h' }).state).toBe('thin');
    const low = wind({ wind: '12 km/h', windHeight: '2 m' });
    expect(low.has!.value).toBeGreaterThan(12 / 3.6);
    expect(wind({}).state).toBe('unknown');
  });

  it('reads Delta T from warmth and humidity (Stull 2011), and asks when nobody said', () => {
    const air = (temperature: string, humidity: string) =>
      found({ ...pasture, site: { temperature, humidity } }, 'pattern:delta-t').state;
    expect(air('68 F', '50 %')).toBe('kept');
    expect(air('100 F', '20 %')).toBe('broken');
    const unsaid = patternPromises(workContext({ ...pasture, site: { humidity: undefined } }));
    expect(unsaid.find((p) => p.id === 'pattern:delta-t')!.state).toBe('unknown');
  });
});

describe('pump reserve', () => {
  it('asks a fifth more than outlets and agitation (Virginia Cooperative Extension 442-452)', () => {
    const reserve = (gpm: number) =>
      pumpReservePromises(workContext({ ...pasture, duty: { flow: '2 gpm' }, pumpFlow: gpm * GPM }))[0]!;
    expect(reserve(2.3).state).toBe('broken');
    expect(reserve(2.6).state).toBe('kept');
    expect(reserve(2.6).asked!.value / GPM).toBeCloseTo(2.4, 9);
  });
});
