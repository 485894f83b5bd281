import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { waterDensity, waterViscosity } from '@spraywright/engine/physics';
import { dutySolver, proveRig, type Rig } from '@spraywright/engine/rig';
import {
  INSTRUMENTS,
  judgeReadings,
  judgedText,
  matchReadings,
  readReadings,
  yardModel,
  yardSheet,
  type Instrument,
  type JudgeOptions,
  type YardSheet,
} from '@spraywright/engine/yard';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { randomOf } from './mutation.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const NAMES = ['tall-elms', 'three-point-pasture', 'utility-12v'] as const;
const rigs = new Map<string, { raw: unknown; rig: Rig; sheet: YardSheet }>();
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'spraywright-yard-'));
  for (const name of NAMES) {
    const { raw, rig } = demoRig(name, catalogue, shop);
    rigs.set(name, { raw, rig, sheet: yardSheet(rig, proveRig(rig, catalogue, shop)) });
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const row = (name: string, id: string) => rigs.get(name)!.sheet.readings.find((r) => r.id === id)!;

/** Everything read as expected, but for what the test changes (a factor, or values in SI). */
function judged(
  name: string,
  change: Record<string, number | readonly number[]> = {},
  head: Record<string, unknown> = { wind: '2 mph' },
  options: JudgeOptions = {},
) {
  const { rig, sheet } = rigs.get(name)!;
  const unit = {
    time: 's',
    pressure: 'Pa',
    length: 'm',
    rotation: 'rad/s',
    current: 'A',
    mass: 'kg',
  } as const;
  const read = readReadings({
    format: 'spraywright-readings',
    rig: name,
    ...head,
    readings: sheet.readings.map((r) => {
      const c = change[r.id];
      const say = (v: number) => `${v} ${unit[r.dimension as keyof typeof unit]}`;
      return {
        id: r.id,
        value:
          typeof c === 'object'
            ? c.map(say)
            : r.repeats === undefined
              ? say(r.expected * (c ?? 1))
              : Array.from({ length: r.repeats }, () => say(r.expected * (c ?? 1))),
      };
    }),
  });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const matched = matchReadings(read.document, sheet.rig, sheet.readings);
  if (!matched.ok) throw new Error(matched.problems[0]!.message);
  const test = judgeReadings(rig, sheet, matched.taken, options);
  return { ...test, of: (id: string) => test.readings.find((r) => r.id === id)! };
}

describe('the yard test sheet', () => {
  it.each(NAMES)('%s: bucket and gauges show what the duty solved with water gives', (name) => {
    const { rig, sheet } = rigs.get(name)!;
    const celsius = Math.min(50, (rig.brief.site.temperature ?? 293.15) - 273.15);
    const water = { density: waterDensity(celsius), viscosity: waterViscosity(celsius) };
    const solve = dutySolver(rig, false);
    for (const duty of rig.brief.duties) {
      const { open } = solve(duty, water);
      for (const { line, flow, tipPressure } of open.outlets) {
        const bucket = sheet.readings.find((r) => r.id === `bucket:${duty.id}:${line}`)!;
        expect((bucket.volume! * bucket.tips!) / flow).toBeCloseTo(bucket.expected, 3);
        const gauge = sheet.readings.find((r) => r.id === `tip-gauge:${duty.id}:${line}`)!;
        expect(gauge.expected / tipPressure).toBeCloseTo(1, 4);
      }
    }
  });

  it.each(NAMES)('%s: nine in ten rigs drawn from the tolerances read inside each window', (name) => {
    const { rig, sheet } = rigs.get(name)!;
    const model = yardModel(rig);
    const random = randomOf(11);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const draws = 1500;
    const inside = new Map<string, number>();
    for (let n = 0; n < draws; n++) {
      const shown = model.predict(model.inputs.map((i) => i.mean + i.deviation * normal()));
      model.rows.forEach((r, k) => {
        const { low, high } = sheet.readings.find((s) => s.id === r.id)!;
        const { deviation, plain, repeats }: Instrument = INSTRUMENTS[r.instrument];
        const common = shown[k]! + Math.sqrt(deviation ** 2 - (repeats?.deviation ?? 0) ** 2) * normal();
        const thrown = Array.from({ length: repeats?.times ?? 1 }, () =>
          repeats === undefined ? common : common + repeats.deviation * normal(),
        ).sort((a, b) => a - b);
        const read = (thrown[(thrown.length - 1) >> 1]! + thrown[thrown.length >> 1]!) / 2;
        const value = plain === true ? read : Math.exp(read);
        if (value >= low && value <= high) inside.set(r.id, (inside.get(r.id) ?? 0) + 1);
      });
    }
    // Windows follow from slopes at the middle: within 3 % of nine in ten, of which 2.3 % is the scatter of 1,500 draws.
    for (const r of model.rows) expect(inside.get(r.id)! / draws, r.id).toBeGreaterThan(0.87);
    for (const r of model.rows) expect(inside.get(r.id)! / draws, r.id).toBeLessThan(0.93);
  });

  it('says what the doubt of each reading is made of', () => {
    const { doubt } = row('tall-elms', 'bucket:tops:gun');
    expect(doubt.length).toBe(3);
    expect(doubt.map((d) => d.of).join()).toMatch(/tip|flow/);
    expect(doubt[0]!.share).toBeGreaterThanOrEqual(doubt[1]!.share);
  });
});

describe('readings against the sheet', () => {
  it('pass when the rig reads as it should', () => {
    for (const name of NAMES) expect(judged(name).state, name).toBe('pass');
  });

  it('ask for a look outside the window while every promise holds, and say where the doubt lies', () => {
    const { high, expected } = row('tall-elms', 'pump-gauge:tops');
    const test = judged('tall-elms', { 'pump-gauge:tops': (high / expected) * 1.01 });
    expect(test.state).toBe('look');
    expect(test.of('pump-gauge:tops').because.join()).toMatch(
      /high: nine rigs in ten read .* Most of the doubt/,
    );
  });

  it('fail when a promise is broken, and name it', () => {
    const { limits, expected } = row('tall-elms', 'bucket:tops:gun');
    const slow = (by: number) =>
      judged('tall-elms', { 'bucket:tops:gun': (limits[0]!.value / expected) * by });
    expect(slow(1.05).state).toBe('fail');
    expect(slow(1.05).of('bucket:tops:gun').because.join()).toMatch(
      /promise broken: Gives 20 gpm at the gun .* must read at most/,
    );
    // A bucket is read to 2 %: within that nobody can tell.
    expect(slow(1.002).of('bucket:tops:gun').because.join()).toMatch(/too close to tell/);
    expect(slow(1.002).state).toBe('look');
  });

  it('fail when no rig of these parts could read so', () => {
    const test = judged('utility-12v', { 'tip-gauge:spots:gun': 1.6 });
    expect(test.of('tip-gauge:spots:gun').because.join()).toMatch(/no rig of these parts reads/);
  });

  it('refuse a tape in wind above the limit, or in wind that nobody told', () => {
    const windy = judged('tall-elms', {}, { wind: '8 mph' });
    expect(windy.state).toBe('refused');
    expect(windy.of('tape-farthest:tops:gun').because.join()).toMatch(/wind of 8\.0 mph: above 6\.7 mph/);
    expect(judged('tall-elms', {}, {}).of('tape-farthest:tops:gun').because.join()).toMatch(/enter the wind/);
    expect(judged('tall-elms', {}, { wind: '6 mph' }).state).toBe('pass');
  });

  it('count the middle of three throws, ask for those that are missing, and still judge one by its own scatter', () => {
    const tape = row('tall-elms', 'tape-farthest:tops:gun');
    expect(tape.repeats).toBe(3);
    const thrown = (...by: number[]) => {
      const test = judged('tall-elms', { [tape.id]: by.map((b) => b * tape.expected) });
      return { test, one: test.of(tape.id) };
    };
    // One throw typed as another number has no say.
    const slipped = thrown(1.01, 1.14, 0.99);
    expect(slipped.one.state).toBe('pass');
    expect(slipped.one.value).toBeCloseTo(1.01 * tape.expected, 6);
    expect(judgedText(tape, slipped.one, 'us')).toMatch(/^(\S+ ft) \(\1, \S+ ft, \S+ ft\)$/);
    // One that is far from the others is named, and made again.
    const far = thrown(1.01, 1.6, 0.99);
    expect(far.one.state).toBe('more');
    expect(far.one.value! / tape.expected).toBeCloseTo(1, 3);
    expect(far.one.because.slice(0, 2).join('; ')).toMatch(
      /^throw 2 of .* ft is far from the others and does not count; one more throw/,
    );
    const two = thrown(1.01, 0.99);
    expect(two.one.state).toBe('more');
    expect(two.one.because[0]).toBe('one more throw: the middle one of 3 counts');
    expect(judgedText(tape, two.one, 'us')).toMatch(/; 2 of 3 throws\)$/);
    // The tape may be left out, and so may a throw: the test as a whole stands.
    expect(two.test.state).toBe('pass');
    // A reading of a shop that threw once: wider by what a single throw scatters.
    const edge = tape.low / tape.expected / 1.01;
    expect(thrown(edge).one.state).toBe('more');
    expect(thrown(edge).one.because[0]).toMatch(/^2 more throws/);
    expect(thrown(edge, edge, edge).one.state).toBe('look');
    expect(thrown(edge * 0.6).one.state).toBe('fail');
    expect(() => thrown(1, 1, 1, 1)).toThrow(/4 readings; .* has 3 to read/);
  });

  it('count a pair of gauge readings that agree, and leave the test open where two are at odds till a third tells', () => {
    const shut = row('tall-elms', 'shut-gauge:tops');
    const read = (...by: number[]) => {
      const test = judged('tall-elms', { [shut.id]: by.map((b) => b * shut.expected) });
      return { state: test.state, one: test.of(shut.id) };
    };
    expect(read(1.01, 0.99).one.state).toBe('pass');
    expect(read(1.01, 0.99).one.value! / shut.expected).toBeCloseTo(1, 9);
    const odds = read(1, 1.13);
    expect(odds.one.state).toBe('more');
    expect(odds.one.value).toBeUndefined();
    expect(odds.one.because.join()).toMatch(/psi and .* psi are too far apart: one more reading tells/);
    expect(judgedText(shut, odds.one, 'us')).toMatch(/^\S+ psi, \S+ psi, too far apart to count$/);
    // It is needed: the test is not complete while nobody knows which counts.
    expect(odds.state).toBe('missing');
    const told = read(1, 1.13, 1.005);
    expect(told.one.state).toBe('pass');
    expect(told.one.because[0]).toMatch(/^reading 2 of .* psi is far from the others and does not count$/);
    expect(told.state).toBe('pass');
    // A shop that read it once: the test stands, and says what is left.
    expect(read(1).one.state).toBe('more');
    expect(read(1).one.because[0]).toBe('one more reading: two that agree count');
    expect(read(1).state).toBe('pass');
    expect(() => read(1, 1, 1, 1)).toThrow(/4 readings; .* has 3 to read/);
  });

  it('hold every tip of a boom against the limits of the edition named, with its source, and find the odd one', () => {
    const { expected } = row('three-point-pasture', 'bucket:pasture:boom');
    const even = Array.from({ length: 12 }, () => expected);
    const worn = even.map((v, i) => (i === 4 ? v / 1.2 : v));
    const test = judged(
      'three-point-pasture',
      { 'bucket:pasture:boom': worn },
      { wind: '2 mph' },
      { edition: 'france-2008' },
    );
    const because = test.of('bucket:pasture:boom').because.join();
    expect(because).toMatch(/tip 5 is off its nominal flow.*france-2008.*arrete/);
    expect(because).toMatch(/tip 5 takes .* more than 10 % off the mean/);
    expect(
      judged(
        'three-point-pasture',
        { 'bucket:pasture:boom': even },
        { wind: '2 mph' },
        { edition: 'france-2008' },
      ).state,
    ).toBe('pass');
  });
});

