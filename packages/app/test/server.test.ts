import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PROBLEMS } from '../src/server/problems.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

let server: TestServer;
let rig: { title: string; items: { id: string; length?: string }[] };

beforeAll(async () => {
  server = await testServer();
  rig = demoRig('light-cart', demoCatalogue(), demoShop()).raw as typeof rig;
});
afterAll(() => server.close());

const send = (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) =>
  server.app.request(path, {
    method,
    headers: { ...(body === undefined ? {} : { 'Content-Type': 'application/json' }), ...headers },
    ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });
const make = (id: string) => send('POST', '/api/jobs', { id, rig, by: 'Dana' });
const lengthen = (operation: string, value: string) => ({
  operation,
  about: `Hose ${value}`,
  puts: [{ path: ['rig', 'items', rig.items.findIndex((i) => i.id === 'hose'), 'length'], value }],
});
const json = async (answer: Response | Promise<Response>) => (await (await answer).json()) as never;

async function refused(answer: Response | Promise<Response>, code: keyof typeof PROBLEMS) {
  const response = await answer;
  const body = (await response.json()) as { code: string; detail: string; status: number };
  expect(body).toMatchObject({ ...PROBLEMS[code], code, type: `/api/problems#${code}` });
  expect(response.status).toBe(PROBLEMS[code].status);
  expect(response.headers.get('Content-Type')).toBe('application/problem+json');
  expect(body.detail.length).toBeGreaterThan(10);
  return body;
}

