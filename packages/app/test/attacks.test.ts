import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROLES, ROLE_TABLE } from '../src/server/role-table.ts';
import { targets, type Target } from './attack-bodies.ts';
import { attackedShop, emailOf, leakOf, PASSWORD, type AttackedShop } from './attack-shop.ts';
import { postgresServer, type PostgresServer } from './postgres-server.ts';

const SCRIPTS = [
  '<script>hit()</script>',
  '"><img src=x onerror=hit()>',
  'javascript:hit()',
  '</title><svg onload=hit()>',
];
const SQL = [
  "'; drop table jobs; --",
  "' or '1'='1",
  "x' union select password from passwords --",
  '"; delete from people; --',
  '%_\\',
  "\\'; select pg_sleep(9); --",
];
const ODD = [
  '\u0000',
  'a\u0000b',
  '\ud800',
  '\u202e',
  '__proto__',
  'constructor',
  '../../etc/passwd',
  '%00',
  '\r\nSet-Cookie: a=b',
  '',
  ' ',
  'x'.repeat(70_000),
];

let database: PostgresServer;
const shops: AttackedShop[] = [];
const kinds = ['SQLite', 'PostgreSQL'] as const;
const shopOn = (kind: (typeof kinds)[number]) => shops[kinds.indexOf(kind)]!;
let routes: readonly Target[];

beforeAll(async () => {
  database = await postgresServer();
  shops.push(await attackedShop(), await attackedShop(await database.newDatabase()));
  routes = await targets(shops[0]!);
}, 120_000);
afterAll(async () => {
  for (const { server } of shops) await server.close();
  database?.remove();
});

/** Sends to a route what must do no harm, and returns the answer. */
async function unharmed(
  shop: AttackedShop,
  secrets: readonly string[],
  ...sent: Parameters<AttackedShop['send']>
) {
  const answer = await shop.send(...sent);
  const where = `${sent[0]} ${sent[1].slice(0, 100)} ${JSON.stringify(sent[2]?.body ?? '').slice(0, 200)}`;
  expect(await leakOf(answer.clone(), secrets), where).toBeUndefined();
  return answer;
}

describe.each(kinds)('On %s', (kind) => {
  it.each([
    ['SQL', SQL],
    ['script', SCRIPTS],
    ['odd text', ODD],
  ])(
    '%s in every field and address of every route does no harm',
    async (_, texts) => {
      const shop = shopOn(kind);
      const secrets = await shop.secrets();
      const { db } = shop.server.records;
      const counts = async () =>
        Promise.all(
          (['people', 'passwords', 'jobs', 'job_documents'] as const).map(
            async (t) => (await db.selectFrom(t).selectAll().execute()).length,
          ),
        );
      const before = await counts();
      for (const text of texts)
        for (const { method, address, known, body } of routes) {
          if (method === 'DELETE') continue; // The one person that a known address could mean is the owner.
          const body1 = body(text);
          const given = { role: 'owner' as const, ...(body1 === undefined ? {} : { body: body1 }) };
          await unharmed(shop, secrets, method, address(text), given);
          if (!/\.pdf|\.html|sign-out|\/role/.test(known)) {
            const answer = await unharmed(shop, secrets, method, known, given);
            if (answer.headers.get('Content-Type')?.includes('html') === true)
              for (const script of SCRIPTS) expect(await answer.text()).not.toContain(script);
          }
        }
      const after = await counts();
      after.forEach((count, k) => expect(count).toBeGreaterThanOrEqual(before[k]!));
      expect(shop.server.reports).toEqual([]);
    },
    300_000,
  );
});

