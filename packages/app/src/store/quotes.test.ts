import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import {
  findQuote,
  findRevision,
  listQuotes,
  listRevisions,
  makeJob,
  makeQuote,
  openRecords,
  reviseQuote,
  type Freeze,
  type Place,
  type Records,
} from './index.ts';
import { nextLetter } from './quotes.ts';

const folders: string[] = [];
let server: PostgresServer;
let records: Records;
let place: string;

const DATABASES = {
  SQLite: () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-quotes-'));
    folders.push(folder);
    return Promise.resolve(folder);
  },
  PostgreSQL: () => server.newDatabase(),
};
const doing = { by: 'Dana', at: '2026-03-03T10:10:00.000Z' };
const freeze =
  (priceCents: number, title = 'Light cart'): Freeze =>
  (name) => ({
    document: { ...name, priceCents },
    facts: { title, customer: 'Wrenmere Parks', priceCents, optionCount: 1 },
  });
const make = (priceCents = 100, from = records) =>
  from.save((t) => makeQuote(t, 'cart', freeze(priceCents), doing));

beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(() => {
  server.remove();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe('Letters of revisions', () => {
  it('go on after Z', () => {
    expect(['A', 'Y', 'Z', 'AZ', 'ZZ'].map(nextLetter)).toEqual(['B', 'Z', 'AA', 'BA', 'AAA']);
  });
});

describe.each(['SQLite', 'PostgreSQL'] as const)('Quotes on %s', (name) => {
  beforeEach(async () => {
    place = await DATABASES[name]();
    records = await openRecords(place);
    const document = { rig: { title: 'Light cart' }, notes: '' };
    await records.save((t) => makeJob(t, 'cart', document, doing));
  });
  afterEach(() => records.close());

  it('are numbered without a gap, each number once, also from two programs at once', async () => {
    const other = await openRecords(place);
    const made = await Promise.all(
      Array.from({ length: 12 }, (_, i) => make(i, i % 2 === 0 ? records : other)),
    );
    await other.close();
    const numbers = made.map((q) => q.number).sort();
    expect(numbers).toEqual(Array.from({ length: 12 }, (_, i) => `Q-${String(i + 1).padStart(4, '0')}`));
  });

  it('keep what they were frozen with, under the number they got', async () => {
    const { number } = await make(4200);
    expect((await findRevision(records.db, number, 'A')).document).toEqual({
      number,
      revision: 'A',
      priceCents: 4200,
    });
    expect(await findQuote(records.db, number)).toMatchObject({
      job: 'cart',
      state: 'drawn',
      priceCents: 4200,
      question: false,
      madeBy: 'Dana',
    });
  });

  it('replace a revision that was not sent', async () => {
    const { number } = await make(100);
    const revised = await records.save((t) => reviseQuote(t, number, freeze(200), doing));
    expect(revised).toMatchObject({ revision: 'A', priceCents: 200 });
    expect(await listRevisions(records.db, number)).toHaveLength(1);
    expect((await findRevision(records.db, number, 'A')).document).toMatchObject({ priceCents: 200 });
  });

  it('are found by words, state and job, and signs of a pattern stand for themselves', async () => {
    await make();
    const find = (...words: string[]) => listQuotes(records.db, { words, limit: 10 });
    expect(await find('wrenmere', 'Q-0001')).toHaveLength(1);
    expect(await find('q%1')).toEqual([]);
    expect(await listQuotes(records.db, { words: [], limit: 10, state: 'sent' })).toEqual([]);
    expect(await listQuotes(records.db, { words: [], limit: 10, job: 'cart' })).toHaveLength(1);
  });

  it('are listed page by page, each once, also when they were made in one moment', async () => {
    for (let price = 1; price <= 5; price++) await make(price);
    const seen: string[] = [];
    let after: Place | undefined;
    for (let page = 0; page < 4; page++) {
      const found = await listQuotes(records.db, { words: [], limit: 2, ...(after && { after }) });
      seen.push(...found.map((q) => q.number));
      const last = found.at(-1);
      if (last !== undefined) after = { at: last.since, name: last.number };
    }
    expect(seen).toEqual(['Q-0005', 'Q-0004', 'Q-0003', 'Q-0002', 'Q-0001']);
  });

  it('are refused for a job that is not there', async () => {
    await expect(records.save((t) => makeQuote(t, 'nothing', freeze(1), doing))).rejects.toMatchObject({
      code: 'no-such-job',
    });
  });
});
