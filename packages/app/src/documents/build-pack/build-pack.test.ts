import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import {
  PALETTES,
  partNumbers,
  plumbingDiagram,
  plumbingGraph,
  wiringDiagram,
} from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import {
  assemblySteps,
  freightOf,
  ordersOf,
  pickList,
  proveRig,
  shutInDuty,
  tieDownOf,
  type Proof,
  type Rig,
} from '@spraywright/engine/rig';
import { demoCatalogue, demoRig, demoShop } from '../../../test/demo.ts';
import { dense, inkOf, wordsOf } from '../../../test/ink.ts';
import { layPlumbing } from '../../plumbing/lay-plumbing.ts';
import { nodeKernel } from '../../plumbing/node-kernel.ts';
import { addressCode } from '../handbook/address-code.ts';
import { buildPackOf } from './build-pack.ts';
import { buildPackPdf, buildPackXlsx } from './build-pack-papers.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const folder = mkdtempSync(join(tmpdir(), 'build-pack-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FOOT = 0.3048;
const POUND = 0.45359237;

async function made(name: string) {
  const { rig } = demoRig(name, catalogue, shop);
  const proof = proveRig(rig, catalogue, shop);
  const graph = plumbingGraph(rig, 'right');
  const duty = proof.duties[0]!;
  const options = {
    shop,
    units: 'us',
    date: '2026-03-03',
    serial: 'LF-0412-1',
    buildDate: '2026-05-04',
    partOf: (id: string) => catalogue.parts.get(id),
    plumbing: plumbingDiagram(proof, graph, await layPlumbing(graph, nodeKernel()), duty.open, {
      width: 712,
      units: 'us',
      palette: PALETTES.print,
      shut: shutInDuty(rig, duty.duty),
      level: duty.duty.tankLevel,
    }),
  } as const;
  return { rig, proof, options };
}

const NAMES = ['three-point-pasture', 'roof-skid', 'utility-12v'];

describe.each(NAMES)('The build pack of %s', (name) => {
  it('prints every part to fetch, order, cut, step and label, and every figure beside them', async () => {
    const { rig, proof, options } = await made(name);
    const text = wordsOf(await buildPackPdf(rig, proof, options), folder);
    const wanted = [
      ...pickList(proof.bill, options.partOf).flatMap((p) => [p.name, p.part]),
      ...ordersOf(proof.bill, options.partOf, options.buildDate).flatMap((o) => [
        o.supplier!,
        `${o.leadTimeDays} days${o.orderBy!}`,
      ]),
      ...proof.bill.cuts.map((c) => display(c.length, 'length', 'us')),
      ...assemblySteps(rig, proof, 'us').flatMap((s) => [s.text, s.check, s.figure]),
      ...proof.cautions.map((c) => c.caution.danger),
      ...proof.bill.plumbing.joints.flatMap((j) => j.pieces.map((p) => p.name)),
      'torque unknown',
    ];
    expect([...new Set(wanted.map(dense))].filter((w) => !text.includes(w))).toEqual([]);
  });

  it('fetches and buys together just what the bill takes, never more than the store has', async () => {
    const { proof, options } = await made(name);
    const picks = pickList(proof.bill, options.partOf);
    const billed = new Map<string, number>();
    for (const l of proof.bill.lines)
      if (l.part !== undefined) billed.set(l.part, (billed.get(l.part) ?? 0) + l.quantity);
    const fetched = new Map<string, number>();
    for (const p of picks) fetched.set(p.part, (fetched.get(p.part) ?? 0) + p.take);
    for (const [part, count] of fetched) expect(count).toBeLessThanOrEqual(options.partOf(part)!.stock);
    const orders = new Map(ordersOf(proof.bill, options.partOf).map((o) => [o.part, o.order]));
    for (const [part, count] of billed) expect(fetched.get(part)! + (orders.get(part) ?? 0)).toBe(count);
  });

  it('builds every wet part into a line, and mounts every large one', async () => {
    const { rig, proof } = await made(name);
    const steps = assemblySteps(rig, proof, 'us');
    const touched = new Set(steps.flatMap((s) => s.items));
    const left = [...rig.items.keys()].filter((id) => !touched.has(id));
    expect(left).toEqual([]);
    for (const step of steps) expect(step.figure).not.toMatch(/\d+\s*(ft.?lb|N.?m)\b/);
  });

  it('has ink in every drawing', async () => {
    const { rig, proof, options } = await made(name);
    const drawings = buildPackOf(rig, proof, options).flatMap((c) =>
      c.blocks.flatMap((b) => (b.kind === 'drawing' ? [b] : [])),
    );
    expect(drawings.length).toBeGreaterThanOrEqual(3);
    for (const { svg, words } of drawings)
      expect({ words, ink: (await inkOf(svg, folder)) > 0.008 }).toEqual({ words, ink: true });
  });
});

describe('The build pack', () => {
  it('is the same bytes for the same rig and day, on paper and as a workbook of texts', async () => {
    const { rig, proof, options } = await made('utility-12v');
    const [one, two] = [await buildPackPdf(rig, proof, options), await buildPackPdf(rig, proof, options)];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    const sheet = await buildPackXlsx(rig, proof, options);
    expect(Buffer.from(sheet).subarray(0, 2).toString()).toBe('PK');
  });

  it('says on its first sheet that a promise is broken or a joint has no fitting', async () => {
    const { rig, proof, options } = await made('roof-skid');
    const bad: Proof = {
      ...proof,
      counts: { ...proof.counts, broken: 2 },
      bill: { ...proof.bill, plumbing: { ...proof.bill.plumbing, gaps: ['hose end (odd) to gun in (odd)'] } },
    };
    const [first] = buildPackOf(rig, bad, options);
    const words = JSON.stringify(first!.blocks);
    expect(words).toContain('2 promises of this rig are broken');
    expect(words).toContain('hose end (odd) to gun in (odd)');
  });
});

