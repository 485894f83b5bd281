import { describe, expect, it } from 'vitest';
import { designRig, proveRig, readRig, redesignRig, trialsOf, waysOut } from '@spraywright/engine/rig';
import { demoBriefs, demoCatalogue, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();

function designed(name: string) {
  const design = designRig(demoBriefs().find((b) => b.name === name)!.raw, catalogue, shop);
  if (!design.ok) throw new Error(design.problems[0]!.message);
  return design.rig;
}

type RawRig = ReturnType<typeof designed>;

/** The rig with another part pinned in a slot: one that a fresh design does not take. */
function pinnedElse(rig: RawRig, slot: string): { rig: RawRig; part: string } {
  const now = rig.items.find((i) => i.id === slot)!.part;
  const kind = catalogue.parts.get(now)!.kind;
  const part = [...catalogue.byKind[kind]].map((p) => p.id).find((id) => id !== now)!;
  const items = rig.items.map((i) => (i.id === slot ? { ...i, part, pinned: true } : i));
  return { rig: { ...rig, items }, part };
}

function waysOf(rig: RawRig) {
  const read = readRig(rig, catalogue);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const proof = proveRig(read.rig, catalogue, shop);
  const all = waysOut(trialsOf({ raw: rig, rig: read.rig, proof }, catalogue, shop, 'us'), {
    most: 12,
    states: ['broken'],
  });
  let step = all.next();
  while (step.done !== true) step = all.next();
  return step.value;
}

describe('A pinned part', () => {
  it('stays when the parts are chosen again, with its settings, and the rest is chosen around it', () => {
    const fresh = designed('light-cart');
    let kept = 0;
    for (const slot of ['tank', 'hose', 'pump']) {
      const { rig, part } = pinnedElse(fresh, slot);
      const again = redesignRig(rig, catalogue, shop);
      if (!again.ok) {
        expect(again.problems[0]!.message, slot).toContain(catalogue.parts.get(part)!.name);
        continue;
      }
      const item = again.rig.items.find((i) => i.id === slot)!;
      kept++;
      expect(item.part, slot).toBe(part);
      expect(item, slot).toMatchObject({ pinned: true });
      const read = readRig(again.rig, catalogue);
      if (!read.ok) throw new Error(read.problems[0]!.message);
      // The proof that comes with it is of the very rig.
      expect(proveRig(read.rig, catalogue, shop).bill.priceCents).toBe(again.proof.bill.priceCents);
    }
    expect(kept).toBeGreaterThan(0);
  }, 60_000);

  it('is chosen afresh once it is loose', () => {
    const fresh = designed('light-cart');
    const { rig } = pinnedElse(fresh, 'tank');
    const items = rig.items.map(({ pinned: _, ...i }) => i);
    const again = redesignRig({ ...rig, items }, catalogue, shop);
    if (!again.ok) throw new Error(again.problems[0]!.message);
    expect(again.rig.items).toEqual(fresh.items);
  }, 60_000);

  it('is touched by no way out: of those there were the ones that leave it alone are left', () => {
    const rig = designed('tall-elms');
    const high = structuredClone(rig) as RawRig & { brief: { duties: { target: { height: string } }[] } };
    high.brief.duties[0]!.target.height = '60 ft';
    const before = waysOf(high)[0]!;
    const slot = before.ways[0]!.slots[0]!;
    const pinned = { ...high, items: high.items.map((i) => (i.id === slot ? { ...i, pinned: true } : i)) };
    const after = waysOf(pinned).find((w) => w.promise.id === before.promise.id)!;
    expect(before.ways.some((w) => w.slots.includes(slot))).toBe(true);
    expect(after.ways.filter((w) => w.slots.includes(slot))).toEqual([]);
    for (const way of before.ways.filter((w) => !w.slots.includes(slot)))
      expect(after.ways.map((w) => w.name)).toContain(way.name);
  }, 90_000);

  it('and its title, own parts and prices go with the rig into a new design', () => {
    const rig = { ...designed('light-cart'), title: 'Called otherwise', pricing: { discountPercent: 5 } };
    const again = redesignRig(rig, catalogue, shop);
    if (!again.ok) throw new Error(again.problems[0]!.message);
    expect(again.rig).toMatchObject({ title: 'Called otherwise', pricing: rig.pricing });
  }, 60_000);

  it('that is too small for what is wished is named with both sizes', () => {
    const rig = designed('tall-elms');
    const now = catalogue.parts.get(rig.items.find((i) => i.id === 'tank')!.part)!;
    const small = catalogue.byKind.tank
      .filter((t) => JSON.stringify(t.wetted) === JSON.stringify(now.wetted))
      .reduce((a, b) => (b.volume < a.volume ? b : a));
    const items = rig.items.map((i) => (i.id === 'tank' ? { ...i, part: small.id, pinned: true } : i));
    const again = redesignRig({ ...rig, items }, catalogue, shop);
    expect(again.ok ? '' : again.problems[0]!.message).toMatch(
      /^the largest tank that may be taken holds [\d.]+ gal, and the brief asks for 200 gal; pinned: "/,
    );
  }, 60_000);
});