describe('A job over the wire', () => {
  it('is led to on the desk from the address that people would spell', async () => {
    const led = async (path: string) => {
      const answer = await send('GET', path);
      return [answer.status, answer.headers.get('Location')];
    };
    expect(await led('/jobs/tall-elms')).toEqual([302, '/#tall-elms']);
    expect(await led('/jobs')).toEqual([302, '/']);
  });

  it('is made, listed, found, opened, edited, and tells its history', async () => {
    const made = await make('cart');
    expect(made.status).toBe(201);
    expect(made.headers.get('Location')).toBe('/api/jobs/cart');
    expect(await json(send('GET', '/api/jobs?find=cart'))).toMatchObject({
      jobs: [{ id: 'cart', version: 1 }],
    });
    expect(await json(send('GET', '/api/jobs?find=submarine'))).toEqual({ jobs: [] });
    const edited = await send('POST', '/api/jobs/cart/edits', {
      base: 1,
      edits: [lengthen('operation-1', '120 ft')],
      by: 'Robin',
    });
    expect(edited.headers.get('ETag')).toBe('"2"');
    expect(await json(edited)).toMatchObject({ version: 2, changedBy: 'Robin' });
    const opened = await send('GET', '/api/jobs/cart');
    const { document } = (await opened.json()) as { document: { rig: typeof rig } };
    expect(document.rig.items.find((i) => i.id === 'hose')?.length).toBe('120 ft');
    expect((await send('GET', '/api/jobs/cart', undefined, { 'If-None-Match': '"2"' })).status).toBe(304);
    expect(await json(send('GET', '/api/jobs/cart/edits'))).toMatchObject({
      edits: [{ version: 2, by: 'Robin', about: 'Hose 120 ft' }],
    });
  });

  it('takes an id of the server when none is sent', async () => {
    const made = await send('POST', '/api/jobs', { rig });
    expect(await json(made)).toMatchObject({ id: 'job-1', version: 1, changedBy: '' });
  });

  it('pages through the list without leaving one out or telling one twice', async () => {
    for (let i = 0; i < 7; i++) await make(`page-${i}`);
    const seen: string[] = [];
    for (let next: string | undefined = ''; next !== undefined;) {
      const after = next === '' ? '' : `&after=${encodeURIComponent(next)}`;
      const page: { jobs: { id: string }[]; next?: string } = await json(
        send('GET', `/api/jobs?find=page-&limit=3${after}`),
      );
      seen.push(...page.jobs.map((job) => job.id));
      next = page.next;
    }
    expect(seen.sort()).toEqual(Array.from({ length: 7 }, (_, i) => `page-${i}`));
  });

  it('refuses an edit made on an older version and shows both sides', async () => {
    await make('skid');
    await send('POST', '/api/jobs/skid/edits', {
      base: 1,
      edits: [lengthen('operation-1', '90 ft')],
      by: 'Robin',
    });
    const late = send('POST', '/api/jobs/skid/edits', { base: 1, edits: [lengthen('operation-2', '80 ft')] });
    expect(await refused(late, 'stale-version')).toMatchObject({
      job: { id: 'skid', version: 2 },
      since: [{ version: 2, about: 'Hose 90 ft', by: 'Robin' }],
    });
  });

  it('is quoted as a PDF as it stands, and refused by field when its rig cannot be read', async () => {
    await make('quoted');
    const pdf = await send('GET', '/api/jobs/quoted/quote.pdf?units=metric');
    expect(pdf.headers.get('Content-Type')).toBe('application/pdf');
    expect(
      Buffer.from(await pdf.arrayBuffer())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    await send('POST', '/api/jobs/quoted/edits', {
      base: 1,
      edits: [lengthen('operation-1', 'about so long')],
    });
    const body = await refused(send('GET', '/api/jobs/quoted/quote.pdf'), 'unreadable-rig');
    expect(body.detail).toContain('about so long');
    await refused(send('POST', '/api/quote.pdf', { rig: {} }), 'unreadable-rig');
    expect((await send('POST', '/api/quote.pdf', { rig })).status).toBe(200);
  });
});

describe('What the server refuses', () => {
  it('is a problem with a code of the table', async () => {
    await make('firm');
    const edits = (body: unknown) => send('POST', '/api/jobs/firm/edits', body);
    await refused(send('GET', '/api/jobs/none'), 'no-such-job');
    await refused(send('GET', '/api/jobs/none/edits'), 'no-such-job');
    await refused(send('GET', '/api/jobs/none/quote.pdf'), 'no-such-job');
    await refused(make('firm'), 'job-exists');
    await refused(send('POST', '/api/jobs', '{"rig":'), 'not-json');
    await refused(send('POST', '/api/jobs', 'rig', { 'Content-Type': 'text/plain' }), 'wrong-type');
    await refused(send('POST', '/api/jobs', { rig, notes: 'x'.repeat(2_000_001) }), 'too-large');
    await refused(send('GET', '/api/nothing'), 'no-such-page');
    await refused(send('DELETE', '/api/jobs/firm'), 'no-such-page');
    await refused(send('GET', '/nothing.html'), 'no-such-page');
    await refused(
      edits({ base: 1, edits: [{ ...lengthen('operation-1', ''), puts: [{ path: ['rig'] }] }] }),
      'bad-change',
    );
    const bad = await refused(edits({ base: 0, edits: [lengthen('short', '1 ft')] }), 'bad-request');
    expect(bad).toMatchObject({ problems: [{ field: 'base' }, { field: 'edits.0.operation' }] });
    for (const id of ['../x', 'A', 'a'.repeat(65), ''])
      await refused(send('POST', '/api/jobs', { id, rig }), 'bad-request');
  });

  it('is anything asked by a page of another address, or under a name that is not this machine', async () => {
    const body = { id: 'foreign', rig };
    await refused(send('POST', '/api/jobs', body, { Origin: 'https://elsewhere.example' }), 'foreign-page');
    await refused(send('POST', '/api/jobs', body, { 'Sec-Fetch-Site': 'cross-site' }), 'foreign-page');
    await refused(send('GET', 'http://rebound.example/api/jobs'), 'foreign-page');
    await refused(send('GET', '/api/jobs/foreign'), 'no-such-job');
    expect((await send('POST', '/api/jobs', body, { Origin: 'http://localhost' })).status).toBe(201);
  });

  it('never leaves the folder of the page', async () => {
    for (const path of [
      '/..%2f..%2fpackage.json',
      '/%2e%2e/%2e%2e/package.json',
      '/assets/..%2f..%2f..%2fpackage.json',
      '/%E0%A4%A.html',
    ])
      await refused(send('GET', path), 'no-such-page');
  });
});

describe('The description of the API', () => {
  interface Description {
    openapi: string;
    paths: Record<
      string,
      Record<string, { summary?: string; responses: Record<string, { description: string }> }>
    >;
  }

  it('stands at its address, in OpenAPI 3.1, and has every route there is', async () => {
    const description: Description = await json(send('GET', '/api/openapi.json'));
    expect(description.openapi).toBe('3.1.0');
    const described = Object.entries(description.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { summary, responses }]) => {
        expect(summary, path).toMatch(/\w+/);
        expect(Object.keys(responses).length, path).toBeGreaterThan(1);
        return `${method.toUpperCase()} ${path.replace(/\{(\w+)\}/g, ':$1')}`;
      }),
    );
    const undescribed = new Set(['GET /api/openapi.json', 'GET /api/problems', 'ALL /api/*']);
    const served = server.app.routes
      .filter((r) => r.path.startsWith('/api/') && !undescribed.has(`${r.method} ${r.path}`))
      .map((r) => `${r.method} ${r.path}`);
    expect([...new Set(served)].sort()).toEqual([...new Set(described)].sort());
  });

  it('has a paragraph for every problem, and no paragraph for a problem that is not', async () => {
    const text = await (await send('GET', '/api/problems')).text();
    expect(text).toBe(readFileSync(new URL('../../../docs/problems.md', import.meta.url), 'utf8'));
    const paragraphs = [...text.matchAll(/^## (\S+)\n\n(\w.+)/gm)].map((m) => m[1]);
    expect(paragraphs).toEqual(Object.keys(PROBLEMS));
  });
});

describe('The server', () => {
  it('met nothing that nobody foresaw', () => {
    expect(server.reports).toEqual([]);
  });
});
