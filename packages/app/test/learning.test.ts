import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { confidenceOf, proveRig, type Correction } from '@spraywright/engine/rig';
import {
  calibrationOf,
  correctionsOf,
  driftText,
  learnedDocument,
  learnFrom,
  type Diagnosis,
  yardModel,
  yardSheet,
} from '@spraywright/engine/yard';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { copiesWithin, partsWithin, syntheticShop, withoutOdd, worstShift } from './synthetic-shop.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const demo = ['tall-elms', 'three-point-pasture', 'utility-12v'].map((n) => demoRig(n, catalogue, shop));
const rigs = demo.map((d) => d.rig);
const elms = rigs[0]!;
let folder: string;

beforeAll(() => void (folder = mkdtempSync(join(tmpdir(), 'spraywright-learning-'))));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('what readings of built rigs teach', () => {
  const clean = syntheticShop(rigs, { count: 45, seed: 3 });
  const learned = learnFrom(clean.machines);

  // Twelve shops are learned from: minutes of work on a busy machine.
  it(
    'the truth lies within two deviations 93 to 98 times in 100, over shops of known truth',
    { timeout: 300_000 },
    () => {
      // Two deviations hold 95.4 %; the parts of one shop share its readings, so several shops are taken together.
      const shops = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((seed) => {
        const made = syntheticShop(rigs, { count: 30, seed });
        const taught = learnFrom(made.machines);
        return [partsWithin(taught, made), copiesWithin(taught, made)] as const;
      });
      for (const k of [0, 1] as const) {
        const mean = shops.reduce((sum, s) => sum + s[k], 0) / shops.length;
        expect(mean).toBeGreaterThan(0.93);
        expect(mean).toBeLessThan(0.98);
      }
    },
  );

  it('two readings in a hundred gone wrong move no part by more than half its deviation', () => {
    const odd = syntheticShop(rigs, { count: 45, seed: 3, odd: 0.02 });
    const spoilt = learnFrom(odd.machines);
    expect(worstShift(learned, spoilt)).toBeLessThan(0.5);
    // What they do beyond being lost: the same readings with the wrong ones left out.
    expect(worstShift(learnFrom(withoutOdd(odd, clean)), spoilt)).toBeLessThan(0.5);
    const doubted = (l: typeof learned) => l.copies.flatMap((c) => c.readings).filter((r) => r.sound < 0.5);
    expect(doubted(spoilt).length).toBeGreaterThan(doubted(learned).length);
  });

  it('comes out the same to nine digits in whatever order the readings came', () => {
    const turned = [...clean.machines].reverse().map((m) => ({
      ...m,
      tests: m.tests.map((t) => ({ ...t, values: new Map([...t.values].reverse()) })),
    }));
    const again = learnFrom(turned);
    expect(again.factors.map((f) => f.key)).toEqual(learned.factors.map((f) => f.key));
    expect(worstShift(learned, again)).toBeLessThan(1e-9);
  });

  it('one reading that is twice what it should be leaves a part where it was', () => {
    const [first, ...others] = clean.machines;
    const values = new Map(first!.tests[0]!.values);
    const id = [...values.keys()].find((k) => k.startsWith('bucket:'))!;
    values.set(id, [values.get(id)![0]! * 2]);
    const spoilt = learnFrom([{ ...first!, tests: [{ ...first!.tests[0]!, values }] }, ...others]);
    expect(worstShift(learned, spoilt)).toBeLessThan(0.5);
    const copy = spoilt.copies.find((c) => c.serial === first!.serial)!;
    expect(copy.readings.find((r) => r.id === id)!.sound).toBeLessThan(0.01);
  });

  it.each([
    ['tip-flow:tip', 0.15],
    ['pump-flow:pump', -0.15],
    ['current:pump', 0.2],
  ])('one copy that is nothing like its part leaves the part where it was: %s', (input, off) => {
    // Every reading of that machine is sound, and all fit each other.
    const utility = rigs[2]!;
    const { machines } = syntheticShop([utility], { count: 20, seed: 6 });
    const [odd] = syntheticShop([utility], { count: 1, seed: 6, only: { [input]: off } }).machines;
    const of = (l: typeof learned) => l.factors.find((f) => f.key.startsWith(input.split(':')[0]!))!;
    const without = of(learnFrom(machines));
    const spoilt = of(learnFrom([...machines, { ...odd!, serial: 'Z' }]));
    expect(Math.abs(spoilt.mean - without.mean) / without.deviation).toBeLessThan(0.5);
  });

  it('a tachometer misread by as much as an odd drive would turn is left open, and moves no part', () => {
    // With a regulator that sends the rest back nothing else tells the speed.
    const { machines } = syntheticShop([rigs[1]!], { count: 20, seed: 6 });
    const [first, ...others] = machines;
    const values = new Map(first!.tests[0]!.values);
    values.set('drive-speed', [values.get('drive-speed')![0]! * 0.8]);
    const spoilt = learnFrom([{ ...first!, tests: [{ ...first!.tests[0]!, values }] }, ...others]);
    expect(worstShift(learnFrom(machines), spoilt)).toBeLessThan(0.25);
    const copy = spoilt.copies.find((c) => c.serial === first!.serial)!;
    const sound = copy.readings.find((r) => r.id === 'drive-speed')!.sound;
    expect(sound).toBeGreaterThan(0.05);
    expect(sound).toBeLessThan(0.95);
    // Either it turns as it should or a fifth too slowly: the deviation says both.
    expect(copy.inputs.find((i) => i.id === 'drive-speed:pto')!.deviation).toBeGreaterThan(0.05);
  });

  it('finds a pump that gives 4 % less than its leaflet, and says from how many rigs', () => {
    // Read without scatter from copies that differ in nothing else.
    const pumpFlow = yardModel(rigs[2]!).inputs.find((i) => i.kind === 'pump-flow')!.id;
    const { machines } = syntheticShop([rigs[2]!], {
      count: 12,
      seed: 8,
      only: { [pumpFlow]: Math.log(0.96) },
    });
    const pump = learnFrom(machines).factors.find((f) => f.key.startsWith('pump-flow:'))!;
    expect(Math.exp(pump.mean)).toBeCloseTo(0.96, 1.8);
    expect(driftText(pump)).toMatch(/^[345]\.\d % below its leaflet \(.*\), from 12 rigs$/);
  });

  it('believes the middle of three throws more than one throw, and a slip in one of them moves nothing', () => {
    const { machines } = syntheticShop([elms], { count: 8, seed: 7 });
    const thrown = (of: (list: readonly number[]) => readonly number[]) =>
      learnFrom(
        machines.map((m) => ({
          ...m,
          tests: m.tests.map((t) => ({
            ...t,
            values: new Map(
              [...t.values].map(([id, list]) => [id, id.startsWith('tape') ? of(list) : list] as const),
            ),
          })),
        })),
      );
    const gun = (l: typeof learned) => l.factors.find((f) => f.key.startsWith('throw:'))!;
    const [all, once] = [gun(thrown((list) => list)), gun(thrown((list) => list.slice(0, 1)))];
    expect(all.deviation).toBeLessThan(once.deviation);
    // The longest throw of each, written down a little longer, is still the longest; half as far again it counts for nothing.
    const nudged = gun(thrown((list) => list.map((v) => (v === Math.max(...list) ? v * 1.01 : v))));
    expect(nudged.mean).toBe(all.mean);
    const spoilt = gun(thrown((list) => list.map((v) => (v === Math.max(...list) ? v * 1.5 : v))));
    const without = gun(thrown((list) => list.filter((v) => v !== Math.max(...list))));
    expect(spoilt.mean).toBe(without.mean);
  });

  it('is not moved by a gauge reading that slipped once it was read again, and sets a pair at odds aside', () => {
    const { machines } = syntheticShop([elms], { count: 8, seed: 7 });
    const first = (of: (list: readonly number[]) => readonly number[]) =>
      learnFrom(
        machines.map((m, n) => ({
          ...m,
          tests: m.tests.map((t) => ({
            ...t,
            values: new Map(
              [...t.values].map(
                ([id, list]) => [id, n === 0 && id.startsWith('shut-gauge') ? of(list) : list] as const,
              ),
            ),
          })),
        })),
      );
    const rise = (l: typeof learned) => l.factors.find((f) => f.key.startsWith('override:'))!;
    const right = rise(first((list) => list));
    const told = rise(first(([a, b]) => [a!, b! * 1.13, b!]));
    expect(Math.abs(told.mean - right.mean) / right.deviation).toBeLessThan(0.02);
    const odds = first(([a, b]) => [a!, b! * 1.13]);
    expect(odds.copies[0]!.unused.filter((u) => /too far apart/.test(u.why))).toHaveLength(2);
    expect(odds.copies[0]!.readings.some((r) => r.id.startsWith('shut-gauge'))).toBe(false);
  });

  it('says nothing of a tape in wind, and says so', () => {
    const [first] = clean.machines;
    const [test] = first!.tests;
    const windy = learnFrom([{ ...first!, tests: [{ ...test!, document: { ...test!.document, wind: 6 } }] }]);
    expect(windy.copies[0]!.unused.map((u) => u.id).join()).toMatch(/tape-farthest/);
    expect(windy.copies[0]!.readings.map((u) => u.id).join()).not.toMatch(/tape-farthest/);
  });

  it('makes the promises of the next rig a fifth sharper after 30 tests, and those of a tested rig by a third', () => {
    const taught = learnFrom(syntheticShop([elms], { count: 30, seed: 5 }).machines);
    const proof = proveRig(elms, catalogue, shop);
    const plain = confidenceOf(elms, proof).promises;
    const width = (corrections: Correction[]) => {
      const now = confidenceOf(elms, proof, { corrections }).promises;
      const widths = plain.flatMap((p) => {
        if (!corrections.some((c) => c.id === p.matters[0]?.input)) return [];
        const [low, , high] = now.find((q) => q.id === p.id)!.band;
        return [(high - low) / (p.band[2] - p.band[0])];
      });
      expect(widths.length).toBeGreaterThan(2);
      return widths.reduce((sum, w) => sum + w, 0) / widths.length;
    };
    // Perfect knowledge of every part would leave 69 %: the rest is what one copy differs by.
    expect(width(correctionsOf(elms, learnedDocument(taught))!)).toBeLessThan(0.8);
    expect(width(taught.copies[0]!.inputs.map((i) => ({ ...i, source: 'its own test' })))).toBeLessThan(
      2 / 3,
    );
  });
});

