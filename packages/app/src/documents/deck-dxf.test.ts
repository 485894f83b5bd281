import { describe, expect, it } from 'vitest';
import { proveRig } from '@spraywright/engine/rig';
import { demoCatalogue, demoRig, demoShop } from '../../test/demo.ts';
import { deckDxf } from './deck-dxf.ts';

const shop = demoShop();
const catalogue = demoCatalogue();
const proof = proveRig(demoRig('nurse-trailer', catalogue, shop).rig, catalogue, shop);

interface Entity {
  readonly type: string;
  readonly pairs: readonly (readonly [number, string])[];
}

/** A reader of its own: DXF is pairs of lines, a group code and its value (AutoCAD DXF reference, public format). */
function entitiesOf(dxf: string): Entity[] {
  const lines = dxf.split(/\r?\n/);
  const pairs = Array.from(
    { length: Math.floor(lines.length / 2) },
    (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!] as const,
  );
  const start = pairs.findIndex(([code, value]) => code === 2 && value === 'ENTITIES');
  const end = pairs.findIndex(([code, value], i) => i > start && code === 0 && value === 'ENDSEC');
  const out: { type: string; pairs: (readonly [number, string])[] }[] = [];
  for (const pair of pairs.slice(start + 1, end))
    if (pair[0] === 0) out.push({ type: pair[1], pairs: [] });
    else out[out.length - 1]!.pairs.push(pair);
  return out;
}

const layerOf = (e: Entity) => e.pairs.find(([code]) => code === 8)![1];
const numbers = (e: Entity, code: number) => e.pairs.filter(([c]) => c === code).map(([, v]) => Number(v));

describe('the deck as DXF', () => {
  it('has every standing part at its place in millimetres, and each on its layer', async () => {
    const dxf = await deckDxf(proof);
    const entities = entitiesOf(dxf);
    const parts = entities.filter((e) => e.type === 'LWPOLYLINE' && layerOf(e) === 'parts');
    const standing = proof.placement!.parts.filter((p) => p.on === undefined);
    expect(parts).toHaveLength(standing.length);
    const middles = parts.map((e) => {
      const [xs, ys] = [numbers(e, 10), numbers(e, 20)];
      return `${Math.round((Math.min(...xs) + Math.max(...xs)) / 2)} ${Math.round((Math.min(...ys) + Math.max(...ys)) / 2)}`;
    });
    for (const p of standing)
      // Seen from above with the front at the left: what is left of the middle line lies below it.
      expect(middles).toContain(`${Math.round(p.x * 1000)} ${Math.round(-p.y * 1000)}`);
    expect(entities.filter((e) => e.type === 'CIRCLE' && layerOf(e) === 'balance')).toHaveLength(2);
    const header = dxf.split(/\r?\n/);
    // 4: millimetres.
    expect(header[header.indexOf('$INSUNITS') + 2]).toBe('4');
    expect(await deckDxf(proof)).toBe(dxf);
  });

  it('refuses a rig without a carrier', async () => {
    const bare = { ...proof };
    delete (bare as { placement?: unknown }).placement;
    await expect(deckDxf(bare)).rejects.toThrow(/no carrier/);
  });
});
