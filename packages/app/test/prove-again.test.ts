import { changed, pathOf } from '@spraywright/engine/quantity';
import { proverBeside, proveRig, readRig, type ProvenRig, type RawRig } from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();

/** What is dragged and typed on a desk, one after the other; the last of them makes no rig. */
const STEPS: readonly (readonly [path: string, value: unknown])[] = [
  ['brief.duties.0.tankLevel', '40 %'],
  ['brief.duties.0.tankLevel', '41 %'],
  ['items.0.at', { x: '30 in', y: '1 in' }],
  ['brief.duties.1.wind', '9 mph'],
  ['brief.site.altitude', '3000 ft'],
  ['brief.duties.0.tankLevel', '80 %'],
  ['title', 'Another name'],
  ['brief.duties.0.liquid', 'nothing'],
];

describe('a rig that is proven again after each change', () => {
  for (const { name } of demoBriefs())
    it(`is proven as from nothing: ${name}`, () => {
      let raw = demoRig(name, catalogue, shop).raw as RawRig;
      let last: ProvenRig | undefined;
      for (const [path, value] of STEPS) {
        raw = changed(raw, { about: '', puts: [{ path: pathOf(path), value }] }).document;
        const again = proverBeside(last, catalogue, shop, 'us')(raw);
        const read = readRig(raw, catalogue);
        if (!read.ok || !again.ok) {
          expect(again).toEqual(read);
          continue;
        }
        expect(again.proven.rig).toEqual(read.rig);
        expect(again.proven.proof).toEqual(
          proveRig(read.rig, catalogue, shop, { units: 'us', notes: false }),
        );
        last = again.proven;
      }
      expect(readRig(raw, catalogue).ok).toBe(false);
    });

  it('takes over the states of duties that no change has met', () => {
    const raw = demoRig('tall-elms', catalogue, shop).raw as RawRig;
    const first = proverBeside(undefined, catalogue, shop, 'us')(raw);
    if (!first.ok) throw new Error(first.problems[0]?.message);
    const next = changed(raw, {
      about: '',
      puts: [{ path: pathOf('brief.duties.0.tankLevel'), value: '33 %' }],
    }).document;
    const then = proverBeside(first.proven, catalogue, shop, 'us')(next);
    if (!then.ok) throw new Error(then.problems[0]?.message);
    const [before, after] = [first.proven.proof.duties, then.proven.proof.duties];
    expect(after[0]!.open).not.toBe(before[0]!.open);
    expect(after[1]!.open).toBe(before[1]!.open);
  });
});
