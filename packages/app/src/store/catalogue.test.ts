import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import {
  catalogueEdition,
  catalogueOn,
  changeCatalogue,
  copyLines,
  layCopy,
  layFirstCatalogue,
  listParts,
  openPart,
  openRecords,
  shopEditions,
  type Refusal,
  type CatalogueChange,
  type KeptCatalogue,
  type Records,
} from './index.ts';

const folders: string[] = [];
let server: PostgresServer;
const temporary = () => {
  const folder = mkdtempSync(join(tmpdir(), 'spraywright-catalogue-'));
  folders.push(folder);
  return folder;
};
const DATABASES = {
  SQLite: { newPlace: () => Promise.resolve(temporary()) },
  PostgreSQL: { newPlace: () => server.newDatabase() },
};
const newest = (at: string) => ({ by: 'Dana', at: `${at}T10:00:00.000Z` });
const hose = (id: string, costCents: number, more: object = {}) => ({
  id,
  name: `Hose ${id}`,
  bore: '1/2 in',
  costCents,
  priceCents: costCents * 2,
  ...more,
});
const FIRST: KeptCatalogue = {
  name: 'Shelf',
  edition: 3,
  shop: { name: 'Yard' },
  about: { hose: 'Invented.' },
  layouts: [{ id: 'two-gun-cart' }],
  parts: ['hose-a', 'hose-b'].map((id) => ({ id, kind: 'hose', document: hose(id, 100), retired: false })),
};

beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(() => {
  server.remove();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe.each(Object.keys(DATABASES) as (keyof typeof DATABASES)[])('The catalogue on %s', (kind) => {
  let records: Records;
  const change = (what: CatalogueChange, at = '2026-03-03') =>
    records.save((t) => changeCatalogue(t, what, newest(at)));
  const priced = async (day: string, edition?: number) =>
    (await catalogueOn(records.db, day, edition))!.parts.map(({ document }) => document.costCents);

  beforeEach(async () => {
    records = await openRecords(await DATABASES[kind].newPlace());
    await records.save((t) => layFirstCatalogue(t, FIRST, newest('2026-01-01')));
  });
  afterEach(() => records.close());

  it('keeps the settings and rig families of every edition, with who changed them', async () => {
    await change({ shop: { name: 'Yard', validDays: 20 } }, '2026-03-03');
    await change({ parts: [{ id: 'hose-a', kind: 'hose', document: hose('hose-a', 120) }] }, '2026-03-04');
    await change({ layouts: [] }, '2026-03-05');
    await change({ shop: { name: 'Yard', validDays: 25 } }, '2026-03-06');
    const shopOf = async (edition: number) => {
      const { shop, layouts } = (await catalogueOn(records.db, '2026-03-06', edition))!;
      return [shop, layouts.length];
    };
    expect(await shopOf(3)).toEqual([{ name: 'Yard' }, 1]);
    for (const edition of [4, 5]) expect(await shopOf(edition)).toEqual([{ name: 'Yard', validDays: 20 }, 1]);
    expect(await shopOf(6)).toEqual([{ name: 'Yard', validDays: 20 }, 0]);
    const told = await shopEditions(records.db, 2);
    expect(told.map(({ edition, by, at }) => [edition, by, at.slice(0, 10)])).toEqual([
      [7, 'Dana', '2026-03-06'],
      [6, 'Dana', '2026-03-05'],
    ]);
    expect(told[0]).toMatchObject({ shop: { validDays: 25 }, before: { validDays: 20 } });
    const first = (await shopEditions(records.db, 9, 4))[0]!;
    expect([first.edition, 'before' in first]).toEqual([3, false]);
  });

  it('is what was laid in, and is laid in once', async () => {
    expect(await catalogueOn(records.db, '2026-01-01')).toEqual(FIRST);
    expect(
      await records.save((t) => layFirstCatalogue(t, { ...FIRST, edition: 9 }, newest('2026-01-02'))),
    ).toBe(false);
    expect(await catalogueEdition(records.db)).toBe(3);
  });

  it('keeps a price from its day on, and the edition before as it stood', async () => {
    const done = await change({
      parts: [{ id: 'hose-a', kind: 'hose', document: hose('hose-a', 130) }],
      pricesFrom: '2026-04-01',
    });
    expect(done).toEqual({ edition: 4, added: [], changed: ['hose-a'] });
    expect(await priced('2026-03-31')).toEqual([100, 100]);
    expect(await priced('2026-04-01')).toEqual([130, 100]);
    expect(await priced('2026-04-01', 3)).toEqual([100, 100]);
    expect(
      (await openPart(records.db, 'hose-a', '2026-04-02')).prices.map((p) => [p.from, p.costCents]),
    ).toEqual([
      ['0000-01-01', 100],
      ['2026-04-01', 130],
    ]);
  });

  it('keeps a part as it stood before it was changed', async () => {
    await change({
      parts: [{ id: 'hose-a', kind: 'hose', document: hose('hose-a', 100, { bore: '5/8 in' }), madeOn: 3 }],
    });
    const bore = async (edition: number) =>
      (await catalogueOn(records.db, '2026-03-03', edition))!.parts[0]!.document.bore;
    expect([await bore(3), await bore(4)]).toEqual(['1/2 in', '5/8 in']);
  });

  it('is the same edition after a change that changes nothing', async () => {
    const done = await change({
      parts: [{ id: 'hose-a', kind: 'hose', document: hose('hose-a', 100) }],
      shop: { name: 'Yard' },
    });
    expect(done).toEqual({ edition: 3, added: [], changed: [] });
    expect((await change({ shop: { name: 'New yard' } })).edition).toBe(4);
  });

  it('retires a part and takes it back; lists find it by any of its words', async () => {
    await change({ parts: [{ id: 'hose-b', kind: 'hose', retired: true }] });
    const ids = async (standing: 'kept' | 'retired', words = ['hose']) =>
      (await listParts(records.db, { words, standing, limit: 9 }, '2026-03-03')).map(({ id }) => id);
    expect([await ids('kept'), await ids('retired')]).toEqual([['hose-a'], ['hose-b']]);
    expect(await ids('kept', ['1/2', 'HOSE'])).toEqual(['hose-a']);
    expect(await ids('kept', ['%'])).toEqual([]);
    await change({ parts: [{ id: 'hose-b', kind: 'hose', retired: false }] });
    expect(await ids('kept')).toEqual(['hose-a', 'hose-b']);
  });

  it('tells in a list what each part is sold for on the day, and nothing of a list that is empty', async () => {
    await change({
      parts: [{ id: 'hose-a', kind: 'hose', document: hose('hose-a', 130) }],
      pricesFrom: '2026-04-01',
    });
    const list = (words: string[], day: string) =>
      listParts(records.db, { words, standing: 'both', limit: 9 }, day);
    const told = async (day: string) => (await list(['hose'], day)).map((p) => p.priceCents);
    expect(await told('2026-03-31')).toEqual([200, 200]);
    expect(await told('2026-04-01')).toEqual([260, 200]);
    expect(await list(['nothing-like-it'], '2026-03-03')).toEqual([]);
  });

  it('refuses the second of two changes made on one edition, and takes nothing of it', async () => {
    const bore = (id: string, size: string, madeOn: number) => ({
      id,
      kind: 'hose' as const,
      document: hose(id, 100, { bore: size }),
      madeOn,
    });
    await change({ parts: [bore('hose-a', '5/8 in', 3)] });
    const refused = async (parts: CatalogueChange['parts']) =>
      change({ parts: parts! }).catch((reason: unknown) => (reason as Refusal).code);
    expect(await refused([bore('hose-b', '1 in', 3), bore('hose-a', '3/4 in', 3)])).toBe('stale-part');
    expect(await refused([bore('hose-a', '3/4 in', 0)])).toBe('part-exists');
    expect(await refused([bore('hose-c', '3/4 in', 2)])).toBe('no-such-part');
    expect((await openPart(records.db, 'hose-b', '2026-03-03')).document.bore).toBe('1/2 in');
    expect(await catalogueEdition(records.db)).toBe(4);
  });

  it('makes changes that arrive at once one after the other', async () => {
    const other = await Promise.all(
      [1, 2, 3, 4, 5, 6].map((n) =>
        change({ parts: [{ id: `hose-n${n}`, kind: 'hose', document: hose(`hose-n${n}`, n), madeOn: 0 }] }),
      ),
    );
    expect(other.map(({ edition }) => edition).sort()).toEqual([4, 5, 6, 7, 8, 9]);
    expect((await catalogueOn(records.db, '2026-03-03'))!.parts).toHaveLength(8);
  });

  it('goes into a copy and out of it', async () => {
    await change({ parts: [{ id: 'hose-a', kind: 'hose', document: hose('hose-a', 170) }] });
    const target = await openRecords(temporary());
    const before = await catalogueOn(records.db, '2026-05-05');
    await layCopy(target, copyLines(records));
    expect(await catalogueOn(target.db, '2026-05-05')).toEqual(before);
    await target.close();
  });
});
