import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { display } from '@spraywright/engine/quantity';
import { proveRig, readRig } from '@spraywright/engine/rig';
import { yardSheet } from '@spraywright/engine/yard';
import { People } from '../src/server/people.ts';
import { ROLES, type Role } from '../src/server/role-table.ts';
import { demoCatalogue, demoShop } from './demo.ts';
import { builtPageAndBrowser, served } from './desk-page.ts';
import { testServer, type TestServer } from './desk-server.ts';
import { dense, wordsOf } from './ink.ts';

const JOB = 'light-cart';
const SERIAL = 'LF-0412-1';
const PASSWORD = 'forty green barrels';
const NAMES: Readonly<Record<Role, string>> = {
  owner: 'Dana Field',
  builder: 'Robin Hill',
  'shop-hand': 'Sam Brook',
  support: 'Kim Ford',
};
/** Choosing the parts of a job, or reading a machine, takes the page's engine seconds on a slow machine. */
const WAIT = 90_000;

let browser: Browser;
let server: TestServer;
let shop: Awaited<ReturnType<typeof served>>;
const at = new Map<Role, { page: Page; context: BrowserContext }>();
const errors: string[] = [];
const folder = mkdtempSync(join(tmpdir(), 'life-'));
let quote = '';

beforeAll(async () => {
  browser = await builtPageAndBrowser();
  let people: People | undefined;
  server = await testServer(
    () => new Date().toISOString(),
    (records) => (people = new People(records, Date.now)),
  );
  for (const role of ROLES)
    await people!.add({ name: NAMES[role], email: `${role}@shop.example`, role, password: PASSWORD });
  shop = await served(server);
  for (const role of ROLES) {
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    const page = await context.newPage();
    page.on('pageerror', (error) => errors.push(`${role}: ${error.message}`));
    at.set(role, { page, context });
  }
}, 180_000);
afterAll(async () => {
  await browser?.close();
  shop?.close();
  await server?.close();
  rmSync(folder, { recursive: true, force: true });
});

const pageOf = (role: Role) => at.get(role)!.page;

/** Asks the server as the page of a role does, with its session. */
async function ask<T>(role: Role, path: string, body?: unknown): Promise<{ status: number; body: T }> {
  return pageOf(role).evaluate(
    async ([to, sent]) => {
      const answer = await fetch(to, {
        ...(sent === undefined
          ? {}
          : {
              method: 'POST',
              headers: { 'Content-Type': 'application/json' },
              body: JSON.stringify(sent),
            }),
      });
      return { status: answer.status, body: (await answer.json()) as never };
    },
    [`${shop.address}${path}`, body] as const,
  );
}

/** The words of a paper that a role opens. */
async function paper(role: Role, path: string): Promise<string> {
  const answer = await at.get(role)!.context.request.get(`${shop.address}${path}`);
  expect({ path, status: answer.status() }).toEqual({ path, status: 200 });
  return wordsOf(new Uint8Array(await answer.body()), folder);
}

