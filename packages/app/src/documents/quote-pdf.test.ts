import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figureText, proveRig, type Proof, type RigPromise } from '@spraywright/engine/rig';
import { PALETTES, pressureLine } from '@spraywright/engine/drawings';
import { displayParts, moneyText } from '@spraywright/engine/quantity';
import { demoCatalogue, demoRig, demoShop } from '../../test/demo.ts';
import { FRAME } from './paper/sheet.ts';
import { quotePdf } from './quote-pdf.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const date = '2026-03-03';
const folder = mkdtempSync(join(tmpdir(), 'quote-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs a tool of poppler-utils (Debian package of that name); the tests fail without it. */
function poppler(tool: 'pdftotext' | 'pdftoppm' | 'pdffonts', ...args: string[]): Buffer {
  return execFileSync(tool, args, { maxBuffer: 64 * 1024 * 1024 });
}

async function written(proof: Proof, name: string, units: 'us' | 'metric' = 'us'): Promise<string> {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, await quotePdf(proof, { shop, units, date }));
  return file;
}

/** The text of a quote in reading order, with all blanks alike. */
function textOf(file: string, ...pages: string[]): string {
  return alike(poppler('pdftotext', ...pages, file, '-').toString('utf8'));
}

function alike(text: string): string {
  return text.replace(/[\s\u00a0]+/g, ' ');
}

/** Without any blank: a narrow one between a sign and its figure is not read back. */
function dense(text: string): string {
  return text.replace(/[\s\u00a0]+/g, '');
}

/** The words of a file with their boxes in points. */
function wordsOf(
  file: string,
): { page: number; text: string; x0: number; y0: number; x1: number; y1: number }[] {
  const html = poppler('pdftotext', '-bbox', file, '-').toString('utf8');
  return html
    .split('<page ')
    .slice(1)
    .flatMap((page, i) =>
      [
        ...page.matchAll(
          /xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g,
        ),
      ].map(([, x0, y0, x1, y1, text]) => ({
        page: i + 1,
        text: text!,
        x0: Number(x0),
        y0: Number(y0),
        x1: Number(x1),
        y1: Number(y1),
      })),
    );
}

/** Pixels of a part of a page that are near a colour; places in points. */
function inkIn(
  file: string,
  page: number,
  part: { x0: number; y0: number; x1: number; y1: number },
  near: readonly [number, number, number],
): number {
  const ppm = poppler('pdftoppm', '-r', '72', '-f', String(page), '-l', String(page), file);
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 40).toString('latin1'))!;
  const width = Number(head[1]);
  let found = 0;
  for (let y = part.y0; y < part.y1; y++)
    for (let x = part.x0; x < part.x1; x++) {
      const at = head[0].length + (y * width + x) * 3;
      if (near.every((c, i) => Math.abs(ppm[at + i]! - c) < 60)) found++;
    }
  return found;
}

const LIQUID = [0x0b, 0x66, 0x78] as const;
const INK = [0x1c, 0x1a, 0x17] as const;

