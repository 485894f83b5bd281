import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { battery, engine, pump, reel } from '../../../test/machine-rig.ts';
import { boom, hoseOf, nozzle, tip, workContext, type WorkRig } from '../../../test/work-rig.ts';
import { driveOf } from '../drive.ts';
import { cautionsOf } from './cautions.ts';
import { dayOf, dayPromises, type DayProof } from './day.ts';

const GALLON = 231 * 0.0254 ** 3;
const gun: WorkRig = {
  line: { reel: reel(30, { rewind: 'electric', rewindCurrent: 20 }), hose: hoseOf(0.0127), tip: tip() },
  hoseLength: 60,
  outlet: { flow: 5e-4, tipPressure: 5e5 },
  duty: { hoseOut: '150 ft' },
  others: { engine: engine(40), pump: pump(20), battery: battery() },
};

function day(w: WorkRig, curves = false): DayProof {
  const made = dayOf(workContext(w), curves);
  if ('reason' in made) throw new Error(made.reason);
  return made;
}
const withDay = (fields: object): WorkRig => ({ ...gun, brief: { day: fields } });

describe('the day of a rig', () => {
  it('neither loses nor makes liquid: what was filled is sprayed or left', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 14, noNaN: true }),
        fc.double({ min: 0.5, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.boolean(),
        (hours, gallons, miles, pause, startsFull) => {
          const { result, input } = day(
            withDay({
              length: `${hours} h`,
              unitVolume: `${gallons} gal`,
              unitArea: '2000 ft2',
              fillDistance: `${miles} mi`,
              pauseTime: `${pause} min`,
              startsFull,
            }),
          );
          expect(result.filled).toBeCloseTo(result.sprayed + result.left, 9);
          expect(result.sprayed).toBeCloseTo(result.units * input.unitVolume, 9);
          expect(Math.max(0, ...result.tanks)).toBeLessThanOrEqual(input.tank + 1e-9);
          expect(Math.max(0, ...result.times)).toBeLessThanOrEqual(input.dayLength + 1);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('does no less in a longer day, with more flow, or with water nearer by', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 10, noNaN: true }),
        fc.double({ min: 1e-4, max: 1e-3, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (hours, flow, miles) => {
          const units = (h: number, q: number, m: number) =>
            day({
              ...withDay({ length: `${h} h`, fillDistance: `${m} mi` }),
              outlet: { flow: q, tipPressure: 5e5 },
            }).result.units;
          const base = units(hours, flow, miles);
          expect(units(hours + 1, flow, miles)).toBeGreaterThanOrEqual(base - 1e-9);
          expect(units(hours, flow * 1.2, miles)).toBeGreaterThanOrEqual(base * 0.999 - 1e-9);
          expect(units(hours, flow, miles / 2)).toBeGreaterThanOrEqual(base - 1e-9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('counts whole units against what is asked, and asks when nobody said', () => {
    const { result } = day(gun);
    const judged = (units: number) =>
      dayPromises(workContext(withDay({ units })), dayOf(workContext(withDay({ units })), false))[0]!;
    expect(judged(Math.floor(result.units)).state).not.toBe('broken');
    expect(judged(Math.floor(result.units) + 1).state).toBe('broken');
    expect(dayPromises(workContext(gun), dayOf(workContext(gun), false))[0]).toMatchObject({
      state: 'unknown',
    });
  });

  it('names every start value it took in place of what nobody said, and none that was given', () => {
    expect(day(gun).assumed.some((a) => a.startsWith('length of the day'))).toBe(true);
    const given = day(withDay({ length: '6 h', pauseTime: '1 min' })).assumed;
    expect(given.some((a) => a.startsWith('length of the day') || a.startsWith('besides spraying'))).toBe(
      false,
    );
  });

  it('says when a larger tank does no more, and how much more one would do', () => {
    const once = withDay({ startsFull: true, unitVolume: '2 gal', pauseTime: '1 h', unitArea: '2000 ft2' });
    expect(day(once, true).tanks!.largerHelps).toBe(false);
    const often = withDay({ fillDistance: '10 mi', unitVolume: '30 gal', pauseTime: '0 s' });
    const { tanks, result } = day(often, true);
    expect(tanks!.largerHelps).toBe(true);
    expect(Math.max(...tanks!.units)).toBeGreaterThan(result.units);
  });

  it('drives at the rate asked, not at all the pump could give', () => {
    const application = { rate: '10 gal/acre', speed: '4 mph', width: '20 ft' };
    const made = day({
      line: { hose: hoseOf(0.02), boom: boom(12, 0.508), nozzle: nozzle() },
      count: 12,
      outlet: { flow: 5e-4, tipPressure: 3e5 },
      duty: { application },
    });
    expect(made.unit).toBe('acre');
    expect(made.input.unitVolume / GALLON).toBeCloseTo(10, 9);
    // 10 gal/acre, 4 mph, 20 ft: 97 acre/h... 4 x 20 / 8.25 = 9.7 acre/h, 1.62 gpm.
    expect((made.input.flow / GALLON) * 60).toBeCloseTo((10 * 4 * 20) / 8.25 / 60, 3);
  });

  it('burns the fuel of the rig’s own engine and draws on its battery', () => {
    const context = workContext(gun);
    const made = dayOf({ ...context, drive: driveOf(context.rig) }, false);
    if ('reason' in made) throw new Error(made.reason);
    expect(made.result.fuel).toBeGreaterThan(0);
    expect(made.result.leastCharge).toBeLessThan(made.input.battery!);
    expect(made.result.greatestMass).toBeGreaterThan(400);
  });

  it('gives the reason when nothing comes out', () => {
    const made = dayOf(workContext({ ...gun, outlet: { flow: 0, tipPressure: 0 } }), false);
    expect(made).toEqual({ reason: 'the duty that fills the day sprays nothing' });
  });
});

describe('cautions', () => {
  const ids = (w: WorkRig, state: string) =>
    cautionsOf(workContext(w))
      .filter((c) => c.state === state)
      .map((c) => c.caution.id);

  it('warns of injection from 7 bar, more so from 100 bar, and not below (HSE FOD 4-2014)', () => {
    const at = (tipPressure: number) => ids({ ...gun, outlet: { ...gun.outlet, tipPressure } }, 'caused');
    expect(at(6e5)).not.toContain('injection');
    expect(at(8e5)).toContain('injection');
    expect(at(1.2e7)).toContain('injection-serious');
  });

  it('warns of chlorine where bleach and acid ride on one rig, and leaves open what a stranger may do', () => {
    const liquids = (...rest: object[]) => ({
      ...gun,
      brief: {
        liquids: [
          { id: 'mix', name: 'Bleach', liquid: 'naocl_12', strength: 12.5, strengthUnit: 'trade %' },
          ...rest,
        ],
      },
    });
    expect(
      ids(
        liquids({ id: 'a', name: 'Acid', liquid: 'citric', strength: 5, strengthUnit: 'weight %' }),
        'caused',
      ),
    ).toContain('chlorine-gas');
    expect(ids(liquids(), 'caused')).not.toContain('chlorine-gas');
    expect(ids(liquids({ id: 'x', name: 'Secret', liquid: 'secret' }), 'unknown')).toContain('chlorine-gas');
  });

  it('tells each caution once, with its source', () => {
    const all = cautionsOf(workContext(gun));
    expect(new Set(all.map((c) => c.caution.id)).size).toBe(all.length);
    for (const { caution } of all) expect(caution.origin.source.length).toBeGreaterThan(3);
  });
});