describe('the command', () => {
  const run = async (...argv: string[]) => {
    let [out, err] = ['', ''];
    const code = await main(argv, { out: (t) => void (out += t), err: (t) => void (err += `${t}\n`) });
    return { code, out, err };
  };
  const put = (name: string, value: unknown) => {
    const path = join(folder, name);
    writeFileSync(path, JSON.stringify(value, null, 2));
    return path;
  };

  it('prints the sheet, judges readings, and names line, field, value and limit of wrong ones', async () => {
    const rig = put('rig.json', rigs.get('utility-12v')!.raw);
    const sheet = await run('yard', rig);
    expect(sheet.code).toBe(0);
    expect(sheet.out).toMatch(/bucket:spots:gun .*Time to fill 1 gal from the gun/);
    const readings = (list: unknown[]) => ({
      format: 'spraywright-readings',
      rig: 'utility-12v',
      wind: '3 mph',
      readings: list,
    });
    const good = put('good.json', readings([{ id: 'tip-gauge:spots:gun', value: '51 psi' }]));
    const test = await run('yard', rig, '--readings', good);
    expect(test.code).toBe(0);
    expect(test.out).toMatch(/The test: To do/);
    expect(test.out).toMatch(/Pass {4}Gauge in front of the tip/);
    const low = put('low.json', readings([{ id: 'tip-gauge:spots:gun', value: '12 psi' }]));
    expect((await run('yard', rig, '--readings', low)).code).toBe(1);
    const wrong = put(
      'wrong.json',
      readings([
        { id: 'tip-gauge:spots:gun', value: '51 gpm' },
        { id: 'no-such-gauge', value: '51 psi' },
      ]),
    );
    const refused = await run('yard', rig, '--readings', wrong);
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(/wrong\.json:\d+:\d+: readings\[0\]\.value: .*pressure/);
    expect(refused.err).toMatch(/no-such-gauge' is not on the sheet/);
    expect((await run('yard', rig, '--edition', 'moon-1969')).err).toMatch(/moon-1969.*france-2008/);
  });
});
