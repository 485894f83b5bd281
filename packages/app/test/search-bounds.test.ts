import { designRig, setsOfParts } from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { sequence } from './cut-down.ts';
import { demoBriefs, demoCatalogue, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();

/** Steps from one rig to the next, and how many of them must be kept, and refused, for the test to tell something. */
const STEPS = 60;
const TELLING = 3;

/** Kinds of promises that hang on what pump, lines and jets do. */
const OF_FLOWS = ['flow', 'power', 'suction', 'agitation', 'rating', 'reach', 'pattern'] as const;

const spareOfFlows = (spares: ReadonlyMap<string, number>) =>
  Math.min(...OF_FLOWS.map((kind) => spares.get(kind) ?? Infinity));

/** Items that may be left out, together. */
const OPTIONAL: ReadonlySet<string> = new Set(['agitator', 'agitation-valve', 'battery']);

/**
 * The bounds of the search rest on assumptions: that a pressure only rises, that a caution is never taken back, that a
 * joint is made by the rules of the plumbing. Here they are held against whole proofs of rigs of the whole catalogue, each
 * a random step from one that keeps its promises.
 */
describe('bounds of random rigs of the whole catalogue', () => {
  const briefs = demoBriefs().filter((b) => b.name !== 'road-dust');

  it.each(briefs.map((b, i) => [b.name, 11 + i] as const))(
    'of %s are never worse than what the proof computes (seed %i)',
    (name, seed) => {
      const { raw } = briefs.find((b) => b.name === name)!;
      const sets = setsOfParts(raw, catalogue, shop);
      const design = designRig(raw, catalogue, shop);
      if (!design.ok) throw new Error(`no rig for ${name}`);
      let items: readonly { readonly id: string; readonly part: string }[] = design.rig.items;
      const next = sequence(seed);
      let [kept, refused] = [0, 0];
      for (let i = 0; i < STEPS; i++) {
        const changed = items[Math.floor(next() * items.length)]!;
        const others = [...catalogue.byKind[catalogue.parts.get(changed.part)!.kind]];
        const other = others[Math.floor(next() * others.length)]!;
        const leaveOut = OPTIONAL.has(changed.id) && next() < 0.3;
        const tried = items.flatMap((item) => {
          if (leaveOut && OPTIONAL.has(item.id)) return [];
          return [item === changed ? { ...item, part: other.id } : item];
        });
        const { outside, limit, bounds, spare, proven } = sets.of(tried);
        if (outside) continue;
        const told = `${name}: ${changed.id} ${other.id}`;
        // What makes no rig is refused by a condition; what a condition refuses makes no rig, or breaks a promise.
        if (proven === undefined) expect(limit, told).toBeLessThan(0);
        else if (limit < 0) expect(proven.broken, told).not.toEqual([]);
        if (proven === undefined || limit < 0) {
          refused++;
          continue;
        }
        const { figures, broken } = proven;
        if (broken.length > 0) continue;
        // Figures go by hundredths: what pump, lines and jets spare is held to all its digits.
        expect(spare, told).toBeGreaterThanOrEqual(spareOfFlows(proven.spares) - 1e-9);
        for (const at of bounds) {
          const held = at.some(
            (b) =>
              b.priceCents <= figures.priceCents &&
              b.mass <= figures.mass &&
              b.days <= figures.days &&
              b.margin >= figures.margin,
          );
          expect(held, JSON.stringify({ changed: changed.id, part: other.id, figures, at })).toBe(true);
        }
        kept++;
        items = tried;
      }
      expect(kept).toBeGreaterThan(TELLING);
      expect(refused).toBeGreaterThan(TELLING);
    },
    300_000,
  );

  it('let a gun that is held higher than the manifold see less than that', () => {
    const { raw } = briefs.find((b) => b.name === 'light-cart')!;
    // The gun is the weakest part of its line, and stands an arm's length above the manifold.
    const items = Object.entries({
      gun: 'gun-spot-4gpm',
      tip: 'tip-disc-8-64',
      hose: 'hose-3-8in-300-pvc',
      reel: 'reel-3-8in-100ft-hand',
      pump: 'pump-diaphragm-8-290',
      reduction: 'belt-6-7-5-5hp',
      engine: 'engine-3hp-petrol-recoil',
      tank: 'tank-40-box-poly',
      carrier: 'wagon-60x36-1200lb',
      regulator: 'bypass-20-150psi-35gpm-brass',
      strainer: 'strainer-3-4in-50-nylon',
      'suction-hose': 'hose-suction-3-4in-60-pvc',
      'tank-valve': 'valve-ball-std-3-4in-poly',
      'return-hose': 'hose-1-1-4in-60-eva',
      gauge: 'gauge-300psi-brass',
    }).map(([id, part]) => ({ id, part }));
    const { spare, proven } = setsOfParts(raw, catalogue, shop).of(items);
    expect(proven?.broken).toEqual([]);
    expect(spare).toBeGreaterThanOrEqual(spareOfFlows(proven!.spares));
  });
});