describe.each(['tall-elms', 'roof-skid', 'road-dust'])('The quote of the demo rig %s', (name) => {
  let proof: Proof;
  let file: string;
  let text: string;
  beforeAll(async () => {
    proof = proveRig(demoRig(name, catalogue, shop).rig, catalogue, shop);
    file = await written(proof, name);
    text = textOf(file);
  });

  it('tells price, deposit, lead time and until when it holds', () => {
    const { priceCents, readyInDays } = proof.bill;
    expect(text).toContain(moneyText(priceCents));
    expect(text).toContain(moneyText(Math.round((priceCents * shop.depositPercent) / 100)));
    expect(text).toContain(`Ready ${readyInDays} working days after order`);
    // 3 March and 30 days.
    expect(shop.validDays).toBe(30);
    expect(text).toContain('Holds until 2 April 2026');
    expect(text).toContain('sales tax not included');
    expect(text).toContain('Accepted, name and date');
  });

  it('keeps the longest date on its side of the title block, and breaks its statement where it was measured', async () => {
    const late = join(folder, `${name}-late.pdf`);
    writeFileSync(late, await quotePdf(proof, { shop, units: 'us', date: '2026-11-26' }));
    const boxes = poppler('pdftotext', '-bbox-layout', '-l', '1', late, '-').toString('utf8');
    const lines = [...boxes.matchAll(/<line ([^>]*)>([^]*?)<\/line>/g)].map(([, at, words]) => ({
      right: Number(/xMax="([\d.]+)"/.exec(at!)![1]),
      text: [...words!.matchAll(/>([^<]+)<\/word>/g)].map(([, word]) => word).join(' '),
    }));
    const ready = lines.find((l) => l.text.includes('Holds until 26 December 2026'));
    // The title block begins 287 points from the left edge.
    expect(ready?.right).toBeLessThan(287);
    const head = [...lines.map((l) => l.text)].slice(0, 3);
    for (const text of head) expect(text.split(' ').length, head.join(' / ')).toBeGreaterThan(1);
  });

  it('tells every promise with the figure it has and the figure asked', () => {
    const told = dense(text);
    for (const p of proof.promises) {
      if (p.has !== undefined) expect(told, p.id).toContain(dense(figureText(p.has, 'us')));
      if (p.asked !== undefined)
        expect(told, p.id).toContain(
          dense(`${p.sense === 'at-least' ? '≥' : '≤'} ${figureText(p.asked, 'us')}`),
        );
    }
  });

  it('names customer, job, catalogue and engine version, and numbers its sheets', () => {
    expect(text).toContain(proof.customer);
    expect(text).toContain(proof.id);
    expect(text).toContain(`catalogue ${proof.catalogue.version}, engine ${proof.engineVersion}`);
    expect(text).toMatch(/1 of ([2-9])\b/);
  });

  it('never promises that a use is lawful, and carries cautions with their source', () => {
    expect(text).toContain('The product label, local codes and licensed practice come first.');
    expect(text).toMatch(/CAUTIONS.*Source:/);
    expect(text).not.toMatch(/(complies|in compliance|legal for|lawful to)/i);
  });

  it('has its drawings: liquid and ink where they stand', () => {
    const scene = { x0: 30, y0: 112, x1: 582, y1: 250 };
    expect(inkIn(file, 1, scene, LIQUID)).toBeGreaterThan(60);
    expect(inkIn(file, 1, scene, INK)).toBeGreaterThan(300);
    expect(inkIn(file, 2, { x0: 30, y0: 40, x1: 582, y1: 260 }, LIQUID)).toBeGreaterThan(200);
  });

  it('has its words on the first sheet whole: the second begins with the pressure line', () => {
    expect(textOf(file, '-f', '2', '-l', '2')).toMatch(/^ ?PRESSURE, TANK TO TIP/);
    expect(textOf(file, '-l', '1')).toContain('WHAT IT WILL NOT DO');
  });

  it('keeps every word inside the frame', () => {
    for (const w of wordsOf(file)) {
      expect(w.x0, w.text).toBeGreaterThanOrEqual(FRAME.left);
      expect(w.x1, w.text).toBeLessThanOrEqual(FRAME.right);
      expect(w.y1, w.text).toBeLessThanOrEqual(FRAME.bottom + 1);
    }
  });

  it('embeds every face it uses, and none but ours', () => {
    const rows = poppler('pdffonts', file).toString('utf8').trim().split('\n').slice(2);
    expect(rows.length).toBeGreaterThanOrEqual(5);
    for (const row of rows) expect(row).toMatch(/(SofiaSans|OpenSans).*\byes yes yes\b/);
  });
});

