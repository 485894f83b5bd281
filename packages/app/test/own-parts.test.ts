import { readFileSync } from 'node:fs';
import { proveRig, readRig, type Proof } from '@spraywright/engine/rig';
import type { Problem } from '@spraywright/engine/quantity';
import { describe, expect, it } from 'vitest';
import { proofText } from '../src/documents/proof-text.ts';
import { DEMO, demoCatalogue, demoRig, demoShop } from './demo.ts';

const catalogue = demoCatalogue();
const shop = demoShop();
const LEAFLET = 'a leaflet of 2025, page 2';
const { raw: designed, rig: designedRig } = demoRig('roof-skid', catalogue, shop);
const hoseId = designedRig.items.get('hose')!.part.id;
const hoseFields = (
  JSON.parse(readFileSync(`${DEMO}catalogue/hose.json`, 'utf8')) as { parts: Record<string, unknown>[] }
).parts.find((p) => p.id === hoseId)!;

/** The designed rig with its hose laid in as a part of its own. */
function withOwnHose(fields: Record<string, unknown>, figuresFrom: unknown = LEAFLET): unknown {
  const raw = structuredClone(designed) as { items: { id: string; part: string }[]; ownParts?: unknown };
  raw.items.find((i) => i.id === 'hose')!.part = 'customers-hose';
  raw.ownParts = [{ kind: 'hose', figuresFrom, part: { ...hoseFields, id: 'customers-hose', ...fields } }];
  return raw;
}

function proven(raw: unknown): Proof {
  const read = readRig(raw, catalogue);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return proveRig(read.rig, catalogue, shop);
}

function problemsOf(raw: unknown): readonly Problem[] {
  const read = readRig(raw, catalogue);
  return read.ok ? [] : read.problems;
}

const gunPressure = (proof: Proof) => proof.duties[0]!.open.outlets[0]!.tipPressure;

describe('A part that is in no catalogue, laid into one rig', () => {
  it('is proven and priced like the same part of the catalogue', () => {
    const before = proveRig(designedRig, catalogue, shop);
    const after = proven(withOwnHose({}));
    expect(after.promises.map((p) => [p.id, p.state, p.margin])).toEqual(
      before.promises.map((p) => [p.id, p.state, p.margin]),
    );
    expect(after.bill.priceCents).toBe(before.bill.priceCents);
  });

  it('brings its own figures into the physics and the price', () => {
    const before = proven(withOwnHose({}));
    const wider = proven(withOwnHose({ roughness: '1 mm', priceCents: 9_999 }));
    expect(gunPressure(wider)).toBeLessThan(gunPressure(before));
    expect(wider.bill.priceCents).toBeGreaterThan(before.bill.priceCents);
  });

  it('says whose figures it stands on', () => {
    const proof = proven(withOwnHose({}));
    expect(proof.parts.find((p) => p.part === 'customers-hose')?.figuresFrom).toBe(LEAFLET);
    expect(proofText(proof, { units: 'us' })).toContain(`in no catalogue; figures: ${LEAFLET}`);
  });

  it.each([
    ['a missing bore', withOwnHose({ bore: undefined }), 'ownParts.0.part.bore', /bore/],
    ['a bore out of range', withOwnHose({ bore: '4 m' }), 'ownParts.0.part.bore', /300 mm|11\.8 in/],
    [
      'an outside smaller than the bore',
      withOwnHose({ outsideDiameter: '5 mm' }),
      'ownParts.0.part.outsideDiameter',
      /larger than the bore/,
    ],
    [
      'an id of the catalogue',
      withOwnHose({ id: hoseId }),
      'ownParts.0.part.id',
      /already used in the catalogue/,
    ],
    ['nobody who says the figures', withOwnHose({}, ''), 'ownParts.0.figuresFrom', /3/],
  ])('refuses %s at its field', (_, raw, path, message) => {
    const problems = problemsOf(raw);
    const found = problems.find((p) => p.path.join('.') === path);
    expect(found?.message, JSON.stringify(problems)).toMatch(message);
  });

  it('refuses an item that names a part which is nowhere', () => {
    const raw = structuredClone(designed) as { items: { id: string; part: string }[] };
    raw.items.find((i) => i.id === 'hose')!.part = 'nowhere';
    expect(
      problemsOf(raw)
        .map((p) => p.message)
        .join(),
    ).toMatch(/neither in the catalogue .* own parts/);
  });
});
