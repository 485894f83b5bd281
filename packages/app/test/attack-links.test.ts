import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { attackedShop, leakOf, type AttackedShop } from './attack-shop.ts';
import { postgresServer, type PostgresServer } from './postgres-server.ts';

const TEXTS = [
  "'; drop table quotes; --",
  '<script>hit()</script>',
  '"><img src=x onerror=hit()>',
  'a\u0000b',
  '\u0000',
  '\ud800',
  '__proto__',
  'x'.repeat(100_000),
];
const FORMS = ['accept', 'decline', 'ask'];

let database: PostgresServer;
const shops: AttackedShop[] = [];
const kinds = ['SQLite', 'PostgreSQL'] as const;
const shopOn = (kind: (typeof kinds)[number]) => shops[kinds.indexOf(kind)]!;

beforeAll(async () => {
  database = await postgresServer();
  shops.push(await attackedShop(), await attackedShop(await database.newDatabase()));
}, 120_000);
afterAll(async () => {
  for (const { server } of shops) await server.close();
  database?.remove();
});

/** A quote that was sent; the path of its link. */
async function sentQuote({ send }: AttackedShop) {
  const given = { role: 'owner' } as const;
  const made = await send('POST', '/api/quotes', { ...given, body: { job: 'cart' } });
  const { number } = (await made.json()) as { number: string };
  const sent = await send('POST', `/api/quotes/${number}/revisions/A/links`, {
    ...given,
    body: { to: '', days: 30 },
  });
  const { address, link } = (await sent.json()) as { address: string; link: { id: string } };
  return { number, path: new URL(address).pathname, id: link.id };
}

const post = ({ send, later }: AttackedShop, path: string, fields: Record<string, string>) => {
  later();
  return send('POST', path, {
    headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams(fields).toString(),
  });
};

describe.each(kinds)('A customer link on %s', (kind) => {
  it('that is forged opens nothing and changes nothing', async () => {
    const shop = shopOn(kind);
    const { path, id, number } = await sentQuote(shop);
    const token = path.split('/').at(-1)!;
    const before = await shop.state();
    const forged = [
      'x',
      id,
      number,
      token.slice(1),
      `${token}x`,
      token.toUpperCase(),
      '%25',
      "' or 1=1 --",
      'x'.repeat(5000),
      `${token}%00`,
    ];
    const tried: number[] = [];
    for (const key of forged) {
      const at = `/q/${encodeURIComponent(key).replaceAll('%25', '%')}`;
      tried.push((await shop.send('GET', at)).status, (await shop.send('GET', `${at}/quote.pdf`)).status);
      for (const form of FORMS)
        tried.push((await post(shop, `${at}/${form}`, { name: 'Eve', option: '1' })).status);
    }
    for (const status of tried) expect([404, 422]).toContain(status);
    expect(await shop.state()).toBe(before);
  });

  it('lets its customer see and do nothing but the one quote', async () => {
    const shop = shopOn(kind);
    const { path } = await sentQuote(shop);
    const token = path.split('/').at(-1)!;
    for (const headers of [
      { Cookie: `spraywright.session_token=${token}` },
      { Authorization: `Bearer ${token}` },
    ])
      for (const route of [
        '/api/quotes',
        '/api/jobs',
        '/api/people',
        '/api/jobs/cart/quote.pdf',
        '/start.json',
      ])
        expect((await shop.send('GET', route, { headers })).status, route).toBe(401);
    expect((await shop.send('GET', `${path}/../../api/jobs`)).status).toBe(401);
  });

  it('takes any text without failing, telling or running it', async () => {
    const shop = shopOn(kind);
    const secrets = await shop.secrets();
    const { path, number } = await sentQuote(shop);
    for (const text of TEXTS)
      for (const form of FORMS) {
        const answer = await post(shop, `${path}/${form}`, { name: text, said: text, option: text });
        expect([303, 422], `${form} ${text.slice(0, 20)}`).toContain(answer.status);
        expect(await leakOf(answer, secrets), `${form} ${text.slice(0, 20)}`).toBeUndefined();
      }
    const page = await (await shop.send('GET', path)).text();
    expect(page).not.toMatch(/<script>hit|<img src=x/);
    const head = await shop.send('GET', `/api/quotes/${number}`, { role: 'owner' });
    expect(head.status).toBe(200);
    expect(shop.server.reports).toEqual([]);
  });

  it('opens no more once it was taken back', async () => {
    const shop = shopOn(kind);
    const { path, number, id } = await sentQuote(shop);
    const revoked = await shop.send('POST', `/api/quotes/${number}/links/${id}/revoke`, {
      role: 'owner',
      body: {},
    });
    expect(revoked.status).toBe(200);
    const before = await shop.state();
    for (const form of FORMS)
      expect([404]).toContain((await post(shop, `${path}/${form}`, { name: 'Kim', option: '1' })).status);
    expect([404]).toContain((await shop.send('GET', path)).status);
    expect(await shop.state()).toBe(before);
  });
});

it('Whoever tries many addresses is slowed', async () => {
  const [shop] = shops;
  const statuses = new Set<number>();
  for (let n = 0; n < 300; n++) statuses.add((await shop!.send('GET', `/q/guess-${n}`)).status);
  expect(statuses).toContain(429);
});

describe.each(kinds)('A number beyond what the records count to on %s', (kind) => {
  it.each([
    ['GET', '/api/jobs/cart/edits?after=2147483648'],
    ['GET', '/api/machines/CART-1/entries?after=9007199254740991'],
    ['GET', '/api/shop/editions?before=99999999999'],
    ['POST', '/api/machines', { job: 'cart', version: 2_147_483_648 }],
    [
      'POST',
      '/api/jobs/cart/edits',
      { base: 9e15, edits: [{ operation: 'too-large-1', about: 'x', puts: [{ path: ['notes'] }] }] },
    ],
  ] as [string, string, object?][])('is refused by its field: %s %s', async (method, path, body) => {
    const answer = await shopOn(kind).send(method, path, { role: 'owner', ...(body && { body }) });
    expect([answer.status, await answer.json()]).toEqual([
      422,
      expect.objectContaining({ code: 'bad-request' }) as unknown,
    ]);
  });
});
