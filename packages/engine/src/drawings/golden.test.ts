import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sampleDuty, samplePlacement, sampleProof, sampleReach } from '../../test/sample-proof.ts';
import {
  sampleCentrifugalCurve,
  sampleDay,
  sampleHoseReach,
  samplePumpCurve,
  sampleTankCurve,
} from '../../test/sample-curves.ts';
import {
  choicePlot,
  dayPlot,
  PALETTES,
  pressureLine,
  pumpPlot,
  reachPlot,
  rigViews,
  tankPlot,
  throwScene,
} from './index.ts';

const FT = 0.3048;
const folder = new URL('./golden/', import.meta.url);

const elm = (promised: number, meaning: 'wetted' | 'touched' = 'wetted') =>
  sampleDuty(
    { hoseOut: 200 * FT, reach: meaning, target: { aim: 'height', height: 52 * FT, standoff: 26 * FT } },
    sampleReach({
      target: { aim: 'height', height: 52 * FT, standoff: 26 * FT },
      meaning,
      farthest: 73.6 * FT,
      bulk: 57 * FT,
      promised: promised * FT,
      speeds: [18.1, 19.3, 20.6, 21.9],
      elevation: 1.27,
    }),
  );
const roofTarget = { aim: 'roof', height: 20 * FT, distance: 12 * FT } as const;
const roof = sampleDuty(
  { name: 'Two-storey roof', hoseOut: 150 * FT, target: roofTarget },
  sampleReach({
    target: roofTarget,
    farthest: 34 * FT,
    bulk: 26 * FT,
    promised: 23 * FT,
    speeds: [13.2, 13.8, 14.3, 15.2],
    elevation: 1,
  }),
);
const wallTarget = { aim: 'height', height: 16 * FT, standoff: 8 * FT } as const;
const wall = sampleDuty(
  { name: 'Gutters', target: wallTarget },
  sampleReach({
    target: wallTarget,
    farthest: 30 * FT,
    bulk: 22 * FT,
    promised: 15 * FT,
    speeds: [11, 12, 13, 14],
    elevation: 1.3,
  }),
);
const groundTarget = { aim: 'distance', distance: 20 * FT } as const;
const ground = sampleDuty(
  { name: 'Fence row', hoseOut: 40 * FT, target: groundTarget },
  sampleReach({
    target: groundTarget,
    farthest: 44 * FT,
    bulk: 24 * FT,
    promised: 20.4 * FT,
    speeds: [7.4, 8.1, 8.8, 11.2],
    elevation: 0.42,
  }),
);
const bar = sampleDuty({
  name: 'First coat',
  open: ['bar'],
  application: { rate: 1.22e-3, basis: 'field', speed: 1.34, width: 12 * FT },
});
const transfer = sampleDuty({ name: 'Fill the sprayer', open: ['transfer'], outletHeight: 7 * FT });
const drench = sampleDuty({ name: 'Drench', hoseOut: 100 * FT });
const trailer = 'Tandem trailer, 16 ft deck';

