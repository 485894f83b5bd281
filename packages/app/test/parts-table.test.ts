import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { KINDS } from '@spraywright/engine/catalogue';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { catalogueFiles } from '../src/documents/catalogue-folder.ts';
import { partsCsv, readPartsCsv } from '../src/documents/parts-csv.ts';
import { MOST_NAMED, planPartsImport } from '../src/documents/parts-import.ts';
import { DEMO } from './demo.ts';

const HOSE = 'hose-1-1-4in-60-eva';
let folder: string;
let catalogue: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'spraywright-parts-'));
  catalogue = join(folder, 'catalogue');
  cpSync(`${DEMO}catalogue`, catalogue, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const table = (text: string) => {
  const file = join(folder, 'table.csv');
  writeFileSync(file, text);
  return file;
};

function planned(text: string, kind?: string) {
  const result = planPartsImport(table(text), catalogue, kind);
  if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('\n'));
  return result.plan;
}

function refused(text: string, kind = 'hose') {
  const result = planPartsImport(table(text), catalogue, kind);
  return result.ok ? [] : result.problems.map((p) => `${p.line}:${p.column} ${p.field}: ${p.message}`);
}

async function run(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await main(argv, { out: (t) => void (out += `${t}\n`), err: (t) => void (err += `${t}\n`) });
  return { code, out, err };
}