describe('what was promised and what happened', () => {
  const proof = proveRig(elms, catalogue, shop);
  const sheet = yardSheet(elms, proof);
  const tests = (wider: number) =>
    syntheticShop([elms], { count: 60, seed: 4, wider }).machines.flatMap((m) =>
      m.tests.map((taken) => ({ sheet, taken })),
    );

  it('agree for a shop whose parts are as the tolerances say, copy by copy', () => {
    const found = calibrationOf(tests(1));
    expect(found.inside / found.readings).toBeGreaterThan(0.8);
    for (const b of found.bands) expect(b.held).toBeLessThanOrEqual(b.tested);
  });

  it('shows windows that are too narrow when parts scatter thrice as wide', () => {
    expect(calibrationOf(tests(3)).windows).toBe('too narrow');
  });

  it('says nothing of a handful of readings', () => {
    expect(calibrationOf(tests(1).slice(0, 1)).windows).toBe('too few to tell');
  });
});

describe('the command', () => {
  const run = async (...argv: string[]) => {
    let [out, err] = ['', ''];
    const code = await main(argv, { out: (t) => void (out += t), err: (t) => void (err += `${t}\n`) });
    return { code, out, err };
  };
  const unit = (id: string) =>
    /gauge/.test(id)
      ? 'Pa'
      : /speed/.test(id)
        ? 'rad/s'
        : /tape/.test(id)
          ? 'm'
          : /current/.test(id)
            ? 'A'
            : /scale/.test(id)
              ? 'kg'
              : 's';

  it('learns from a folder, keeps what it learned, and proves the next rig with it', async () => {
    const tests = join(folder, 'tests');
    mkdirSync(tests);
    const raw = { ...(demo[0]!.raw as object) };
    const rigFile = join(tests, 'rig.json');
    writeFileSync(rigFile, JSON.stringify(raw));
    const proofs = new Map([[elms, proveRig(elms, catalogue, shop)]]);
    syntheticShop([elms], { count: 8, seed: 2, proofs }).machines.forEach(({ serial, tests: [test] }, i) =>
      writeFileSync(
        join(tests, `test-${i}.json`),
        JSON.stringify({
          format: 'spraywright-readings',
          rig: elms.document.id,
          serial,
          wind: '2 mph',
          readings: [...test!.values].map(([id, list]) => ({
            id,
            value: list.length === 1 ? `${list[0]} ${unit(id)}` : list.map((v) => `${v} ${unit(id)}`),
          })),
        }),
      ),
    );
    const kept = join(folder, 'learned.json');
    const learned = await run('learn', tests, '-o', kept);
    expect(learned.err).toBe('');
    expect(learned.code).toBe(0);
    expect(learned.out).toMatch(/Learned from 8 built rigs/);
    expect(learned.out).toMatch(/from 8 rigs/);
    expect(learned.out).toMatch(/inside the windows/);
    const proved = await run('prove', rigFile, '--odds', '--learned', kept);
    expect(proved.out).toMatch(/Sharper by readings, which stand for \d+ of \d+ tolerances/);
    expect(proved.out).toMatch(/known to .* where the tolerance is .* \(readings of 8 built rigs\)/);
    // Each was weighed once, whole or by wheels and coupler.
    expect(learned.out).toMatch(/: mass: no drift from the list to tell: within \d\.\d %, from 8 rigs/);
    expect(proved.out).toMatch(/mass of the empty rig .* known to 1\.\d % where the tolerance is 2\.0 %/);
    const own = await run('prove', rigFile, '--odds', '--learned', kept, '--serial', 'S-3');
    expect(own.out).toMatch(/tests of machine S-3 and of others/);
    // Read again as when it was new, nothing is wrong with it; by its own test that is surer than by the tolerances.
    const again = ['fault', rigFile, '--readings', join(tests, 'test-3.json'), '--json'];
    const sound = async (...more: string[]) => {
      const told = JSON.parse((await run(...again, ...more)).out) as Diagnosis;
      return told.suspects.find((s) => s.id === 'nothing-wrong')!.probability;
    };
    expect(await sound('--learned', kept, '--tested')).toBeGreaterThan(await sound());
    const unknown = await run('prove', rigFile, '--odds', '--learned', kept, '--serial', 'S-99');
    expect(unknown.code).toBe(2);
    expect(unknown.err).toMatch(/serial is 'S-99'.*no tested machine of rig 'tall-elms'/);
    expect((await run('prove', rigFile, '--learned', kept)).err).toMatch(/add --odds/);
    const json = JSON.parse((await run('learn', tests, '--json')).out) as { factors: unknown[] };
    expect(json.factors.length).toBeGreaterThan(5);
  });

  it('names readings whose rig is not there, and a folder without any', async () => {
    const lone = join(folder, 'lone');
    mkdirSync(lone);
    expect((await run('learn', lone)).err).toMatch(/has no readings in it/);
    writeFileSync(
      join(lone, 'a.json'),
      JSON.stringify({ format: 'spraywright-readings', rig: 'elsewhere', readings: [] }),
    );
    const result = await run('learn', lone);
    expect(result.code).toBe(2);
    expect(result.err).toMatch(/a\.json:\d+:\d+: rig: .*'elsewhere'/);
    expect((await run('learn', join(folder, 'nowhere'))).code).toBe(2);
  });
});
