import { describe, expect, it } from 'vitest';
import { sampleDuty, samplePlacement, sampleProof, sampleReach } from '../../test/sample-proof.ts';
import { PALETTES, throwScene } from './index.ts';
import { spread } from './reach-ruler.ts';
import { roundScale, sceneScale } from './scene-scale.ts';

const FT = 0.3048;
const target = { aim: 'height', height: 52 * FT, standoff: 26 * FT } as const;
const day = { width: 890, units: 'us', palette: PALETTES.day } as const;

function scene(promised: number, options: Partial<Parameters<typeof throwScene>[2]> = {}): string {
  const reach = sampleReach({
    target,
    farthest: 73.6 * FT,
    bulk: 57 * FT,
    promised: promised * FT,
    speeds: [18.1, 19.3, 20.6, 21.9],
    elevation: 1.27,
  });
  const duty = sampleDuty({ hoseOut: 200 * FT, target }, reach);
  return throwScene(sampleProof([duty]), duty, { ...day, ...options });
}

/** Texts of a drawing, tags taken out. */
function texts(svg: string): string[] {
  return [...svg.matchAll(/<text[^>]*>(.*?)<\/text>/g)].map(([, inner]) => inner!.replace(/<[^>]*>/g, ''));
}

describe('The throw scene', () => {
  it('keeps the four heights apart, each with its own words', () => {
    const all = texts(scene(53.5));
    for (const text of [
      '73.6 ft',
      'farthest drops',
      '57.0 ft',
      'half the water',
      '53.5 ft',
      '9 in 10',
      '52 ft',
      'asked',
    ])
      expect(all).toContain(text);
  });

  it('boxes what was given and leaves bare what is computed', () => {
    const svg = scene(53.5);
    for (const figure of ['52 ft', '26 ft', '200 ft'])
      expect(svg).toMatch(new RegExp(`<rect[^>]*/><text[^>]*>${figure}</text>`));
    for (const figure of ['73.6 ft', '57.0 ft', '53.5 ft'])
      expect(svg).not.toMatch(new RegExp(`<rect[^>]*/><text[^>]*>${figure}</text>`));
  });

  it('hatches what stays dry in the colour of a broken promise and says how much is short', () => {
    const broken = scene(49.5);
    expect(texts(broken)).toContain('2.5 ft short');
    const hatching = new RegExp(`stroke="${PALETTES.day.broken}" stroke-width="0.7"`);
    expect(broken).toMatch(hatching);
    expect(scene(53.5)).not.toMatch(hatching);
    expect(texts(scene(53.5)).join()).not.toMatch(/short/);
  });

  it('states a round scale, and draws the operator and the tree by it', () => {
    const n = Number(/Scale 1 : (\d+)/.exec(texts(scene(53.5)).join('\n'))![1]);
    const k = 96 / 0.0254 / n;
    const svg = scene(53.5);
    const groundY = Number(/M0 ([\d.]+)H890/.exec(svg)![1]);
    // The asked height is an outline from the crown to the ruler, as high as the scale says.
    expect(svg).toContain(`${Math.round((groundY - 52 * FT * k) * 100) / 100}H`);
  });

  it('is no higher than it may be', () => {
    for (const height of [260, 400, 600]) {
      const drawn = Number(/height="([\d.]+)"/.exec(scene(53.5, { height }))![1]);
      expect(drawn).toBeLessThanOrEqual(height + 1);
    }
  });

  it('stays inside its width at every width, from a phone to a desk', () => {
    for (const width of [300, 362, 520, 747, 890, 1200]) {
      const svg = scene(53.5, { width });
      for (const [, x] of svg.matchAll(/<(?:text|rect|circle)[^>]* c?x="(-?[\d.]+)"/g)) {
        expect(Number(x)).toBeGreaterThanOrEqual(-1);
        expect(Number(x)).toBeLessThanOrEqual(width);
      }
    }
  });

  it('marks the lit part and no other', () => {
    expect(scene(53.5, { lit: 'hose' })).not.toBe(scene(53.5));
    expect(scene(53.5, { lit: 'no-such-item' })).toBe(scene(53.5));
  });

  it('draws the parts of a placed rig in their own sizes and says what is not to scale', () => {
    const duty = sampleDuty({ open: ['transfer'] });
    const svg = throwScene({ ...sampleProof([duty]), placement: samplePlacement() }, duty, day);
    const n = Number(/Scale 1 : (\d+), but for wheels and drawbar/.exec(texts(svg).join('\n'))![1]);
    // The deck is 2.44 m long.
    const deck = Math.round(((2.44 * 96) / 0.0254 / n) * 100) / 100;
    expect(svg).toContain(`width="${deck}"`);
    expect(texts(throwScene(sampleProof([duty]), duty, day)).join()).toMatch(/rig not to scale/);
  });

  it('says in words why a duty without a steady state is not drawn', () => {
    const duty = sampleDuty({});
    const failed = {
      ...duty,
      open: { ...duty.open, status: 'failed' as const, reason: 'the pump sucks air' },
    };
    const svg = throwScene(sampleProof([failed]), failed, day);
    expect(texts(svg).join()).toMatch(/no steady state.*the pump sucks air/);
  });
});

describe('The scale of a scene', () => {
  it('is the largest round one that fits', () => {
    expect(roundScale(10, 10, { width: 1000, height: 400 })).toBe(100);
    expect(roundScale(10, 1, { width: 1000, height: 400 })).toBe(40);
  });

  it('is true at 96 pixels to the inch: a metre at 1 : 100 is a centimetre', () => {
    expect(sceneScale(100, 0, 0).k).toBeCloseTo(96 / 2.54, 10);
  });
});

describe('Labels of the ruler', () => {
  it('move apart until none covers another, in their order', () => {
    const out = spread([100, 101, 102, 300], [18, 18, 18, 18]);
    for (let i = 1; i < out.length; i++) expect(out[i]! - out[i - 1]!).toBeGreaterThanOrEqual(17.9);
    expect(out[3]).toBe(300);
  });
});
