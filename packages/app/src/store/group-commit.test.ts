import { afterAll, beforeAll, expect, it } from 'vitest';
import { postgresServer, type PostgresServer } from '../../test/postgres-server.ts';
import { editJob, makeJob, openJob, openRecords, Refusal } from './index.ts';

const DOING = { by: 'Dana', at: '2026-03-03T10:10:00.000Z' };
const ROUNDS = 15;
let server: PostgresServer;
beforeAll(async () => {
  server = await postgresServer();
}, 60_000);
afterAll(() => server.remove());

it('Saves of two processes that meet crosswise are all made or refused, none is lost to a deadlock', async () => {
  const place = await server.newDatabase();
  const [here, there] = [await openRecords(place), await openRecords(place)];
  for (const id of ['one', 'two']) await here.save((t) => makeJob(t, id, { rig: {}, notes: '' }, DOING));
  let made = 0;
  const edit = async (records: typeof here, id: string, operation: string) => {
    for (;;) {
      const { version } = await openJob(records.db, id);
      try {
        const put = { operation, about: 'Notes', puts: [{ path: ['notes'], value: operation }] };
        await records.save((t) => editJob(t, id, version, [put], DOING));
        return made++;
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
      }
    }
  };
  for (let n = 0; n < ROUNDS; n++)
    await Promise.all([
      edit(here, 'one', `here-one-${n}`),
      edit(here, 'two', `here-two-${n}`),
      edit(there, 'two', `there-two-${n}`),
      edit(there, 'one', `there-one-${n}`),
    ]);
  expect(made).toBe(4 * ROUNDS);
  expect((await openJob(here.db, 'one')).version).toBe(1 + 2 * ROUNDS);
  await here.close();
  await there.close();
}, 120_000);
