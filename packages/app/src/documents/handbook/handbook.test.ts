import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { partNumbers } from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import {
  calibrationsOf,
  careSteps,
  CARE_TIMES,
  mixCards,
  proveRig,
  sparesOf,
  type Calibration,
} from '@spraywright/engine/rig';
import { demoCatalogue, demoRig, demoShop } from '../../../test/demo.ts';
import { chaptersOnPage } from '../chapters/on-page.ts';
import { handbookOf } from './handbook.ts';
import { handbookPage, handbookPdf, platePdf } from './handbook-papers.ts';
import { plateCells, rigPlate } from './rig-plate.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const folder = mkdtempSync(join(tmpdir(), 'handbook-'));
afterAll(() => rmSync(folder, { recursive: true }));
const dense = (text: string) => text.replace(/[\s\u00a0]+/g, '');

const PSI = 6894.757293168361;
const GPM = (231 * 0.0254 ** 3) / 60;
const MPH = 0.44704;
const INCH = 0.0254;

function made(name: string) {
  const { rig } = demoRig(name, catalogue, shop);
  const proof = proveRig(rig, catalogue, shop);
  const options = {
    shop,
    units: 'us',
    date: '2026-03-03',
    serial: 'LF-0412-1',
    address: 'https://rigs.example/LF-0412-1',
    partOf: (id: string) => catalogue.parts.get(id),
    plumbing:
      '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="10" viewBox="0 0 20 10"><path d="M0 5H20" stroke="#000000"/></svg>',
  } as const;
  return { rig, proof, options };
}

function textOf(name: string, bytes: Uint8Array): string {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, bytes);
  return execFileSync('pdftotext', ['-raw', file, '-']).toString('utf8');
}

describe('The calibration table', () => {
  const { rig, proof } = made('three-point-pasture');
  const tables = calibrationsOf(rig, proof.site, 'us');
  const of = (line: string): Calibration => tables.find((t) => t.line === line)!;

  it('begins at the setting that was proven, with the flow and the pressure of the proof', () => {
    for (const table of tables) {
      const outlet = proof.duties
        .find((d) => d.id === table.duty)!
        .open.outlets.find((o) => o.line === table.line)!;
      expect(table.rows[0]!.flow).toBeCloseTo(outlet.flow, 9);
      expect(table.rows[0]!.tip).toBeCloseTo(outlet.tipPressure, 2);
    }
  });

  it('follows the law of the orifice from row to row: flow with the root of pressure', () => {
    // The second method: q = k sqrt(p / SG), with the k of the catalogue and 12 like nozzles.
    const table = of('boom');
    const nozzle = rig.items.get('nozzle')!.part as { flowAtOneBar: number };
    expect(table.tips).toBe(12);
    for (const row of table.rows) {
      const water = nozzle.flowAtOneBar * Math.sqrt(row.tip / 1e5);
      expect(row.water / water).toBeGreaterThan(0.995);
      expect(row.water / water).toBeLessThan(1.005);
    }
  });

  it('lays down GPA = 5940 gpm / (mph in), Univ. of Missouri Extension G1270a', () => {
    const table = of('boom');
    const ACRE_FOOT_GALLON = (231 * INCH ** 3) / 4046.8564224;
    table.rows.forEach((row) =>
      row.doses.forEach((dose, i) => {
        const gpa = (5940 * (row.flow / GPM / 12)) / ((table.speeds[i]! / MPH) * 20);
        expect(dose / ACRE_FOOT_GALLON / gpa).toBeCloseTo(1, 3);
      }),
    );
  });

  it('asks nothing over the proven setting, and leaves out what the tip cannot', () => {
    for (const { rows, leastPressure } of tables) {
      const settings = rows.map((r) => r.setting!);
      expect(settings).toEqual([...settings].sort((a, b) => b - a));
      for (const row of rows) expect(row.tip).toBeGreaterThanOrEqual(leastPressure!);
    }
    expect(of('gun').rows[0]!.setting! / PSI).toBeCloseTo(85, 3);
  });

  it('turns the engine where there is no regulator, and stands alone where nothing can be set', () => {
    const nurse = made('nurse-trailer');
    const [transfer] = calibrationsOf(nurse.rig, nurse.proof.site, 'us');
    expect(transfer!.by!.means).toBe('speed');
    expect(transfer!.rows.length).toBeGreaterThan(2);
    // A transfer hose ends open: nothing there makes a pattern or wears like a tip.
    expect(transfer!.leastPressure).toBeUndefined();
    const words = JSON.stringify(handbookOf(nurse.rig, nurse.proof, nurse.options));
    expect(words).not.toMatch(/at tip|new tip|pattern fails|A tip that/);
    expect(words).toContain('in front of the outlet');
    const utility = made('utility-12v');
    for (const table of calibrationsOf(utility.rig, utility.proof.site, 'us'))
      expect([table.by, table.rows.length]).toEqual([undefined, 1]);
  });
});