const plot = { width: 402, units: 'us', palette: PALETTES.day } as const;
const day = { width: 890, units: 'us', palette: PALETTES.day } as const;
const drawings: Record<string, () => string> = {
  'throw-elm-thin': () => throwScene(sampleProof([elm(53.5)]), elm(53.5), day),
  'throw-elm-placed': () =>
    throwScene({ ...sampleProof([elm(58)]), placement: samplePlacement() }, elm(58), day),
  'rig-views-cart': () =>
    rigViews({ ...sampleProof([elm(58)]), placement: samplePlacement() }, elm(58), day)!,
  'rig-views-phone-night': () =>
    rigViews({ ...sampleProof([elm(58)]), placement: samplePlacement() }, elm(58), {
      width: 390,
      units: 'metric',
      palette: PALETTES.night,
    })!,
  'throw-elm-broken': () => throwScene(sampleProof([elm(49.5)]), elm(49.5), day),
  'throw-elm-touched-print': () =>
    throwScene(sampleProof([elm(60, 'touched')]), elm(60, 'touched'), { ...day, palette: PALETTES.print }),
  'throw-elm-phone-night': () =>
    throwScene(sampleProof([elm(53.5)]), elm(53.5), { width: 362, units: 'metric', palette: PALETTES.night }),
  'throw-roof': () => throwScene(sampleProof([roof], 'Skid, 48 x 40 in'), roof, day),
  'throw-wall': () => throwScene(sampleProof([wall, roof], 'Skid, 48 x 40 in'), wall, day),
  'throw-ground': () =>
    throwScene(sampleProof([ground], 'Utility bed frame'), ground, { ...day, lit: 'hose' }),
  'spray-bar': () => throwScene(sampleProof([bar], trailer), bar, day),
  'spray-transfer': () => throwScene(sampleProof([transfer], trailer), transfer, day),
  'spray-hand': () => throwScene(sampleProof([drench], 'Wagon, four wheels'), drench, day),
  'pressure-line': () => pressureLine(sampleProof([elm(53.5)]), elm(53.5), day),
  'pressure-line-lit-metric': () =>
    pressureLine(sampleProof([elm(53.5)]), elm(53.5), {
      width: 640,
      units: 'metric',
      palette: PALETTES.night,
      lit: 'hose',
    }),
  'curve-pump': () =>
    pumpPlot(sampleProof([elm(53.5), { ...elm(53.5), id: 'crowns' }]), elm(53.5), samplePumpCurve(), plot),
  'curve-pump-past-its-points': () =>
    pumpPlot(sampleProof([elm(53.5)]), elm(53.5), sampleCentrifugalCurve(), {
      width: 366,
      units: 'metric',
      palette: PALETTES.night,
    }),
  'curve-reach': () => reachPlot(elm(49.5), sampleHoseReach(), plot),
  'curve-flow': () => {
    const { reach: _, ...hose } = sampleHoseReach();
    return reachPlot(drench, hose, { ...plot, units: 'metric' });
  },
  'curve-tank': () => tankPlot(sampleDay(), sampleTankCurve(), { units: 40 }, plot),
  'choice-plot': () =>
    choicePlot(
      [
        { priceCents: 764000, margin: -0.14, broken: true },
        { priceCents: 812000, margin: -0.048, broken: true, letter: 'A' },
        { priceCents: 845000, margin: 0.021, broken: false, letter: 'B' },
        { priceCents: 851000, margin: 0.004, broken: true },
        { priceCents: 990000, margin: 0.064, broken: false, letter: 'C' },
        { priceCents: 1240000, margin: -0.5, broken: true },
      ],
      { ...plot, width: 828 },
    ),
  'choice-plot-searched': () =>
    choicePlot(
      [
        { priceCents: 812000, margin: -0.048, broken: true, letter: 'A' },
        { priceCents: 845000, margin: 0.021, broken: false, letter: 'B' },
        { priceCents: 990000, margin: 0.064, broken: false, letter: 'C' },
      ],
      { ...plot, width: 828, toTheEnd: true },
    ),
  'curve-day': () =>
    dayPlot({ ...sampleProof([elm(53.5)]), placement: samplePlacement() }, sampleDay(), plot),
};

describe('Drawings are the stored ones, so that a change is seen (UPDATE_GOLDEN=1 stores them anew)', () => {
  for (const [name, draw] of Object.entries(drawings))
    it(`${name} is drawn as stored`, () => {
      const file = new URL(`${name}.svg`, folder);
      const svg = `${draw().replaceAll('><', '>\n<')}\n`;
      if (process.env['UPDATE_GOLDEN'] === '1') {
        mkdirSync(folder, { recursive: true });
        writeFileSync(file, svg);
      }
      expect(svg).toBe(readFileSync(file, 'utf8'));
    });
});

describe('Every drawing', () => {
  for (const [name, draw] of Object.entries(drawings)) {
    it(`${name} is the same text twice, without a figure that is no number`, () => {
      const svg = draw();
      expect(svg).toBe(draw());
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    });

    it(`${name} closes what it opens, and needs no style sheet and no id`, () => {
      const open: string[] = [];
      for (const [, slash, tag, self] of draw().matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
        if (slash === '/') expect(open.pop()).toBe(tag);
        else if (self !== '/') open.push(tag!);
      }
      expect(open).toEqual([]);
      expect(draw()).not.toMatch(/<style| style=| class=| id=|url\(/);
    });

    it(`${name} sets text in the families of the sheet only, each with its own attributes`, () => {
      for (const [text] of draw().matchAll(/<(?:text|tspan) [^>]*>/g))
        expect(text).toMatch(/font-family="Sheet (Semi|Condensed|Signs)"/);
      for (const [text] of draw().matchAll(/<text [^>]*>/g)) expect(text).toMatch(/font-size=.*fill="#/);
    });
  }
});
