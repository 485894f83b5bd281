import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import { addEntries, makeJob, makeMachine, moveStock, openRecords, recallOf, type Records } from './index.ts';

const folders: string[] = [];
let server: PostgresServer;
const DATABASES = {
  SQLite: () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-recall-'));
    folders.push(folder);
    return Promise.resolve(folder);
  },
  PostgreSQL: () => server.newDatabase(),
};
const doing = { by: 'Sam', at: '2026-03-03T10:10:00.000Z' };

beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(() => {
  server.remove();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

async function begin(records: Records, serial: string, tip: string, customer: string) {
  const items = [
    { id: 'tip', part: tip },
    { id: 'spare-tip', part: tip },
    { id: 'pump', part: 'pump-a' },
  ];
  const rig = { title: 'Cart', brief: { customer }, items };
  await records.save((t) =>
    makeMachine(
      t,
      { number: { serial }, jobId: 'cart', jobVersion: 1, document: { rig, parts: [], engine: '0' } },
      doing,
    ),
  );
}
let operations = 0;
const write = (records: Records, serial: string, kind: string, document: Record<string, unknown>) =>
  records.save((t) =>
    addEntries(t, serial, [{ operation: `operation-${++operations}`, kind, document }], doing),
  );
const instead = (slot: string, id: string) => ({ slot, part: { kind: 'tip', part: { id } }, puts: [] });

describe.each(['SQLite', 'PostgreSQL'] as const)('A recall on %s', (name) => {
  it('finds every machine that has the part, had it or was given it, with its customer', async () => {
    const records = await openRecords(await DATABASES[name]());
    await records.save((t) => makeJob(t, 'cart', { rig: {}, notes: '' }, doing));
    for (const [serial, tip, customer] of [
      ['A-1', 'tip-6', 'Wrenmere Parks'],
      ['A-2', 'tip-8', 'Clean Roofs'],
      ['A-3', 'tip-8', 'Wrenmere Dairy'],
      ['A-4', 'tip-60', 'Nobody asked'],
      ['A-5', 'tip-8', 'Given by the store'],
    ] as const)
      await begin(records, serial, tip, customer);
    // One tip of A-1 is another now; A-3 got a tip-6 and lost it again.
    await write(records, 'A-1', 'substitution', instead('tip', 'tip-8'));
    await write(records, 'A-3', 'substitution', instead('tip', 'tip-6'));
    await write(records, 'A-3', 'substitution', instead('tip', 'tip-8'));
    await write(records, 'A-1', 'lot', { part: 'tip-6', lot: '2026-11' });
    await write(records, 'A-1', 'lot', { part: 'tip-8', lot: '1999-01' });
    const taken = {
      operation: 'operation-taken',
      part: 'tip-6',
      quantity: -2,
      why: 'taken',
      note: '',
    } as const;
    await records.save((t) => moveStock(t, [{ ...taken, serial: 'A-5' }], doing));

    const found = await recallOf(records.db, 'tip-6');
    expect(found).toEqual([
      {
        serial: 'A-1',
        title: 'Cart',
        customer: 'Wrenmere Parks',
        madeAt: doing.at,
        slots: ['spare-tip'],
        replaced: false,
        given: 0,
        lots: ['2026-11'],
        match: 'yes',
      },
      expect.objectContaining({ serial: 'A-3', slots: [], replaced: true, lots: [], match: 'yes' }),
      expect.objectContaining({ serial: 'A-5', slots: [], replaced: false, given: 2 }),
    ]);
    const match = async (lot: string) =>
      (await recallOf(records.db, 'tip-6', lot)).map((m) => `${m.serial} ${m.match}`);
    expect(await match('2026-11')).toEqual(['A-1 yes', 'A-3 unknown', 'A-5 unknown']);
    expect(await match('2026-12')).toEqual(['A-1 no', 'A-3 unknown', 'A-5 unknown']);
    expect(await recallOf(records.db, 'tip-9')).toEqual([]);
    expect(await recallOf(records.db, 'tip_6')).toEqual([]);
    await records.close();
  });
});
