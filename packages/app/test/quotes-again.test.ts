import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Reproofs } from '../src/server/reproof/reproofs.ts';
import { listReproofs, moveReproof } from '../src/store/index.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

interface Round {
  id: string;
  edition: number;
  state: string;
  total: number;
  done: number;
  changed: number;
  askedBy: string;
}
interface Finding {
  quote: string;
  beforeCents: number;
  afterCents?: number;
  said: string[];
}

let server: TestServer;
const RIG = demoRig('light-cart', demoCatalogue(), demoShop()).raw as {
  items: { id: string; part: string; length?: string }[];
};
const GUN = RIG.items.find(({ id }) => id === 'gun')!.part;

const send = async <T>(method: string, path: string, body?: unknown) => {
  const answer = await server.app.request(path, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }),
  });
  expect(answer.status, path).toBeLessThan(300);
  return (await answer.json()) as T;
};
const rounds = async () => (await send<{ rounds: Round[] }>('GET', '/api/quotes-again')).rounds;
const findings = async (id: string) =>
  (await send<{ findings: Finding[] }>('GET', `/api/quotes-again/${id}`)).findings;
const part = (id: string) =>
  send<{ edition: number; document: { priceCents: number } }>('GET', `/api/parts/${id}`);

beforeAll(async () => {
  let tick = 0;
  server = await testServer(() => new Date(Date.parse('2026-03-03T09:00:00Z') + tick++).toISOString());
  await send('POST', '/api/jobs', { id: 'cart', rig: RIG, by: '' });
  for (let n = 0; n < 45; n++) await send('POST', '/api/quotes', { job: 'cart', by: '' });
}, 120_000);
afterAll(() => server.close());

describe('The open quotes proven again', () => {
  it('follow a dearer part by themselves, each with what it says now', async () => {
    const { edition, document } = await part(GUN);
    await send('PUT', `/api/parts/${GUN}`, {
      madeOn: edition,
      part: { ...document, priceCents: document.priceCents + 1000 },
      by: 'Dana',
    });
    await server.reproofs.idle();
    expect(server.reports).toEqual([]);
    const [round] = await rounds();
    expect(round).toMatchObject({
      state: 'done',
      total: 45,
      done: 45,
      changed: 45,
      askedBy: 'Dana',
      edition: 4,
    });
    const all = await findings(round!.id);
    expect(all.map(({ quote }) => quote)).toEqual(
      Array.from({ length: 45 }, (_, i) => `Q-${String(i + 1).padStart(4, '0')}`),
    );
    // A second method: the demo shop takes list prices without tax, so the quote rises by the part's ten dollars.
    for (const { beforeCents, afterCents, said } of all) {
      expect(afterCents! - beforeCents).toBe(1000);
      expect(said.join(' ')).toMatch(/\$10 more/);
    }
  });

  it('say nothing where nothing is different, and nothing of quotes that are closed', async () => {
    const { edition, document } = await part(GUN);
    await send('PUT', `/api/parts/${GUN}`, {
      madeOn: edition,
      part: { ...document, priceCents: document.priceCents - 1000 },
    });
    await server.reproofs.idle();
    const [round] = await rounds();
    expect(round).toMatchObject({ state: 'done', done: 45, changed: 0 });
    expect(await findings(round!.id)).toEqual([]);
    await server.records.save((t) =>
      t.updateTable('quotes').set({ state: 'declined' }).where('number', '!=', 'Q-0007').execute(),
    );
    await send('POST', '/api/quotes-again', { by: 'Robin' });
    await server.reproofs.idle();
    expect((await rounds())[0]).toMatchObject({ total: 1, done: 1, askedBy: 'Robin' });
  });

  it('go on after a new start with a round that was broken off', async () => {
    const [last] = await listReproofs(server.records.db, 1);
    await server.records.save((t) =>
      moveReproof(t, last!.id, { state: 'running', done: 0 }, '2026-03-03T08:00:00.000Z'),
    );
    const reports: unknown[] = [];
    const first = await send<{ head: { version: number } }>('GET', '/start.json');
    const started = new Reproofs({
      records: server.records,
      shelf: server.shelf,
      now: () => '2026-03-03T09:00:00.000Z',
      report: (error) => reports.push(error),
    });
    started.resume();
    await started.idle();
    await started.close();
    expect(reports).toEqual([]);
    expect((await rounds())[0]).toMatchObject({ state: 'done', done: 1, edition: first.head.version });
  });
});
