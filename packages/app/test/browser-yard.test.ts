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
/** The machine whose throw is taped. */
const THROWN = 'LF-0412-9';
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
  for (const serial of [SERIAL, FAR, THROWN])
    await post('/api/machines', { job: 'cart', version: 1, serial });
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
  readonly document: {
    readonly row?: string;
    readonly value?: string | readonly string[];
    readonly state?: string;
  };
}
async function entries(kind: string, serial = FAR): Promise<Kept[]> {
  const answer = await server.app.request(`/api/machines/${serial}/entries`);
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
    await page.locator('.reading.open input').first().fill('40');
    await page.locator('.reading.open input').first().press('Enter');
    await page.locator('.reading.open .verdict').getByText(/wind/).waitFor({ timeout: READ });
    await expect.poll(() => page.locator('.reading.open').getAttribute('data-state')).toBe('refused');
    await context.close();
  }, 180_000);

  it('asks for three throws, keeps each as it is typed, says how many are left, and counts the middle one', async () => {
    const context = await browser.newContext({ viewport: TABLET });
    const tape = rowOf('tape-farthest');
    const feet = (share: number) => ((tape.expected * share) / 0.3048).toFixed(1);
    const page = await opened(context, tape.id, THROWN);
    await page.getByLabel(/^Wind at gun height/).fill('2 mph');
    await page.getByLabel(/^Wind at gun height/).press('Enter');
    const open = page.locator('.reading.open');
    await open.getByLabel('Throw 1, ft').fill(feet(1.01));
    // Enter goes on to the next throw.
    await open.getByLabel('Throw 1, ft').press('Enter');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('label')?.textContent))
      .toMatch(/Throw 2/);
    await open.getByText(/^2 more throws: the middle one of 3 counts/).waitFor({ timeout: READ });
    await expect.poll(() => open.getAttribute('data-state')).toBe('more');
    await open.getByLabel('Throw 2, ft').fill(feet(1.12));
    // Closed before it is meant, and opened again: both throws stand.
    await page.close();
    const again = await opened(context, tape.id, THROWN);
    const box = (n: number) => again.locator('.reading.open').getByLabel(`Throw ${n}, ft`);
    await expect.poll(() => box(1).inputValue()).toBe(feet(1.01));
    await expect.poll(() => box(2).inputValue()).toBe(feet(1.12));
    await box(3).fill(feet(0.99));
    await box(3).press('Enter');
    await again.locator('.reading.open .verdict').getByText('Pass').waitFor({ timeout: READ });
    await again
      .locator('.reading.open .verdict')
      .getByText(`Counts: ${feet(1.01)} ft (${feet(1.01)} ft, ${feet(1.12)} ft, ${feet(0.99)} ft)`)
      .waitFor();
    // A slip: half as far again. It does not count, and the throw is asked for again.
    await box(2).fill(feet(1.5));
    await box(2).press('Enter');
    await again
      .locator('.reading.open .verdict')
      .getByText('One more throw', { exact: true })
      .waitFor({ timeout: READ });
    await again
      .locator('.reading.open .verdict')
      .getByText(/^throw 2 .* far from the others/)
      .waitFor();
    await box(2).fill(feet(1.12));
    await box(2).press('Enter');
    await again.locator('.reading.open .verdict').getByText('Pass').waitFor({ timeout: READ });
    await again.getByText('Everything is in the records.').waitFor({ timeout: READ });
    const arrived = await entries('yard-reading', THROWN);
    expect(arrived.at(-1)!.document.value).toEqual([1.01, 1.12, 0.99].map((s) => `${feet(s)} ft`));
    await context.close();
  }, 180_000);

  it('asks to shut the outlets again, and for a third reading only where the two are at odds', async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 900 } });
    const shut = rowOf('shut-gauge');
    const page = await opened(context, shut.id, THROWN);
    const open = page.locator('.reading.open');
    const verdict = open.locator('.verdict');
    const box = (n: number) => open.getByLabel(`Reading ${n}, psi`);
    await open.getByText('Read it twice, the outlets opened and shut again in between').waitFor();
    await box(1).fill(psi(shut.expected));
    await box(1).press('Enter');
    await verdict.getByText('One more reading', { exact: true }).waitFor({ timeout: READ });
    expect(await open.locator('input').count()).toBe(2);
    await box(2).fill(psi(shut.expected * 1.2));
    await box(2).press('Enter');
    await verdict.getByText(/psi are too far apart: one more reading tells/).waitFor({ timeout: READ });
    await box(3).waitFor();
    expect(await findings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    await box(3).fill(psi(shut.expected * 1.005));
    await box(3).press('Enter');
    await verdict.getByText('Pass').waitFor({ timeout: READ });
    await verdict.getByText(/^reading 2 of .* far from the others and does not count/).waitFor();
    await page.getByText('Everything is in the records.').waitFor({ timeout: READ });
    const arrived = await entries('yard-reading', THROWN);
    expect(arrived.at(-1)!.document.value).toHaveLength(3);
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
    [1440, 'light', 'pump-gauge'],
    [820, 'dark', 'pump-gauge'],
    [390, 'light', 'pump-gauge'],
    [820, 'light', 'tape-farthest'],
    [390, 'dark', 'tape-farthest'],
    [820, 'light', 'shut-gauge'],
    [390, 'light', 'shut-gauge'],
  ] as const)(
    'is clean at %i px, %s, %s, large enough for a wet hand, and nothing sticks out',
    async (width, colorScheme, row) => {
      const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
      const page = await opened(context, rowOf(row).id);
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
