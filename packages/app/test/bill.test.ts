import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import ExcelJS from 'exceljs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ordersOf, proveRig, readRig, type Proof, type Rig } from '@spraywright/engine/rig';
import { main } from '../src/cli/main.ts';
import { billSheet, sheetCsv } from '../src/documents/bill-table.ts';
import { billXlsx } from '../src/documents/bill-xlsx.ts';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const names = demoBriefs().map((b) => b.name);
const found = new Map<string, { raw: unknown; rig: Rig; proof: Proof }>();
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'spraywright-bill-'));
  for (const name of names) {
    const { raw, rig } = demoRig(name, catalogue, shop);
    found.set(name, { raw, rig, proof: proveRig(rig, catalogue, shop) });
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const hardware = (proof: Proof, form: string) =>
  proof.bill.lines.flatMap((l) => {
    const part = l.sort === 'hardware' ? catalogue.parts.get(l.part!) : undefined;
    return part?.kind === 'hardware' && part.purpose.form === form ? [{ ...l, purpose: part.purpose }] : [];
  });
const count = (lines: readonly { quantity: number }[]) => lines.reduce((n, l) => n + l.quantity, 0);

describe('the bill of each demo rig', () => {
  it.each(names)('%s lacks nothing, and clamps every hose end on a barb', (name) => {
    const { rig, proof } = found.get(name)!;
    expect(proof.bill.missing).toEqual([]);
    const ends = [...rig.items.values()]
      .filter(({ part }) => part.kind === 'hose')
      .reduce((n, { item, part }) => {
        const pieces = part.kind === 'hose' ? Math.ceil(item.length! / part.longestPiece - 1e-6) : 0;
        return n + 2 * pieces;
      }, 0);
    expect(count(hardware(proof, 'hose-clamp'))).toBe(ends);
  });

  it.each(names)(
    '%s cuts as much hose as it has, in pieces that can be bought, with an end at each end',
    (name) => {
      const { rig, proof } = found.get(name)!;
      for (const { item, part } of rig.items.values()) {
        if (part.kind !== 'hose') continue;
        const cuts = proof.bill.cuts.filter((c) => c.item === item.id);
        expect(cuts.reduce((sum, c) => sum + c.length, 0)).toBeCloseTo(item.length!, 9);
        for (const cut of cuts) {
          expect(cut.length).toBeLessThanOrEqual(part.longestPiece + 1e-9);
          expect(cut.ends).not.toContain('open');
        }
      }
    },
  );

  it.each(names)(
    '%s straps the tank, wires what draws current and labels each caution as its proof says',
    (name) => {
      const { proof } = found.get(name)!;
      const straps = proof.promises.filter((p) => /^structure:(tank|rig)-straps$/.test(p.id));
      expect(count(hardware(proof, 'strap'))).toBe(straps.reduce((n, p) => n + p.asked!.value, 0));
      expect(count(hardware(proof, 'label'))).toBe(proof.cautions.length);
      const bolts = proof.promises.some((p) => p.id === 'structure:bolts');
      expect(count(hardware(proof, 'bolt'))).toBe(bolts ? 4 : 0);
      const cables = proof.promises.filter((p) => p.id.startsWith('electrics:cable:'));
      expect(count(hardware(proof, 'terminal'))).toBe(4 * cables.length);
      const figure = (p: (typeof cables)[number], text: string) =>
        p.working.find((s) => s.text === text)?.figure?.value;
      const feet = cables.reduce((n, p) => n + Math.ceil((2 * figure(p, 'one way')!) / 0.3048 - 1e-6), 0);
      expect(count(hardware(proof, 'wire'))).toBe(feet);
      const fuses = hardware(proof, 'fuse').flatMap((l) =>
        l.purpose.form === 'fuse' ? [l.purpose.rating] : [],
      );
      expect(fuses.sort()).toEqual(cables.flatMap((p) => figure(p, 'fuse') ?? []).sort());
    },
  );
});

describe('orders', () => {
  it('are what the shelf does not hold, by supplier, with the last working day for each', () => {
    const { rig, proof } = found.get('tall-elms')!;
    const orders = ordersOf(proof.bill, (id) => catalogue.parts.get(id), '2026-03-16');
    expect(orders.length).toBeGreaterThan(0);
    for (const o of orders) {
      expect(o.order).toBe(Math.max(0, o.need - o.stock));
      expect(o.supplier, o.part).toBeDefined();
      expect(o.orderBy! <= '2026-03-16').toBe(true);
    }
    expect([...orders.map((o) => o.supplier!)].sort()).toEqual(orders.map((o) => o.supplier!));
    expect(rig.items.size).toBeGreaterThan(0);
  });

  it('count the shelf once for two lines of one part', () => {
    const { proof } = found.get('three-point-pasture')!;
    for (const part of new Set(proof.bill.lines.flatMap((l) => l.part ?? []))) {
      const lines = proof.bill.lines.filter((l) => l.part === part);
      const short = lines.reduce((n, l) => n + l.short, 0);
      expect(short).toBe(Math.max(0, count(lines) - catalogue.parts.get(part)!.stock));
    }
  });
});

describe('files of the bill', () => {
  it('come back from a workbook and from CSV with every figure, and nothing in them runs', async () => {
    const { proof } = found.get('tall-elms')!;
    const evil = '=HYPERLINK("http://x","y")';
    const spoilt: Proof = {
      ...proof,
      bill: { ...proof.bill, lines: proof.bill.lines.map((l, i) => (i === 0 ? { ...l, name: evil } : l)) },
    };
    const sheet = billSheet(spoilt);
    const book = new ExcelJS.Workbook();
    const file = join(folder, 'bill.xlsx');
    writeFileSync(file, await billXlsx([sheet]));
    await book.xlsx.readFile(file);
    const back = book.getWorksheet('Bill')!;
    expect(back.getRow(2).getCell(4).value).toBe(evil);
    sheet.rows.forEach((row, i) =>
      row.forEach((cell, k) => expect(back.getRow(i + 2).getCell(k + 1).value ?? '').toEqual(cell)),
    );
    const csv = parse(sheetCsv(sheet));
    expect(csv[1]![3]).toBe(`'${evil}`);
    expect(csv.slice(1).map((r) => r[7])).toEqual(sheet.rows.map((r) => String(r[7])));
  });
});

describe('spraywright bill', () => {
  async function run(...argv: string[]) {
    let out = '';
    let err = '';
    const code = await main(argv, { out: (t) => void (out += t), err: (t) => void (err += t) });
    return { code, out, err };
  }

  it('prints groups, totals, hoses and orders, and writes both files', async () => {
    const { raw, proof } = found.get('tall-elms')!;
    const rig = join(folder, 'rig.json');
    writeFileSync(rig, JSON.stringify(raw));
    const [csv, xlsx] = [join(folder, 'b.csv'), join(folder, 'b.xlsx')];
    const text = await run('bill', rig, '--build-date', '2030-03-18', '--csv', csv, '--xlsx', xlsx);
    expect(text.code, text.err).toBe(0);
    for (const word of ['PARTS AND HOSE', 'LABOUR', 'Hose to cut', 'order by', 'not set in the shop file'])
      expect(text.out).toContain(word);
    expect(readFileSync(csv, 'utf8').split('\n').length).toBe(proof.bill.lines.length + 3);
    expect(readFileSync(xlsx).subarray(0, 2).toString()).toBe('PK');
    const json = JSON.parse((await run('bill', rig, '--json', '--discount', '90')).out) as Proof['bill'];
    expect(json.discount!.held).toBeDefined();
    expect(1 - json.costCents / json.priceCents).toBeGreaterThanOrEqual(
      shop.pricing.leastMarginPercent / 100,
    );
  });

  it('takes the price rule from the rig, and refuses what it cannot read', async () => {
    const { raw } = found.get('light-cart')!;
    const rig = join(folder, 'priced.json');
    writeFileSync(
      rig,
      JSON.stringify({
        ...(raw as object),
        pricing: { price: { mode: 'target-margin', marginPercent: 40 } },
      }),
    );
    const bill = JSON.parse((await run('bill', rig, '--json')).out) as Proof['bill'];
    expect(1 - bill.costCents / bill.priceCents).toBeCloseTo(0.4, 3);
    expect((await run('bill', rig, '--price', 'guess')).err).toContain("'guess'");
    expect((await run('bill', rig, '--discount', 'lots')).err).toContain("'lots'");
    expect((await run('bill', rig, '--build-date', '2026-02-30')).err).toContain('2026-02-30');
    const read = readRig({ ...(raw as object), pricing: { discountPercent: 140 } }, catalogue);
    expect(read.ok).toBe(false);
  });
});
