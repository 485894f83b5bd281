import { readFileSync } from 'node:fs';
import { readNetwork, solveNetwork } from '@spraywright/engine/hydraulics';
import { readCatalogue } from '@spraywright/engine/catalogue';
import { designRig, proveRig, readBrief, readRig } from '@spraywright/engine/rig';
import { describe, expect, it } from 'vitest';
import { demoBriefs, demoCatalogue, DEMO, demoRig, demoShop } from './demo.ts';
import { firstBadNumber, randomOf, spoil } from './mutation.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const ROUNDS = Number(process.env.FUZZ_ROUNDS ?? 400);

/** A problem must say what is wrong: a message with words, and a path into the document. */
function expectNamed(problems: readonly { message: string; path: readonly unknown[] }[]): void {
  expect(problems.length).toBeGreaterThan(0);
  for (const p of problems) expect(p.message.length).toBeGreaterThan(8);
}

describe('spoiled documents', () => {
  it('briefs give named problems or a rig without a bad number', () => {
    const random = randomOf(11);
    const briefs = demoBriefs();
    let read = 0;
    for (let i = 0; i < ROUNDS; i++) {
      const raw = spoil(briefs[i % briefs.length]!.raw, random);
      const brief = readBrief(raw);
      if (!brief.ok) {
        expectNamed(brief.problems);
        continue;
      }
      read++;
      if (read > 24) continue;
      const design = designRig(raw, catalogue, shop);
      if (design.ok) expect(firstBadNumber(design.proof)).toBeUndefined();
      else expectNamed(design.problems);
    }
    expect(read).toBeGreaterThan(0);
  });

  it('rigs give named problems or a proof without a bad number', () => {
    const random = randomOf(22);
    const rigs = demoBriefs().map(({ name }) => demoRig(name, catalogue, shop).raw);
    let proven = 0;
    for (let i = 0; i < ROUNDS * 5; i++) {
      const rig = readRig(spoil(rigs[i % rigs.length], random), catalogue);
      if (!rig.ok) {
        expectNamed(rig.problems);
        continue;
      }
      proven++;
      const proof = proveRig(rig.rig, catalogue, shop);
      expect(firstBadNumber(proof)).toBeUndefined();
      for (const p of proof.promises) expect(p.cause).not.toBe('');
    }
    expect(proven).toBeGreaterThan(20);
  });

  it('catalogues give named problems or a catalogue', () => {
    const random = randomOf(33);
    const files = ['pump', 'hose', 'tip', 'regulator', 'tank'].map((kind) => ({
      file: `${kind}.json`,
      raw: JSON.parse(readFileSync(`${DEMO}catalogue/${kind}.json`, 'utf8')) as unknown,
    }));
    const head = { file: 'catalogue.json', raw: { name: 'x', version: 1 } };
    for (let i = 0; i < ROUNDS / 4; i++) {
      const spoiled = files.map((f, k) => (k === i % files.length ? { ...f, raw: spoil(f.raw, random) } : f));
      const result = readCatalogue(head, spoiled);
      if (!result.ok) expectNamed(result.problems);
    }
  });

  it('networks give named problems, a named reason or a solution without a bad number', () => {
    const random = randomOf(44);
    const example = JSON.parse(readFileSync(`${DEMO}networks/reel-and-return.json`, 'utf8')) as unknown;
    let solved = 0;
    for (let i = 0; i < ROUNDS * 5; i++) {
      const network = readNetwork(spoil(example, random));
      if (!network.ok) {
        expectNamed(network.problems);
        continue;
      }
      const result = solveNetwork(network.model);
      expect(firstBadNumber(result)).toBeUndefined();
      if (result.status !== 'converged') expect(JSON.stringify(result)).toMatch(/[a-z]{4}/);
      else solved++;
    }
    expect(solved).toBeGreaterThan(20);
  });
});
