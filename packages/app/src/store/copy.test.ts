import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import {
  addEntries,
  copyLines,
  editJob,
  editsAfter,
  entriesAfter,
  layCopy,
  listJobs,
  makeJob,
  moveStock,
  makeMachine,
  openJob,
  openRecords,
  type Records,
} from './index.ts';
import { KEYS, NEVER_COPIED } from './schema.ts';

const DOING = { by: 'Dana', at: '2026-03-03T10:10:00.000Z' };
const folders: string[] = [];
const opened: Records[] = [];
let server: PostgresServer;

const newPlace = {
  SQLite: () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-copy-'));
    folders.push(folder);
    return Promise.resolve(folder);
  },
  PostgreSQL: () => server.newDatabase(),
};
const empty = async (kind: keyof typeof newPlace) => {
  const records = await openRecords(await newPlace[kind]());
  opened.push(records);
  return records;
};
const filled = async (kind: keyof typeof newPlace) => {
  const records = await empty(kind);
  for (let n = 0; n < 1203; n++) {
    const document = { rig: { title: `Ünïcode "${n}"`, brief: {} }, notes: 'line\nbreak' };
    await records.save((t) => makeJob(t, `job-${n}`, document, DOING));
  }
  const put = { operation: 'one', about: 'Note', puts: [{ path: ['notes'], value: "it's" }] };
  await records.save((t) => editJob(t, 'job-7', 1, [put], DOING));
  const taken = {
    operation: 'one',
    part: 'tip',
    quantity: -2,
    why: 'taken',
    serial: 'LF-1',
    note: '',
  } as const;
  await records.save((t) => moveStock(t, [taken], DOING));
  const document = { rig: { title: 'Ünïcode' }, parts: [], engine: '0' };
  const machine = { number: { serial: 'LFR-0326-1' }, jobId: 'job-7', jobVersion: 2, document };
  await records.save((t) => makeMachine(t, machine, DOING));
  const entries = ['a', 'b'].map((name) => ({
    operation: name,
    kind: 'yard-reading',
    document: { row: name },
  }));
  await records.save((t) => addEntries(t, 'LFR-0326-1', entries, DOING));
  return records;
};
const linesOf = async (records: Records) => {
  const lines: string[] = [];
  for await (const line of copyLines(records)) lines.push(line);
  return lines;
};
// eslint-disable-next-line @typescript-eslint/require-await -- a stand-in for a file that is read
async function* again(lines: readonly string[]) {
  yield* lines;
}

beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(async () => {
  for (const records of opened) await records.close();
  server.remove();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Every table, with no row. */
const NONE = Object.fromEntries(Object.keys(KEYS).map((table) => [table, 0]));
describe('A copy of the records', () => {
  it.each([
    ['SQLite', 'PostgreSQL'],
    ['PostgreSQL', 'SQLite'],
  ] as const)('goes from %s to %s with every row and sign, and back to the same bytes', async (from, to) => {
    const lines = await linesOf(await filled(from));
    const target = await empty(to);
    expect(await layCopy(target, again(lines))).toEqual({
      ...NONE,
      jobs: 1203,
      job_documents: 1203,
      job_edits: 1,
      stock_movements: 1,
      machines: 1,
      machine_entries: 2,
    });
    expect(await openJob(target.db, 'job-7')).toMatchObject({ version: 2, document: { notes: "it's" } });
    expect(await editsAfter(target.db, 'job-7', 0, 9)).toMatchObject([
      { inverse: [{ value: 'line\nbreak' }] },
    ]);
    expect(await entriesAfter(target.db, 'LFR-0326-1', 1, 9)).toMatchObject([{ document: { row: 'b' } }]);
    const found = await listJobs(target.db, { words: ['job-7', 'job-77'], limit: 2 });
    expect(found.map((job) => job.id)).toEqual(['job-779', 'job-778']);
    const back = await empty(from);
    await layCopy(back, copyLines(target));
    const sorted = (all: string[]) => [...all].sort();
    expect(sorted(await linesOf(back))).toEqual(sorted(lines));
  });

  it('that is cut short, damaged or of other tables is refused, and nothing of it stays', async () => {
    const lines = await linesOf(await filled('SQLite'));
    const target = await empty('PostgreSQL');
    await expect(layCopy(target, again(lines.slice(0, -1)))).rejects.toThrow(/cut short/);
    await expect(layCopy(target, again([...lines.slice(0, 9), '["jobs",{"id"']))).rejects.toThrow(/line 10/);
    await expect(layCopy(target, again(['["no-table",{}]']))).rejects.toThrow(/line 1/);
    await expect(layCopy(target, again([lines[0]!, '["no-table",{}]']))).rejects.toThrow(/known table/);
    const older = lines[0]!.replace('0001-jobs', '0000-none');
    await expect(layCopy(target, again([older]))).rejects.toThrow(/same Spraywright/);
    await layCopy(target, again(lines));
    await expect(layCopy(target, again(lines))).rejects.toThrow(/something already/);
  });

  it('takes every table there is but those that let somebody in', async () => {
    const { db } = await empty('SQLite');
    const tables = (await db.introspection.getTables()).map((t) => t.name);
    // What the index of a search is kept in follows from the jobs.
    const copied = tables.filter((table) => !table.startsWith('jobs_found'));
    expect([...Object.keys(KEYS), ...NEVER_COPIED].sort()).toEqual(copied.sort());
  });
});
