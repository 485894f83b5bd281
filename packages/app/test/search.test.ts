import type { Catalogue } from '@spraywright/engine/catalogue';
import {
  designRig,
  searchAround,
  searchRigs,
  setsOfParts,
  type Figures,
  type OneSet,
  whyNot,
} from '@spraywright/engine/rig';
import { beforeAll, describe, expect, it } from 'vitest';
import { cutDown, cutToSize, unbeatenOf } from './cut-down.ts';
import { demoBriefs, demoCatalogue, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const briefs = new Map(demoBriefs().map((b) => [b.name, b.raw]));

/** One of some bounds is as good as the rig; without spare only where it breaks a promise. */
function holds(bounds: readonly Figures[], { figures, broken }: NonNullable<OneSet['proven']>): void {
  const { priceCents, mass, days, margin } = figures;
  const held = bounds.some(
    (best) =>
      best.priceCents <= priceCents &&
      best.mass <= mass &&
      best.days <= days &&
      (best.margin >= 0 ? best.margin >= margin : broken.length > 0),
  );
  expect(held, JSON.stringify({ figures, broken, bounds })).toBe(true);
}

/** Of so many sets one is held against its bounds; all of them are proven. */
const JUDGED = 3;

const CASES: readonly [string, Readonly<Record<string, number>>][] = [
  ['utility-12v', { pump: 2, gun: 2, tip: 3, strainer: 2 }],
  ['light-cart', { engine: 2, reduction: 2, regulator: 2 }],
  ['roof-skid', { carrier: 4, gun: 3, tip: 2 }],
  ['nurse-trailer', { carrier: 2 }],
  // A pump whose pressure falls: what its drive, its suction line and its jet leave to spare.
  ['nurse-trailer', { pump: 2, engine: 1, agitator: 1 }],
  // A regulator that holds: what comes back through it, what its nozzles have, and what the suction line takes.
  ['three-point-pasture', { pump: 1, 'return-hose': 1, nozzle: 1, strainer: 1 }],
  // Jets behind regulators and returns that hold more or less: how high the pressure in front of them may be.
  ['tall-elms', { agitator: 4, regulator: 3, 'return-hose': 3 }],
  // A tongue: in which order the parts stand, and what it carries at every fill.
  ['tall-elms', { carrier: 2, tank: 2, engine: 2 }],
];

describe.each(CASES)('search among the parts of %s: %j', (name, slots) => {
  const figures: Figures[] = [];
  let small: Catalogue;
  let size = 0;

  beforeAll(() => {
    small = cutDown(name, slots, 17);
    const sets = setsOfParts(briefs.get(name), small, shop);
    ({ size } = sets);
    for (let i = 0; i < size; i++) {
      const judged = i % JUDGED === 0 ? sets.at(i) : undefined;
      const { outside, proven } = judged ?? sets.proven(i);
      if (outside) continue;
      if (judged === undefined) {
        if (proven?.broken.length === 0) figures.push(proven.figures);
        continue;
      }
      const { limit, bounds } = judged;
      if (proven === undefined) {
        expect(limit).toBeLessThan(0);
        continue;
      }
      // What a condition refuses breaks a promise; what it lets through is no better than its bounds.
      if (limit < 0) expect(proven.broken).not.toEqual([]);
      else for (const best of bounds) holds(best, proven);
      if (proven.broken.length === 0) figures.push(proven.figures);
    }
  }, 300_000);

  it('goes through a space of a size worth while', () => {
    expect(size).toBeGreaterThan(100);
    expect(size).toBeLessThan(10_000);
    expect(figures.length).toBeGreaterThan(1);
  });

  it('finds what going through every set of parts finds, with fewer proofs', () => {
    const found = searchRigs(briefs.get(name), small, shop, { mostProofs: 100_000 });
    if (!found.ok) throw new Error('the brief is not read');
    expect(found.complete).toBe(true);
    expect(found.progress.settled).toBe(1);
    expect(found.choices.map((c) => JSON.stringify(c.figures)).sort()).toEqual(unbeatenOf(figures));
    expect(found.progress.proofs).toBeLessThan(size * 0.75);
  });
});

/** Whether one is no worse than another by more than a share of price and mass, and so much margin. */
function isNear(a: Figures, b: Figures, share: number): boolean {
  return (
    a.priceCents <= b.priceCents * (1 + share) + 1e-6 &&
    a.mass <= b.mass * (1 + share) + 1e-6 &&
    a.margin / 1000 >= b.margin / 1000 - share - 1e-9 &&
    a.days <= b.days
  );
}

describe('search among random parts', () => {
  const names = [
    'utility-12v',
    'light-cart',
    'roof-skid',
    'tall-elms',
    'three-point-pasture',
    'nurse-trailer',
  ];

  it.each(names.map((name, i) => [name, 101 + i] as const))(
    'of %s finds what going through every set finds (seed %i)',
    (name, seed) => {
      const cut = cutToSize(name, 250, seed);
      const sets = setsOfParts(briefs.get(name), cut.catalogue, shop);
      const figures: Figures[] = [];
      for (let i = 0; i < sets.size; i++) {
        const { proven } = sets.proven(i);
        if (proven?.broken.length === 0) figures.push(proven.figures);
      }
      const found = searchRigs(briefs.get(name), cut.catalogue, shop, { mostProofs: 100_000 });
      if (!found.ok) throw new Error('the brief is not read');
      expect(found.complete).toBe(true);
      expect(found.choices.map((c) => JSON.stringify(c.figures)).sort()).toEqual(unbeatenOf(figures));
      expect(figures.length).toBeGreaterThan(0);
      const near = searchRigs(briefs.get(name), cut.catalogue, shop, { mostProofs: 100_000, within: 0.02 });
      if (!near.ok) throw new Error('the brief is not read');
      expect(near).toMatchObject({ within: 0.02, complete: false, progress: { settled: 1 } });
      for (const f of figures) expect(near.choices.some((c) => isNear(c.figures, f, 0.02))).toBe(true);
    },
    300_000,
  );
});

describe('search around a rig', () => {
  it('keeps what is pinned, title and prices, and tells as it goes what it ends with', () => {
    const small = cutDown('roof-skid', { carrier: 4, gun: 3, tip: 2 }, 17);
    const design = designRig(briefs.get('roof-skid'), small, shop);
    if (!design.ok) throw new Error('no rig of the small catalogue');
    const free = searchAround(design.rig, small, shop);
    if (!free.ok) throw new Error('the brief is not read');
    expect(free.complete).toBe(true);
    // A part is pinned that not all found have, so that the pin is felt.
    const differing = design.rig.items.find(
      ({ id }) => new Set(free.choices.map((c) => c.rig.items.find((i) => i.id === id)?.part)).size > 1,
    )!;
    const pricing = { discountPercent: 3 };
    const rig = {
      ...design.rig,
      title: 'As the customer calls it',
      pricing,
      items: design.rig.items.map((i) => (i === differing ? { ...i, pinned: true } : i)),
    };
    let told: readonly unknown[] = [];
    const found = searchAround(rig, small, shop, {
      onProgress: (_, choices) => {
        told = choices;
        return true;
      },
    });
    if (!found.ok) throw new Error('the brief is not read');
    expect(found.complete).toBe(true);
    expect(found.choices.length).toBeGreaterThan(0);
    for (const choice of found.choices) {
      expect(choice.rig.items.find((i) => i.id === differing.id)).toMatchObject({
        part: differing.part,
        pinned: true,
      });
      expect(choice.rig).toMatchObject({ id: rig.id, title: rig.title, pricing });
    }
    const withPin = free.choices.filter(
      (c) => c.rig.items.find((i) => i.id === differing.id)?.part === differing.part,
    );
    // Whatever no rig beats is not beaten among fewer rigs either.
    for (const { figures } of withPin) expect(found.choices.map((c) => c.figures)).toContainEqual(figures);
    for (const choice of told) expect(found.choices).toContain(choice);
  }, 300_000);
});

describe('why not', () => {
  it('names the tank that no carrier takes full, and the largest that there is a rig for', () => {
    const raw = briefs.get('road-dust')! as { wishes: Record<string, string> };
    const told = whyNot(raw, catalogue, shop);
    if (!told.ok) throw new Error('the brief is not read');
    expect(told).toMatchObject({ possible: false, certain: true });
    expect(told.broken.map((p) => p.id)).toContain('weight:gross');
    expect(told.slots.find((s) => s.slot === 'carrier')).toMatchObject({
      why: expect.stringContaining('tank'),
    });
    const less = told.relaxations.find((r) => r.name === 'size of the tank')!;
    expect(less.proven).toBe(true);
    // The second way: the brief is typed anew with what is said, and with a little more.
    const asking = (tank: string) => designRig({ ...raw, wishes: { ...raw.wishes, tank } }, catalogue, shop);
    const then = asking(less.text);
    expect(then.ok && then.proof.counts.broken).toBe(0);
    const more = asking(`${Number.parseFloat(less.text) * 1.05} gal`);
    expect(more.ok && more.proof.counts.broken > 0).toBe(true);
  }, 60_000);

  it('has nothing to explain where a rig keeps every promise', () => {
    expect(whyNot(briefs.get('roof-skid'), catalogue, shop)).toMatchObject({ ok: true, possible: true });
  });
});
