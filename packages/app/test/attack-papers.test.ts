import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheetCsv } from '../src/documents/bill-table.ts';
import { attackedShop, type AttackedShop } from './attack-shop.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';

const FORMULAS = [
  '=HYPERLINK("http://elsewhere.example","Pay here")',
  "+1+cmd|' /C calc'!A0",
  '-2+3',
  '@SUM(1)',
  '\t=1',
  '\r=1',
  '\n=1',
  '＝1+1',
];
/** What a spreadsheet takes for a formula at the beginning of a cell (OWASP, "CSV Injection"). */
const RUNS = /^[=+\-@\t\r\n＝＋－＠]/;
const SCRIPT = '<script>hit()</script><img src=x onerror=hit()>';
/** Keys by which a PDF does something by itself (ISO 32000-1, 12.6: actions). */
const PDF_ACTS = /\/(JavaScript|JS|OpenAction|AA|Launch|SubmitForm|ImportData|EmbeddedFile|RichMedia)\b/;

let shop: AttackedShop;
let part = '';
const given = { role: 'owner' } as const;

beforeAll(async () => {
  shop = await attackedShop();
  const { raw, rig } = demoRig('light-cart', demoCatalogue(), demoShop());
  part = rig.items.get('hose')!.part.id;
  for (const [n, text] of [...FORMULAS, SCRIPT].entries()) {
    const { brief, ...rest } = raw as { brief: object };
    const changed = {
      ...rest,
      title: text,
      brief: { ...brief, title: text, customer: text, place: text },
    };
    const job = await shop.send('POST', '/api/jobs', {
      ...given,
      body: { id: `job-${n}`, rig: changed, notes: text },
    });
    expect(job.status, text).toBe(201);
    const machine = await shop.send('POST', '/api/machines', {
      ...given,
      body: { job: `job-${n}`, version: 1, serial: `LF-${n}`, by: text },
    });
    expect(machine.status, `${text}: ${await machine.clone().text()}`).toBe(201);
  }
}, 60_000);
afterAll(() => shop.server.close());

describe('A table for a spreadsheet', () => {
  it('of a bill hands it no formula', () => {
    const csv = sheetCsv({
      name: 'x',
      head: ['a', 'b'],
      rows: FORMULAS.map((text) => [text, -1]),
      money: [],
    });
    const rows: string[][] = parse(csv);
    expect(rows).toHaveLength(FORMULAS.length + 1);
    for (const [text] of rows) expect(text).not.toMatch(RUNS);
  });

  it('of a recall hands it no formula', async () => {
    const answer = await shop.send('GET', `/api/recall.csv?part=${part}`, given);
    const rows: string[][] = parse(await answer.text());
    expect(rows.length).toBeGreaterThan(FORMULAS.length);
    for (const cell of rows.flat()) expect(cell).not.toMatch(RUNS);
    expect(rows.flat().some((cell) => cell.includes('HYPERLINK'))).toBe(true);
  });
});

describe('A paper of a job whose every text is a script', () => {
  const n = FORMULAS.length;

  it.each([
    `/api/jobs/job-${n}/quote.pdf`,
    `/api/machines/LF-${n}/handbook.pdf`,
    `/api/machines/LF-${n}/plate.pdf`,
    `/api/machines/LF-${n}/build-pack.pdf`,
    `/api/machines/LF-${n}/freight.pdf`,
  ])('%s does nothing by itself', async (path) => {
    const answer = await shop.send('GET', path, given);
    expect(answer.status).toBe(200);
    const bytes = Buffer.from(await answer.arrayBuffer()).toString('latin1');
    expect(bytes.slice(0, 5)).toBe('%PDF-');
    expect(bytes).not.toMatch(PDF_ACTS);
    expect(bytes).not.toMatch(/\/URI\s*\((javascript|data):/i);
  });

  it('for a telephone shows the script as text', async () => {
    const answer = await shop.send('GET', `/api/machines/LF-${n}/handbook.html`, given);
    const html = await answer.text();
    expect(html).not.toContain('<script>hit');
    expect(html).not.toContain('<img src=x');
    expect(html).toContain('&lt;script&gt;hit');
    expect(shop.server.reports).toEqual([]);
  });
});
