import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PROBLEMS } from '../src/server/problems.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

type RawPart = Record<string, unknown> & { costCents: number; priceCents: number };
interface Opened {
  id: string;
  edition: number;
  retired: boolean;
  document: RawPart;
  prices: { from: string; costCents: number }[];
}
interface Planned {
  edition: number;
  written: boolean;
  added: string[];
  changes: { part: string; field: string; before?: string; after: string }[];
}

let server: TestServer;
const HOSE = demoCatalogue().byKind.hose[0]!.id;
const REEL = demoCatalogue().byKind.reel[0]!.id;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

const send = (method: string, path: string, body?: unknown) =>
  server.app.request(path, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }),
  });
const json = async <T>(answer: Response | Promise<Response>) => (await (await answer).json()) as T;
const open = (id: string, day?: string) =>
  json<Opened>(send('GET', `/api/parts/${id}${day === undefined ? '' : `?day=${day}`}`));
const table = (csv: string, more: object = {}) => send('POST', '/api/parts/table', { csv, ...more });

async function refused(answer: Response | Promise<Response>, code: keyof typeof PROBLEMS) {
  const body = await json<{ code: string; detail: string; problems?: Record<string, unknown>[] }>(answer);
  expect(body).toMatchObject({ code, status: PROBLEMS[code].status });
  return body;
}

describe('A part over the wire', () => {
  it('is found by what it says, by kind, and a page at a time', async () => {
    const list = await json<{ edition: number; parts: { id: string }[]; next?: string }>(
      send('GET', '/api/parts?find=diaphragm+290+psi&kind=pump&limit=2'),
    );
    expect(list.edition).toBe(3);
    expect(list.parts).toHaveLength(2);
    const more = await json<{ parts: { id: string }[] }>(
      send('GET', `/api/parts?find=diaphragm+290+psi&kind=pump&after=${list.next}`),
    );
    expect(more.parts.map(({ id }) => id)).not.toContain(list.parts[0]!.id);
    expect(await json(send('GET', '/api/parts?find=submarine'))).toEqual({ edition: 3, parts: [] });
  });

  it('is changed on the edition it was opened at; the second of two is refused', async () => {
    const part = await open(HOSE);
    const changed = { ...part.document, maxPressure: '610 psi' };
    const put = (madeOn: number) => send('PUT', `/api/parts/${HOSE}`, { madeOn, part: changed, by: 'Dana' });
    const done = await json<Opened>(put(part.edition));
    expect(done).toMatchObject({ edition: 4, changedBy: 'Dana', document: { maxPressure: '610 psi' } });
    await refused(put(part.edition), 'stale-part');
  });

  it('has a price that holds from a day on', async () => {
    const part = await open(HOSE);
    const dearer = { ...part.document, costCents: part.document.costCents + 50, priceCents: 99_900 };
    await send('PUT', `/api/parts/${HOSE}`, { madeOn: part.edition, part: dearer, pricesFrom: '2026-05-01' });
    expect((await open(HOSE, '2026-04-30')).document.priceCents).toBe(part.document.priceCents);
    expect((await open(HOSE, '2026-05-01')).document.priceCents).toBe(99_900);
    expect((await open(HOSE)).prices.map(({ from }) => from)).toEqual(['0000-01-01', '2026-05-01']);
    await refused(send('GET', `/api/parts/${HOSE}?day=2026-02-31`), 'bad-request');
  });

  it('is refused with field, value and limit, and nothing of it is kept', async () => {
    const part = await open(HOSE);
    const wrong = { ...part.document, maxPressure: '2000 bar', bore: '12 gpm' };
    const { problems } = await refused(
      send('PUT', `/api/parts/${HOSE}`, { madeOn: part.edition, part: wrong }),
      'unreadable-part',
    );
    expect(problems!.map(({ field }) => field).sort()).toEqual(['bore', 'maxPressure']);
    expect(problems!.find(({ field }) => field === 'maxPressure')!.message).toMatch(
      /2000 bar.*at most 1000 bar/,
    );
    expect(await open(HOSE)).toEqual(part);
    const renamed = { ...part.document, id: 'another' };
    const { detail } = await refused(
      send('PUT', `/api/parts/${HOSE}`, { madeOn: part.edition, part: renamed }),
      'unreadable-part',
    );
    expect(detail).toContain('another');
  });

  it('is added once, and retired and taken back', async () => {
    const { document } = await open(REEL);
    const add = () => send('POST', '/api/parts', { kind: 'reel', part: { ...document, id: 'reel-new' } });
    expect((await add()).status).toBe(201);
    await refused(add(), 'part-exists');
    const retire = (retired: boolean) =>
      json<Opened>(send('POST', '/api/parts/reel-new/standing', { retired }));
    expect((await retire(true)).retired).toBe(true);
    const found = async () =>
      (await json<{ parts: { id: string }[] }>(send('GET', '/api/parts?find=reel-new'))).parts.length;
    expect(await found()).toBe(0);
    expect((await retire(false)).retired).toBe(false);
    expect(await found()).toBe(1);
    await refused(send('POST', '/api/parts/no-such/standing', { retired: true }), 'no-such-part');
  });

  it('tells the jobs and machines that have it', async () => {
    const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
    const used = (raw as { items: { part: string }[] }).items[0]!.part;
    await send('POST', '/api/jobs', { id: 'cart', rig: raw, by: '' });
    await send('POST', '/api/machines', { job: 'cart', version: 1, by: '' });
    const uses = await json<{ jobs: { id: string }[]; machines: { serial: string }[] }>(
      send('GET', `/api/parts/${used}/uses`),
    );
    expect(uses.jobs.map(({ id }) => id)).toEqual(['cart']);
    expect(uses.machines).toHaveLength(1);
    expect(await json(send('GET', '/api/parts/reel-new/uses'))).toEqual({
      jobs: [],
      quotes: [],
      machines: [],
    });
  });
});

