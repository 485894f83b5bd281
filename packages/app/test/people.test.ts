import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { People } from '../src/server/people.ts';
import { ROLES, ROLE_TABLE, type Role } from '../src/server/role-table.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

const PASSWORD = 'forty green barrels';
const emailOf = (role: string) => `${role}@shop.example`;
let server: TestServer;
let people: People;
let clock = Date.parse('2026-03-03T09:00:00Z');
const cookies = new Map<Role, string>();

const send = (method: string, path: string, headers: Record<string, string> = {}, body?: string) =>
  server.app.request(path, { method, headers, ...(body === undefined ? {} : { body }) });
const form = (path: string, values: Record<string, string>, headers: Record<string, string> = {}) =>
  send(
    'POST',
    path,
    { 'Content-Type': 'application/x-www-form-urlencoded', ...headers },
    new URLSearchParams(values).toString(),
  );
const signIn = (email: string, password: string) => form('/sign-in', { email, password });
const cookieOf = (answer: Response) =>
  answer.headers
    .getSetCookie()
    .map((c) => c.split(';')[0])
    .join('; ');

beforeAll(async () => {
  server = await testServer(undefined, (records) => (people = new People(records, () => clock)));
  for (const role of ROLES) {
    await people.add({ name: `The ${role}`, email: emailOf(role), role, password: PASSWORD });
    const answer = await signIn(emailOf(role), PASSWORD);
    expect(server.reports).toEqual([]);
    expect(answer.status).toBe(303);
    cookies.set(role, cookieOf(answer));
  }
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  const made = await send(
    'POST',
    '/api/jobs',
    { 'Content-Type': 'application/json', Cookie: cookies.get('builder')! },
    JSON.stringify({ id: 'cart', rig: raw, by: 'Somebody else' }),
  );
  expect(((await made.json()) as { changedBy: string }).changedBy).toBe('The builder');
}, 60_000);
afterAll(() => server.close());

/** Routes as the router holds them, without what runs before every one of them. */
const routes = () => [
  ...new Set(
    server.app.routes
      .filter(({ method, path }) => method !== 'ALL' || path !== '/*')
      .map(({ method, path }) => `${method} ${path}`),
  ),
];

describe('The table of roles', () => {
  it('names every route and no other', () => {
    expect(routes().sort()).toEqual(Object.keys(ROLE_TABLE).sort());
  });

  it('holds for every route, every role and nobody', async () => {
    let asked = 0;
    for (const [route, allowed] of Object.entries(ROLE_TABLE)) {
      const [verb, pattern] = route.split(' ') as [string, string];
      if (route === 'POST /sign-out') continue; // Asked below: it would sign the askers out.
      const method = verb === 'ALL' ? 'PATCH' : verb;
      const path = pattern.replace(':serial', 'CART-1').replace(/:\w+/, 'cart').replace('*', 'nothing');
      for (const role of [undefined, ...ROLES]) {
        const cookie = role === undefined ? {} : { Cookie: cookies.get(role)! };
        const { status } = await send(method, path, cookie);
        const where = `${route} as ${role ?? 'nobody'}: ${status}`;
        asked++;
        if (allowed === null) expect([200, 401, 404, 410], where).toContain(status);
        else if (role === undefined) expect([303, 401], where).toContain(status);
        else if (allowed.includes(role)) expect([303, 403], where).not.toContain(status);
        else expect(status, where).toBe(403);
      }
    }
    expect(asked).toBe((Object.keys(ROLE_TABLE).length - 1) * (ROLES.length + 1));
  });

  it('refuses a shop hand an edit and a price, and tells who is signed in', async () => {
    const Cookie = cookies.get('shop-hand')!;
    const edit = await send(
      'POST',
      '/api/jobs/cart/edits',
      { Cookie, 'Content-Type': 'application/json' },
      '{}',
    );
    expect(edit.status).toBe(403);
    expect(await edit.json()).toMatchObject({ code: 'not-allowed' });
    expect((await send('GET', '/api/jobs/cart/quote.pdf', { Cookie })).status).toBe(403);
    expect((await send('HEAD', '/api/jobs/cart/quote.pdf', { Cookie })).status).toBe(403);
    expect(await (await send('GET', '/api/me', { Cookie })).json()).toMatchObject({ role: 'shop-hand' });
    const described = await (await send('GET', '/api/openapi.json', { Cookie })).json();
    expect(described).toHaveProperty(['paths', '/api/me', 'get']);
  });

  it('is not slipped by with another spelling of the address', async () => {
    for (const path of ['/api/jobs/', '//api/jobs', '/api/%6Aobs', '/API/jobs', '/api/jobs/cart%2Fedits'])
      expect([303, 401], path).toContain((await send('GET', path)).status);
  });
});

