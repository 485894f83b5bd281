import { describe, expect, it } from 'vitest';
import { proveRig, putPart, readRig } from '@spraywright/engine/rig';
import { changed } from '@spraywright/engine/quantity';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
type RawRig = Parameters<typeof putPart>[0];
const raw = demoRig('light-cart', catalogue, shop).raw as RawRig;

/** Wishes that a rig does not fulfil, with what was wished and what it has. */
function unfulfilled(rig: RawRig) {
  const read = readRig(rig, catalogue);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return proveRig(read.rig, catalogue, shop)
    .promises.filter((p) => p.id.startsWith('wish:'))
    .map(({ id, state, asked, has }) => ({ id, state, asked: asked?.value, has: has?.value }));
}

const gaugeOf = (rig: RawRig) => {
  const read = readRig(rig, catalogue);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return proveRig(read.rig, catalogue, shop).promises.find((p) => p.id === 'gauge:scale');
};

function withPart(slot: string, part: string): RawRig {
  return changed(raw, putPart(raw, catalogue, slot, catalogue.parts.get(part)).change).document;
}

// The brief wishes 40 gal, 100 ft of hose and a reel wound by hand; 1 US gal is 231 cubic inches, 1 ft is 0.3048 m (NIST SP 811).
describe('A wish of the customer', () => {
  it('is fulfilled by the parts that are chosen', () => expect(unfulfilled(raw)).toEqual([]));

  it('for the size of the tank is broken by a smaller one', () => {
    const [wish, ...more] = unfulfilled(withPart('tank', 'tank-25-box-poly'));
    expect(more).toEqual([]);
    expect(wish).toMatchObject({ id: 'wish:tank', state: 'broken' });
    expect(wish!.asked).toBeCloseTo(40 * 231 * 0.0254 ** 3, 9);
    expect(wish!.has).toBeCloseTo(25 * 231 * 0.0254 ** 3, 9);
  });

  it('for the length of the hose is broken by a shorter one', () => {
    const items = raw.items.map((i) => (i.id === 'hose' ? { ...i, length: '80 ft' } : i));
    const [wish, ...more] = unfulfilled({ ...raw, items });
    expect(more).toEqual([]);
    expect(wish).toMatchObject({ id: 'wish:hose', state: 'broken' });
    expect(wish!.has).toBeCloseTo(80 * 0.3048, 9);
  });

  it('for a reel wound by hand is broken by one with a motor', () => {
    expect(unfulfilled(withPart('reel', 'reel-3-4in-400ft-electric'))).toMatchObject([
      { id: 'wish:rewind', state: 'broken' },
    ]);
  });
});

describe('A gauge', () => {
  it('shows and stands the pressures of each demo rig as its parts are chosen', () => {
    for (const { name } of demoBriefs())
      expect(gaugeOf(demoRig(name, catalogue, shop).raw as RawRig), name).toBeUndefined();
  });

  it('that is taken beyond its scale is a broken promise', () => {
    const psi = 6894.757; // NIST SP 811, appendix B.8
    const broken = gaugeOf(withPart('gauge', 'gauge-60psi-brass'))!;
    expect(broken.state).toBe('broken');
    expect(broken.asked!.value / psi).toBeCloseTo(60, 3);
    expect(broken.has!.value).toBeGreaterThan(broken.asked!.value);
  });
});
