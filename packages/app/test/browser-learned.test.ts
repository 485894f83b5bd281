import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { proveRig } from '@spraywright/engine/rig';
import { yardSheet, type BuiltRig } from '@spraywright/engine/yard';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { builtPageAndBrowser, findings, served } from './desk-page.ts';
import { testServer, type TestServer } from './desk-server.ts';
import { syntheticShop } from './synthetic-shop.ts';
import { toldTest } from './told-tests.ts';

const LONG = 60_000;
const catalogue = demoCatalogue();
const { raw, rig } = demoRig('utility-12v', catalogue, demoShop());
const proof = proveRig(rig, catalogue, demoShop());
const { readings: sheet } = yardSheet(rig, proof);
const pump = rig.items.get('pump')!.part;
/** Eight machines whose pumps all give a tenth less than their leaflet, read with the scatter of their instruments. */
const { machines } = syntheticShop([rig], {
  count: 8,
  seed: 4,
  proofs: new Map([[rig, proof]]),
  parts: { [`pump-flow:${pump.id}`]: Math.log(0.9) },
});
const bucket = sheet.find((r) => r.instrument === 'bucket')!.id;

let browser: Browser;
let server: TestServer;
let shop: Awaited<ReturnType<typeof served>>;
let page: Page;
const errors: string[] = [];

beforeAll(async () => {
  browser = await builtPageAndBrowser();
  server = await testServer();
  shop = await served(server);
  page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  page.on('pageerror', (error) => errors.push(error.message));
  await post('/api/jobs', { id: 'utility', rig: raw });
}, 180_000);
afterAll(async () => {
  await browser?.close();
  shop?.close();
  await server?.close();
});

async function post(path: string, body: unknown): Promise<void> {
  const answer = await server.app.request(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(answer.ok, await answer.text()).toBe(true);
}

async function tested(
  machine: BuiltRig,
  serial: string,
  how?: Parameters<typeof toldTest>[2],
): Promise<void> {
  await post('/api/machines', { job: 'utility', version: 1, serial });
  await post(`/api/machines/${serial}/entries`, { entries: toldTest(machine, sheet, how) });
}

async function opened(): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${shop.address}office.html#learned`);
  await page.getByRole('heading', { name: 'What the yard tests taught' }).waitFor({ timeout: LONG });
}

describe('The sheet of what the yard tests taught', () => {
  it('says what is missing while nothing was tested, and names a test that nobody has finished', async () => {
    await opened();
    await page.getByText('No machine has a finished yard test yet').waitFor({ timeout: LONG });
    expect(await page.locator('.drift, .calibration').count()).toBe(0);
    await tested(machines[7]!, 'LF-0326-8', { finished: false });
    await opened();
    await page
      .getByText(/A test is begun and not finished \(LF-0326-8\): that teaches nothing yet/)
      .waitFor({ timeout: LONG });
  }, 120_000);

  it('shows the owner a pump that gives less than its leaflet, by machine and day', async () => {
    for (const [i, machine] of machines.slice(0, 7).entries())
      await tested(machine, `LF-0326-${i + 1}`, {
        taken: `2026-03-${String(3 + 3 * i).padStart(2, '0')}T10:00:00Z`,
        ...(i === 2 ? { by: { [bucket]: 2 } } : {}),
      });
    await opened();
    await page.getByText(/^From 7 machines and \d+ readings/).waitFor({ timeout: LONG });
    const drift = page
      .locator('.drift[data-drifts=true]')
      .filter({ hasText: pump.name })
      .filter({ hasText: 'flow' });
    // Nine in ten of what is learned of it lies below the leaflet, around the tenth that is missing.
    const told = await drift.first().locator('figcaption').textContent();
    const [, low, high] = /% below its leaflet \(([\d.]+) % to ([\d.]+) %\), from 7 rigs/.exec(told!) ?? [];
    expect(Number(low), told!).toBeLessThan(10);
    expect(Number(high), told!).toBeGreaterThan(8);
    await expect.poll(() => drift.first().locator('circle.dot').count()).toBe(7);
    await expect.poll(() => drift.first().locator('svg').textContent()).toMatch(/2026-03-03.*2026-03-21/);
    // Each was weighed once: the masses of the parts stand there too.
    const masses = page.locator('.drift').filter({ hasText: / mass/ });
    expect(await masses.count()).toBeGreaterThan(3);
    expect(await masses.first().textContent()).toMatch(/the list.*from 7 rigs/);
  }, 120_000);

  it('plots what was promised against what happened, and tells it as a table', async () => {
    const plot = page.getByRole('region', { name: 'Promised against what happened' });
    await plot
      .getByText(/^\d+ of \d+ readings lie inside the windows that should hold nine in ten/)
      .waitFor();
    const rows = plot.locator('tbody tr');
    await expect.poll(() => rows.count()).toBeGreaterThan(0);
    await expect.poll(() => plot.locator('svg .point').count()).toBe(await rows.count());
    for (const row of await rows.all()) {
      const [tested, , held] = await row.locator('td').allTextContents();
      expect(Number(held)).toBeLessThanOrEqual(Number(tested));
    }
  });

  it('names the reading that does not fit, and leads to its test', async () => {
    const aside = page.getByRole('region', { name: 'Readings set aside' });
    await aside
      .getByText(/Time to fill .* does not fit what all other readings say, so it counts for nothing/)
      .waitFor();
    await aside.getByRole('link', { name: 'LF-0326-3' }).click();
    await page.getByText(/\d+ of \d+ read/).waitFor({ timeout: LONG });
    expect(page.url()).toMatch(/#LF-0326-3\/yard/);
  }, 120_000);

  it.each([
    [1440, 'light'],
    [820, 'dark'],
    [390, 'light'],
  ] as const)(
    'is clean at %i px, %s, and nothing sticks out',
    async (width, colorScheme) => {
      await page.setViewportSize({ width, height: 900 });
      await page.emulateMedia({ colorScheme });
      await opened();
      await page.getByText(/^From 7 machines/).waitFor({ timeout: LONG });
      await page.getByText(/^Show \d+ parts? with no drift to tell/).click();
      expect(await findings(page)).toEqual([]);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
      ).toBeLessThanOrEqual(0);
    },
    120_000,
  );

  it('met no error of the page', () => {
    expect(errors).toEqual([]);
    expect(server.reports).toEqual([]);
  });
});
