import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { KINDS } from '@spraywright/engine/catalogue';
import { partsInstead, readRig } from '@spraywright/engine/rig';
import { ROLE_TABLE, ROLES, SELLERS, type Role } from '../src/server/role-table.ts';
import { attackedShop, type AttackedShop } from './attack-shop.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { wordsOf } from './ink.ts';

/** Every part costs $612,34x.xx and an hour $612.34; the job leaves a margin of 41.7377 %, the shop's floor is 21.7377 %. */
const COSTS = /61234\d{3}|612,?34\d\.\d\d|\b61234\b|612\.34|[42]1\.7377/;
/** Names under which they would be told. */
const FIELDS =
  /"(costCents|costCentsPerHour|labourCostCentsPerHour|cost_cents|marginPercent|leastMarginPercent|floorsByRole)"/;
const OWN = 61_234_999;

/** Routes that tell them to those who sell. */
const TELLING: readonly string[] = [
  '/api/jobs/:id',
  '/api/jobs/:id/edits',
  '/api/machines/:serial',
  '/api/machines/:serial/entries',
  '/api/parts.csv',
  '/api/parts/:id',
  '/api/quotes/:number/revisions/:revision',
  '/api/shop',
  '/api/shop/editions',
  '/start.json',
];

let shop: AttackedShop;
/** What stands for each `:name` of a route. */
const named: Record<string, string> = { id: 'cart', serial: 'CART-2', part: '', revision: 'A' };
const folder = mkdtempSync(join(tmpdir(), 'spraywright-costs-'));
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await shop.server.close();
});

async function must(method: string, path: string, body?: unknown, role: Role = 'owner') {
  const answer = await shop.send(method, path, { role, body });
  const told = await answer.text();
  expect(answer.ok, `${method} ${path}: ${told}`).toBe(true);
  return JSON.parse(told) as Record<string, unknown>;
}

beforeAll(async () => {
  shop = await attackedShop();
  const catalogue = demoCatalogue();
  let count = 0;
  for (const kind of KINDS) {
    const rows = [...catalogue.parts.values()]
      .filter((part) => part.kind === kind)
      .map(({ id }) => `${id},612340.${String(++count % 100).padStart(2, '0')},${990_000 + count}`);
    if (rows.length > 0)
      await must('POST', '/api/parts/table', {
        csv: ['id,cost,price', ...rows].join('\n'),
        kind,
        write: true,
      });
  }
  const { edition, shop: settings } = (await must('GET', '/api/shop')) as {
    edition: number;
    shop: { pricing: object };
  };
  await must('PUT', '/api/shop', {
    madeOn: edition,
    shop: {
      ...settings,
      labourCostCentsPerHour: 61_234,
      pricing: { ...settings.pricing, leastMarginPercent: 21.7377 },
    },
  });
  const { raw, rig } = demoRig('light-cart', catalogue, demoShop());
  const document = raw as { items: { id: string; part: string }[] };
  const pump = rig.items.get('pump')!.part;
  const { document: leaflet } = (await must('GET', `/api/parts/${pump.id}`)) as { document: object };
  const own = { ...leaflet, id: 'own-pump', costCents: OWN };
  await must('POST', '/api/jobs', {
    id: 'sold',
    rig: {
      ...document,
      items: document.items.map((item) => (item.id === 'pump' ? { ...item, part: 'own-pump' } : item)),
      ownParts: [{ kind: pump.kind, figuresFrom: 'its plate', part: own }],
    },
  });
  await must('POST', '/api/jobs/sold/edits', {
    base: 1,
    edits: [
      {
        operation: 'price-it-so-1',
        about: 'Margin of 41.7377 %',
        puts: [
          { path: ['pricing', 'price'], value: { mode: 'target-margin', marginPercent: 41.7377 } },
          { path: ['ownParts', 0, 'part', 'costCents'], value: OWN - 1 },
          { path: ['brief', 'title'], value: 'Light cart, sold' },
        ],
      },
    ],
  });
  named.id = 'sold';
  named.part = pump.id;
  const quote = await must('POST', '/api/quotes', { job: 'sold' });
  named.number = quote.number as string;
  const sent = await must('POST', `/api/quotes/${named.number}/revisions/A/links`, { to: '', days: 30 });
  named.token = new URL(sent.address as string).pathname.split('/').at(-1)!;
  const accepted = await shop.send('POST', `/q/${named.token}/accept`, {
    headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({ name: 'Kim', option: '1' }).toString(),
  });
  expect(accepted.status, await accepted.text()).toBe(303);
  await must('POST', '/api/machines', { job: 'sold', version: 2, serial: 'CART-2' });
  const read = readRig(raw, catalogue);
  if (!read.ok) throw new Error('the rig of the demo cannot be read');
  const tips = partsInstead(read.rig, catalogue, 'strainer');
  for (const part of tips) {
    const body = { operation: `instead-${part.id}`, slot: 'strainer', part: part.id, why: 'not come' };
    const done = await shop.send('POST', '/api/machines/CART-2/substitutions', { role: 'shop-hand', body });
    if (done.ok) break;
  }
  expect((await must('GET', '/api/machines/CART-2')).entries).toBe(1);
}, 120_000);