describe('Wiring', () => {
  const wired = async (): Promise<{ rig: Rig; proof: Proof }> => made('utility-12v');

  it('loses the voltage that CM = K I L / E with K = 10.75 gives (ABYC E-11), AWG 12 being 6530 circular mils (ASTM B258)', async () => {
    const { proof } = await wired();
    const [c] = proof.wiring!.circuits;
    expect(c!.cable!.label).toBe('12');
    const lost = (10.75 * c!.current * ((2 * c!.oneWay) / FOOT)) / 6530;
    expect(c!.drop! / lost).toBeGreaterThan(0.95);
    expect(c!.drop! / lost).toBeLessThan(1.05);
    expect(c!.drop!).toBeLessThanOrEqual(c!.allowed);
  });

  it('takes the wire and the fuse that the bill has', async () => {
    const { proof } = await wired();
    const [c] = proof.wiring!.circuits;
    const line = (start: string) => proof.bill.lines.find((l) => l.name.startsWith(start))!;
    expect(line('Primary wire, AWG 12').quantity).toBe(Math.ceil((2 * c!.oneWay) / FOOT));
    expect(line(`Fuse ${c!.fuse} A`).quantity).toBe(1);
  });

  it('draws fuse, cable and number of each circuit, and says unknown where no cable does', async () => {
    const { proof } = await wired();
    const numbers = partNumbers(proof);
    const draw = (wiring: NonNullable<Proof['wiring']>) =>
      wiringDiagram(wiring, { width: 712, units: 'us', palette: PALETTES.print, numbers });
    const svg = draw(proof.wiring!);
    const [c] = proof.wiring!.circuits;
    for (const words of [`${c!.fuse} A`, 'AWG 12', c!.name, `>${numbers.get(c!.item)}<`])
      expect(svg).toContain(words);
    const bare = {
      item: c!.item,
      name: c!.name,
      use: c!.use,
      current: 900,
      oneWay: 30,
      allowed: 0.3,
      fuse: null,
    };
    expect(draw({ ...proof.wiring!, circuits: [bare] })).toContain('cable unknown');
  });

  it('is absent where a rig has no electrics', async () => {
    const { proof } = await made('roof-skid');
    expect(proof.wiring).toBeUndefined();
  });
});

describe('Freight', () => {
  it('is tied down by 49 CFR 393.110: one up to 5 ft and 1100 lb, two up to 10 ft, and by half its weight', async () => {
    const piece = (feet: number, pounds: number) =>
      tieDownOf({
        length: feet * FOOT,
        width: 1,
        height: 1,
        mass: pounds * POUND,
        density: 100,
        freightClass: 100,
      })!;
    expect(piece(4.5, 1000).number).toBe(1);
    expect(piece(4.5, 1200).number).toBe(2);
    expect(piece(9, 500).number).toBe(2);
    expect(piece(4.5, 1000).workingLoad / 4.4482216).toBeCloseTo(500, 3);
    const { proof } = await made('roof-skid');
    expect(freightOf(proof.placement!, proof.bill.dryMass)!.length / FOOT).toBeGreaterThan(3);
  });

  it('is as long as a trailer with its drawbar and as wide as its wheels, and its density follows', async () => {
    const { rig, proof } = await made('nurse-trailer');
    const carrier = rig.items.get('carrier')!.part as { coupler: { position: number }; deckLength: number };
    const { length, width, height, mass, density } = freightOf(proof.placement!, proof.bill.dryMass)!;
    expect(length).toBeGreaterThanOrEqual(carrier.deckLength - carrier.coupler.position - 1e-9);
    const wheels = proof.placement!.supports.flatMap((s) => (s.wheels === undefined ? [] : [s.wheels.track]));
    expect(width).toBeGreaterThan(Math.max(...wheels));
    expect(density).toBeCloseTo(mass / (length * width * height), 6);
  });
});

describe('The square code', () => {
  it('has the three finders and the quiet zone of ISO/IEC 18004', () => {
    const svg = addressCode('https://rigs.example/LF-0412-1');
    const size = Number(/viewBox="0 0 (\d+)/.exec(svg)![1]);
    const dark = new Set([...svg.matchAll(/M(\d+) (\d+)h1/g)].map((m) => `${m[1]} ${m[2]}`));
    const finder = (x0: number, y0: number) => {
      for (let y = 0; y < 7; y++)
        for (let x = 0; x < 7; x++) {
          const ring = Math.max(Math.abs(x - 3), Math.abs(y - 3));
          expect(dark.has(`${x0 + x} ${y0 + y}`)).toBe(ring !== 2);
        }
    };
    finder(4, 4);
    finder(size - 11, 4);
    finder(4, size - 11);
    for (let i = 0; i < size; i++)
      for (const edge of [0, 1, 2, 3, size - 4, size - 1])
        expect(dark.has(`${i} ${edge}`) || dark.has(`${edge} ${i}`)).toBe(false);
    // 4 modules wide on each side of 17 + 4 v.
    expect((size - 8 - 17) % 4).toBe(0);
  });
});