describe('Signing in', () => {
  it('refuses a wrong password and nobody alike, and tells neither', async () => {
    const wrong = await signIn(emailOf('support'), 'not the password');
    const nobody = await signIn('nobody@shop.example', 'not the password');
    expect([wrong.status, nobody.status]).toEqual([401, 401]);
    // The address that was typed stands in its field again; all else is the same.
    const said = async (answer: Response, typed: string) => (await answer.text()).replaceAll(typed, '');
    expect(await said(wrong, emailOf('support'))).toBe(await said(nobody, 'nobody@shop.example'));
  });

  it('leads back to the page that was asked for, and to no page but ours', async () => {
    const asked = await send('GET', '/machines.html');
    expect(asked.headers.get('Location')).toBe('/sign-in?to=%2Fmachines.html');
    const then = async (to: string) => {
      const path = `/sign-in?to=${encodeURIComponent(to)}`;
      const answer = await form(path, { email: emailOf('builder'), password: PASSWORD });
      return [answer.status, answer.headers.get('Location')];
    };
    expect(await then('/machines.html')).toEqual([303, '/machines.html']);
    for (const to of ['//elsewhere.example', 'https://elsewhere.example', '/\\elsewhere.example', '/a/b', ''])
      expect(await then(to), to).toEqual([303, '/']);
    const page = await (await send('GET', '/sign-in')).text();
    expect(page).toMatch(/<form method="post">/);
  });

  it('closes after five wrong passwords, for the right one too, and opens after a quarter of an hour', async () => {
    const email = 'locked@shop.example';
    await people.add({ name: 'Locked', email, role: 'support', password: PASSWORD });
    const tries = await Promise.all(Array.from({ length: 8 }, async () => signIn(email, 'not the password')));
    expect(tries.map((t) => t.status).sort()).toEqual([401, 401, 401, 401, 401, 429, 429, 429]);
    expect((await signIn(email.toUpperCase(), PASSWORD)).status).toBe(429);
    clock += 16 * 60_000;
    expect((await signIn(email, PASSWORD)).status).toBe(303);
  });

  it('gives a cookie that no script and no other site can use, and refuses a forged one', async () => {
    const answer = await signIn(emailOf('owner'), PASSWORD);
    const [cookie = ''] = answer.headers.getSetCookie();
    expect(cookie).toMatch(/HttpOnly/i);
    expect(cookie).toMatch(/SameSite=Strict/i);
    const name = cookie.split('=')[0]!;
    for (const value of ['x', `${'a'.repeat(32)}.${'b'.repeat(44)}`])
      expect((await send('GET', '/api/jobs', { Cookie: `${name}=${value}` })).status).toBe(401);
  });

  it('refuses a form of another site, and one that is no form', async () => {
    const values = { email: emailOf('owner'), password: PASSWORD };
    expect((await form('/sign-in', values, { Origin: 'http://elsewhere.example' })).status).toBe(403);
    expect((await form('/sign-in', values, { Origin: 'null' })).status).toBe(403);
    const text = '<script>alert(1)</script>';
    const odd = await send('POST', '/sign-in', { 'Content-Type': 'multipart/form-data' }, text);
    expect(odd.status).toBe(401);
    expect(await odd.text()).not.toContain(text);
    expect((await form('/sign-in', { ...values, more: 'x'.repeat(2_100_000) })).status).toBe(413);
  });

  it('ends with sign-out, with a new password elsewhere, and when the person is taken out', async () => {
    const email = 'leaving@shop.example';
    await people.add({ name: 'Leaving', email, role: 'builder', password: PASSWORD });
    const [here, there] = [cookieOf(await signIn(email, PASSWORD)), cookieOf(await signIn(email, PASSWORD))];
    const state = async (Cookie: string) => (await send('GET', '/api/me', { Cookie })).status;
    // Asked twice: what was found the first time must not outlast what ends it.
    for (const cookie of [here, there, there]) expect(await state(cookie)).toBe(200);
    const next = 'sixty blue barrels';
    expect((await form('/password', { password: PASSWORD, next: 'short' }, { Cookie: here })).status).toBe(
      422,
    );
    expect((await form('/password', { password: 'wrong wrong wrong', next }, { Cookie: here })).status).toBe(
      401,
    );
    const changed = await form('/password', { password: PASSWORD, next }, { Cookie: here });
    expect(changed.status).toBe(303);
    expect(await state(there)).toBe(401);
    expect((await signIn(email, PASSWORD)).status).toBe(401);
    const again = cookieOf(await signIn(email, next));
    for (let i = 0; i < 2; i++) expect(await state(again)).toBe(200);
    expect((await form('/sign-out', {}, { Cookie: again })).status).toBe(303);
    expect(await state(again)).toBe(401);
    const last = cookieOf(await signIn(email, next));
    for (let i = 0; i < 2; i++) expect(await state(last)).toBe(200);
    await people.remove(email);
    expect(await state(last)).toBe(401);
  });

  it('lasts anew when it is used a day later, is over when it was not used, and follows the role', async () => {
    const email = 'seldom@shop.example';
    await people.add({ name: 'Seldom', email, role: 'builder', password: PASSWORD });
    const Cookie = cookieOf(await signIn(email, PASSWORD));
    const me = async () => {
      const answer = await send('GET', '/api/me', { Cookie });
      return answer.status === 200 ? ((await answer.json()) as { role: string }).role : answer.status;
    };
    const { db } = server.records;
    const { id } = (await people.list()).find((person) => person.email === email)!;
    const DAY = 24 * 3600 * 1000;
    const session = db.updateTable('sessions').where('userId', '=', id);
    const lastsTill = (ms: number) => session.set({ expiresAt: new Date(ms).toISOString() }).execute();
    expect(await me()).toBe('builder');
    await lastsTill(Date.now() + 5 * DAY);
    expect(await me()).toBe('builder');
    const row = db.selectFrom('sessions').select('expiresAt').where('userId', '=', id);
    const { expiresAt } = await row.executeTakeFirstOrThrow();
    expect(Date.parse(expiresAt)).toBeGreaterThan(Date.now() + 6.9 * DAY);
    await db.updateTable('people').set({ role: 'support' }).where('id', '=', id).execute();
    expect(await me()).toBe('support');
    await lastsTill(Date.now() - 1000);
    expect(await me()).toBe(401);
  });

  it('keeps no password that can be read, and one owner at least', async () => {
    const rows = await server.records.db.selectFrom('passwords').selectAll().execute();
    expect(rows.length).toBeGreaterThan(3);
    expect(JSON.stringify(rows)).not.toContain(PASSWORD);
    await expect(people.remove(emailOf('owner'))).rejects.toThrow('only owner');
    await expect(
      people.add({ name: 'Two', email: emailOf('owner'), role: 'support', password: PASSWORD }),
    ).rejects.toThrow('already');
  });

  it('reports nothing unforeseen', () => expect(server.reports).toEqual([]));
});
