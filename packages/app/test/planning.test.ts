import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

let server: TestServer;
let clock = Date.parse('2026-03-03T09:00:00.000Z');

const send = async <T>(path: string, body: object) => {
  const answer = await server.app.request(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  return (await answer.json()) as T;
};
const read = async <T>(path: string) => (await (await server.app.request(path)).json()) as T;
const standing = async (id: string) => {
  const { jobs } = await read<{ jobs: { id: string; state: string; waitsFor: string }[] }>('/api/standing');
  const job = jobs.find((j) => j.id === id);
  return `${job?.state}, ${job?.waitsFor}`;
};
const accept = async (address: string) =>
  server.app.request(`${new URL(address).pathname}/accept`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
    body: 'name=Kim&option=1',
  });
/** Makes a quote of a job, sends it, and has it accepted. */
const ordered = async (job: string) => {
  const { number } = await send<{ number: string }>('/api/quotes', { job });
  const { address } = await send<{ address: string }>(`/api/quotes/${number}/revisions/A/links`, {});
  expect((await accept(address)).status).toBe(303);
  return number;
};

interface Calendar {
  readonly weeks: { monday: string; hours: number; capacity: number }[];
  readonly builds: { quote: string; hours: number; ready: string; partsOn: string }[];
}

beforeAll(async () => {
  server = await testServer(() => new Date(clock).toISOString());
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  for (const id of ['one', 'two', 'three']) await send('/api/jobs', { id, rig: raw });
});
afterAll(() => server.close());

describe('How far a job has come', () => {
  it('follows from its quote, its machine and what is said of it', async () => {
    expect(await standing('one')).toBe('asked, builder');
    const { number } = await send<{ number: string }>('/api/quotes', { job: 'one' });
    expect(await standing('one')).toBe('being-designed, builder');
    const { address } = await send<{ address: string }>(`/api/quotes/${number}/revisions/A/links`, {});
    expect(await standing('one')).toBe('quoted, customer');
    clock += 60_000;
    await accept(address);
    expect(await standing('one')).toBe('accepted, shop hand');
    const { serial } = await send<{ serial: string }>('/api/machines', { job: 'one', version: 1 });
    expect(await standing('one')).toBe('being-built, shop hand');
    await send(`/api/machines/${serial}/entries`, {
      entries: [{ operation: 'operation-finished', kind: 'yard-finished', document: {} }],
    });
    expect(await standing('one')).toBe('tested, builder');
    await send('/api/jobs/one/marks', { kind: 'handed-over' });
    expect(await standing('one')).toBe('handed-over, nobody');
  });

  it('is told page by page, the last changed first, and a job with a quote at work on the first whatever its age', async () => {
    type Page = { jobs: { id: string }[]; next?: string };
    const pages: string[][] = [];
    let next: string | undefined = '';
    while (next !== undefined) {
      const after = next === '' ? '' : `&after=${encodeURIComponent(next)}`;
      const page: Page = await read(`/api/standing?limit=2${after}`);
      pages.push(page.jobs.map((job) => job.id));
      next = page.next;
    }
    // All were made at one moment, so that their ids tell the order; 'one' was sold.
    expect(pages).toEqual([['two', 'three', 'one'], ['one']]);
    const { jobs } = await read<Page>('/api/standing?limit=2&find=cart');
    expect(jobs.map((job) => job.id)).toEqual(['two', 'three']);
    expect(await read('/api/standing?limit=201')).toMatchObject({ code: 'bad-request' });
  });

  it('is refused a word that it does not know, and a job that is not there', async () => {
    expect(await send('/api/jobs/one/marks', { kind: 'lost' })).toMatchObject({ code: 'bad-request' });
    expect(await send('/api/jobs/none/marks', { kind: 'stopped' })).toMatchObject({ code: 'no-such-job' });
  });
});

describe('The calendar of builds', () => {
  it('holds what was accepted and is not tested, in its order, and makes the next quote ready later', async () => {
    const first = await ordered('two');
    clock += 60_000;
    const second = await ordered('three');
    const { builds, weeks } = await read<Calendar>('/api/calendar');
    // The machine of the job before is tested: its hours are no longer to be done.
    expect(builds.map((b) => b.quote)).toEqual([first, second]);
    const hours = builds.reduce((sum, b) => sum + b.hours, 0);
    expect(weeks.reduce((sum, w) => sum + w.hours, 0)).toBeCloseTo(hours, 6);
    expect(builds[1]!.ready >= builds[0]!.ready).toBe(true);
    const { hoursPerWeek } = demoShop();
    expect(weeks.every((w) => w.hours <= hoursPerWeek!)).toBe(true);
    for (let i = 0; i < 4; i++) {
      clock += 60_000;
      await ordered('three');
    }
    const { number } = await send<{ number: string }>('/api/quotes', { job: 'three' });
    const { document } = await read<{
      document: { options: { summary: { readyDay: string; readyInDays: number } }[] };
    }>(`/api/quotes/${number}/revisions/A`);
    // 15.49 h each, 30 h a week: six before it are more than three weeks of work after their parts came.
    expect(document.options[0]!.summary.readyDay > builds[1]!.ready).toBe(true);
  });

  it('leaves the jobs with a quote at work beside the others, page by page, each quote once', async () => {
    type Page = { jobs: { id: string }[]; next?: string };
    const pages: string[][] = [];
    let page: Page = { jobs: [], next: '' };
    while (page.next !== undefined) {
      const after = page.next === '' ? '' : `&after=${encodeURIComponent(page.next)}`;
      page = await read(`/api/standing?limit=1${after}`);
      pages.push(page.jobs.map((job) => job.id));
    }
    // By change: two, three, one. By the quotes that moved last: three (six times), two, one.
    expect(pages).toEqual([['two', 'three'], ['three'], ['one', 'three'], ['three']]);
    // From the place of a list of jobs alone, as the desk asks, no quote is gone through.
    const { next } = await read<Page>('/api/jobs?limit=1');
    const { jobs } = await read<Page>(`/api/standing?limit=1&after=${encodeURIComponent(next!)}`);
    expect(jobs.map((job) => job.id)).toEqual(['three']);
  });

  it('lets a stopped job go', async () => {
    await send('/api/jobs/two/marks', { kind: 'stopped' });
    const { builds } = await read<Calendar>('/api/calendar');
    expect(builds.some((b) => b.quote === 'Q-0002')).toBe(false);
    expect(server.reports).toEqual([]);
  });
});
