import type { Part } from '@spraywright/engine/catalogue';
import {
  assemblySteps,
  betweenLiquids,
  fetchList,
  ordersToFetch,
  partsInstead,
  pickList,
  proveRig,
  proveSubstitution,
  type RawRig,
} from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const made = (name: string) => {
  const { raw, rig } = demoRig(name, catalogue, shop);
  return { raw: raw as RawRig, rig, proof: proveRig(rig, catalogue, shop) };
};
const partOf = (id: string) => catalogue.parts.get(id);
const cart = made('light-cart');
const POUND = 0.45359237;

describe('The steps of building', () => {
  it.each(demoBriefs().map(({ name }) => name))('have names of their own for %s', (name) => {
    const { rig, proof } = made(name);
    const us = assemblySteps(rig, proof, 'us');
    expect(new Set(us.map((s) => s.id)).size).toBe(us.length);
    // The name outlives the words, which units change.
    expect(assemblySteps(rig, proof, 'metric').map((s) => s.id)).toEqual(us.map((s) => s.id));
    for (const { id } of us) expect(id).toMatch(/^[a-z][a-z0-9-]{0,80}$/);
  });

  // 49 CFR 571.110 S4.3.5: a trailer of 10,000 lb GVWR or less shows cargo capacity = GVWR - weighed empty weight.
  it('ask a scale ticket of a trailer to 10,000 lb and of nothing without wheels', () => {
    for (const { name } of demoBriefs()) {
      const { rig, proof } = made(name);
      const carrier = [...rig.items.values()].find(({ part }) => part.kind === 'carrier')?.part;
      const wheels = carrier?.kind === 'carrier' && carrier.axles.length > 0 && carrier.coupler !== undefined;
      const asked =
        carrier?.kind === 'carrier' && wheels && Math.round(carrier.grossRating / POUND) <= 10_000;
      const step = assemblySteps(rig, proof, 'us').find((s) => s.id === 'weigh');
      expect({ name, asked: step !== undefined }).toEqual({ name, asked });
      if (step !== undefined) expect(step.asks?.dimension).toBe('mass');
    }
  });
});

describe('What is fetched for a machine', () => {
  const picks = pickList(cart.proof.bill, partOf);
  const sum = <T>(list: readonly T[], of: (x: T) => number) => list.reduce((total, x) => total + of(x), 0);

  it('is all it needs when the store has plenty, and nothing when it was given all', () => {
    const plenty = fetchList(
      picks,
      () => 1000,
      () => 0,
    );
    for (const f of plenty) expect(f).toMatchObject({ taken: 0, take: f.need, short: 0 });
    const given = fetchList(
      picks,
      () => 0,
      (part) =>
        sum(
          picks.filter((p) => p.part === part),
          (p) => p.need,
        ),
    );
    for (const f of given) expect(f).toMatchObject({ taken: f.need, take: 0, short: 0 });
    expect(ordersToFetch(given, partOf)).toEqual([]);
  });

  it('is never more than the store has; what is short is ordered, whatever was counted below nought', () => {
    for (const stock of [-3, 0, 1, 2, 7]) {
      const list = fetchList(
        picks,
        () => stock,
        () => 1,
      );
      for (const part of new Set(list.map((f) => f.part))) {
        const lines = list.filter((f) => f.part === part);
        expect(sum(lines, (f) => f.take)).toBeLessThanOrEqual(Math.max(0, stock));
        expect(sum(lines, (f) => f.taken)).toBeLessThanOrEqual(1);
        for (const f of lines) expect(f.taken + f.take + f.short).toBe(f.need);
        const ordered = ordersToFetch(list, partOf, '2026-05-04').filter((o) => o.part === part);
        expect(sum(ordered, (o) => o.order)).toBe(sum(lines, (f) => f.short));
      }
    }
  });
});

describe('Another part in a rig that is being built', () => {
  const tried = ['pump', 'tank', 'strainer'].flatMap((slot) =>
    partsInstead(cart.rig, catalogue, slot)
      .slice(0, 8)
      .map((part) => proveSubstitution(cart, catalogue, shop, { slot, part })),
  );

  it('is allowed only when every promise that was kept still is', () => {
    const standing = new Map(cart.proof.promises.map((p) => [p.id, p.state]));
    for (const { allowed, proof, effect } of tried) {
      const worse = proof.promises.filter(
        ({ id, state }) =>
          (state === 'broken' && standing.get(id) !== 'broken') ||
          (state === 'unknown' && ['kept', 'thin'].includes(standing.get(id) ?? 'kept')),
      );
      expect(allowed).toBe(worse.length === 0);
      if (!allowed) expect([...effect.breaks, ...effect.doubts].length).toBeGreaterThan(0);
    }
    expect(tried.some((t) => t.allowed)).toBe(true);
    expect(tried.some((t) => !t.allowed)).toBe(true);
  });

  it('is refused when it does not fit the slot at all', () => {
    const tank = catalogue.byKind.tank[0] as Part;
    expect(() => proveSubstitution(cart, catalogue, shop, { slot: 'pump', part: tank })).toThrow(
      /part is '.*'; the slot 'pump'/,
    );
    expect(() => proveSubstitution(cart, catalogue, shop, { slot: 'sail', part: tank })).toThrow(
      /slot is 'sail'/,
    );
  });
});

describe('The next liquid in a machine', () => {
  // Washington State Department of Health, dangers of mixing bleach with cleaners: acids give chlorine.
  it('is warned of where the last one must never meet it, and told to flush where it may', () => {
    const danger = betweenLiquids(cart.rig, 'naocl_12', 'citric');
    expect(danger.record).toBe(true);
    expect(danger.dangers.map((d) => d.result)).toContain('chlorine gas');
    const plain = betweenLiquids(cart.rig, 'water', 'naocl_12');
    expect(plain).toMatchObject({ dangers: [], record: false });
    expect(betweenLiquids(cart.rig, 'naocl_12').steps.length).toBeGreaterThan(0);
  });
});
