import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import {
  editJob,
  editsAfter,
  listJobs,
  makeJob,
  openJob,
  openRecords,
  Refusal,
  type Records,
} from './index.ts';

const folders: string[] = [];
let server: PostgresServer;

const temporary = () => {
  const folder = mkdtempSync(join(tmpdir(), 'spraywright-records-'));
  folders.push(folder);
  return folder;
};

/** Where each kind of records can be made anew. */
const DATABASES = {
  SQLite: { newPlace: () => Promise.resolve(temporary()) },
  PostgreSQL: { newPlace: () => server.newDatabase() },
};

/** A folder, or the address of a database. */
let place: string;
let records: Records;
let minute: number;

const document = (title: string, customer = 'Wrenmere Parks') => ({
  rig: { title, brief: { customer }, items: [{ id: 'hose', length: '250 ft' }] },
  notes: '',
});
const doing = (by = 'Dana') => ({ by, at: `2026-03-03T10:${String(minute++).padStart(2, '0')}:00.000Z` });
const make = (id: string, title = id, customer?: string) =>
  records.save((t) => makeJob(t, id, document(title, customer), doing()));
const lengthen = (operation: string, value: string) => ({
  operation,
  about: `Hose ${value}`,
  puts: [{ path: ['rig', 'items', 0, 'length'], value }],
});
const edit = (id: string, base: number, edits: ReturnType<typeof lengthen>[], by?: string) =>
  records.save((t) => editJob(t, id, base, edits, doing(by)));
const refusal = async (work: Promise<unknown>): Promise<Refusal> => {
  const reason: unknown = await work.then(
    () => undefined,
    (r: unknown) => r,
  );
  expect(reason).toBeInstanceOf(Refusal);
  return reason as Refusal;
};

beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(() => {
  server.remove();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe('The SQLite file', () => {
  it('flush every commit to the disk and keep readers apart from the writer', async () => {
    const sqlite = await openRecords(temporary());
    // Asked where saves are made.
    const pragma = (name: string) =>
      sqlite.save(
        async (t) =>
          Object.values((await sql.raw(`pragma ${name}`).execute(t)).rows[0] as object)[0] as unknown,
      );
    expect(await pragma('journal_mode')).toBe('wal');
    expect(await pragma('synchronous')).toBe(2);
    expect(await pragma('foreign_keys')).toBe(1);
    await sqlite.close();
  });
});

describe.each(['SQLite', 'PostgreSQL'] as const)('On %s', (name) => {
  beforeEach(async () => {
    minute = 10;
    place = await DATABASES[name].newPlace();
    records = await openRecords(place);
  });
  afterEach(() => records.close());

  describe('The records', () => {
    it('check references', async () => {
      await expect(
        records.save((t) =>
          t.insertInto('job_documents').values({ job_id: 'none', document: '{}' }).execute(),
        ),
      ).rejects.toThrow(/FOREIGN KEY|foreign key/);
    });

    it('are there when they are opened again, and by two programs at once', async () => {
      await make('cart');
      const other = await openRecords(place);
      await other.save((t) => editJob(t, 'cart', 1, [lengthen('operation-1', '300 ft')], doing('Robin')));
      expect((await openJob(records.db, 'cart')).version).toBe(2);
      await other.close();
      await records.close();
      records = await openRecords(place);
      expect((await openJob(records.db, 'cart')).document.rig.items).toEqual([
        { id: 'hose', length: '300 ft' },
      ]);
    });

    it('are not touched by an older program', async () => {
      await sql`insert into kysely_migration (name, timestamp) values ('9999-later', '')`.execute(records.db);
      await records.close();
      await expect(openRecords(place)).rejects.toThrow(/newer Spraywright \(step 9999-later\)/);
      records = await openRecords(await DATABASES[name].newPlace());
    });
  });

  it('What is read is what was committed, also while a save is being made', async () => {
    await make('cart');
    let during: string[] = [];
    await records.save(async (t) => {
      await makeJob(t, 'skid', document('skid'), doing());
      during = (await listJobs(records.db, { words: [], limit: 10 })).map((job) => job.id);
    });
    expect(during).toEqual(['cart']);
    expect((await openJob(records.db, 'skid')).version).toBe(1);
  });

  describe('Jobs', () => {
    it('are listed the last changed first, a page at a time, and found by all the words', async () => {
      await make('cart', 'Heavy cart for tall elms', 'Wrenmere Parks');
      await make('skid', 'Roof skid', '100% Clean Roofs');
      await make('boom', 'Pasture boom', 'Wrenmere Dairy');
      await edit('cart', 1, [lengthen('operation-1', '300 ft')]);
      const ids = async (...words: string[]) =>
        (await listJobs(records.db, { words, limit: 10 })).map((job) => job.id);
      expect(await ids()).toEqual(['cart', 'boom', 'skid']);
      expect(await ids('WREN', 'boom')).toEqual(['boom']);
      expect(await ids('0%')).toEqual(['skid']);
      expect(await ids('%elms')).toEqual([]);
      expect(await ids('_')).toEqual([]);
      const first = await listJobs(records.db, { words: [], limit: 2 });
      const { changedAt: at, id: name } = first.at(-1)!;
      expect(await listJobs(records.db, { words: [], limit: 2, after: { at, name } })).toMatchObject([
        { id: 'skid' },
      ]);
    });

    const found = async (...words: string[]) =>
      (await listJobs(records.db, { words, limit: 5 })).map((job) => job.id);

    it('are found by what they are called now, in any letters, by long words and short ones', async () => {
      await make('cart', 'Heavy cart', 'Ænge & "Sons" (Ölberg)');
      await make('skid', 'Roof skid', "O'Neil*");
      const rename = (operation: string, value: string) => ({
        operation,
        about: 'Title',
        puts: [{ path: ['rig', 'title'], value }],
      });
      await edit('cart', 1, [rename('operation-1', 'Light trolley')]);
      await edit('cart', 2, [rename('operation-2', 'Light wagon')]);
      expect(await found('wagon')).toEqual(['cart']);
      expect(await found('heavy')).toEqual([]);
      expect(await found('trolley')).toEqual([]);
      for (const words of [['"sons"'], ['ØLBERG'.replace('Ø', 'Ö')], ['ænge'], ['ht', 'wagon'], ['wa', '&']])
        expect(await found(...words)).toEqual(['cart']);
      for (const words of [["o'neil*"], ['neil'], ['eil*', 'oo'], ['SKID']])
        expect(await found(...words)).toEqual(['skid']);
      for (const words of [['neil', 'wagon'], ['and'], ['NOT'], ['or', 'skid*'], ['"'.repeat(3)]])
        expect(await found(...words)).toEqual([]);
    });

    it('are found the last changed first where a word is of few, of many or of all', async () => {
      const many = 700;
      await records.save(async (t) => {
        for (let n = 0; n < many; n++) {
          const at = new Date(Date.UTC(2026, 0, 1) + n * 1000).toISOString();
          const title = `Rig ${n % 100 === 7 ? 'with boom' : 'plain'} ${n < 2 ? 'first' : ''}`;
          await makeJob(t, `job-${n}`, document(title, `Customer ${n}`), { by: '', at });
        }
      });
      expect(await found('rig')).toEqual(['job-699', 'job-698', 'job-697', 'job-696', 'job-695']);
      expect(await found('boom')).toEqual(['job-607', 'job-507', 'job-407', 'job-307', 'job-207']);
      expect(await found('boom', 'rig', '07')).toEqual([
        'job-607',
        'job-507',
        'job-407',
        'job-307',
        'job-207',
      ]);
      expect(await found('rig', 'first')).toEqual(['job-1', 'job-0']);
      expect(await found('rig', '42', 'plain', 'customer')).toEqual([
        'job-642',
        'job-542',
        'job-442',
        'job-429',
        'job-428',
      ]);
      const { changedAt, id } = (await listJobs(records.db, { words: ['boom'], limit: 1 }))[0]!;
      const after = { at: changedAt, name: id };
      const next = await listJobs(records.db, { words: ['boom'], limit: 1, after });
      expect(next.map((job) => job.id)).toEqual(['job-507']);
    });

    it('of records from before there was an index are found after the next start', async () => {
      await make('cart', 'Heavy cart');
      await records.save(async (t) => {
        for (const text of [
          `drop ${name === 'SQLite' ? 'table' : 'index'} jobs_found`,
          ...(name === 'SQLite' ? ['drop trigger jobs_found_made', 'drop trigger jobs_found_named'] : []),
          'drop index quotes_by_time',
          "delete from kysely_migration where name = '0013-quick-lists'",
        ])
          await sql.raw(text).execute(t);
      });
      await records.close();
      records = await openRecords(place);
      await make('skid', 'Heavy skid');
      expect(await found('heavy')).toEqual(['skid', 'cart']);
      const { rows } = await sql
        .raw(
          name === 'SQLite'
            ? 'select id from jobs_found'
            : "select indexname from pg_indexes where indexname = 'jobs_found'",
        )
        .execute(records.db);
      expect(rows).toHaveLength(name === 'SQLite' ? 2 : 1);
    });

    it('keep the id they were made under', async () => {
      await make('cart');
      expect(await refusal(make('cart', 'Another'))).toMatchObject({ code: 'job-exists' });
      expect((await openJob(records.db, 'cart')).title).toBe('cart');
      expect(await refusal(openJob(records.db, 'none'))).toMatchObject({ code: 'no-such-job' });
    });
  });

  describe('Edits', () => {
    it('count the version up and stand in the history with who, when and the way back', async () => {
      await make('cart');
      const job = await edit('cart', 1, [
        lengthen('operation-1', '300 ft'),
        lengthen('operation-2', '350 ft'),
      ]);
      expect(job).toMatchObject({
        version: 3,
        changedBy: 'Dana',
        document: { rig: { items: [{ length: '350 ft' }] } },
      });
      expect(await openJob(records.db, 'cart')).toEqual(job);
      const [first, second] = await editsAfter(records.db, 'cart', 0, 10);
      expect(first).toMatchObject({ version: 2, by: 'Dana', inverse: [{ value: '250 ft' }] });
      const back = { operation: 'operation-3', about: 'Back', puts: [...second!.inverse, ...first!.inverse] };
      const before = await records.save((t) => editJob(t, 'cart', 3, [back], doing()));
      expect(before.document).toEqual(document('cart'));
    });

    it('made on an older version are refused with the job as it stands and what came between; nothing is written', async () => {
      await make('cart');
      await edit('cart', 1, [lengthen('operation-1', '300 ft')], 'Robin');
      const late = await refusal(edit('cart', 1, [lengthen('operation-2', '200 ft')]));
      expect(late.code).toBe('stale-version');
      expect(late.message).toContain('Robin');
      expect(late.details).toMatchObject({
        job: { version: 2, document: { rig: { items: [{ length: '300 ft' }] } } },
        since: [{ version: 2, by: 'Robin', about: 'Hose 300 ft' }],
      });
      expect((await openJob(records.db, 'cart')).version).toBe(2);
      expect(await refusal(edit('cart', 3, [lengthen('operation-2', '200 ft')]))).toMatchObject({
        code: 'stale-version',
      });
    });

    it('are made once, however often they arrive', async () => {
      await make('cart');
      const sent = [lengthen('operation-1', '300 ft'), lengthen('operation-2', '350 ft')];
      await edit('cart', 1, sent.slice(0, 1));
      expect((await edit('cart', 1, sent)).version).toBe(3);
      expect((await edit('cart', 1, sent)).version).toBe(3);
      await edit('cart', 3, [lengthen('operation-3', '400 ft')], 'Robin');
      expect((await edit('cart', 1, sent)).version).toBe(4);
      expect(await editsAfter(records.db, 'cart', 0, 10)).toHaveLength(3);
    });

    it('that do not fit are refused, all of them, by path', async () => {
      await make('cart');
      for (const puts of [
        [{ path: ['rig', 'title', 'colour'], value: 1 }],
        [{ path: ['rig', 'items', 7], value: {} }],
        [{ path: ['rig', '__proto__', 'polluted'], value: 1 }],
        [{ path: ['rig'] }],
        [{ path: ['notes'], value: 4 }],
      ]) {
        const bad = { operation: 'operation-2', about: 'Bad', puts };
        const work = records.save((t) =>
          editJob(t, 'cart', 1, [lengthen('operation-1', '300 ft'), bad], doing()),
        );
        expect(await refusal(work)).toMatchObject({ code: 'bad-change' });
      }
      expect(await openJob(records.db, 'cart')).toMatchObject({ version: 1, document: document('cart') });
      expect(await editsAfter(records.db, 'cart', 0, 10)).toEqual([]);
    });
  });

  describe('Saves that arrive together', () => {
    it('are each made or refused for themselves', async () => {
      await Promise.all([make('a'), make('b'), make('c')]);
      const outcomes = await Promise.allSettled([
        edit('a', 1, [lengthen('operation-1', '1 ft')]),
        edit('a', 1, [lengthen('operation-2', '2 ft')]),
        edit('b', 1, [lengthen('operation-3', '3 ft')]),
        make('c'),
        edit('c', 1, [lengthen('operation-4', '4 ft')]),
      ]);
      expect(outcomes.map((o) => o.status)).toEqual([
        'fulfilled',
        'rejected',
        'fulfilled',
        'rejected',
        'fulfilled',
      ]);
      const versions = await Promise.all(
        ['a', 'b', 'c'].map(async (id) => (await openJob(records.db, id)).version),
      );
      expect(versions).toEqual([2, 2, 2]);
    });

    it('are all on the disk before the records close', async () => {
      await make('cart');
      const saves = Array.from({ length: 20 }, (_, i) => make(`job-${i}`));
      await records.close();
      await Promise.all(saves);
      records = await openRecords(place);
      expect(await listJobs(records.db, { words: ['job-'], limit: 50 })).toHaveLength(20);
    });
  });

  describe('Two processes at once', () => {
    it('make every edit once: the later one on a version is refused, whichever it is', async () => {
      await make('cart');
      const other = await openRecords(place);
      for (let version = 1; version <= 12; version++) {
        const sent = [records, other].map((r, k) =>
          r.save((t) =>
            editJob(
              t,
              'cart',
              version,
              [lengthen(`operation-${version}-${k}`, `${version + k} ft`)],
              doing(),
            ),
          ),
        );
        const outcomes = await Promise.allSettled(sent);
        expect(outcomes.map((o) => o.status).sort()).toEqual(['fulfilled', 'rejected']);
        const refused = outcomes.find((o) => o.status === 'rejected');
        expect(refused?.reason).toMatchObject({ code: 'stale-version' });
      }
      const both = [records, other].map((r) => r.save((t) => makeJob(t, 'new', document('New'), doing())));
      const statuses = (await Promise.allSettled(both)).map((o) => o.status);
      expect(statuses.sort()).toEqual(['fulfilled', 'rejected']);
      await other.close();
    });
  });
});

describe('A database server that goes away', () => {
  it('refuses what is under way, and saves go on by themselves when it is back', async () => {
    records = await openRecords(await server.newDatabase());
    await make('cart');
    server.kill();
    const outcomes = await Promise.allSettled([
      edit('cart', 1, [lengthen('operation-1', '300 ft')]),
      openJob(records.db, 'cart'),
    ]);
    expect(outcomes.map((o) => o.status)).toEqual(['rejected', 'rejected']);
    server.start();
    expect((await edit('cart', 1, [lengthen('operation-1', '300 ft')])).version).toBe(2);
    expect((await openJob(records.db, 'cart')).version).toBe(2);
    await records.close();
  }, 60_000);
});
