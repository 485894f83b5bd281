import { changed, type Change } from '@spraywright/engine/quantity';
import {
  decide,
  putPart,
  readRig,
  setInBrief,
  setLength,
  setPressure,
  setSpeed,
  type RawRig,
} from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const raw = demoRig('tall-elms', catalogue, demoShop()).raw as RawRig;
const boomRig = demoRig('three-point-pasture', catalogue, demoShop()).raw as RawRig;
const part = (id: string | undefined) => catalogue.parts.get(id!)!;
const itemOf = (rig: RawRig, id: string) => rig.items.find((i) => i.id === id);
const made = (rig: RawRig, change: Change) => changed(rig, change).document;

/** Every edit gives a rig that can be read, and its inverse gives the rig that was. */
function holds(rig: RawRig, change: Change): RawRig {
  const { document, inverse } = changed(rig, change);
  expect(readRig(document, catalogue)).toMatchObject({ ok: true });
  expect(changed(document, inverse).document).toEqual(rig);
  return document;
}

describe('a setting of a rig', () => {
  it('is put where it belongs and taken back', () => {
    expect(itemOf(holds(raw, setLength(raw, 'hose', '60 ft')), 'hose')?.length).toBe('60 ft');
    expect(itemOf(holds(raw, setPressure(raw, 'regulator', '200 psi')), 'regulator')?.set).toBe('200 psi');
    const duty = (raw.brief as { duties: { id: string }[] }).duties[0]!.id;
    const by = holds(raw, setPressure(raw, 'regulator', '200 psi', duty));
    expect(itemOf(by, 'regulator')?.setByDuty).toEqual({
      ...itemOf(raw, 'regulator')?.setByDuty,
      [duty]: '200 psi',
    });
    expect(itemOf(holds(raw, setSpeed(raw, 'engine', '2500 rpm')), 'engine')?.speed).toBe('2500 rpm');
    const cheaper = holds(raw, setInBrief(['limits', 'budgetCents'], 100, 'Budget'));
    expect(cheaper.brief).toMatchObject({ limits: { budgetCents: 100 } });
  });

  it('of an item that is not there is refused by name', () => {
    expect(() => setLength(raw, 'rope', '1 ft')).toThrow(/item is 'rope'; the rig has 'carrier'/);
  });

  it('keeps the decisions that were there', () => {
    const one = { about: 'materials:a:b', who: 'Ann', why: 'seen', when: '2026-01-02' };
    const after = holds(raw, decide(raw, [one]));
    const two = holds(after, decide(after, [{ ...one, about: 'materials:c:d' }]));
    const before = (raw.brief as { decisions?: unknown[] }).decisions ?? [];
    expect((two.brief as { decisions: unknown[] }).decisions).toHaveLength(before.length + 2);
  });
});

describe('a part put into a slot', () => {
  it('changes the part and nothing else when all settings hold', () => {
    const tip = catalogue.byKind.tip.find((t) => t.id !== itemOf(raw, 'tip')?.part)!;
    const { change, also } = putPart(raw, catalogue, 'tip', tip);
    expect(also).toEqual([]);
    expect(change.puts).toEqual([
      { path: ['items', raw.items.findIndex((i) => i.id === 'tip'), 'part'], value: tip.id },
    ]);
    holds(raw, change);
  });

  it('takes a set pressure that it cannot hold to the nearest it can, and says so', () => {
    for (const regulator of catalogue.byKind.regulator) {
      const { change, also } = putPart(raw, catalogue, 'regulator', regulator);
      const set = Number.parseFloat(itemOf(holds(raw, change), 'regulator')!.set!) * 6894.757293168361;
      expect(set).toBeGreaterThanOrEqual(regulator.setMin * (1 - 1e-9));
      expect(set).toBeLessThanOrEqual(regulator.setMax * (1 + 1e-9));
      const before = itemOf(raw, 'regulator')?.set;
      expect(also.some((a) => a.startsWith('set to'))).toBe(
        itemOf(made(raw, change), 'regulator')?.set !== before ||
          JSON.stringify(itemOf(made(raw, change), 'regulator')?.setByDuty) !==
            JSON.stringify(itemOf(raw, 'regulator')?.setByDuty),
      );
    }
  });

  it('takes an engine speed that the engine does not run at to the nearest', () => {
    for (const engine of catalogue.byKind.engine) {
      const fast = made(raw, setSpeed(raw, 'engine', '9000 rpm'));
      const { change, also } = putPart(fast, catalogue, 'engine', engine);
      expect(also).toHaveLength(1);
      const speed = (Number.parseFloat(itemOf(holds(fast, change), 'engine')!.speed!) * 2 * Math.PI) / 60;
      expect(speed).toBeLessThanOrEqual(engine.ratedSpeed + 1e-9);
      expect(speed).toBeGreaterThan(engine.ratedSpeed - 1.1);
    }
  });

  it('brings the number of nozzles with a boom', () => {
    for (const boom of catalogue.byKind.boom) {
      const after = holds(boomRig, putPart(boomRig, catalogue, 'boom', boom).change);
      expect(itemOf(after, 'nozzle')?.count ?? 1).toBe(boom.nozzles);
    }
  });

  it('leaves its line when it is left out, and the line goes when nothing is in it', () => {
    const once = holds(raw, putPart(raw, catalogue, 'reel', undefined).change);
    expect(once.lines.find((l) => l.id === 'gun')?.run).not.toContain('reel');
    const back = holds(once, putPart(once, catalogue, 'reel', part(itemOf(raw, 'reel')?.part)).change);
    expect(back.lines).toEqual(raw.lines);
    let rig = raw;
    for (const slot of ['agitation-valve', 'agitator'])
      rig = holds(rig, putPart(rig, catalogue, slot, undefined).change);
    expect(rig.lines.map((l) => l.id)).not.toContain('agitation');
    for (const slot of ['agitator', 'agitation-valve'])
      rig = holds(rig, putPart(rig, catalogue, slot, part(itemOf(raw, slot)?.part)).change);
    expect(rig.lines.map(({ id, run }) => [id, run])).toEqual(raw.lines.map(({ id, run }) => [id, run]));
  });
});