describe('Parts as a table for a spreadsheet', () => {
  it.each(KINDS)('brings every %s back as it was', (kind) => {
    const files = catalogueFiles(catalogue);
    if (!files.ok) throw new Error('the demo catalogue cannot be read');
    const file = files.files.find((f) => f.kind === kind);
    const { parts } = file!.raw as { parts: Record<string, unknown>[] };
    const plan = planned(partsCsv(parts), kind);
    expect(plan).toMatchObject({ kind, added: [], changes: [], unchanged: parts.length });
  });

  it.each([
    ['commas', `id,bore [in],priceCents\n${HOSE},1.25,335\n`],
    ['semicolons and decimal commas', `id;bore [in];priceCents\n${HOSE};1,25;335\n`],
    [
      'tabs, a byte order mark and Windows lines',
      `\uFEFFid\tbore (in)\tpriceCents\r\n${HOSE}\t1.25\t335\r\n`,
    ],
    ['bars and units in the cells', `id|bore|priceCents\n${HOSE}|31.75 mm|335\n`],
  ])('reads %s', (_, text) => {
    const plan = planned(text);
    expect(plan.kind).toBe('hose');
    expect(plan.changes.map((c) => [c.part, c.line, c.field])).toEqual([
      [HOSE, 2, 'bore'],
      [HOSE, 2, 'priceCents'],
    ]);
  });

  it('leaves what an empty cell does not say, and touches nothing else in the file', async () => {
    const version = () =>
      (JSON.parse(readFileSync(join(catalogue, 'catalogue.json'), 'utf8')) as { version: number }).version;
    const was = version();
    const before = readFileSync(join(catalogue, 'hose.json'), 'utf8');
    const done = await run(
      'parts-in',
      table(`id,name,priceCents\n${HOSE},,335\n`),
      '-c',
      catalogue,
      '--write',
    );
    expect(done).toMatchObject({ code: 0, out: expect.stringContaining('priceCents 310 becomes 335') });
    const after = readFileSync(join(catalogue, 'hose.json'), 'utf8');
    const lines = after.split('\n').filter((line, i) => line !== before.split('\n')[i]);
    expect(lines.map((l) => l.trim())).toEqual(['"priceCents": 335,']);
    expect(version()).toBe(was + 1);
  });

  it('shows what would change and writes nothing until asked', async () => {
    const shown = await run('parts-in', table(`id,priceCents\n${HOSE},335\n`), '-c', catalogue);
    expect(shown.out).toContain('--write');
    expect(readFileSync(join(catalogue, 'hose.json'), 'utf8')).toBe(
      readFileSync(`${DEMO}catalogue/hose.json`, 'utf8'),
    );
  });

  it('takes a new part only whole, and names what it lacks', () => {
    const problems = refused('id,name\nnew-hose,A hose\n');
    expect(problems).toContainEqual(expect.stringMatching(/^2:1 bore: bore is missing/));
    const files = catalogueFiles(catalogue);
    const hoses = files.ok ? files.files.find((f) => f.kind === 'hose')!.raw : undefined;
    const first = (hoses as { parts: Record<string, unknown>[] }).parts[0]!;
    const plan = planned(partsCsv([{ ...first, id: 'new-hose' }]), 'hose');
    expect(plan.added).toEqual(['new-hose']);
    plan.write();
    expect(catalogueFiles(catalogue).ok).toBe(true);
  });

  it.each([
    ['a value out of range', `id,stock,bore\n${HOSE},-4,1 in\n`, /^2:2 stock: stock is -4/],
    ['a text that is no length', `id,bore [in]\n${HOSE},wide\n`, /^2:2 bore \[in\]: .*wide/],
    [
      'a comma that may be either',
      `id,priceCents\n${HOSE},"1,200"\n`,
      /^2:2 priceCents: .*thousand or a decimal/,
    ],
    [
      'a row too long, after a cell with a line break',
      `id,note\n${HOSE},"two\nlines"\n${HOSE},a,b\n`,
      /^4:3 .*3 cells/,
    ],
    ['one part twice', `id,stock\n${HOSE},1\n${HOSE},2\n`, /^3:1 id: .*line 2 already/],
    ['a row without an id', 'id,stock\n,1\n', /^2:1 id: the row has no id/],
    ['a head without an id', 'name,stock\nx,1\n', /^1:1 id: no column is headed id/],
    ['a column twice', 'id,stock,stock\nx,1,1\n', /^1:1 stock: two columns/],
    ['a field the kind does not have', `id,colour\n${HOSE},red\n`, /^2:2 colour: /],
    ['an open quote', `id,note\n${HOSE},"open\n`, /not a table/],
    ['an empty file', '', /empty/],
  ])('refuses %s at its line and column', (_, text, expected) => {
    expect(refused(text)).toContainEqual(expect.stringMatching(expected));
  });

  it('names every cell that is wrong, whatever is wrong with it, each once and in the order of the table', () => {
    const text = [
      'id,bore [in],stock,priceCents',
      `${HOSE},wide,-4,"1,200"`,
      ',1,1,1',
      'new-hose,broad,few,5',
      `${HOSE},1,1,1,1`,
    ].join('\n');
    const told = refused(text);
    const cells = told.map((line) => /^\d+:\d+/.exec(line)![0]);
    // A new part also lacks what has no column: said of its row, after it is said that its bore is no length.
    expect(cells).toEqual([...cells].sort());
    expect(new Set(told).size).toBe(told.length);
    for (const cell of [
      /^2:2 bore \[in\]: .*'wide'/,
      /^2:3 stock: stock is -4; .*0/,
      /^2:4 priceCents: '1,200' may be/,
      /^3:1 id: the row has no id/,
      /^4:2 bore \[in\]: .*'broad'/,
      /^4:3 stock: 'few'; a number/,
      /^5:1 id: .*line 2 already/,
      /^5:5 .*5 cells/,
    ])
      expect(told.filter((line) => cell.test(line))).toHaveLength(1);
    expect(cells.filter((cell) => cell === '4:3')).toHaveLength(1);
  });

  it('names the first 200 and counts the others', async () => {
    const rows = Array.from({ length: 250 }, (_, i) => `hose-${i},,x`);
    const text = `id,,priceCents\n${rows.join('\n')}\n`;
    const result = planPartsImport(table(text), catalogue, 'hose');
    if (result.ok) throw new Error('the table was taken');
    expect(result.problems).toHaveLength(MOST_NAMED);
    const done = await run('parts-in', table(text), '-c', catalogue, '-k', 'hose');
    const all = MOST_NAMED + result.more!;
    expect(all).toBeGreaterThanOrEqual(250);
    expect(done).toMatchObject({
      code: 2,
      err: expect.stringContaining(`Nothing was changed: ${all} problems, the first ${MOST_NAMED} above.`),
    });
  });

  it('changes nothing at all when one row is wrong', async () => {
    const before = readFileSync(join(catalogue, 'hose.json'), 'utf8');
    const text = `id,stock\n${HOSE},5\nhose-3-8in-300-pvc,-1\n`;
    const done = await run('parts-in', table(text), '-c', catalogue, '--write');
    expect(done).toMatchObject({ code: 2, err: expect.stringContaining('Nothing was changed: one problem') });
    expect(readFileSync(join(catalogue, 'hose.json'), 'utf8')).toBe(before);
  });

  it('never hands a spreadsheet a formula, and takes the guard away again', () => {
    const csv = partsCsv([{ id: 'x', note: '=HYPERLINK("a")', low: '-0.5 bar' }]);
    expect(csv).toMatch(/^x,"'=HYPERLINK/m);
    const read = readPartsCsv('x.csv', csv);
    expect(read.ok && read.table.rows[0]!.cells).toEqual(['x', '=HYPERLINK("a")', '-0.5 bar']);
  });

  it('writes a kind to a file and refuses one that is not there', async () => {
    const file = join(folder, 'hoses.csv');
    expect(await run('parts-out', '-c', catalogue, '-k', 'hose', '-o', file)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Written: .*hoses\.csv, \d+ parts/) as string,
    });
    expect(readFileSync(file, 'utf8')).toContain(HOSE);
    expect(await run('parts-out', '-c', catalogue, '-k', 'hoses')).toMatchObject({
      code: 2,
      err: expect.stringContaining("'hoses'; the catalogue has agitator"),
    });
  });
});
