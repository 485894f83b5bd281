import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readCatalogue } from '@spraywright/engine/catalogue';
import { main } from '../src/cli/main.ts';
import { readCatalogueFolder } from '../src/documents/catalogue-folder.ts';
import { changeCatalogue } from '../src/store/index.ts';
import { DEMO, demoCatalogue, demoRig, demoShop } from './demo.ts';
import { serverApp } from '../src/server/app.ts';
import { testServer } from './desk-server.ts';

const folder = mkdtempSync(join(tmpdir(), 'spraywright-keeping-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function run(...argv: string[]) {
  let out = '';
  let err = '';
  const code = await main(argv, { out: (t) => void (out += `${t}\n`), err: (t) => void (err += `${t}\n`) });
  return { code, out, err };
}

describe('A catalogue that moves between folder and records', () => {
  const records = join(folder, 'records');
  const written = join(folder, 'written');

  it('comes out as it went in: the engine reads the same parts', async () => {
    const none = await run('catalogue', 'out', written, '--records', records);
    expect(none).toMatchObject({ code: 2, err: expect.stringMatching(/no catalogue yet/) as string });
    const laid = await run('catalogue', 'lay-in', `${DEMO}catalogue`, '--records', records);
    expect(laid).toMatchObject({
      code: 0,
      out: expect.stringMatching(/Laid in: \d+ parts, edition 3/) as string,
    });
    expect((await run('catalogue', 'out', written, '--records', records)).code).toBe(0);
    const back = readCatalogueFolder(written);
    if (!back.ok) throw new Error(back.problems[0]!.message);
    const demo = demoCatalogue();
    expect(back.catalogue.version).toBe(3);
    expect(new Map([...back.catalogue.parts].sort())).toEqual(new Map([...demo.parts].sort()));
    expect(JSON.parse(readFileSync(join(written, 'shop', 'shop.json'), 'utf8'))).toEqual(
      JSON.parse(readFileSync(`${DEMO}shop.json`, 'utf8')),
    );
  });

  it('is taken over from a folder again: parts that the folder lacks are retired, not lost', async () => {
    const changed = join(folder, 'changed');
    cpSync(written, changed, { recursive: true });
    const file = join(changed, 'reel.json');
    const reels = JSON.parse(readFileSync(file, 'utf8')) as { parts: { id: string; priceCents: number }[] };
    const gone = reels.parts.shift()!;
    reels.parts[0]!.priceCents += 100;
    writeFileSync(file, JSON.stringify(reels));
    const laid = await run('catalogue', 'lay-in', changed, '--records', records);
    expect(laid.out).toContain('Laid in as edition 4: 0 new, 1 changed, 1 retired');
    const last = join(folder, 'last');
    await run('catalogue', 'out', last, '--records', records);
    const back = readCatalogueFolder(last);
    if (!back.ok) throw new Error(back.problems[0]!.message);
    expect([...back.catalogue.retired]).toEqual([gone.id]);
    expect(back.catalogue.parts.has(gone.id)).toBe(true);
    expect(back.catalogue.byKind.reel.map(({ id }) => id)).not.toContain(gone.id);
    expect(back.catalogue.parts.get(reels.parts[0]!.id)!.priceCents).toBe(reels.parts[0]!.priceCents);
  });

  it('is refused by line when a file of the folder is wrong, and when the folder to write is not empty', async () => {
    const bad = join(folder, 'bad');
    cpSync(written, bad, { recursive: true });
    const text = readFileSync(join(bad, 'gauge.json'), 'utf8').replace(/"mass": "[^"]*"/, '"mass": "heavy"');
    writeFileSync(join(bad, 'gauge.json'), text);
    const line = text.slice(0, text.indexOf('"heavy"')).split('\n').length;
    const refused = await run('catalogue', 'lay-in', bad, '--records', records);
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(new RegExp(`gauge\\.json:${line}:\\d+: parts\\[0\\]\\.mass`));
    expect((await run('catalogue', 'out', written, '--records', records)).err).toMatch(/is not empty/);
    expect(readdirSync(written)).toContain('shop');
    expect((await run('catalogue', 'out', 'x', '--day', '2026-13-01', '--records', records)).code).toBe(2);
  });
});

describe('A server whose catalogue stands in the records', () => {
  it('gives a changed part to the next page that loads and to the next quote, also when another process changed it', async () => {
    const server = await testServer();
    const start = async () =>
      (await (await server.app.request('/start.json')).json()) as {
        head: { version: number; retired: string[] };
        files: { raw: { kind: string; parts: { id: string; priceCents: number }[] } }[];
      };
    const first = await start();
    expect(first.head.version).toBe(3);
    const reel = first.files.find(({ raw }) => raw.kind === 'reel')!.raw.parts[0]!;
    await server.records.save((t) =>
      changeCatalogue(
        t,
        { parts: [{ id: reel.id, kind: 'reel', document: { ...reel, priceCents: 999_900 }, retired: true }] },
        { by: 'Dana', at: '2026-03-03T08:00:00.000Z' },
      ),
    );
    const next = await start();
    expect(next.head).toMatchObject({ version: 4, retired: [reel.id] });
    expect(next.files.find(({ raw }) => raw.kind === 'reel')!.raw.parts[0]!.priceCents).toBe(999_900);
    await server.close();
  });

  it('hands the page the rig that was chosen at the start, as long as the catalogue is that one', async () => {
    const server = await testServer();
    const { catalogue, shop } = await server.shelf.current();
    const { raw } = demoRig('tall-elms', catalogue, shop);
    const app = serverApp({ ...server.options, designed: { rig: raw, with: catalogue } });
    const start = async () => (await (await app.request('/start.json')).json()) as { designed?: unknown };
    expect((await start()).designed).toEqual(JSON.parse(JSON.stringify(raw)));
    const gauge = catalogue.byKind.gauge[0]!;
    await server.records.save((t) =>
      changeCatalogue(
        t,
        { parts: [{ id: gauge.id, kind: 'gauge', retired: true }] },
        { by: 'Dana', at: '2026-03-03T08:00:00.000Z' },
      ),
    );
    expect((await start()).designed).toBeUndefined();
    await server.close();
  });

  it('still proves a rig with a retired part, and gives it to no new rig', async () => {
    const catalogue = demoCatalogue();
    const { raw } = demoRig('tall-elms', catalogue, demoShop());
    const used = new Set((raw as { items: { part: string }[] }).items.map(({ part }) => part));
    const server = await testServer();
    await server.app.request('/start.json');
    const pump = catalogue.byKind.pump.find(({ id }) => used.has(id))!;
    await server.records.save((t) =>
      changeCatalogue(
        t,
        { parts: [{ id: pump.id, kind: 'pump', retired: true }] },
        { by: '', at: '2026-03-03T08:00:00.000Z' },
      ),
    );
    const quote = await server.app.request('/api/quote.pdf', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ rig: raw }),
    });
    expect(quote.status).toBe(200);
    const now = (await (await server.app.request('/start.json')).json()) as {
      head: unknown;
      files: { file: string; raw: unknown }[];
    };
    const read = readCatalogue({ file: 'catalogue.json', raw: now.head }, now.files);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const again = demoRig('tall-elms', read.catalogue, demoShop()).raw as { items: { part: string }[] };
    expect(again.items.map(({ part }) => part)).not.toContain(pump.id);
    await server.close();
  });
});
