import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { People } from '../src/server/people.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

/** A quote of the records as the server answers it, as far as the tests look. */
interface Answer {
  readonly number: string;
  readonly revision: string;
  readonly state: string;
  readonly priceCents: number;
  readonly revisions: { revision: string; sentAt?: string }[];
  readonly problems: { field: string; message: string }[];
  readonly code: string;
  readonly document: { engineVersion: string; options: { parts: { id: string }[] }[] };
}

let server: TestServer;
let rig: Record<string, unknown> & { items: { id: string; part: string }[] };

const send = async (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) => {
  const response = await server.app.request(path, {
    method,
    headers: { ...(body === undefined ? {} : { 'Content-Type': 'application/json' }), ...headers },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  return { status: response.status, body: (await response.json()) as Answer };
};
const bytes = async (path: string) =>
  Buffer.from(await (await server.app.request(path)).arrayBuffer()).toString('base64');

beforeAll(async () => {
  server = await testServer();
  rig = demoRig('light-cart', demoCatalogue(), demoShop()).raw as typeof rig;
  await send('POST', '/api/jobs', { id: 'cart', rig, by: 'Dana' });
});
afterAll(() => server.close());

describe('A quote of the records', () => {
  it('is numbered, frozen with its own copy of parts, and printed the same twice', async () => {
    const made = await send('POST', '/api/quotes', { job: 'cart', by: 'Dana' });
    expect(made.status).toBe(201);
    expect(made.body).toMatchObject({ number: 'Q-0001', revision: 'A', state: 'drawn', optionCount: 1 });
    const { body } = await send('GET', '/api/quotes/Q-0001/revisions/A');
    const [option] = body.document.options;
    // What a second method counts: the parts that the rig's items name are all in the copy.
    const copied = new Set(option!.parts.map((p) => p.id));
    for (const item of rig.items) expect(copied, item.id).toContain(item.part);
    const paper = '/api/quotes/Q-0001/revisions/A/quote.pdf';
    const first = await bytes(paper);
    expect(Buffer.from(first, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
    expect(await bytes(paper)).toBe(first);
  });

  it('is replaced while it was not sent, and says what changed', async () => {
    const revised = await send('POST', '/api/quotes/Q-0001/revisions', {
      options: [{ name: 'As drawn', pricing: { discountPercent: 5 } }],
      by: 'Dana',
    });
    expect(revised.body).toMatchObject({ revision: 'A', state: 'drawn' });
    expect((await send('GET', '/api/quotes/Q-0001')).body.revisions).toHaveLength(1);
  });

  it('carries up to four options, each a rig of its own, and refuses two of one name', async () => {
    const shorter = {
      ...rig,
      items: rig.items.map((i) => (i.id === 'hose' ? { ...i, length: '60 ft' } : i)),
    };
    const options = [{ name: 'Long hose' }, { name: 'Short hose', rig: shorter }];
    const made = await send('POST', '/api/quotes', { job: 'cart', options });
    expect(made.body).toMatchObject({ number: 'Q-0002', optionCount: 2 });
    const twice = await send('POST', '/api/quotes', { job: 'cart', options: [options[0], options[0]] });
    expect(twice.body).toMatchObject({ code: 'bad-request' });
    const five = Array.from({ length: 5 }, (_, i) => ({ name: `Rig ${i}` }));
    expect((await send('POST', '/api/quotes', { job: 'cart', options: five })).status).toBe(422);
    const found = await send('GET', '/api/quotes?find=q-0002');
    expect(found.body).toMatchObject({ quotes: [{ number: 'Q-0002' }] });
  });

  it('names the field of a rig that cannot be read, and what is not there', async () => {
    const broken = {
      ...rig,
      items: rig.items.map((i) => (i.id === 'hose' ? { ...i, part: 'moon-hose' } : i)),
    };
    const answer = await send('POST', '/api/quotes', { job: 'cart', options: [{ name: 'X', rig: broken }] });
    expect(answer.body).toMatchObject({ code: 'unreadable-rig' });
    expect(answer.body.problems[0]?.field).toMatch(/^options\.0\.rig\.items\.\d+\.part$/);
    expect((await send('POST', '/api/quotes', { job: 'nothing' })).body.code).toBe('no-such-job');
    expect((await send('GET', '/api/quotes/Q-9999')).body.code).toBe('no-such-quote');
    expect((await send('GET', '/api/quotes/Q-0001/revisions/Z')).body.code).toBe('no-such-quote');
  });

  it('compares two revisions in sentences', async () => {
    const same = await send('GET', '/api/quotes/Q-0001/changes?from=A&to=A');
    expect(same.body).toMatchObject({ terms: [], options: [{ price: [], parts: [], promises: [] }] });
  });
});

describe('What a role may give', () => {
  const PASSWORD = 'correct horse battery';
  let people: People;
  const cookies = new Map<string, string>();
  let quoting: TestServer;
  const ask = async (role: string, pricing: object) => {
    const response = await quoting.app.request('/api/quotes', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Cookie: cookies.get(role)! },
      body: JSON.stringify({ job: 'cart', options: [{ name: 'As drawn', pricing }] }),
    });
    return { status: response.status, body: (await response.json()) as Answer & { detail: string } };
  };

  beforeAll(async () => {
    quoting = await testServer(undefined, (records) => (people = new People(records, () => 0)));
    for (const role of ['owner', 'builder'] as const) {
      const email = `${role}@shop.example`;
      await people.add({ name: role, email, role, password: PASSWORD });
      const answer = await people.signIn(email, PASSWORD);
      cookies.set(role, (answer as { headers: Headers }).headers.getSetCookie()[0]!.split(';')[0]!);
    }
    await quoting.app.request('/api/jobs', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Cookie: cookies.get('builder')! },
      body: JSON.stringify({ id: 'cart', rig }),
    });
  });
  afterAll(() => quoting.close());

  it('holds a builder to the floors of builders and an owner to those of the shop, and says which', async () => {
    const { floorsByRole, mostDiscountPercent } = demoShop().pricing;
    expect([floorsByRole[0]?.mostDiscountPercent, mostDiscountPercent]).toEqual([6, 12]);
    expect((await ask('builder', { discountPercent: 6 })).status).toBe(201);
    const eight = await ask('builder', { discountPercent: 8 });
    expect(eight.status).toBe(422);
    expect(eight.body.detail).toBe(
      "option 'As drawn': a discount of 8 % was asked, a builder gives 6 % at most; an owner may give more, down to the floors of the shop",
    );
    expect(eight.body.problems[0]?.field).toBe('options.0.pricing');
    expect((await ask('owner', { discountPercent: 8 })).status).toBe(201);
    expect((await ask('owner', { discountPercent: 13 })).body).toMatchObject({ code: 'below-floor' });
  });

  it('holds the margin of a price of its own: 24 % for a builder is a markup of 31.6 %, 22 % one of 28.2 %', async () => {
    const plus = (markupPercent: number) => ({ price: { mode: 'cost-plus', markupPercent } });
    expect((await ask('builder', plus(31.7))).status).toBe(201);
    expect((await ask('builder', plus(30))).body.detail).toMatch(/a builder keeps a margin of 24 %/);
    expect((await ask('owner', plus(30))).status).toBe(201);
    expect((await ask('owner', plus(27))).body.detail).toMatch(/the shop keeps a margin of 22 %$/);
  });
});
