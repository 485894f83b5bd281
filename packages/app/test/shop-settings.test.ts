import { afterAll, beforeAll, expect, it } from 'vitest';
import { People } from '../src/server/people.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

const PASSWORD = 'forty green barrels';
let server: TestServer;
const cookies: Record<string, string> = {};

interface Settings {
  readonly edition: number;
  readonly shop: Record<string, unknown> & { pricing: object };
  readonly problems: { field: string; message: string }[];
}

const send = async <T = Settings>(method: string, path: string, body?: unknown, role = 'owner') => {
  const answer = await server.app.request(path, {
    method,
    headers: {
      Cookie: cookies[role] ?? '',
      ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  return { status: answer.status, body: (await answer.json()) as T };
};
const settings = async () => (await send('GET', '/api/shop')).body;
const put = async (more: object, role = 'owner') => {
  const { edition, shop } = await settings();
  return send('PUT', '/api/shop', { madeOn: edition, shop: { ...shop, ...more } }, role);
};
const quoted = async () =>
  (await send<{ number: string; priceCents: number }>('POST', '/api/quotes', { job: 'cart' })).body;

beforeAll(async () => {
  let people: People | undefined;
  server = await testServer(undefined, (records) => (people = new People(records, Date.now)));
  for (const role of ['owner', 'builder', 'shop-hand'] as const) {
    const email = `${role}@shop.example`;
    await people!.add({ name: `The ${role}`, email, role, password: PASSWORD });
    const answer = await server.app.request('/sign-in', {
      method: 'POST',
      body: new URLSearchParams({ email, password: PASSWORD }),
    });
    cookies[role] = answer.headers.getSetCookie()[0]!.split(';')[0]!;
  }
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  await send('POST', '/api/jobs', { id: 'cart', rig: raw });
}, 60_000);
afterAll(() => server.close());

it('Settings are an owner’s to change, a builder’s to read, and no shop hand’s', async () => {
  expect((await send('GET', '/api/shop', undefined, 'builder')).status).toBe(200);
  expect((await send('GET', '/api/shop', undefined, 'shop-hand')).status).toBe(403);
  expect((await put({ validDays: 10 }, 'builder')).status).toBe(403);
});

it('What cannot be is refused by field, and nothing is kept of it', async () => {
  const before = await settings();
  const refused = async (more: object, field: string, words: RegExp) => {
    const { status, body } = await put(more);
    expect(status).toBe(422);
    expect(body.problems).toContainEqual(
      expect.objectContaining({ field, message: expect.stringMatching(words) as string }),
    );
  };
  await refused({ initials: 'lf' }, 'initials', /'lf'; 1 to 4 capital letters/);
  await refused({ mailFrom: 'a@b, c@d' }, 'mailFrom', /an e-mail address/);
  const { pricing } = before.shop;
  await refused({ pricing: { ...pricing, freightCents: -1 } }, 'pricing.freightCents', /at least 0/);
  await refused({ hoursPerWeek: 0 }, 'hoursPerWeek', /at least 1/);
  const floor = { role: 'shop-hand', leastMarginPercent: 30, mostDiscountPercent: 5 };
  await refused(
    { pricing: { ...pricing, floorsByRole: [floor] } },
    'pricing.floorsByRole[0].role',
    /owner, builder/,
  );
  const builder = { ...floor, role: 'builder' };
  const twice = { ...pricing, floorsByRole: [builder, builder] };
  await refused({ pricing: twice }, 'pricing.floorsByRole[1].role', /once/);
  expect(await settings()).toEqual(before);
});

it('They reach prices, serial numbers and the calendar, and the book tells what was changed', async () => {
  const before = await quoted();
  const { pricing } = (await settings()).shop;
  const kept = await put({
    initials: 'RW',
    hoursPerWeek: 12,
    pricing: { ...pricing, mostDiscountPercent: 8, freightCents: 45_000 },
  });
  expect(kept.status).toBe(200);
  expect((await quoted()).priceCents).toBe(before.priceCents + 45_000);
  const machine = await send<{ serial: string }>('POST', '/api/machines', { job: 'cart', version: 1 });
  expect(machine.body.serial).toBe('RW-0326-1');
  expect((await send<{ hoursPerWeek: number }>('GET', '/api/calendar')).body.hoursPerWeek).toBe(12);
  const { doings } = (
    await send<{ doings: { who: string; did: string; what: string }[] }>('GET', '/api/doings?limit=100')
  ).body;
  const told = doings.find(({ did }) => did === "Change the shop's settings")!;
  expect(told).toMatchObject({
    who: 'The owner',
    what: expect.stringMatching(
      /pricing\.mostDiscountPercent 12 becomes 8; pricing\.freightCents nothing becomes 45000; hoursPerWeek 30 becomes 12; initials nothing becomes RW/,
    ) as string,
  });
});

it('Each change is kept with who made it and both values, entries of a list by their id', async () => {
  const { shop } = await settings();
  const [first, ...others] = shop.operations as { id: string; hours: number }[];
  expect((await put({ operations: [...others, { ...first!, hours: 9 }] })).status).toBe(200);
  const { editions } = (
    await send<{ editions: { by: string; edition: number; changes: object[] }[] }>(
      'GET',
      '/api/shop/editions',
    )
  ).body;
  expect(editions[0]).toMatchObject({
    by: 'The owner',
    edition: (await settings()).edition,
    changes: [{ field: `operations[${first!.id}].hours`, before: first!.hours, after: 9 }],
  });
  expect(editions[1]!.changes).toContainEqual({ field: 'hoursPerWeek', before: 30, after: 12 });
  // The first have nothing before them.
  expect(editions.map(({ changes }) => changes.length)).toEqual([1, 4, 0]);
  expect((await send('GET', '/api/shop/editions', undefined, 'builder')).status).toBe(200);
  expect((await send('GET', '/api/shop/editions', undefined, 'shop-hand')).status).toBe(403);
});