describe('Mix cards', () => {
  it('share stock and water by volume: 3.5 of 12.5 trade % is 28 gal in 100 gal', () => {
    const { rig, proof } = made('roof-skid');
    const [wash, straight] = mixCards(rig, proof.site);
    const full = wash!.rows[3]!;
    const GALLON = 231 * INCH ** 3;
    expect(full.mix / GALLON).toBeCloseTo(100, 1);
    expect(full.stockVolume! / GALLON).toBeCloseTo((100 * 3.5) / 12.5, 1);
    expect(straight!.unknown).toContain('names no stock');
  });

  it('say that only the label knows what nobody has told', () => {
    const { rig, proof } = made('light-cart');
    const [killer, powder] = mixCards(rig, proof.site);
    expect(killer!.unknown).toContain('label');
    expect(killer!.rows.every((r) => r.stockVolume === undefined && r.stockMass === undefined)).toBe(true);
    // By the definition of weight %: one part of a hundred.
    for (const row of powder!.rows)
      expect(row.stockMass! / (row.stockMass! + row.waterMass!)).toBeCloseTo(0.01, 9);
  });
});

describe('The handbook', () => {
  for (const name of ['three-point-pasture', 'roof-skid', 'utility-12v'])
    it(`of ${name} prints every step, caution, figure and spare it promises`, async () => {
      const { rig, proof, options } = made(name);
      const text = dense(textOf(name, await handbookPdf(rig, proof, options)));
      const wanted = [
        'LF-0412-1',
        options.address,
        ...CARE_TIMES.flatMap((at) => careSteps(rig, proof, at, 'us').map((s) => s.text)),
        ...proof.cautions.map((c) => c.caution.act),
        ...mixCards(rig, proof.site).flatMap((c) => [...c.cautions, ...c.steps]),
        ...sparesOf(rig, proof, options.partOf).map((s) => s.name),
        ...calibrationsOf(rig, proof.site, 'us').flatMap((c) =>
          c.rows.flatMap((r) => [
            display(r.tip, 'pressure', 'us'),
            display(r.flow, 'flow', 'us'),
            ...r.doses.map((d) => display(d, 'dose', 'us')),
          ]),
        ),
        ...plateCells(rig, proof, 'us').map(([caption]) => caption),
        display(proof.placement!.centre.full.mass, 'mass', 'us'),
      ];
      expect(wanted.map(dense).filter((w) => !text.includes(w.replace(/<=/g, '≤')))).toEqual([]);
    });

  it('tells the operator what the gauge shows while it sprays, not what the regulator is set to', () => {
    const { rig, proof } = made('tall-elms');
    const step = careSteps(rig, proof, 'start-up', 'us').find((s) =>
      /turn the regulator until/.test(s.text),
    )!;
    for (const { rows, duty } of calibrationsOf(rig, proof.site, 'us')) {
      const gauge = display(rows[0]!.pump!, 'pressure', 'us');
      const { name } = proof.duties.find((d) => d.id === duty)!;
      expect(step.text).toContain(`${gauge} for ${name}`);
    }
  });

  it('has only steps that its own parts ask', () => {
    const { rig, proof } = made('utility-12v');
    const all = CARE_TIMES.flatMap((at) => careSteps(rig, proof, at, 'us'));
    expect(all.some((s) => /engine/i.test(s.text))).toBe(false);
    expect(all.some((s) => /regulator/i.test(s.text))).toBe(false);
    const numbers = partNumbers(proof);
    for (const { items } of all) for (const item of items) expect(numbers.has(item)).toBe(true);
  });

  it('is one page that fetches nothing, with the words of the paper', () => {
    const { rig, proof, options } = made('roof-skid');
    const page = handbookPage(rig, proof, options);
    expect(page.match(/(src|href)="(?!#)/g)).toBeNull();
    expect(page.match(/url\((?!data:)/g)).toBeNull();
    expect(page).not.toContain('<script');
    for (const chapter of handbookOf(rig, proof, options)) expect(page).toContain(`id="${chapter.id}"`);
    for (const { text } of careSteps(rig, proof, 'daily', 'us')) expect(page).toContain(text);
  });

  it('shows what people typed as text, never as markup', () => {
    const page = chaptersOnPage({ title: '<b>x', under: '"', foot: '' }, [
      { id: 'a', title: '<i>', blocks: [{ kind: 'note', text: '<script>alert(1)</script>' }] },
    ]);
    expect(page).not.toMatch(/<script|<b>x|<i>/);
  });

  it('and the plate are the same bytes for the same rig and day', async () => {
    const { rig, proof, options } = made('utility-12v');
    for (const make of [handbookPdf, platePdf]) {
      const [one, two] = [await make(rig, proof, options), await make(rig, proof, options)];
      expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    }
  });

  it('has a plate whose long words shrink and are never cut', () => {
    const { rig, proof, options } = made('roof-skid');
    const long = rigPlate(rig, { ...proof, title: 'A rig with a very long name '.repeat(3).trim() }, options);
    expect(dense(long.replace(/<[^>]+>/g, ' '))).toContain(dense('A rig with a very long name '.repeat(3)));
  });
});
