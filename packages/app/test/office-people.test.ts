import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { People } from '../src/server/people.ts';
import { testServer, type TestServer } from './desk-server.ts';

const PASSWORD = 'forty green barrels';
const OWNER = 'dana@shop.example';
let server: TestServer;
let clock = Date.parse('2026-03-03T09:00:00Z');
let owner = '';

interface Row {
  readonly id: string;
  readonly email: string;
  readonly role: string;
  readonly signedIn: number;
  readonly hasPassword: boolean;
}
interface Made {
  readonly person: Row;
  readonly link: { readonly path: string };
}

const ask = (method: string, path: string, body?: unknown, Cookie = owner) =>
  server.app.request(path, {
    method,
    headers: { Cookie, ...(body === undefined ? {} : { 'Content-Type': 'application/json' }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
const form = (path: string, values: Record<string, string>) =>
  server.app.request(path, { method: 'POST', body: new URLSearchParams(values) });
const cookieOf = (answer: Response) => answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';
const rows = async () => ((await (await ask('GET', '/api/people')).json()) as { people: Row[] }).people;
const code = async (answer: Response) => ((await answer.json()) as { code: string }).code;

beforeAll(async () => {
  server = await testServer(
    () => new Date(clock).toISOString(),
    (records) => new People(records, () => clock),
    true,
  );
});
afterAll(() => server.close());

describe('The people of the office', () => {
  it('begin with an owner, made by whoever works here alone; from then on everybody signs in', async () => {
    expect((await ask('GET', '/api/jobs')).status).toBe(200);
    expect(await (await ask('GET', '/api/me')).json()).toEqual({
      name: '',
      email: '',
      role: 'owner',
      alone: true,
    });
    const first = { name: 'Dana', email: OWNER };
    expect(await code(await ask('POST', '/api/people', { ...first, role: 'builder' }))).toBe('last-owner');
    const made = await ask('POST', '/api/people', { ...first, role: 'owner' });
    expect(made.status).toBe(201);
    expect((await ask('GET', '/api/jobs')).status).toBe(401);
    expect((await ask('POST', '/api/people', { ...first, role: 'owner' })).status).toBe(401);
    const { link } = (await made.json()) as Made;
    expect((await form(link.path, { next: 'short' })).status).toBe(422);
    const chosen = await form(link.path, { next: PASSWORD });
    expect(chosen.status).toBe(303);
    owner = cookieOf(chosen);
    expect(await (await ask('GET', '/api/me')).json()).toMatchObject({ name: 'Dana', alone: false });
  });

  it('are added with a link that opens once, and not for a second day', async () => {
    const add = (email: string) => ask('POST', '/api/people', { name: 'Robin', email, role: 'builder' });
    const made = (await (await add('Robin@shop.example')).json()) as Made;
    expect(await code(await add('robin@shop.example'))).toBe('person-exists');
    expect((await add('robin')).status).toBe(422);
    expect((await form('/sign-in', { email: 'robin@shop.example', password: '' })).status).toBe(401);
    clock += 25 * 3600_000;
    expect((await server.app.request(made.link.path)).status).toBe(410);
    expect((await form(made.link.path, { next: PASSWORD })).status).toBe(410);
    const again = (await (await ask('POST', `/api/people/${made.person.id}/password-link`)).json()) as {
      path: string;
    };
    expect((await server.app.request(again.path)).status).toBe(200);
    const both = await Promise.all([1, 2].map(async () => form(again.path, { next: PASSWORD })));
    expect(both.map((b) => b.status).sort()).toEqual([303, 410]);
    expect(await rows()).toMatchObject([
      { email: OWNER, hasPassword: true, signedIn: 1 },
      { email: 'robin@shop.example', hasPassword: true, signedIn: 1 },
    ]);
  });

  it('get another role at once, are signed out, and are let in again by a new password only', async () => {
    const answer = await form('/sign-in', { email: 'robin@shop.example', password: PASSWORD });
    const robin = cookieOf(answer);
    const { id } = (await rows())[1]!;
    const quote = async () => (await ask('GET', '/api/jobs/none/quote.pdf', undefined, robin)).status;
    expect(await quote()).toBe(404);
    expect((await ask('POST', `/api/people/${id}/role`, { role: 'shop-hand' })).status).toBe(200);
    expect(await quote()).toBe(403);
    expect((await ask('POST', `/api/people/${id}/role`, { role: 'king' })).status).toBe(422);
    expect((await ask('POST', `/api/people/${id}/sign-out`)).status).toBe(200);
    expect(await quote()).toBe(401);
    const link = (await (await ask('POST', `/api/people/${id}/password-link`)).json()) as { path: string };
    const there = cookieOf(await form('/sign-in', { email: 'robin@shop.example', password: PASSWORD }));
    expect((await form(link.path, { next: 'sixty blue barrels' })).status).toBe(303);
    expect((await ask('GET', '/api/me', undefined, there)).status).toBe(401);
    expect((await form('/sign-in', { email: 'robin@shop.example', password: PASSWORD })).status).toBe(401);
  });

  it('never lose their last owner, and what they did stays', async () => {
    const [dana, robin] = await rows();
    expect(await code(await ask('DELETE', `/api/people/${dana!.id}`))).toBe('last-owner');
    expect(await code(await ask('POST', `/api/people/${dana!.id}/role`, { role: 'support' }))).toBe(
      'last-owner',
    );
    expect((await ask('DELETE', `/api/people/${robin!.id}`)).status).toBe(200);
    expect(await code(await ask('DELETE', `/api/people/${robin!.id}`))).toBe('no-such-person');
    const book = (await (await ask('GET', '/api/doings?limit=200')).json()) as {
      doings: { who: string; did: string; what: string }[];
    };
    expect(book.doings.map((d) => d.what)).toEqual(
      expect.arrayContaining(['Robin, shop-hand', 'Robin: builder, now shop-hand', 'Robin, builder']),
    );
    expect(book.doings.filter((d) => d.who === 'Robin').length).toBeGreaterThan(2);
    expect(JSON.stringify(book)).not.toMatch(/new-password\//);
    expect(server.reports).toEqual([]);
  });

  it('end their sign-in after a week', async () => {
    const { expiresAt } = await server.records.db
      .selectFrom('sessions')
      .select('expiresAt')
      .executeTakeFirstOrThrow();
    const days = (Date.parse(expiresAt) - Date.now()) / 86_400_000;
    expect(days).toBeGreaterThan(6.9);
    expect(days).toBeLessThan(7.1);
    const past = new Date(Date.now() - 1000).toISOString();
    await server.records.db
      .withTables<{ sessions: { expiresAt: string } }>()
      .updateTable('sessions')
      .set({ expiresAt: past })
      .execute();
    expect((await ask('GET', '/api/me')).status).toBe(401);
  });
});
