import { describe, expect, it } from 'vitest';
import { deckPlan, deckPlanOf, PALETTES } from '@spraywright/engine/drawings';
import { proveRig } from '@spraywright/engine/rig';
import { demoCatalogue, demoRig, demoShop } from '../../test/demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();

describe('the deck from above', () => {
  it('has its left side towards the foot of the sheet, as whoever stands behind the rig sees it', () => {
    const { rig } = demoRig('nurse-trailer', catalogue, shop);
    const proof = proveRig(rig, catalogue, shop);
    const plan = (shift: number) => {
      const placement = proof.placement!;
      const centre = { ...placement.centre };
      for (const fill of ['empty', 'full'] as const) centre[fill] = { ...centre[fill], y: shift };
      const moved = { ...proof, placement: { ...placement, centre } };
      const svg = deckPlan(moved, { width: 700, units: 'us', palette: PALETTES.day })!;
      return [...svg.matchAll(/<circle cx="[\d.]+" cy="([\d.]+)" r="5"/g)].map((m) => Number(m[1]));
    };
    const [left, right] = [plan(0.3), plan(-0.3)];
    expect(left).toHaveLength(right.length);
    const lower = left.filter((y, i) => y > right[i]!);
    expect(lower).toHaveLength(2);
    expect(left.filter((y, i) => y < right[i]!)).toHaveLength(0);
  });

  it('shows a reel on a stand over what it covers, dashed below it, and its load with hose and liquid', () => {
    const { rig } = demoRig('tall-elms', catalogue, shop);
    const proof = proveRig(rig, catalogue, shop);
    const plan = deckPlanOf(proof)!;
    const reel = plan.standing.find(({ part }) => part.kind === 'reel')!;
    const under = plan.standing.filter(({ number }) => reel.over.includes(number));
    expect(under.map(({ part }) => part.kind).sort()).toEqual(['engine', 'pump', 'reduction']);
    for (const { part, up } of under) expect(reel.up).toBeGreaterThanOrEqual(up + part.height);
    expect(plan.figures.some((f) => f.layer === 'covered')).toBe(true);
    // Everything that stands, with what rides on it, is the rig without its carrier and the tank's liquid.
    const all = proof.placement!.parts.reduce((sum, p) => sum + p.mass, 0);
    expect(plan.standing.reduce((sum, s) => sum + s.load, 0)).toBeCloseTo(all, 9);
    const hose = proof.placement!.parts.find((p) => p.kind === 'hose' && p.on === reel.part.item)!;
    expect(reel.load).toBeGreaterThan(reel.part.mass + hose.mass - 1e-9);
    // What a stand weighs and costs is nowhere, and that is said.
    expect(proof.promises.find((p) => p.id === 'structure:fit')!.cause).toContain(
      'neither its mass nor its price',
    );
    const numbers = plan.figures.flatMap((f) => (f.kind === 'text' && f.layer === 'numbers' ? [f.at] : []));
    for (const [i, a] of numbers.entries())
      for (const b of numbers.slice(i + 1)) expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(0.1);
  });
});