describe('A table of parts over the wire', () => {
  it('comes out, shows what it would change when it comes back, and is written whole', async () => {
    const csv = await (await send('GET', '/api/parts.csv?kind=reel')).text();
    const same = await json<Planned>(table(csv));
    expect(same).toMatchObject({ written: false, added: [], changes: [] });
    const list = `id;cost;price [USD]\n${REEL};1,234.50;$2000\n`;
    const preview = await json<Planned>(table(list, { pricesFrom: '2026-06-01' }));
    expect(preview.changes.map(({ field, after }) => [field, after])).toEqual([
      ['costCents', '123450'],
      ['priceCents', '200000'],
    ]);
    expect((await open(REEL, '2026-06-01')).document.costCents).not.toBe(123_450);
    const write = { pricesFrom: '2026-06-01', write: true, edition: preview.edition, by: 'Dana' };
    expect(await json<Planned>(table(list, write))).toMatchObject({
      written: true,
      edition: preview.edition + 1,
    });
    expect((await open(REEL, '2026-06-01')).document.costCents).toBe(123_450);
    expect((await open(REEL, '2026-05-31')).document.costCents).not.toBe(123_450);
    // The same preview again: the catalogue has moved on.
    await refused(table(list, write), 'stale-part');
  });

  it('is refused by line and column, all of it', async () => {
    const before = await open(REEL);
    const { problems, detail } = await refused(
      table(`id,name,mass\n${REEL},A new name,2 lb\nreel-x,Bare,heavy\n`, { write: true, kind: 'reel' }),
      'unreadable-table',
    );
    expect(problems).toContainEqual(expect.objectContaining({ line: 3, column: 3, field: 'mass' }));
    expect(detail).toMatch(/^line 3, column .*; and \d+ more$/);
    expect(await open(REEL)).toEqual(before);
    const money = await refused(table(`id,price\n${REEL},cheap\n`), 'unreadable-table');
    expect(money.detail).toMatch(/line 2, column 2: 'cheap'; an amount of money/);
  });
});

describe("The shop's settings over the wire", () => {
  it('are changed on the edition they were read at, and refused by field', async () => {
    const { edition, shop } = await json<{ edition: number; shop: Record<string, unknown> }>(
      send('GET', '/api/shop'),
    );
    const put = (more: object, madeOn = edition) =>
      send('PUT', '/api/shop', { madeOn, shop: { ...shop, ...more } });
    const bad = await refused(put({ validDays: 900 }), 'unreadable-shop');
    expect(bad.problems).toMatchObject([
      { field: 'validDays', message: expect.stringMatching(/900.*365/) as string },
    ]);
    expect(await json(put({ validDays: 45 }))).toMatchObject({
      edition: edition + 1,
      shop: { validDays: 45 },
    });
    await refused(put({ validDays: 60 }), 'stale-part');
  });
});
