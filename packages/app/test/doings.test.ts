import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { People } from '../src/server/people.ts';
import { openRecords } from '../src/store/index.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';
import { postgresServer } from './postgres-server.ts';

const PASSWORD = 'forty green barrels';
const OWNER = 'dana@shop.example';
const BUILDER = 'robin@shop.example';
interface Line {
  readonly id: string;
  readonly who: string;
  readonly did: string;
  readonly aboutKind: string;
  readonly aboutId: string;
  readonly what: string;
}
let server: TestServer;
let people: People;
let clock = Date.parse('2026-03-03T09:00:00Z');

const signIn = (email: string, password: string) =>
  server.app.request('/sign-in', { method: 'POST', body: new URLSearchParams({ email, password }) });
const cookieOf = async (email: string) =>
  (await signIn(email, PASSWORD)).headers.getSetCookie()[0]!.split(';')[0]!;
const post = (path: string, Cookie: string, body: unknown) =>
  server.app.request(path, {
    method: 'POST',
    headers: { Cookie, 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
const book = async (query = '') => {
  const answer = await server.app.request(`/api/doings?${query}`, { headers: { Cookie: owner } });
  return (await answer.json()) as { doings: Line[]; next?: string };
};
let owner: string;
let builder: string;

beforeAll(async () => {
  server = await testServer(
    () => new Date(clock).toISOString(),
    (records) => (people = new People(records, () => clock)),
  );
  await people.add({ name: 'Dana', email: OWNER, role: 'owner', password: PASSWORD });
  await people.add({ name: 'Robin', email: BUILDER, role: 'builder', password: PASSWORD });
  owner = await cookieOf(OWNER);
  builder = await cookieOf(BUILDER);
}, 60_000);
afterAll(() => server.close());

describe('The book of who did what', () => {
  it('has a line for what was made and changed, with person, job and words', async () => {
    clock += 1000;
    const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
    expect((await post('/api/jobs', builder, { id: 'cart', rig: raw })).status).toBe(201);
    clock += 1000;
    const puts = [{ path: ['notes'], value: 'Paint it green' }];
    const edits = [{ operation: 'operation-1', about: 'Notes', puts }];
    expect((await post('/api/jobs/cart/edits', builder, { base: 1, edits })).status).toBe(200);
    expect((await book('about=cart')).doings).toMatchObject([
      {
        who: 'Robin',
        email: BUILDER,
        role: 'builder',
        aboutKind: 'jobs',
        did: 'Change a job',
        what: 'Notes',
      },
      { who: 'Robin', did: 'Make a job of a rig', aboutId: 'cart', at: '2026-03-03T09:00:01.000Z' },
    ]);
  });

  it('has no line for what was refused, only read, or changed nothing', async () => {
    const before = (await book()).doings.length;
    expect((await post('/api/jobs', builder, { id: 'cart', rig: {} })).status).toBe(409);
    const stale = { base: 1, edits: [{ operation: 'operation-2', about: 'x', puts: [{ path: ['notes'] }] }] };
    expect((await post('/api/jobs/cart/edits', builder, stale)).status).toBe(409);
    expect((await post('/api/jobs', builder, { id: 'X' })).status).toBe(422);
    const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
    expect((await post('/api/quote.pdf', builder, { rig: raw })).status).toBe(200);
    await server.app.request('/api/jobs/cart', { headers: { Cookie: builder } });
    expect((await book()).doings).toHaveLength(before);
  });

  it('tells of sign-in, wrong passwords and the lock, and keeps no password', async () => {
    for (let n = 0; n < 7; n++) await signIn(BUILDER, `wrong secret ${n}`);
    const wrong = (await book(`email=${BUILDER}`)).doings.filter((d) => d.what.startsWith('Wrong'));
    expect(wrong).toHaveLength(5);
    expect(wrong.filter((d) => d.what.includes('closed'))).toHaveLength(1);
    for (let n = 0; n < 30; n++) await signIn(`${PASSWORD} ${n}`, 'x');
    const everything = (await book('limit=200')).doings;
    expect(everything.filter((d) => d.what === 'An address that nobody has')).toHaveLength(5);
    expect(everything.filter((d) => d.did === 'Sign in' && d.what === '')).toHaveLength(2);
    expect(JSON.stringify(everything)).not.toMatch(/secret|barrels/);
  });

  it('is read by page and by day, by an owner alone', async () => {
    clock += 24 * 3600_000;
    owner = await cookieOf(OWNER);
    expect((await book('from=2026-03-04&until=2026-03-05T00:00:00.000Z')).doings).toMatchObject([
      { who: 'Dana', did: 'Sign in' },
    ]);
    const all = (await book('limit=200')).doings.map((d) => d.id);
    const paged: string[] = [];
    for (let after = ''; ;) {
      const page = await book(`limit=3${after === '' ? '' : `&after=${after}`}`);
      paged.push(...page.doings.map((d) => d.id));
      if (page.next === undefined) break;
      after = page.next;
    }
    expect(paged).toEqual(all);
    const asked = await server.app.request('/api/doings', { headers: { Cookie: builder } });
    expect(asked.status).toBe(403);
    const bad = await server.app.request('/api/doings?from=today', { headers: { Cookie: owner } });
    expect(bad.status).toBe(422);
    expect(server.reports).toEqual([]);
  });
});

it('Two processes on one PostgreSQL count wrong passwords together and know the same sessions', async () => {
  const database = await postgresServer();
  try {
    const place = await database.newDatabase();
    const [here, there] = [await openRecords(place), await openRecords(place)];
    const [one, two] = [new People(here, () => clock), new People(there, () => clock)];
    await one.add({ name: 'Dana', email: OWNER, role: 'owner', password: PASSWORD });
    const tries = await Promise.all([one, two, one, two, one, two, one].map((p) => p.signIn(OWNER, 'wrong')));
    expect(tries.filter((t) => !t.ok && t.locked)).toHaveLength(2);
    clock += 16 * 60_000;
    const answer = await one.signIn(OWNER, PASSWORD);
    const Cookie = answer.ok ? answer.headers.getSetCookie()[0]!.split(';')[0]! : '';
    expect(await two.signedIn(new Headers({ Cookie }))).toMatchObject({ name: 'Dana' });
    await here.close();
    await there.close();
  } finally {
    database.remove();
  }
}, 60_000);
