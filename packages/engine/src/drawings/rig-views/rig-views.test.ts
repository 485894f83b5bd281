import { describe, expect, it } from 'vitest';
import { sampleDuty, samplePlacement, sampleProof } from '../../../test/sample-proof.ts';
import { wheelLoads } from '../../rig/index.ts';
import { PALETTES } from '../palette.ts';
import { rigViewHandles, rigViews } from './index.ts';
import { standsDeeper, supportArrows, type Bearing } from './support-arrows.ts';

const options = { width: 890, units: 'us', palette: PALETTES.day } as const;
const duty = sampleDuty({ hoseOut: 60 });
const proof = { ...sampleProof([duty]), placement: samplePlacement() };

describe('the views of a rig', () => {
  it('share an axle so that the moments about the middle line balance', () => {
    // Second method: moments about the middle line, (left - right) track / 2 = load y.
    for (const y of [-0.3, 0, 0.12]) {
      const { left, right } = wheelLoads(800, y, 1.5);
      expect(left + right).toBeCloseTo(800, 9);
      expect(((left - right) * 1.5) / 2).toBeCloseTo(800 * y, 9);
    }
  });

  it('tell loads, ratings and the tip angle to readers as well', () => {
    const title = /<title>(.*)<\/title>/.exec(rigViews(proof, duty, options)!)![1]!;
    expect(title).toContain('Axle 1,102 lb now, 1,102 lb full, at most 1,124 lb');
    expect(title).toContain('tips over at 37°');
  });

  it('move with the part that is moved: as far on the sheet as on the deck, to scale', () => {
    const at = (y: number) => {
      const placement = samplePlacement();
      const parts = placement.parts.map((p) => (p.item === 'engine' ? { ...p, y } : p));
      return rigViewHandles({ ...proof, placement: { ...placement, parts } }, duty, options).find(
        (h) => h.id === 'across' && h.item === 'engine',
      )!;
    };
    const [middle, aside] = [at(0), at(0.2)];
    expect(aside.y - middle.y).toBeCloseTo(0.2 / middle.perPixel, 6);
    expect(aside.value).toBe(0.2);
    expect(middle.min).toBeCloseTo(-(1.37 - 0.8) / 2, 9);
  });

  it('stand the figures of an arrow deeper where the next arrow leaves them no room', () => {
    const axle = (x: number, name: string): Bearing => {
      return { x, name, now: 900, most: 950, full: 950, figures: 'right' };
    };
    const front = axle(40, 'Tractor, front axle');
    expect(standsDeeper(front, axle(125, 'Tractor, rear axle'), 'us')).toBe(true);
    expect(standsDeeper(front, axle(400, 'Tractor, rear axle'), 'us')).toBe(false);
    expect(standsDeeper(front, undefined, 'us')).toBe(false);
    const heights = (rear: number) => {
      const svg = supportArrows([front, axle(rear, 'Tractor, rear axle')], 100, options).join('');
      return ['Tractor, front axle', 'Tractor, rear axle'].map((name) =>
        Number(new RegExp(`y="([\\d.]+)"[^>]*>${name}<`).exec(svg)![1]),
      );
    };
    const [deep, plain] = heights(125) as [number, number];
    expect(deep).toBeGreaterThan(plain + 3 * 15);
    expect(heights(400)).toEqual([plain, plain]);
  });

  it('are not drawn for a rig whose parts have no places', () => {
    expect(rigViews(sampleProof([duty]), duty, options)).toBeUndefined();
    expect(rigViewHandles(sampleProof([duty]), duty, options)).toEqual([]);
  });
});
