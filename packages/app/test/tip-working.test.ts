import { proveRig, stepText } from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';

const [catalogue, shop] = [demoCatalogue(), demoShop()];
const GPM = (231 * 0.0254 ** 3) / 60;

/** Does the sum of a working line again from its own words; figures are rounded to two or three places. */
function again(sum: string): number {
  const root = /√\(([\d.]+) psi \/ \(([\d.]+) psi × ([\d.]+)\)\)$/.exec(sum)!;
  const [pressure, bar, gravity] = root.slice(1).map(Number);
  const before = sum.slice(0, root.index);
  const factors = [...before.matchAll(/([\d.]+)( gpm)? × /g)].map((m) => Number(m[1]));
  return factors.reduce((a, b) => a * b, 1) * Math.sqrt(pressure! / (bar! * gravity!));
}

describe('The working of a tip', () => {
  it.each(['three-point-pasture', 'roof-skid', 'utility-12v'])(
    'puts the numbers of %s into the formula, and they give its figure',
    (name) => {
      const { rig } = demoRig(name, catalogue, shop);
      const lines = proveRig(rig, catalogue, shop)
        .promises.filter((p) => p.kind === 'tip-pressure')
        .flatMap((p) => p.working);
      expect(lines.length).toBeGreaterThan(0);
      for (const { text, figure } of lines) {
        const flow = again(text.slice(text.indexOf(': ') + 2));
        // What printed figures lose by rounding.
        expect(Math.abs(flow / (figure!.value / GPM) - 1)).toBeLessThan(0.005);
      }
    },
  );

  it('says where the asked flow comes from: rate times speed times width', () => {
    const { rig } = demoRig('three-point-pasture', catalogue, shop);
    const step = proveRig(rig, catalogue, shop)
      .promises.flatMap((p) => (p.kind === 'flow' ? p.working : []))
      .find((s) => s.text.startsWith('flow asked'))!;
    const [rate, speed, width] = /: ([\d.,]+) gal\/acre × ([\d.]+) mph × ([\d.]+) ft \/ 495$/
      .exec(stepText(step, 'us'))!
      .slice(1)
      .map((figure) => Number(figure.replace(',', '')));
    // GPM = GPA mph in / 5940, Univ. of Missouri Extension G1270a.
    expect((rate! * speed! * width! * 12) / 5940 / (step.figure!.value / GPM)).toBeCloseTo(1, 2);
  });
});
