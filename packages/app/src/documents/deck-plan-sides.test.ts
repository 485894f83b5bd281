import { describe, expect, it } from 'vitest';
import { deckPlan, PALETTES } from '@spraywright/engine/drawings';
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
});