describe('Without the right to it', () => {
  it('no route changes anything, whatever fitting body is sent', async () => {
    const [shop] = shops;
    const { send, state } = shop!;
    const before = await state();
    let refused = 0;
    for (const { method, known, body } of routes) {
      const allowed = allowedAt(method, known);
      if (allowed === null) continue;
      for (const role of [undefined, ...ROLES.filter((r) => !allowed.includes(r))]) {
        const { status } = await send(method, known, {
          role,
          ...(method === 'GET' ? {} : { body: body('x') ?? {} }),
        });
        expect(role === undefined ? [401] : [403], `${method} ${known} as ${role}`).toContain(status);
        refused++;
      }
    }
    expect(refused).toBeGreaterThan(30);
    expect(await state()).toBe(before);
  });

  it('no page of another site is answered, at any route that changes something, nor under any other name', async () => {
    const [shop] = shops;
    const before = await shop!.state();
    const foreign: Record<string, string>[] = [
      { Origin: 'http://elsewhere.example' },
      { Origin: 'null' },
      { Origin: 'http://localhost:1' },
      { 'Sec-Fetch-Site': 'cross-site' },
      { 'Sec-Fetch-Site': 'same-site' },
    ];
    const forms = ['/sign-in', '/sign-out', '/password', '/set-up/x', '/new-password/x'];
    const changing = [
      ...routes.filter(({ method }) => method !== 'GET').map(({ method, known }) => [method, known] as const),
      ...forms.map((path) => ['POST', path] as const),
    ];
    for (const [method, path] of changing)
      for (const headers of foreign) {
        const answer = await shop!.send(method, path, { role: 'owner', headers, body: {} });
        expect(answer.status, `${method} ${path} ${JSON.stringify(headers)}`).toBe(403);
        expect(await answer.json()).toMatchObject({ code: 'foreign-page' });
      }
    for (const { method, known } of routes) {
      const answer = await shop!.send(method, `http://elsewhere.example${known}`, { role: 'owner' });
      expect(await answer.json(), known).toMatchObject({ code: 'foreign-page' });
    }
    expect(await shop!.state()).toBe(before);
  });
});

function allowedAt(method: string, path: string): readonly string[] | null {
  const found = Object.entries(ROLE_TABLE).find(([route]) => {
    const [verb, pattern] = route.split(' ') as [string, string];
    return (
      verb === method &&
      new RegExp(`^${pattern.replace(/:\w+/g, '[^/]+').replaceAll('.', '\\.')}$`).test(path)
    );
  });
  return found![1];
}

describe('A forged, expired or used key', () => {
  it('opens no session', async () => {
    const [shop, other] = shops;
    const cookie = shop!.cookies.get('owner')!;
    const [name = '', value = ''] = cookie.split('=');
    const [token = '', signature = ''] = decodeURIComponent(value).split('.');
    const foreign = other!.cookies.get('owner')!;
    const forged = [
      '',
      'x',
      `${token}.`,
      `.${signature}`,
      token,
      `${token}.${signature.startsWith('A') ? 'B' : 'A'}${signature.slice(1)}`,
      `${token.slice(0, -1)}${token.endsWith('x') ? 'y' : 'x'}.${signature}`,
      `${'a'.repeat(32)}.${signature}`,
      `${token}.${signature}.${signature}`,
      '../../x',
      "' or 1=1 --",
      'x'.repeat(20_000),
    ].map((v) => `${name}=${encodeURIComponent(v)}`);
    for (const Cookie of [...forged, foreign, `${cookie}x`, cookie.replace('=', '=='), 'a;b;c', '=;='])
      expect(
        (await shop!.send('GET', '/api/people', { headers: { Cookie } })).status,
        Cookie.slice(0, 80),
      ).toBe(401);
    expect((await shop!.send('GET', '/api/people', { headers: { Cookie: cookie } })).status).toBe(200);
  });

  it('chooses no password and makes no owner', async () => {
    const { server, send, state } = shops[0]!;
    const { person } = (await (
      await send('POST', '/api/people', {
        role: 'owner',
        body: { name: 'New', email: 'new@shop.example', role: 'owner' },
      })
    ).json()) as { person: { id: string } };
    const make = async () =>
      (
        (await (await send('POST', `/api/people/${person.id}/password-link`, { role: 'owner' })).json()) as {
          path: string;
        }
      ).path;
    const old = await make();
    const link = await make();
    const { token: digest } = await server.records.db
      .selectFrom('one_time_links')
      .select('token')
      .executeTakeFirstOrThrow();
    const before = await state();
    const post = (path: string) =>
      send('POST', path, {
        headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
        body: new URLSearchParams({ next: PASSWORD, name: 'Eve', email: 'eve@shop.example' }).toString(),
      });
    const key = link.split('/').at(-1)!;
    const forged = [
      'x',
      digest,
      `${key}x`,
      key.slice(1),
      key.toUpperCase(),
      `${key}%00`,
      "' or 1=1 --",
      '%2e%2e',
      'x'.repeat(5000),
    ];
    for (const path of [
      old,
      ...forged.map((k) => `/new-password/${k}`),
      ...[...forged, key].map((k) => `/set-up/${k}`),
    ])
      expect([401, 404, 410, 422], path.slice(0, 90)).toContain((await post(path)).status);
    expect(await state()).toBe(before);
    await server.records.db
      .updateTable('one_time_links')
      .set({ expires_at: '2026-03-03T08:59:59.000Z' } as never)
      .execute();
    expect((await post(link)).status).toBe(410);
    expect(await state()).toBe(before);
    const good = await make();
    expect((await post(good)).status).toBe(303);
    const after = await state();
    expect((await post(good)).status).toBe(410);
    expect(await state()).toBe(after);
  });
});

