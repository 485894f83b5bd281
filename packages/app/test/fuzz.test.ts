import { readdirSync, readFileSync } from 'node:fs';
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
    const files = readdirSync(`${DEMO}catalogue`)
      .filter((file) => file.endsWith('.json') && file !== 'catalogue.json')
      .map((file) => ({
        file,
        raw: JSON.parse(readFileSync(`${DEMO}catalogue/${file}`, 'utf8')) as unknown,
      }));
    expect(files.length).toBeGreaterThan(15);
    const head = { file: 'catalogue.json', raw: { name: 'x', version: 1 } };
    for (let i = 0; i < ROUNDS / 2; i++) {
      const spoiled = files.map((f, k) => (k === i % files.length ? { ...f, raw: spoil(f.raw, random) } : f));
      const result = readCatalogue(head, spoiled);
      if (!result.ok) expectNamed(result.problems);
    }
  });

  it('networks give named problems, a named reason or a solution without a bad number', () => {
    const random = randomOf(44);
    const solved = networks().map((example) => {
      let converged = 0;
      for (let i = 0; i < ROUNDS * 3; i++) if (expectOutcome(spoil(example, random))) converged++;
      return converged;
    });
    for (const count of solved) expect(count).toBeGreaterThan(20);
  });
});

interface RawNetwork {
  nodes: { id: string }[];
  elements: Record<string, unknown>[];
}

function networks(): RawNetwork[] {
  return readdirSync(`${DEMO}networks`).map(
    (file) => JSON.parse(readFileSync(`${DEMO}networks/${file}`, 'utf8')) as RawNetwork,
  );
}

/** Named problems, a named reason, or a solution without a bad number: true for the last. */
function expectOutcome(raw: unknown): boolean {
  const network = readNetwork(raw);
  if (!network.ok) {
    expectNamed(network.problems);
    return false;
  }
  const result = solveNetwork(network.model);
  expect(firstBadNumber(result)).toBeUndefined();
  if (result.status === 'converged') {
    expect(result.residual).toBeLessThan(1e-9);
    return true;
  }
  expect(result.reason?.message ?? result.problems?.[0]?.message ?? '').toMatch(/[a-z]{4}/);
  return false;
}

describe('networks with a ring, a shut valve or a backward part anywhere', () => {
  const all = networks();

  it('have each element shut, all shut but one, and all shut: always a steady state, at rest where nothing drives it', () => {
    for (const network of all) {
      const shut = (open: (i: number) => boolean) => ({
        ...network,
        elements: network.elements.map((e, i) => ({ ...e, open: open(i) })),
      });
      network.elements.forEach((_, k) => {
        expect(expectOutcome(shut((i) => i !== k))).toBe(true);
        expect(expectOutcome(shut((i) => i === k))).toBe(true);
      });
      expect(expectOutcome(shut(() => false))).toBe(true);
      const still = readNetwork(shut(() => false));
      if (!still.ok) throw new Error('a network of shut valves must be read');
      for (const e of solveNetwork(still.model).elements) expect(e.flow).toBe(0);
    }
  });

  it('have every part laid once more between any two nodes: rings, short cuts and parallel pumps', () => {
    const random = randomOf(55);
    for (const network of all)
      for (const element of network.elements)
        for (let i = 0; i < 12; i++) {
          const any = () => network.nodes[Math.floor(random() * network.nodes.length)]!.id;
          const extra = { ...element, id: 'extra', from: any(), to: any() };
          expectOutcome({ ...network, elements: [...network.elements, extra] });
        }
  });

  it('have every part turned round', () => {
    for (const network of all)
      network.elements.forEach((element, k) => {
        const turned = { ...element, from: element['to'], to: element['from'] };
        expectOutcome({ ...network, elements: network.elements.with(k, turned) });
      });
  });
});

describe('rigs whose lines go round or lead elsewhere', () => {
  it('give named problems or a proof without a bad number for every end of every line at every node', () => {
    let proven = 0;
    for (const { name } of demoBriefs()) {
      const raw = demoRig(name, catalogue, shop).raw as {
        nodes: { id: string }[];
        lines: Record<string, unknown>[];
      };
      const places = ['tank', 'air', 'nowhere', ...raw.nodes.map((n) => n.id)];
      raw.lines.forEach((line, k) => {
        for (const end of ['from', 'to'])
          for (const place of places) {
            const lines = raw.lines.with(k, { ...line, [end]: place });
            const rig = readRig({ ...raw, lines }, catalogue);
            if (!rig.ok) expectNamed(rig.problems);
            else {
              proven++;
              expect(firstBadNumber(proveRig(rig.rig, catalogue, shop)), `${name} ${place}`).toBeUndefined();
            }
          }
      });
    }
    expect(proven).toBeGreaterThan(50);
  });

  it('are told by name when a part is unknown or a quantity has the wrong unit', () => {
    const raw = demoRig('tall-elms', catalogue, shop).raw as { items: Record<string, unknown>[] };
    raw.items.forEach((item, k) => {
      const spoiled = (change: Record<string, unknown>) =>
        readRig({ ...raw, items: raw.items.with(k, { ...item, ...change }) }, catalogue);
      const unknown = spoiled({ part: 'no-such-part' });
      expect(unknown.ok).toBe(false);
      if (!unknown.ok) expect(JSON.stringify(unknown.problems)).toContain('no-such-part');
      for (const length of ['12 psi', '-3 ft', '1e308 ft', 'NaN ft', 12]) {
        if (item['length'] === undefined) continue;
        const wrong = spoiled({ length });
        expect(wrong.ok, String(length)).toBe(false);
        if (!wrong.ok) expect(JSON.stringify(wrong.problems)).toContain('length');
      }
    });
  });
});
