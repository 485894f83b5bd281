import { describe, expect, it } from 'vitest';
import { proveRig } from '@spraywright/engine/rig';
import { demoCatalogue, demoShop } from './demo.ts';
import { largeRig } from './large-rig.ts';

describe('A rig of 40 parts', () => {
  it('is proven whole: each section and gun has its flow, and every part its place in list and bill', () => {
    const [catalogue, shop] = [demoCatalogue(), demoShop()];
    const { rig } = largeRig(catalogue, shop);
    expect(rig.items.size).toBeGreaterThanOrEqual(40);
    const proof = proveRig(rig, catalogue, shop);
    expect(proof.duties.map((d) => [d.open.status, d.open.outlets.length])).toEqual([
      ['converged', 5],
      ['converged', 2],
    ]);
    const boom = proof.duties[0]!.open.outlets.map((o) => o.flow);
    expect(Math.max(...boom) / Math.min(...boom)).toBeLessThan(1.01);
    expect(proof.parts).toHaveLength(rig.items.size);
    expect(proof.placement).toBeDefined();
  }, 60_000);
});