describe('A body that is none', () => {
  it('too large, too deep or malformed is refused and changes nothing', async () => {
    const shop = shops[0]!;
    const secrets = await shop.secrets();
    const before = await shop.state();
    const deep = (n: number, open = '[', close = ']') => open.repeat(n) + close.repeat(n);
    const edit = (value: string) =>
      `{"base":1,"edits":[{"operation":"operation-9","about":"x","puts":[{"path":["rig","x"],"value":${value}}]}]}`;
    const bodies = [
      '',
      '{',
      '[]',
      'null',
      '1',
      '"x"',
      '{"a":1e999}',
      '\u0000',
      '{"__proto__":{"polluted":true}}',
      '{}{}',
      'NaN',
      '\ufeff{}',
      deep(90_000),
      deep(90_000, '{"a":', '}').replace('}', '1}'),
      edit(deep(90_000)),
      edit(deep(40_000, '{"a":', '}').replace('}', '1}')),
      edit('1'.repeat(1_999_000)),
      edit(`"${'x'.repeat(2_100_000)}"`),
      `{"rig":${deep(90_000)}}`,
      `{"id":"deep","rig":{"a":${deep(90_000)}}}`,
    ];
    const types = [
      'application/json',
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data',
      'x/y; charset=\\',
      '',
    ];
    for (const { method, known, needsBody } of routes) {
      if (!needsBody) continue;
      for (const [k, text] of bodies.entries())
        for (const type of k < 3 ? types : types.slice(0, 1)) {
          const answer = await unharmed(shop, secrets, method, known, {
            role: 'owner',
            headers: { 'Content-Type': type },
            body: text,
          });
          expect(answer.status, `${method} ${known} ${text.slice(0, 60)}`).toBeGreaterThanOrEqual(400);
        }
    }
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    expect(await shop.state()).toBe(before);
    expect(shop.server.reports).toEqual([]);
  }, 120_000);

  it('the address of a file outside the page opens none', async () => {
    const shop = shops[0]!;
    const climbs = [
      '../',
      '..%2f',
      '%2e%2e/',
      '%2e%2e%2f',
      '..%5c',
      '..\\',
      '....//',
      '%252e%252e%252f',
      '..%c0%af',
      './../',
      '%00../',
    ];
    for (const climb of climbs)
      for (const start of ['/', '/assets/', '/jobs/', '//', '/api/../'])
        for (const file of [
          'etc/passwd',
          'package.json',
          'src/server/app.ts',
          'records.sqlite',
          'dist/web/../../package.json',
        ])
          for (const times of [1, 2, 4, 9]) {
            const answer = await shop.send('GET', start + climb.repeat(times) + file, { role: 'owner' });
            const text = await answer.text();
            expect(answer.status, start + climb + file).toBeLessThan(500);
            expect(text, start + climb + file).not.toMatch(
              /root:|"workspaces"|"dependencies"|serverApp|SQLite format/,
            );
          }
  });
});

describe('What the server says', () => {
  it('holds no password, hash, session or link, in the book and in what it reports', async () => {
    const shop = shops[0]!;
    const { server, send } = shop;
    await shop.people.signIn(emailOf('support'), 'a wrong password that nobody may read');
    const pages = await Promise.all(
      routes
        .filter((r) => r.method === 'GET' && !r.known.includes('.pdf'))
        .map(async (r) => (await send('GET', r.known, { role: 'owner' })).text()),
    );
    const said = JSON.stringify(server.reports) + pages.join('\n');
    const sessions = await server.records.db
      .withTables<{ sessions: { token: string } }>()
      .selectFrom('sessions')
      .select('token')
      .execute();
    for (const secret of [
      ...(await shop.secrets()),
      ...sessions.map((s) => s.token),
      PASSWORD,
      'a wrong password that',
    ])
      expect(said).not.toContain(secret);
  });
});
