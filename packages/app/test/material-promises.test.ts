import { proveRig, readRig, type RigPromise } from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';

const [catalogue, shop] = [demoCatalogue(), demoShop()];

interface Raw {
  brief: { liquids: Record<string, unknown>[]; decisions?: unknown[] };
}

/** Promises of a demo rig whose brief was changed. */
function promises(name: string, change: (brief: Raw['brief']) => void = () => undefined) {
  const raw = structuredClone(demoRig(name, catalogue, shop).raw) as Raw;
  change(raw.brief);
  const rig = readRig(raw, catalogue);
  if (!rig.ok) throw new Error(JSON.stringify(rig.problems));
  const list = proveRig(rig.rig, catalogue, shop).promises;
  return (id: string): RigPromise => {
    const found = list.find((p) => p.id === id);
    if (found === undefined) throw new Error(`no promise '${id}' among ${list.map((p) => p.id).join(', ')}`);
    return found;
  };
}

const accepted = (about: readonly string[]) =>
  about.map((a) => ({ about: a, who: 'R. Lund', why: 'short contact, flushed daily', when: '2026-05-04' }));

describe('metals that are joined', () => {
  it('asks for a decision on brass beside stainless, by the potentials of the series (ASM Handbook Vol. 13: 0.35 V)', () => {
    const metals = promises('tall-elms')('materials:metals');
    expect(metals.state).toBe('unknown');
    expect(metals.cause).toContain('0.35 V against 0.25 V');
    expect(metals.cause).toContain('Brass is eaten');
    expect(metals.decisions).toContain('metals:brass:ss316:hort_oil');
    const told = promises('tall-elms', (brief) => {
      brief.decisions = [...(brief.decisions ?? []), ...accepted(metals.decisions!)];
    })('materials:metals');
    expect(told.state).toBe('thin');
    expect(told.working[0]!.text).toContain('Accepted by R. Lund');
  });
});

describe('liquids that give off gas', () => {
  it('asks for vented balls where bleach can be shut in, and for nothing where the liquid gives off none', () => {
    const venting = promises('roof-skid')('materials:venting');
    expect(venting.state).toBe('unknown');
    expect(venting.decisions).toEqual(['venting:valves']);
    expect(venting.cause).toContain('vented ball');
    const decided = promises('roof-skid', (brief) => {
      brief.decisions = [...(brief.decisions ?? []), ...accepted(['venting:valves'])];
    })('materials:venting');
    expect(decided.state).toBe('thin');
    expect(() => promises('utility-12v')('materials:venting')).toThrow();
  });
});

describe('the order of a tank mix', () => {
  it('puts products in by their form, and says what the sources dispute (Oklahoma State against Missouri DOT)', () => {
    const order = promises('three-point-pasture')('liquid:order:mix');
    expect(order.cause).toMatch(
      /^Ammonium sulfate, then Thistle killer, ester, then Grass and weed killer, salt, then Wetter\./,
    );
    expect(order.cause).toContain('Disputed: Oklahoma State');
    expect(order.working[0]!.text).toContain('half to three-quarters full');
    expect(() =>
      promises('three-point-pasture', (brief) => delete brief.liquids[0]!['products'])('liquid:order:mix'),
    ).toThrow();
  });
});
