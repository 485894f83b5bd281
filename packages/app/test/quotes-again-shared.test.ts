import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Reproofs } from '../src/server/reproof/reproofs.ts';
import { workByServer } from '../src/server/reproof/work-by-server.ts';
import { listReproofs } from '../src/store/index.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';
import { postgresServer, type PostgresServer } from './postgres-server.ts';
import { started } from './started-server.ts';

const QUOTES = 65;
let database: PostgresServer;
let place: string;
let server: TestServer;
let clock = () => new Date().toISOString();

beforeAll(async () => {
  database = await postgresServer();
  place = await database.newDatabase();
  server = await testServer(() => clock(), undefined, false, place);
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  const send = (path: string, body: unknown) =>
    server.app.request(path, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
    });
  await send('/api/jobs', { id: 'cart', rig: raw, by: '' });
  expect((await send('/api/quotes', { job: 'cart', by: '' })).status).toBe(201);
  // The same quote under other numbers: what is tested is who proves them.
  const { records } = server;
  const quote = await records.db.selectFrom('quotes').selectAll().executeTakeFirstOrThrow();
  const revision = await records.db.selectFrom('quote_revisions').selectAll().executeTakeFirstOrThrow();
  for (let n = 2; n <= QUOTES; n++) {
    const number = `Q-${String(n).padStart(4, '0')}`;
    await records.save(async (t) => {
      await t
        .insertInto('quotes')
        .values({ ...quote, number, count: n })
        .execute();
      await t
        .insertInto('quote_revisions')
        .values({ ...revision, quote: number })
        .execute();
    });
  }
}, 120_000);
afterAll(async () => {
  await server?.close();
  database?.remove();
});

const last = async () => (await listReproofs(server.records.db, 1))[0]!;

it('Two processes on one database: a round asked of both goes through all quotes once', async () => {
  const reports: unknown[] = [];
  const { records, shelf } = server;
  const other = new Reproofs({ records, shelf, now: () => clock(), report: (error) => reports.push(error) });
  // Asked of both at once, several times over.
  await Promise.all([1, 2, 3].flatMap((n) => [other.ask(`Robin ${n}`), server.reproofs.ask(`Dana ${n}`)]));
  await other.idle();
  await server.reproofs.idle();
  const rounds = await listReproofs(records.db, 20);
  for (const round of rounds) expect(round).toMatchObject({ state: 'done', total: QUOTES, done: QUOTES });
  expect(rounds.length).toBeLessThan(6);
  await other.close();
  expect([...reports, ...server.reports]).toEqual([]);
}, 180_000);

it('What a killed process leaves is proven by another, each quote once', async () => {
  // Nobody here takes it up before the other process is killed.
  await server.reproofs.close();
  const { records, shelf } = server;
  const gun = demoRig('light-cart', demoCatalogue(), demoShop()).rig.items.get('gun')!.part.id;
  const { process: child, address } = await started(place);
  try {
    const part = `${address}api/parts/${gun}`;
    const opened = (await (await fetch(part)).json()) as {
      edition: number;
      document: { priceCents: number };
    };
    const document = { ...opened.document, priceCents: opened.document.priceCents + 1000 };
    const dearer = await fetch(part, {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ madeOn: opened.edition, part: document, by: 'Dana' }),
    });
    expect(dearer.status).toBe(200);
    for (let n = 0; n < 1200 && (await last()).state !== 'running'; n++) await wait(25);
    child.kill('SIGKILL');
    await once(child, 'exit');
    expect((await last()).state).toBe('running');
    // Later, when it is clear that nobody moves it.
    clock = () => new Date(Date.now() + 300_000).toISOString();
    const after = new Reproofs({ records, shelf, now: clock, report: (e) => server.reports.push(e) });
    after.resume();
    for (let n = 0; n < 600 && (await last()).state !== 'done'; n++) await wait(100);
    const round = await last();
    expect(round).toMatchObject({ state: 'done', done: QUOTES, changed: QUOTES });
    const rows = await records.db
      .selectFrom('reproof_findings')
      .select('quote')
      .where('reproof_id', '=', round.id)
      .execute();
    expect(new Set(rows.map((r) => r.quote)).size).toBe(QUOTES);
    expect(rows.length).toBe(QUOTES);
    await after.close();
  } finally {
    child.kill('SIGKILL');
  }
  expect(server.reports).toEqual([]);
}, 240_000);

const nothingToDo = (reports: unknown[]) => ({
  next: () => Promise.resolve(false),
  left: () => Promise.resolve(false),
  report: (error: unknown) => void reports.push(error),
});

it('Processes that begin at once on a new database all work, and all end', async () => {
  for (let round = 0; round < 8; round++) {
    const address = await database.newDatabase();
    const reports: unknown[] = [];
    const queues = Array.from({ length: 6 }, () => workByServer(address, nothingToDo(reports)));
    for (const queue of queues) queue.wake();
    await Promise.all(queues.map((queue) => queue.idle()));
    await Promise.all(queues.map((queue) => queue.close()));
    expect(reports).toEqual([]);
  }
}, 120_000);

it('A queue whose database refuses it says so and ends all the same', async () => {
  const reports: unknown[] = [];
  const address = (await database.newDatabase()).replace(/[^/]+$/, 'nowhere');
  const queue = workByServer(address, nothingToDo(reports));
  queue.wake();
  await queue.close();
  expect(reports.map(String).join()).toMatch(/"nowhere" does not exist/);
}, 60_000);
