import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { proveRig } from '@spraywright/engine/rig';
import { yardSheet, type SheetReading } from '@spraywright/engine/yard';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { builtPageAndBrowser, findings, served } from './desk-page.ts';
import { testServer, type TestServer } from './desk-server.ts';

const SERIAL = 'LF-0412-7';
/** The machine whose test loses the network. */
const FAR = 'LF-0412-8';
const TABLET = { width: 820, height: 1180 };
/** Proving a machine takes the page seconds on a slow machine. */
const READ = 60_000;

const catalogue = demoCatalogue();
const shop = demoShop();
const { raw, rig } = demoRig('light-cart', catalogue, shop);
const sheet = yardSheet(rig, proveRig(rig, catalogue, shop, { units: 'us' }), { units: 'us' });
const rowOf = (instrument: SheetReading['instrument']) =>
  sheet.readings.find((r) => r.instrument === instrument)!;
const psi = (pascal: number) => (pascal / 6894.757).toFixed(1);

let browser: Browser;
let server: TestServer;
let place: { address: string; close: () => void };
const errors: string[] = [];

beforeAll(async () => {
  browser = await builtPageAndBrowser();
  server = await testServer();
  place = await served(server);
  await post('/api/jobs', { id: 'cart', rig: raw });
  for (const serial of [SERIAL, FAR]) await post('/api/machines', { job: 'cart', version: 1, serial });
}, 180_000);
afterAll(async () => {
  await browser?.close();
  place?.close();
  await server?.close();
});

const post = (path: string, body: unknown) =>
  server.app.request(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });

interface Kept {
  readonly kind: string;
  readonly by: string;
  readonly document: { readonly row?: string; readonly value?: string; readonly state?: string };
}
async function entries(kind: string): Promise<Kept[]> {
  const answer = await server.app.request(`/api/machines/${FAR}/entries`);
  const { entries: all } = (await answer.json()) as { entries: Kept[] };
  return all.filter((e) => e.kind === kind);
}

async function opened(context: BrowserContext, row: string, serial = SERIAL): Promise<Page> {
  const page = await context.newPage();
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(`${place.address}machines.html#${serial}/yard/${encodeURIComponent(row)}`);
  await page.getByText(/\d+ of \d+ read/).waitFor({ timeout: READ });
  return page;
}

/** Types into the reading that is open and means it. */
async function read(page: Page, value: string): Promise<void> {
  const box = page.locator('.reading.open input');
  await box.fill(value);
  await box.press('Enter');
}

describe('The yard test', () => {
  it('says pass, look or fail at once and why, and refuses a tape in too much wind', async () => {
    const context = await browser.newContext({ viewport: TABLET });
    const gauge = rowOf('pump-gauge');
    const page = await opened(context, gauge.id);
    await page.getByLabel('Who reads').fill('Robin');
    await read(page, psi(gauge.expected));
    const verdict = page.locator('.reading.open .verdict');
    await verdict.getByText('Pass').waitFor({ timeout: READ });
    await read(page, psi(gauge.low * 0.5));
    await verdict.getByText('Fail').waitFor({ timeout: READ });
    await expect.poll(() => verdict.textContent()).toMatch(/psi/);
    await read(page, 'plenty');
    await page.locator('.reading.open .problem').waitFor();
    await read(page, psi(gauge.expected));
    await verdict.getByText('Pass').waitFor({ timeout: READ });
    // The sheet itself says the wind above which no tape is read.
    await page.getByLabel(/^Wind at gun height/).fill('14 mph');
    await page.getByLabel(/^Wind at gun height/).press('Enter');
    await page.goto(
      `${place.address}machines.html#${SERIAL}/yard/${encodeURIComponent(rowOf('tape-farthest').id)}`,
    );
    await read(page, '40');
    await page.locator('.reading.open .verdict').getByText(/wind/).waitFor({ timeout: READ });
    await expect.poll(() => page.locator('.reading.open').getAttribute('data-state')).toBe('refused');
    await context.close();
  }, 180_000);

  it('loses the network, is closed, reopened and finished, and everything arrives once', async () => {
    const context = await browser.newContext({ viewport: TABLET });
    const bucket = rowOf('bucket');
    const first = await opened(context, bucket.id, FAR);
    // The page keeps itself on the device before the network goes.
    await first.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await first.getByText('Everything is in the records.').waitFor();
    // The browser says that it has no network only page by page: what is gone is the server.
    await context.setOffline(true);
    place.close();
    await read(first, bucket.expected.toFixed(0));
    await first.getByText(/on this device/).waitFor();
    // Typed, not yet meant: it too is there again.
    await first.locator('.reading.open input').fill((bucket.expected + 1).toFixed(0));
    await first.close();

    const second = await opened(context, bucket.id, FAR);
    await second.getByText(/on this device/).waitFor();
    await expect
      .poll(() => second.locator('.reading.open input').inputValue())
      .toBe((bucket.expected + 1).toFixed(0));
    await second.locator('.reading.open input').press('Enter');
    await second.getByRole('button', { name: /^Finish/ }).click();
    await second.getByText(/Finished .*A further reading opens it again/).waitFor();
    expect(await entries('yard-reading')).toEqual([]);

    place = await served(server, Number(new URL(place.address).port));
    await context.setOffline(false);
    await second.getByText('Everything is in the records.').waitFor({ timeout: READ });
    await second.reload();
    await second.getByText('Everything is in the records.').waitFor({ timeout: READ });
    const arrived = await entries('yard-reading');
    expect(arrived.map((e) => e.document.value)).toEqual([
      `${bucket.expected.toFixed(0)} s`,
      `${(bucket.expected + 1).toFixed(0)} s`,
    ]);
    expect(await entries('yard-finished')).toHaveLength(1);
    await context.close();
  }, 120_000);

  it('teaches the next proof: the desk says by which readings its odds are sharper', async () => {
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    const page = await context.newPage();
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(`${place.address}#cart`);
    const flow = page.locator('[data-promise] button.sentence').filter({ hasText: / gpm / });
    await flow.first().click({ timeout: READ });
    await page
      .getByText(/Sharper by readings, which stand for \d+ of \d+ tolerances/)
      .waitFor({ timeout: READ });
    await context.close();
  }, 120_000);

  it.each([
    [1440, 'light'],
    [820, 'dark'],
    [390, 'light'],
  ] as const)(
    'is clean at %i px, %s, large enough for a wet hand, and nothing sticks out',
    async (width, colorScheme) => {
      const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
      const page = await opened(context, rowOf('pump-gauge').id);
      expect(await findings(page)).toEqual([]);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
      ).toBeLessThanOrEqual(0);
      const small = await page
        .locator('.yard :is(button, input, select, summary, a)')
        .evaluateAll((all) =>
          all.filter((e) => e.getBoundingClientRect().height < 64).map((e) => e.outerHTML.slice(0, 90)),
        );
      expect(small).toEqual([]);
      await context.close();
    },
    120_000,
  );

  it('met no error of the page', () => {
    expect(errors).toEqual([]);
    expect(server.reports).toEqual([]);
  });
});
