import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ordersOf, proveRig } from '@spraywright/engine/rig';
import { Shelf } from '../src/server/shelf.ts';
import { DATABASES, newRecords } from './both-databases.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';
import { wordsOf } from './ink.ts';

const place = newRecords();
const folder = mkdtempSync(join(tmpdir(), 'on-hand-'));
afterAll(() => rmSync(folder, { recursive: true }));

const catalogue = demoCatalogue();
const { raw, rig } = demoRig('light-cart', catalogue, demoShop());
/** A part of which it needs one and the store has some. */
const one = proveRig(rig, catalogue, demoShop()).bill.lines.find(
  (l) => l.part !== undefined && l.item !== undefined && l.quantity === 1 && l.short === 0,
)!;
const part = catalogue.parts.get(one.part!)!;

describe.each(DATABASES)('What is on hand, on %s', (database) => {
  let server: TestServer;
  beforeAll(async () => {
    server = await testServer(undefined, undefined, false, await place(database));
    await send('/api/jobs', { id: 'cart', rig: raw });
    await send('/api/machines', { job: 'cart', version: 1, serial: 'LF-1' });
  });
  afterAll(() => server.close());

  async function send(path: string, body?: unknown): Promise<unknown> {
    const answer = await server.app.request(path, {
      ...(body === undefined
        ? {}
        : {
            method: 'POST',
            headers: { 'Content-Type': 'application/json' },
            body: JSON.stringify(body),
          }),
    });
    const told: unknown = await answer.json();
    expect(told).not.toHaveProperty('code');
    return told;
  }
  let count = 0;
  const move = (quantity: number, why: string, serial = '') =>
    send('/api/stock/movements', {
      movements: [{ operation: `operation-${++count}`, part: part.id, quantity, why, serial }],
    });
  const stockOf = async (shelf: Shelf) => (await shelf.current()).catalogue.parts.get(part.id)!.stock;
  const toBuy = async () => {
    const stocked = await server.shelf.current();
    const { rig: now } = demoRig('light-cart', stocked.catalogue, stocked.shop);
    const { bill } = proveRig(now, stocked.catalogue, stocked.shop);
    return ordersOf(bill, (id) => stocked.catalogue.parts.get(id), '2026-05-04').find(
      (o) => o.part === part.id,
    );
  };
  const pack = async () => {
    const answer = await server.app.request('/api/machines/LF-1/build-pack.pdf');
    return wordsOf(new Uint8Array(await answer.arrayBuffer()), folder);
  };

  it('is what was laid in and everything that moved, in the bill, for every program on the records', async () => {
    expect(part.stock).toBeGreaterThan(0);
    expect(await stockOf(server.shelf)).toBe(part.stock);
    expect(await toBuy()).toBeUndefined();
    await move(-part.stock, 'taken');
    expect(await stockOf(server.shelf)).toBe(0);
    const other = new Shelf(server.records, undefined, () => '2026-03-03T09:00:00.000Z');
    expect(await stockOf(other)).toBe(0);
    // The last of it went: one must be ordered, its lead time before building begins.
    const order = await toBuy();
    expect(order).toMatchObject({ need: 1, stock: 0, order: 1, leadTimeDays: part.leadTimeDays });
    expect(order!.orderBy! < '2026-05-04').toBe(true);
    await move(3, 'received');
    expect(await stockOf(other)).toBe(3);
    expect(await toBuy()).toBeUndefined();
  });

  it('stays as it was laid in where the catalogue itself is kept', async () => {
    const { files } = await server.shelf.current();
    expect(files.moved).toEqual({ [part.id]: 3 - part.stock });
    expect(await send(`/api/parts/${part.id}`)).toMatchObject({ document: { stock: part.stock } });
    expect(await send('/start.json')).toMatchObject({ moved: { [part.id]: 3 - part.stock } });
  });

  it('counts what a machine was given, in its build pack too', async () => {
    const before = await pack();
    expect(before).not.toContain('needhasinstore');
    const times = (paper: string) => paper.split(part.id).length - 1;
    await move(-3, 'taken');
    // None is left: it stands among what is bought, too.
    expect(times(await pack())).toBe(times(before) + 1);
    await move(1, 'received');
    await move(-1, 'taken', 'LF-1');
    // The machine has it: it is neither fetched nor bought.
    const given = await pack();
    expect(times(given)).toBe(times(before));
    expect(given).toContain('needhasinstore');
  });
});