/** Address of a route, with what is there in the place of each name. */
function pathOf(pattern: string): string {
  const query: Record<string, string> = {
    '/api/parts.csv': '?kind=pump',
    '/api/recall': `?part=${named.part}`,
    '/api/recall.csv': `?part=${named.part}`,
    '/api/parts': '?limit=200',
  };
  const part = pattern.startsWith('/api/parts/') ? { ...named, id: named.part! } : named;
  const path = pattern
    .replace(/:(\w+)/g, (_, name: string) => part[name] ?? '1')
    .replace('/*', '/index.html');
  return `${path}${query[pattern] ?? ''}`;
}

/** What an answer says, whatever it is made of. */
async function textOf(answer: Response): Promise<string> {
  const pdf = answer.headers.get('Content-Type')?.includes('pdf') === true;
  return pdf ? wordsOf(new Uint8Array(await answer.arrayBuffer()), folder) : answer.text();
}

/** Addresses that a role may read; undefined is whoever is not signed in. */
const reads = (role: Role | undefined) =>
  Object.entries(ROLE_TABLE)
    .filter(
      ([route, roles]) =>
        route.startsWith('GET ') && (role === undefined ? roles === null : roles?.includes(role)),
    )
    .map(([route]) => route.slice(4));

/** Routes of which the answer holds what things cost, and those that answered at all. */
async function tellingCosts(
  role: Role | undefined,
  paths: readonly string[],
): Promise<{ telling: string[]; answered: string[] }> {
  const telling: string[] = [];
  const answered: string[] = [];
  for (const pattern of paths) {
    const answer = await shop.send('GET', pathOf(pattern), { role });
    const text = await textOf(answer);
    if (answer.status === 200) answered.push(pattern);
    // The description of the interface names the fields and holds no figure.
    const told = pattern === '/api/openapi.json' ? COSTS.test(text) : COSTS.test(text) || FIELDS.test(text);
    if (told) telling.push(pattern);
  }
  return { telling: telling.sort(), answered };
}

describe('What parts cost and what a job leaves', { timeout: 240_000 }, () => {
  it.each(SELLERS)('is told to the %s, wherever it stands', async (role) => {
    // Papers are the same for everybody and take seconds each: they are searched below.
    const { telling } = await tellingCosts(
      role,
      reads(role).filter((path) => !/\.(pdf|html)$/.test(path)),
    );
    // The book of who did what is the owner's alone.
    expect(telling.filter((path) => path !== '/api/doings')).toEqual(TELLING);
  });

  it.each([...ROLES.filter((role) => !SELLERS.includes(role)), undefined])(
    'is on no route for %s',
    async (role) => {
      const { telling, answered } = await tellingCosts(role, reads(role));
      expect(telling).toEqual([]);
      const mayRead = reads(role).filter((path) => role === undefined || TELLING.includes(path));
      expect(answered).toEqual(
        expect.arrayContaining(role === undefined ? ['/q/:token', '/q/:token/quote.pdf'] : mayRead),
      );
    },
  );

  it('is in nothing that a shop hand is answered to a change', async () => {
    const answer = await shop.send('POST', '/api/machines', {
      role: 'shop-hand',
      body: { job: 'sold', version: 2, serial: 'CART-3' },
    });
    const text = await answer.text();
    expect(answer.status).toBe(201);
    expect(text).toContain('"priceCents"');
    expect(text).not.toMatch(COSTS);
    expect(text).not.toMatch(FIELDS);
  });

  it('is in nothing that is sent packed', async () => {
    const headers = { 'Accept-Encoding': 'gzip' };
    const told = async (role: Role) => {
      const answer = await shop.send('GET', '/start.json', { role, headers });
      expect([answer.status, answer.headers.get('Content-Encoding')]).toEqual([200, 'gzip']);
      return gunzipSync(new Uint8Array(await answer.arrayBuffer())).toString('utf8');
    };
    expect(await told('owner')).toMatch(COSTS);
    const start = await told('shop-hand');
    expect(start).toContain('"priceCents"');
    expect(COSTS.test(start) || FIELDS.test(start)).toBe(false);
  });

  it('leaves the rest of an edit, and says that it was about prices', async () => {
    const { edits } = (await must('GET', '/api/jobs/sold/edits', undefined, 'support')) as {
      edits: { about: string; puts: unknown[] }[];
    };
    expect(edits.at(-1)).toMatchObject({
      about: 'Prices',
      puts: [{ path: ['brief', 'title'], value: 'Light cart, sold' }],
    });
  });

  it('is not told to the next person at the same browser out of its memory', async () => {
    const answer = await shop.send('GET', '/api/jobs/sold', { role: 'owner' });
    expect(answer.headers.get('Vary')).toBe('Cookie');
  });
});
