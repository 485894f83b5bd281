import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { DEMO } from './demo.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'spraywright-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const code = await main(argv, { out: (t) => void (out += `${t}\n`), err: (t) => void (err += `${t}\n`) });
  return { code, out, err };
}

const put = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe('the command line', () => {
  it('lists its commands and helps with each', async () => {
    const all = await run('--help');
    expect(all.code).toBe(0);
    for (const command of ['design', 'prove', 'quote', 'record', 'frame', 'solve', 'check', 'start']) {
      expect(all.out).toContain(command);
      const one = await run(command, '--help');
      expect(one.code).toBe(0);
      expect(one.out).toContain('Options');
      expect(one.out).toContain('Exit codes');
    }
  });

  it('refuses a command, an option and a missing file by name', async () => {
    expect(await run('fly')).toMatchObject({ code: 2, err: expect.stringContaining("no command 'fly'") });
    expect(await run('prove', '--colour', 'x.json')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--colour'),
    });
    expect(await run('prove')).toMatchObject({ code: 2, err: expect.stringContaining('rig.json') });
    expect(await run('prove', join(folder, 'nothing.json'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('no such file'),
    });
    expect((await run('prove', '--units', 'furlongs', 'x.json')).err).toContain('us or metric');
  });

  it('gives the rigs that no other beats, says how far it came, and refuses a number of proofs that is none', async () => {
    const told = await run('design', `${DEMO}briefs/utility-12v.json`, '--choices', '--proofs', '20');
    expect(told.code).toBe(0);
    expect(told.out).toMatch(/least margin +ready in/);
    expect(told.out).toMatch(/Stopped at .* of the latter/);
    const json = await run(
      'design',
      `${DEMO}briefs/utility-12v.json`,
      '--choices',
      '--proofs',
      '20',
      '--json',
    );
    const { choices, complete, progress } = JSON.parse(json.out) as {
      choices: { rig: { format: string } }[];
      complete: boolean;
      progress: { proofs: number };
    };
    expect(complete).toBe(false);
    expect(progress.proofs).toBe(20);
    expect(choices[0]!.rig.format).toBe('spraywright-rig');
    const wrong = await run('design', `${DEMO}briefs/utility-12v.json`, '--choices', '--proofs', 'many');
    expect(wrong).toMatchObject({ code: 2, err: expect.stringContaining("--proofs is 'many'") });
  });

  it('ends as soon as no rig can be better by more than a share, and refuses a share that is none', async () => {
    const told = await run('design', `${DEMO}briefs/roof-skid.json`, '--choices', '--within', '2 %');
    expect(told.code).toBe(0);
    expect(told.out).toContain('one here that costs and weighs at most 2 % more');
    for (const text of ['few', '60', '-1']) {
      const wrong = await run('design', `${DEMO}briefs/roof-skid.json`, '--choices', `--within=${text}`);
      expect(wrong).toMatchObject({ code: 2, err: expect.stringContaining(`--within is '${text}'`) });
    }
  });

  it('says why no rig keeps a brief, and what could be asked less', async () => {
    const told = await run('design', `${DEMO}briefs/road-dust.json`, '--why-not');
    expect(told.code).toBe(1);
    expect(told.out).toContain('No rig of the catalogue can keep every promise of this brief.');
    expect(told.out).toMatch(/size of the tank +1,300 gal +\d+ gal/);
    const json = await run('design', `${DEMO}briefs/road-dust.json`, '--why-not', '--json');
    expect(JSON.parse(json.out)).toMatchObject({ possible: false, certain: true });
  });

  it('tells what other parts of a slot would do to a rig, and refuses a slot that it does not have', async () => {
    const rig = join(folder, 'alternatives.json');
    await run('design', `${DEMO}briefs/utility-12v.json`, '-o', rig);
    const told = await run('design', '--alternatives', rig, 'battery', '--json');
    const { alternatives } = JSON.parse(told.out) as {
      alternatives: { part: string; effect: { priceCents: number; promises: unknown[] } }[];
    };
    expect(alternatives.length).toBeGreaterThan(3);
    const text = await run('design', '--alternatives', rig, 'battery');
    expect(text.out.split('\n').filter((l) => l.startsWith('Battery')).length).toBeGreaterThan(3);
    expect(text.out).toContain('price');
    expect(await run('design', '--alternatives', rig, 'sail')).toMatchObject({
      code: 2,
      err: expect.stringContaining("not 'sail': carrier, tank"),
    });
    expect(await run('design', rig, rig)).toMatchObject({
      code: 2,
      err: expect.stringContaining('one too many'),
    });
  });

  it('designs a rig for a brief, writes it, and proves what it wrote to the same figures', async () => {
    const file = join(folder, 'rig.json');
    const design = await run('design', `${DEMO}briefs/tall-elms.json`, '-o', file, '--json');
    const designed = JSON.parse(design.out) as { proof: { promises: unknown[]; counts: { broken: number } } };
    expect(design.code).toBe(designed.proof.counts.broken > 0 ? 1 : 0);
    const prove = await run('prove', file, '--json');
    expect(JSON.parse(prove.out)).toEqual(designed.proof);
    const odds = await run('prove', file, '--odds');
    expect(odds.out).toContain('kept more than 99 times in 100; 5 to 95 %: ');
    expect(odds.out).toMatch(/decided most by .+: throw \(water-test it/);
    const both = JSON.parse((await run('prove', file, '--odds', '--json')).out) as { confidence: unknown };
    const { confidence, ...rest } = both;
    expect(rest).toEqual(designed.proof);
    expect(confidence).toMatchObject({ draws: 1024, seed: 1, unsolved: 0 });
    const text = await run('prove', file, '--working', '--units', 'metric');
    expect(text.out).toContain('method:');
    expect(text.out).toMatch(/\d bar/);
  });

  it('names file, line, field, value and limit of a wrong brief', async () => {
    const brief = JSON.parse(readFileSync(`${DEMO}briefs/tall-elms.json`, 'utf8')) as {
      duties: { tankLevel: string }[];
    };
    brief.duties[0]!.tankLevel = '140 %';
    const path = put('brief.json', JSON.stringify(brief, null, 2));
    const line =
      readFileSync(path, 'utf8')
        .split('\n')
        .findIndex((l) => l.includes('140 %')) + 1;
    const result = await run('design', path);
    expect(result.code).toBe(2);
    expect(result.err).toContain(`${path}:${line}:`);
    expect(result.err).toContain('duties[0].tankLevel');
    expect(result.err).toMatch(/140 %.*100 %/);
  });

  it('says on which line a file stops being JSON', async () => {
    const path = put('broken.json', '{\n  "format": "spraywright-rig",\n  "id" "x"\n}\n');
    const result = await run('prove', path);
    expect(result.code).toBe(2);
    expect(result.err).toMatch(/broken\.json:3:\d+: this is not JSON/);
  });

  it('checks the demo catalogue, and a catalogue with a fault to the line', async () => {
    expect(await run('check', `${DEMO}catalogue`)).toMatchObject({
      code: 0,
      out: expect.stringContaining('no problem'),
    });
    expect((await run('check', join(folder, 'no-folder'))).code).toBe(2);
  });

  it('writes a quote, and refuses to do so without a file or with a day that is none', async () => {
    const rig = join(folder, 'rig-for-quote.json');
    await run('design', `${DEMO}briefs/utility-12v.json`, '-o', rig);
    expect((await run('quote', rig)).code).toBe(2);
    expect((await run('quote', rig, '-o', join(folder, 'q.pdf'), '--date', '2026-13-77')).err).toContain(
      '2026-13-77',
    );
    const pdf = join(folder, 'quote.pdf');
    const quote = await run('quote', rig, '-o', pdf, '--date', '2026-03-03', '--json');
    expect((JSON.parse(quote.out) as { bytes: number }).bytes).toBeGreaterThan(5000);
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('solves a network file and prints a table or JSON', async () => {
    const table = await run('solve', `${DEMO}networks/reel-and-return.json`);
    expect(table.code).toBe(0);
    expect(table.out).toMatch(/psi/);
    const json = await run('solve', `${DEMO}networks/reel-and-return.json`, '--json');
    expect((JSON.parse(json.out) as { status: string }).status).toBe('converged');
  });
});