describe('A quote', () => {
  let proof: Proof;
  beforeAll(() => {
    proof = proveRig(demoRig('tall-elms', catalogue, shop).rig, catalogue, shop);
  });
  const reach = () => proof.promises.find((p) => p.kind === 'reach')!;
  const withPromises = (...more: RigPromise[]): Proof => ({
    ...proof,
    promises: [...more, ...proof.promises.filter((p) => !more.some((m) => m.id === p.id))],
    counts: { ...proof.counts, broken: more.filter((m) => m.state === 'broken').length },
  });

  it('is the same bytes for the same rig and date, and others for another date', async () => {
    const make = (day: string) => quotePdf(proof, { shop, units: 'us', date: day });
    const first = await make(date);
    expect(Buffer.compare(Buffer.from(first), Buffer.from(await make(date)))).toBe(0);
    expect(Buffer.compare(Buffer.from(first), Buffer.from(await make('2026-03-04')))).not.toBe(0);
  });

  it('states a broken promise on its first sheet, with what it has and what was asked', async () => {
    const asked = reach().asked!;
    const broken: RigPromise = {
      ...reach(),
      state: 'broken',
      has: { ...asked, value: asked.value * 0.9 },
      margin: -0.1,
      cause: 'the stream is too thin',
    };
    const file = await written(withPromises(broken), 'broken');
    const first = textOf(file, '-l', '1');
    expect(first).toContain('does not keep one of its promises');
    expect(first).toContain(figureText(broken.has!, 'us'));
    expect(first).toContain('The stream is too thin.');
  });

  it('keeps unknown promises on its first sheet as still open, with whom to ask', async () => {
    const unknown: RigPromise = {
      id: 'weight:pull',
      kind: 'weight',
      state: 'unknown',
      sentence: 'The vehicle may pull it',
      sense: 'at-least',
      cause: 'ask the customer what the vehicle may pull',
      items: [],
      method: 'test',
      source: 'test',
      working: [],
    };
    const file = await written(withPromises(unknown), 'unknown');
    const first = textOf(file, '-l', '1');
    expect(first).toContain('STILL OPEN');
    expect(first).toContain('The vehicle may pull it');
    expect(textOf(file)).toContain('Ask the customer what the vehicle may pull.');
  });

  it('says which reach is promised', async () => {
    const of = async (meaning: 'wetted' | 'touched') => {
      const duties = proof.duties.map((d) => ({ ...d, duty: { ...d.duty, reach: meaning } }));
      const file = await written({ ...proof, duties }, meaning);
      return textOf(file);
    };
    expect(await of('wetted')).toContain('Promised: half the water gets that far, 9 times in 10.');
    expect(await of('touched')).toContain('Promised: the farthest drops touch it, 9 times in 10.');
  });

  it('sets every sign we print, from the faces that have them', async () => {
    const signs = 'Δ ≥ ≤ ≈ √ ∞ ° ½ ¼ × µ ± − Ø π é “a” – €';
    const file = await written({ ...proof, title: signs, customer: signs }, 'signs');
    const text = textOf(file);
    for (const sign of signs.split(' ')) expect(text, sign).toContain(sign);
    const words = wordsOf(file).filter((w) => ['Δ', '≥', '√', '½', '−', 'Ø'].includes(w.text));
    expect(new Set(words.map((w) => w.text)).size).toBe(6);
    for (const w of words.slice(0, 6)) expect(w.x1 - w.x0, w.text).toBeGreaterThan(1.5);
  });

  it('holds the longest names whole and inside their cells', async () => {
    const long = Array.from({ length: 20 }, (_, i) => `W${String.fromCharCode(65 + i)}MW`)
      .join('')
      .slice(0, 80);
    const named = {
      ...proof,
      title: long,
      customer: long,
      id: long.toLowerCase().slice(0, 40),
      catalogue: { ...proof.catalogue, version: 123456789 },
    };
    const file = join(folder, 'long.pdf');
    writeFileSync(
      file,
      await quotePdf(named, {
        shop: { ...shop, name: long, address: long + long.slice(0, 40) },
        units: 'us',
        date,
      }),
    );
    const words = wordsOf(file);
    for (const w of words) {
      expect(w.x0, w.text).toBeGreaterThanOrEqual(FRAME.left);
      expect(w.x1, w.text).toBeLessThanOrEqual(FRAME.right);
      expect(w.y1, w.text).toBeLessThanOrEqual(FRAME.bottom + 1);
    }
    // Nothing in the title block lies on anything else.
    const block = words.filter((w) => w.page === 1 && w.y0 > 648 && w.x0 > 287);
    for (const a of block)
      for (const b of block)
        if (a !== b) {
          const across = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
          const down = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
          expect(across > 0.5 && down > 3, `${a.text} on ${b.text}`).toBe(false);
        }
    const title = block.map((w) => w.text).join('');
    expect(title).toContain(long);
  });

  it('is written in metric units too', async () => {
    const metric = proveRig(demoRig('tall-elms', catalogue, shop).rig, catalogue, shop, { units: 'metric' });
    const text = textOf(await written(metric, 'metric', 'metric'));
    const told = dense(text);
    for (const p of metric.promises)
      if (p.has !== undefined) expect(told, p.id).toContain(dense(figureText(p.has, 'metric')));
    expect(text).toMatch(/ L\/min/);
    // Names of parts keep the maker's units; figures asked do not.
    expect(text).not.toMatch(/[≥≤] ?[\d,.]+ (psi|gpm|ft|lb)/);
  });

  it('refuses a date that is no day of the calendar, by name', async () => {
    await expect(quotePdf(proof, { shop, units: 'us', date: '2026-02-30' })).rejects.toThrow(
      /date is '2026-02-30'/,
    );
    await expect(quotePdf(proof, { shop, units: 'us', date: '3 March' })).rejects.toThrow(
      /date is '3 March'/,
    );
  });

  it('refuses a proof without a duty', async () => {
    await expect(quotePdf({ ...proof, duties: [] }, { shop, units: 'us', date })).rejects.toThrow(/no duty/);
  });
});

describe('The pressure line of a quote', () => {
  it.each(['tall-elms', 'nurse-trailer'])('tells what the gauge at the pump shows, on %s', (name) => {
    const proof = proveRig(demoRig(name, catalogue, shop).rig, catalogue, shop);
    for (const duty of proof.duties) {
      const { outlet } = duty.open.pump!;
      const svg = pressureLine(proof, duty, { width: 700, units: 'us', palette: PALETTES.print });
      expect(svg).toContain(`>${displayParts(outlet!, 'pressure', 'us').figure}<`);
    }
  });
});
