import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from './desk-server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

const post = (movements: unknown) =>
  server.app.request('/api/stock/movements', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ movements, by: 'Sam' }),
  });
const get = async (path: string) => (await server.app.request(path)).json() as Promise<unknown>;
const taken = {
  operation: 'operation-1',
  part: 'tip-orifice-6',
  quantity: -2,
  why: 'taken',
  serial: 'LF-0412-1',
};

describe('Stock over the wire', () => {
  it('is moved once under a name, summed, and told by part', async () => {
    const answers = [await post([taken]), await post([taken])];
    for (const answer of answers)
      expect(await answer.json()).toEqual({ moved: [{ part: 'tip-orifice-6', quantity: -2 }] });
    expect(await get('/api/stock?serial=LF-0412-1')).toEqual({
      moved: [{ part: 'tip-orifice-6', quantity: -2 }],
    });
    expect(await get('/api/stock?serial=LF-0412-2')).toEqual({ moved: [] });
    expect(await get('/api/stock/tip-orifice-6/movements')).toEqual({
      moved: -2,
      movements: [{ ...taken, note: '', by: 'Sam', at: '2026-03-03T09:00:00.000Z' }],
    });
  });

  it('stands in the book in words', async () => {
    const { doings } = (await get('/api/doings')) as { doings: { did: string; what: string }[] };
    expect(doings[0]).toMatchObject({
      did: 'Move parts in the store',
      what: '2 of tip-orifice-6 taken for LF-0412-1',
    });
  });

  it('is refused by field', async () => {
    const wrong = await post([{ ...taken, operation: 'operation-2', quantity: 2 }]);
    expect(wrong.status).toBe(422);
    expect(await wrong.json()).toMatchObject({
      code: 'bad-movement',
      detail: "quantity of 'tip-orifice-6' is 2; taken takes less than 0",
    });
    const bad = await post([{ ...taken, part: '../x', quantity: 0.5, why: 'stolen' }]);
    expect(await bad.json()).toMatchObject({
      code: 'bad-request',
      problems: [
        { field: 'movements.0.part' },
        { field: 'movements.0.quantity' },
        { field: 'movements.0.why' },
      ],
    });
    expect(server.reports).toEqual([]);
  });
});
