import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import { moveStock, movedStock, movementsOf, openRecords, type Records, type StockReason } from './index.ts';

const folders: string[] = [];
let server: PostgresServer;
let records: Records;

const DATABASES = {
  SQLite: () => {
    const folder = mkdtempSync(join(tmpdir(), 'spraywright-stock-'));
    folders.push(folder);
    return Promise.resolve(folder);
  },
  PostgreSQL: () => server.newDatabase(),
};
const movement = (operation: string, part: string, quantity: number, why: StockReason, serial = '') => ({
  operation: `operation-${operation}`,
  part,
  quantity,
  why,
  serial,
  note: '',
});
const move = (...movements: ReturnType<typeof movement>[]) =>
  records.save((t) => moveStock(t, movements, { by: 'Sam', at: '2026-03-03T10:10:00.000Z' }));

beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(() => {
  server.remove();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe.each(['SQLite', 'PostgreSQL'] as const)('Stock on %s', (name) => {
  beforeEach(async () => {
    records = await openRecords(await DATABASES[name]());
  });
  afterEach(() => records.close());

  it('adds up by part, for all and for one machine', async () => {
    await move(movement('1', 'tip', 10, 'received'), movement('2', 'tip', -4, 'taken', 'LF-1'));
    await move(movement('3', 'tip', 1, 'put-back', 'LF-1'), movement('4', 'hose', -60, 'taken', 'LF-2'));
    await move(movement('5', 'tip', -2, 'counted'));
    expect(await movedStock(records.db)).toEqual([
      { part: 'hose', quantity: -60 },
      { part: 'tip', quantity: 5 },
    ]);
    expect(await movedStock(records.db, 'LF-1')).toEqual([{ part: 'tip', quantity: -3 }]);
    expect(await movedStock(records.db, 'LF-9')).toEqual([]);
    expect(await movementsOf(records.db, 'hose', 10)).toEqual([
      {
        ...movement('4', 'hose', -60, 'taken', 'LF-2'),
        by: 'Sam',
        at: '2026-03-03T10:10:00.000Z',
      },
    ]);
  });

  it('counts a movement once, however often it arrives', async () => {
    const taken = movement('1', 'tip', -4, 'taken', 'LF-1');
    await move(taken);
    await move(taken, movement('2', 'tip', -1, 'taken', 'LF-1'));
    expect(await movedStock(records.db)).toEqual([{ part: 'tip', quantity: -5 }]);
  });

  it('refuses what goes the wrong way for its reason, and another movement under a known name; all or none', async () => {
    await move(movement('1', 'tip', -4, 'taken'));
    for (const bad of [
      movement('2', 'tip', 4, 'taken'),
      movement('2', 'tip', -4, 'received'),
      movement('2', 'tip', 0, 'counted'),
      movement('1', 'tip', -5, 'taken'),
      movement('1', 'tip', -4, 'taken', 'LF-2'),
    ])
      await expect(move(movement('9', 'hose', -10, 'taken'), bad)).rejects.toMatchObject({
        code: 'bad-movement',
      });
    expect(await movedStock(records.db)).toEqual([{ part: 'tip', quantity: -4 }]);
  });
});
