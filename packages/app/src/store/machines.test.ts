import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import {
  addEntries,
  editJob,
  entriesAfter,
  jobAtVersion,
  listMachines,
  makeJob,
  makeMachine,
  openMachine,
  openRecords,
  type Records,
} from './index.ts';

const folders: string[] = [];
let server: PostgresServer;
const DATABASES = {
  SQLite: () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-machines-'));
    folders.push(folder);
    return Promise.resolve(folder);
  },
  PostgreSQL: () => server.newDatabase(),
};

beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(() => {
  server.remove();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe.each(['SQLite', 'PostgreSQL'] as const)('Machines on %s', (name) => {
  let place: string;
  let records: Records;
  let minute: number;
  const doing = (by = 'Dana') => ({ by, at: `2026-03-03T10:${String(minute++).padStart(2, '0')}:00.000Z` });
  const rig = { title: 'Heavy cart', brief: { customer: 'Wrenmere Parks' }, items: [] };
  const begin = (number: Parameters<typeof makeMachine>[1]['number'], into = records) =>
    into.save((t) =>
      makeMachine(
        t,
        { number, jobId: 'cart', jobVersion: 1, document: { rig, parts: [], engine: '0' } },
        doing(),
      ),
    );
  const reading = (operation: string, value = '40 psi') => ({
    operation,
    kind: 'yard-reading',
    document: { row: 'pump-gauge:tall', value },
  });

  beforeEach(async () => {
    minute = 10;
    place = await DATABASES[name]();
    records = await openRecords(place);
    await records.save((t) => makeJob(t, 'cart', { rig, notes: '' }, doing()));
  });
  afterEach(() => records.close());

  it('take the next free number behind the letters, month by month, or the one that is given', async () => {
    const serials = [];
    for (const prefix of ['LFR-0326-', 'LFR-0326-', 'LFR-0426-'])
      serials.push((await begin({ prefix })).serial);
    expect(serials).toEqual(['LFR-0326-1', 'LFR-0326-2', 'LFR-0426-1']);
    await begin({ serial: 'LFR-0326-9' });
    expect((await begin({ prefix: 'LFR-0326-' })).serial).toBe('LFR-0326-10');
    await expect(begin({ serial: 'LFR-0326-9' })).rejects.toMatchObject({ code: 'machine-exists' });
  });

  it('are found by number, customer and job, the last begun first, a page at a time', async () => {
    for (const serial of ['A-1', 'A-2', 'B-1']) await begin({ serial });
    const found = async (...words: string[]) =>
      (await listMachines(records.db, { words, limit: 9 })).map((m) => m.serial);
    expect(await found()).toEqual(['B-1', 'A-2', 'A-1']);
    expect(await found('a-', 'wrenmere')).toEqual(['A-2', 'A-1']);
    expect(await found('a_1')).toEqual([]);
    const first = await listMachines(records.db, { words: [], limit: 1 });
    const { madeAt: at, serial: name } = first[0]!;
    expect(await listMachines(records.db, { words: [], limit: 1, after: { at, name } })).toMatchObject([
      { serial: 'A-2' },
    ]);
  });

  it('keep what is written down of them in order, each once, however often it arrives', async () => {
    await begin({ serial: 'A-1' });
    const add = (entries: ReturnType<typeof reading>[]) =>
      records.save((t) => addEntries(t, 'A-1', entries, doing('Robin')));
    expect(await add([reading('operation-1')])).toEqual({ added: 1, last: 1 });
    const both = [reading('operation-1', '99 psi'), reading('operation-2')];
    expect(await add(both)).toEqual({ added: 1, last: 2 });
    expect(await add([...both, both[1]!])).toEqual({ added: 0, last: 2 });
    const entries = await entriesAfter(records.db, 'A-1', 0, 9);
    expect(entries.map((e) => [e.number, e.operation, e.by])).toEqual([
      [1, 'operation-1', 'Robin'],
      [2, 'operation-2', 'Robin'],
    ]);
    expect(entries[0]!.document).toEqual({ row: 'pump-gauge:tall', value: '40 psi' });
    expect(await entriesAfter(records.db, 'A-1', 1, 9)).toHaveLength(1);
    expect(await openMachine(records.db, 'A-1')).toMatchObject({
      entries: 2,
      jobId: 'cart',
      document: { rig },
    });
    await expect(
      records.save((t) => addEntries(t, 'none', [reading('operation-1')], doing())),
    ).rejects.toMatchObject({ code: 'no-such-machine' });
    await expect(openMachine(records.db, 'none')).rejects.toMatchObject({ code: 'no-such-machine' });
  });

  it('lose nothing when two programs write of one machine at once', async () => {
    await begin({ serial: 'A-1' });
    const other = await openRecords(place);
    const tried = (into: Records, operation: string): Promise<unknown> =>
      into
        .save((t) => addEntries(t, 'A-1', [reading(operation)], doing()))
        // The file may be held by the other program: whoever sent it sends it again.
        .catch((error: { code?: string }) => {
          if (!/^SQLITE_BUSY/.test(String(error.code))) throw error;
          return tried(into, operation);
        });
    for (let round = 0; round < 10; round++)
      await Promise.all([tried(records, `operation-${round}-a`), tried(other, `operation-${round}-b`)]);
    const entries = await entriesAfter(records.db, 'A-1', 0, 99);
    expect(entries.map((e) => e.number)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));
    const numbers = await Promise.all([begin({ prefix: 'X-' }), begin({ prefix: 'X-' }, other)]);
    expect(numbers.map((m) => m.serial).sort()).toEqual(['X-1', 'X-2']);
    await other.close();
  });

  it('are begun from any version that the job has had', async () => {
    const title = (version: number, value: string) =>
      records.save((t) =>
        editJob(
          t,
          'cart',
          version,
          [{ operation: `operation-${version}`, about: 'Title', puts: [{ path: ['rig', 'title'], value }] }],
          doing(),
        ),
      );
    await title(1, 'Second');
    await title(2, 'Third');
    const titles = [];
    for (const version of [1, 2, 3]) {
      const { document, title: told } = await jobAtVersion(records.db, 'cart', version);
      expect(document.rig.title).toBe(told);
      titles.push(told);
    }
    expect(titles).toEqual(['Heavy cart', 'Second', 'Third']);
    await expect(jobAtVersion(records.db, 'cart', 4)).rejects.toMatchObject({ code: 'no-such-version' });
  });
});
