import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { LAYOUTS, LAYOUT_DOCUMENTS, readLayout } from '@spraywright/engine/catalogue';
import { designRig, putPart, readRig, searchRigs, slotsOf, type Design } from '@spraywright/engine/rig';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { readCatalogueFolder } from '../src/documents/catalogue-folder.ts';
import { catalogueFromFolder, filesOfCatalogue } from '../src/server/catalogue-files.ts';
import { DEMO, demoBriefs, demoShop } from './demo.ts';

/** The worked example of the documentation: whoever follows it gets what is tested here. */
const page = readFileSync(new URL('../../../docs/layouts.md', import.meta.url), 'utf8');
const example = /```json\n([\s\S]*?)```/.exec(page)![1]!;

let work: string;
let folder: string;
const shop = demoShop();
beforeAll(() => {
  work = mkdtempSync(join(tmpdir(), 'spraywright-layout-'));
  folder = join(work, 'catalogue');
  cpSync(`${DEMO}catalogue`, folder, { recursive: true });
  mkdirSync(join(folder, 'layouts'));
  writeFileSync(join(folder, 'layouts', 'two-gun-cart.json'), example);
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};
const catalogue = once(() => {
  const result = readCatalogueFolder(folder);
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.file}:${p.line}: ${p.message}`).join('\n'));
  return result.catalogue;
});

/** The light cart's brief for both guns at once. */
function twoGunBrief(): Record<string, unknown> {
  const raw = structuredClone(demoBriefs().find((b) => b.name === 'light-cart')!.raw) as {
    duties: { id: string; open: string[] }[];
  };
  raw.duties.find((d) => d.id === 'spots')!.open = ['gun', 'second-gun'];
  return { ...raw, id: 'two-guns', family: 'two-gun-cart' };
}

const designed = once((): Extract<Design, { ok: true }> => {
  const design = designRig(twoGunBrief(), catalogue(), shop);
  if (!design.ok) throw new Error(design.problems.map((p) => p.message).join('\n'));
  return design;
});

async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await main(argv, { out: (t) => void (out += `${t}\n`), err: (t) => void (err += `${t}\n`) });
  return { code, out, err };
}

/** The example with one thing spoilt, as a file in the catalogue; what the check says of it. */
async function checked(
  spoil: (text: string) => string,
): Promise<{ code: number; err: string; text: string }> {
  const text = spoil(example);
  expect(text).not.toBe(example);
  const file = join(work, 'spoilt.json');
  writeFileSync(file, text);
  const { code, err } = await run('check', file);
  return { code, err, text };
}

const lineOf = (text: string, word: string) => text.slice(0, text.indexOf(word)).split('\n').length;

describe('a layout that a shop adds as a file', () => {
  it('is designed: both guns have their hose and tip, the added strainer stands behind the pump', () => {
    const { rig } = designed();
    expect(rig.layout).toBe('two-gun-cart');
    for (const slot of ['gun', 'gun-2', 'hose', 'hose-2', 'tip', 'tip-2', 'line-strainer'])
      expect(
        rig.items.some((i) => i.id === slot),
        slot,
      ).toBe(true);
    expect(rig.lines.find((l) => l.id === 'pump')!.run).toEqual(['pump', 'line-strainer']);
  });

  it('is proven: with both guns open the pump gives twice the flow, and nothing is broken or without a joint', () => {
    const { proof } = designed();
    expect(proof.promises.filter((p) => p.state === 'broken').map((p) => p.cause)).toEqual([]);
    const outlets = proof.duties.find((d) => d.duty.id === 'spots')!.open.outlets;
    expect(outlets.map((o) => o.line).sort()).toEqual(['gun', 'second-gun']);
    // The brief asks 2 gpm at each open outlet (1 gpm = 6.30902e-5 m3/s, NIST SP 811).
    for (const outlet of outlets) expect(outlet.flow).toBeGreaterThanOrEqual(2 * 6.30902e-5);
    const single = proof.duties.find((d) => d.duty.id === 'drench')!.open.outlets;
    expect(single.map((o) => o.line)).toEqual(['gun']);
  });

  it('is priced part by part and quoted', async () => {
    const { rig, proof } = designed();
    for (const item of rig.items) expect(proof.bill.lines.some((l) => l.item === item.id)).toBe(true);
    const file = join(work, 'rig.json');
    writeFileSync(file, JSON.stringify(rig));
    const pdf = join(work, 'quote.pdf');
    const quoted = await run('quote', file, '-c', folder, '-o', pdf);
    expect(quoted.err).toBe('');
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('is searched: every rig found is of that layout', () => {
    const found = searchRigs(twoGunBrief(), catalogue(), shop, { mostProofs: 30, mostNodes: 2_000 });
    if (!found.ok) throw new Error(found.problems.map((p) => p.message).join('\n'));
    expect(found.choices.length).toBeGreaterThan(0);
    for (const { rig } of found.choices) expect(rig.layout).toBe('two-gun-cart');
  });

  it('gives its slots their names and takes other parts', () => {
    const { rig } = designed();
    const read = readRig(rig, catalogue());
    if (!read.ok) throw new Error(read.problems[0]!.message);
    expect(slotsOf(read.rig).find((s) => s.id === 'gun-2')?.name).toBe('Second gun');
    const { change } = putPart(rig, catalogue(), 'line-strainer', undefined);
    expect(change.about).toBe('Leave out the line strainer');
  });

  it('reaches the page with what it starts from, and the folder check counts it', async () => {
    const from = catalogueFromFolder(folder, `${DEMO}shop.json`);
    if (!from.ok) throw new Error(from.problems[0]!.message);
    expect(filesOfCatalogue(from.kept).layouts).toEqual([
      { file: 'layouts/two-gun-cart.json', raw: JSON.parse(example) as unknown },
    ]);
    const { code, out } = await run('check', folder);
    expect(code).toBe(0);
    expect(out).toContain("layout 'two-gun-cart'");
  });

  it('is listed beside those of the program, and printed as it was written', async () => {
    const all = await run('layouts', '-c', folder);
    for (const { id } of [...LAYOUTS, { id: 'two-gun-cart' }]) expect(all.out).toContain(id);
    const one = await run('layouts', 'two-gun-cart', '-c', folder);
    expect(JSON.parse(one.out)).toEqual(JSON.parse(example));
    expect((await run('layouts', 'no-such', '-c', folder)).code).toBe(2);
  });

  it('is asked for by name; a name that the catalogue lacks, or that serves another work, is refused', () => {
    const unknown = designRig({ ...twoGunBrief(), family: 'three-gun-cart' }, catalogue(), shop);
    expect(unknown).toMatchObject({ ok: false, problems: [{ path: ['family'], code: 'unknown-reference' }] });
    const other = designRig({ ...twoGunBrief(), family: 'roof-skid' }, catalogue(), shop);
    expect(other).toMatchObject({ ok: false, problems: [{ path: ['family'], code: 'contradiction' }] });
  });
});

describe('the check of a layout', () => {
  it('passes every layout that comes with the program, and one printed from it', async () => {
    for (const raw of LAYOUT_DOCUMENTS)
      expect(readLayout(JSON.parse(JSON.stringify(raw))), raw.id).toMatchObject({ ok: true });
    const file = join(work, 'printed.json');
    writeFileSync(file, (await run('layouts', 'heavy-cart')).out);
    expect(await run('check', file)).toMatchObject({ code: 0 });
  });

  it.each([
    ['a slot that does not exist', '"run": ["hose-2",', '"run": ["hoze-2",', '"hoze-2",', "slot 'hoze-2'"],
    ['a word that no part has', '"ball-full-port"', '"ball-full-bore"', '"ball-full-bore"', 'ball-full-port'],
    ['a node that does not exist', '"to": "pump-in"', '"to": "pump-inn"', '"pump-inn"', "node 'pump-inn'"],
    [
      'an outlet that leads back',
      '"opens": "agitation"',
      '"opens": "boom"',
      '"opens": "boom"',
      'not with an outlet',
    ],
    [
      'a slot twice',
      '"hose-2", "gun-2"',
      '"hose-2", "gun"',
      '"hose-2", "gun"',
      "'gun' already stands in line 'gun'",
    ],
    [
      'a gun with another hose',
      '"hose-2", "gun-2"',
      '"hose", "gun-2"',
      '"hose", "gun-2"',
      'carry one number',
    ],
    ['a dry part', '["pump", "line-strainer"]', '["pump", "engine"]', '["pump", "engine"]', 'no liquid'],
    ['an unknown work', '["spot-and-drench"]', '["spot-and-drensh"]', 'drensh', "mean 'spot-and-drench'"],
    ['a strange field', '"teesBranch"', '"teeBranch"', '"teeBranch"', "mean 'teesBranch'"],
    [
      "a gun of no line's kind",
      '"Line strainer", "kinds": ["strainer"]',
      '"Line strainer", "kinds": ["gun"]',
      '"Line strainer"',
      'how large the gun',
    ],
  ])('names line and field of %s', async (_, now, spoilt, where, says) => {
    const { code, err, text } = await checked((t) => t.replace(now, spoilt));
    expect(code).toBe(2);
    expect(err).toContain(says);
    expect(err).toContain(`spoilt.json:${lineOf(text, where)}:`);
  });

  it('refuses two files with one id', async () => {
    writeFileSync(join(folder, 'layouts', 'twice.json'), example);
    const { code, err } = await run('check', folder);
    rmSync(join(folder, 'layouts', 'twice.json'));
    expect(code).toBe(2);
    expect(err).toContain("id 'two-gun-cart' is already used in layouts/twice.json");
  });
});