describe('A job, from the call to the service call', () => {
  it('begins with everybody signing in', async () => {
    for (const role of ROLES) {
      const page = pageOf(role);
      await page.goto(`${shop.address}machines.html`);
      await page.waitForURL(/\/sign-in/);
      await page.getByLabel('E-mail address').fill(`${role}@shop.example`);
      await page.getByLabel(/^Password/).fill(PASSWORD);
      await page.getByRole('button', { name: 'Sign in' }).click();
      // To the page that was asked for.
      await page.waitForURL(`${shop.address}machines.html`);
    }
  });

  it('the builder designs what the caller asks for, and it is in the records', async () => {
    const page = pageOf('builder');
    await page.goto(`${shop.address}#${JOB}`);
    await page.locator('[data-part=hose]').waitFor({ timeout: WAIT });
    await expect
      .poll(async () => (await ask('builder', `api/jobs/${JOB}`)).status, { timeout: WAIT })
      .toBe(200);
    const { body } = await ask<{ changedBy: string }>('owner', `api/jobs/${JOB}`);
    expect(body.changedBy).toBe(NAMES.builder);
  }, 180_000);

  it('the owner sends a quote, and the customer accepts it by its link', async () => {
    const made = await ask<{ number: string }>('builder', 'api/quotes', { job: JOB });
    expect(made.status).toBe(201);
    quote = made.body.number;
    const sent = await ask<{ address: string }>('owner', `api/quotes/${quote}/revisions/A/links`, {});
    expect(sent.status).toBe(201);
    const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    const customer = await context.newPage();
    await customer.goto(sent.body.address);
    const form = customer.locator('form[action$="/accept"]');
    await form.getByLabel(/name/i).fill('Avery Wren');
    const option = form.getByRole('radio').first();
    if ((await option.count()) > 0) await option.check();
    await form.getByRole('button').click();
    await expect
      .poll(async () => (await ask<{ state: string }>('owner', `api/quotes/${quote}`)).body.state)
      .toBe('accepted');
    await context.close();
    // A price is not for whoever builds or answers calls.
    for (const role of ['shop-hand', 'support'] as const)
      expect((await ask(role, `api/quotes/${quote}`)).status).toBe(403);
  }, 120_000);

  it('the shop hand begins the machine, fetches its parts and does every step', async () => {
    const page = pageOf('shop-hand');
    await page.goto(`${shop.address}machines.html`);
    await page.getByLabel('Job', { exact: true }).fill(JOB);
    await page.getByRole('button', { name: 'Find jobs' }).click();
    await page.getByLabel('Serial number').fill(SERIAL);
    // It is the rig that the customer accepted, and the page says so.
    await page.getByRole('button', { name: new RegExp(`begin what was sold: quote ${quote} A`) }).click();
    await page.getByText(new RegExp(`as sold: quote ${quote} A`)).waitFor({ timeout: WAIT });
    await page.getByText('Put it together').waitFor({ timeout: WAIT });
    await page.getByRole('button', { name: 'Take all that is there' }).click();
    await page.getByText(/^0 of \d+ lines to fetch/).waitFor();
    const lot = page.getByLabel(/^Lot of .*pump/i).first();
    await lot.fill('2026-11');
    await lot.press('Enter');
    const steps = page.locator('.build-steps > li');
    const count = await steps.count();
    expect(count).toBeGreaterThan(8);
    for (let i = 0; i < count; i++) {
      const step = steps.nth(i);
      const why = step.getByLabel('or why it is not known');
      if ((await why.count()) > 0) await why.fill("maker's sheet not at hand");
      await step.getByRole('button', { name: /^Done/ }).click();
    }
    await page.getByText(`${count} of ${count} steps done.`).waitFor();
    await page.getByText('Everything is in the records.').waitFor({ timeout: WAIT });
    const { body } = await ask<{ moved: { quantity: number }[] }>('owner', `api/stock?serial=${SERIAL}`);
    expect(body.moved.length).toBeGreaterThan(10);
  }, 180_000);

  it('the shop hand tests it in the yard, and it reads as it should', async () => {
    const { body: machine } = await ask<{ document: { rig: unknown } }>(
      'shop-hand',
      `api/machines/${SERIAL}`,
    );
    const read = readRig(machine.document.rig, demoCatalogue());
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const { readings } = yardSheet(read.rig, proveRig(read.rig, demoCatalogue(), demoShop()));
    // One reading on the tablet; the others arrive as from another tablet, in the same test.
    const page = pageOf('shop-hand');
    const gauge = readings.find((row) => row.instrument === 'pump-gauge')!;
    await page.goto(`${shop.address}machines.html#${SERIAL}/yard/${encodeURIComponent(gauge.id)}`);
    const box = page.locator('.reading.open input');
    await box.fill(display(gauge.expected, 'pressure', 'us'), { timeout: WAIT });
    await box.press('Enter');
    await page.locator('.reading.open .verdict').getByText('Pass').waitFor({ timeout: WAIT });
    const entriesOf = async (kind: string) =>
      (
        await ask<{ entries: { kind: string; document: { test: string; state?: string } }[] }>(
          'shop-hand',
          `api/machines/${SERIAL}/entries?limit=1000`,
        )
      ).body.entries.filter((e) => e.kind === kind);
    await expect.poll(async () => (await entriesOf('yard-reading')).length, { timeout: WAIT }).toBe(1);
    const test = {
      test: (await entriesOf('yard-reading'))[0]!.document.test,
      taken: '2026-11-30T10:00:00.000Z',
    };
    const entries = [
      ['yard-conditions', { ...test, wind: '2 mph' }] as const,
      ...readings
        .filter((row) => row.id !== gauge.id)
        .map((row) => {
          const value = display(row.expected, row.dimension, 'us');
          return ['yard-reading', { ...test, row: row.id, value }] as const;
        }),
    ].map(([kind, document], i) => ({ operation: `yard-entry-${i}`, kind, document }));
    expect((await ask('shop-hand', `api/machines/${SERIAL}/entries`, { entries })).status).toBe(200);
    await page.reload();
    await page.getByRole('button', { name: 'Finish the test: pass' }).click({ timeout: WAIT });
    await expect
      .poll(async () => (await entriesOf('yard-finished')).map((e) => e.document.state), { timeout: WAIT })
      .toEqual(['pass']);
  }, 180_000);

  it('the support desk finds it by its number, warns of the next liquid and names the fault', async () => {
    const page = pageOf('support');
    await page.goto(`${shop.address}machines.html`);
    await page.getByLabel('Find', { exact: true }).fill(SERIAL.toLowerCase());
    await page.getByRole('link', { name: new RegExp(SERIAL) }).click();
    await page.getByRole('link', { name: 'Service' }).click();
    const next = page.getByLabel('Next liquid');
    await next.selectOption('naocl_12', { timeout: WAIT });
    await page.getByRole('button', { name: /goes in: write it down/ }).click();
    await next.selectOption('sulfamic');
    await page.getByRole('alert').getByText('must never meet').waitFor();
    await page.getByText('Everything else that can be checked').click();
    const tip = page.getByRole('group', { name: /^Put in a new tip/ });
    await tip.getByRole('button', { name: 'yes' }).click();
    await page
      .locator('.suspects tbody tr:first-child th', { hasText: 'worn tip' })
      .waitFor({ timeout: WAIT });
    await page.getByLabel('What was said').fill('throws less far than in spring');
    await page.getByLabel('What was done').fill('new tip put in: all right again');
    await page.getByRole('button', { name: 'Keep this call' }).click();
    await page.getByText('throws less far than in spring').waitFor();
    await page.getByText('Everything is in the records.').waitFor({ timeout: WAIT });
    // The store is not the support desk's.
    const movement = { operation: 'not-mine-1', part: 'tip', quantity: -1, why: 'taken' };
    expect((await ask('support', 'api/stock/movements', { movements: [movement] })).status).toBe(403);
  }, 120_000);

  it('the owner sees who did what, and who has a part', async () => {
    const { body } = await ask<{ entries: { kind: string; by: string }[] }>(
      'owner',
      `api/machines/${SERIAL}/entries?limit=1000`,
    );
    const by = (kind: string) => [...new Set(body.entries.filter((e) => e.kind === kind).map((e) => e.by))];
    expect(by('build-step')).toEqual([NAMES['shop-hand']]);
    expect(by('service')).toEqual([NAMES.support]);
    const page = pageOf('owner');
    await page.goto(`${shop.address}machines.html`);
    const lot = body.entries.find((e) => e.kind === 'lot') as unknown as { document: { part: string } };
    await page.getByLabel('Catalogue number').fill(lot.document.part);
    await page.getByLabel('Lot', { exact: true }).fill('2026-11');
    await page.getByRole('button', { name: 'List machines' }).click();
    await page.getByRole('row', { name: new RegExp(`${SERIAL}.*yes`) }).waitFor();
  });
});

describe('What stays', () => {
  it('every paper opens and tells of this job', async () => {
    for (const path of [`api/jobs/${JOB}/quote.pdf`, `api/quotes/${quote}/revisions/A/quote.pdf`])
      expect((await paper('owner', path)).length, path).toBeGreaterThan(500);
    for (const name of ['handbook.pdf', 'plate.pdf', 'build-pack.pdf'])
      expect(await paper('owner', `api/machines/${SERIAL}/${name}`)).toContain(dense(SERIAL));
    expect(await paper('support', `api/machines/${SERIAL}/handbook.pdf`)).toContain(
      dense('The test as a whole: Pass'),
    );
  }, 60_000);

  it('the records pass the check of their own database, and no reference leads nowhere', async () => {
    const rows = async (pragma: string) =>
      (await sql.raw(`pragma ${pragma}`).execute(server.records.db)).rows;
    expect(await rows('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    expect(await rows('foreign_key_check')).toEqual([]);
  });

  it('nothing unforeseen happened, on a page or in the server', () => {
    expect(errors).toEqual([]);
    expect(server.reports).toEqual([]);
  });
});
