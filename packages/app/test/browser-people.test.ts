import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { People } from '../src/server/people.ts';
import { builtPageAndBrowser, findings, served } from './desk-page.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

const PASSWORD = 'forty green barrels';
const WIDTHS = [390, 820, 1440];
let browser: Browser;
let server: TestServer;
let shop: Awaited<ReturnType<typeof served>>;
const errors: string[] = [];

async function newPage(width = 1440): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height: 900 } });
  const page = await context.newPage();
  page.on('pageerror', (error) => errors.push(error.message));
  return page;
}

/** Whether the page is no wider than its window. */
const fits = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);

beforeAll(async () => {
  browser = await builtPageAndBrowser();
  server = await testServer(
    () => new Date().toISOString(),
    (records) => new People(records, Date.now),
    true,
  );
  shop = await served(server);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  shop?.close();
  await server?.close();
});

it('A script in every text of a job and of a person is read as text, on the desk and in the office', async () => {
  const own = await testServer();
  const { address, close } = await served(own);
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  const script = '<img src=x onerror=hit()><script>hit()</script>';
  const { brief, ...rest } = raw as { brief: object };
  const body = JSON.stringify({
    id: 'wicked',
    rig: { ...rest, title: script, brief: { ...brief, title: script, customer: script, place: script } },
    notes: script,
    by: script,
  });
  const sent = { method: 'POST', headers: { 'Content-Type': 'application/json' }, body };
  expect((await own.app.request('/api/jobs', sent)).status).toBe(201);
  const page = await newPage();
  let hits = 0;
  await page.exposeFunction('hit', () => hits++);
  await page.goto(`${address}#wicked`);
  await page.locator('[data-part=hose]').waitFor({ timeout: 60_000 });
  await expect.poll(() => page.locator('body').textContent(), { timeout: 20_000 }).toContain(script);
  await page.goto(`${address}office.html#doings`);
  await page.getByText('Make a job of a rig').waitFor();
  await page.goto(`${address}office.html#${encodeURIComponent(`people/${script}`)}`);
  await page.waitForTimeout(300);
  expect(hits).toBe(0);
  expect(await page.locator('img[src=x]').count()).toBe(0);
  close();
  await own.close();
}, 120_000);

describe('The people of the office on the page', () => {
  let owner: Page;

  it('begin with whoever works alone, who makes the first owner and chooses a password', async () => {
    owner = await newPage();
    await owner.goto(`${shop.address}office.html#people`);
    await owner.getByLabel('Name', { exact: true }).fill('Dana Field');
    await owner.getByLabel('E-mail address').fill('dana@shop.example');
    await owner.getByRole('button', { name: 'Add' }).click();
    await owner.getByRole('link', { name: 'Open it here' }).click();
    await owner.getByLabel(/^Password/).fill(PASSWORD);
    expect(await findings(owner)).toEqual([]);
    await owner.getByRole('button', { name: 'Choose a password' }).click();
    await owner.waitForURL(shop.address);
  });

  it('are let in by a link, get another role, are signed out and taken out', async () => {
    await owner.goto(`${shop.address}office.html#people`);
    await owner.getByLabel('Name', { exact: true }).fill('Robin Hill');
    await owner.getByLabel('E-mail address').fill('robin@shop.example');
    await owner.getByRole('button', { name: 'Add', exact: true }).click();
    const link = await owner.getByLabel('Address for Robin Hill').inputValue();
    const robin = await newPage(390);
    await robin.goto(link);
    await robin.getByLabel(/^Password/).fill(PASSWORD);
    await robin.getByRole('button', { name: 'Choose a password' }).click();
    await robin.goto(`${shop.address}office.html#people`);
    await robin.getByText('you are signed in as builder').waitFor();
    await owner.reload();
    await owner.getByLabel('Role of Robin Hill').selectOption('shop-hand');
    await owner.getByText('Robin Hill is now shop hand.').waitFor();
    await owner.getByRole('button', { name: 'Sign out Robin Hill' }).click();
    await owner.getByText('Robin Hill was signed out everywhere.').waitFor();
    await robin.reload();
    expect(new URL(robin.url()).pathname).toBe('/sign-in');
    expect(await findings(robin)).toEqual([]);
    // Who reads the code on a plate stands before that machine once signed in, after a wrong password too.
    await robin.goto(`${shop.address}machines.html#LF-0412-1/service`);
    for (const password of ['not the password', PASSWORD]) {
      await robin.getByLabel('E-mail address').fill('robin@shop.example');
      await robin.getByLabel('Password').fill(password);
      await robin.getByRole('button', { name: 'Sign in' }).click();
      await robin.waitForLoadState();
    }
    await robin.waitForURL(`${shop.address}machines.html#LF-0412-1/service`);
    // Who only reads jobs may try things on the desk, is told that they go nowhere, and comes back to the shop's job.
    const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
    const made = await owner.evaluate(
      async (body) => {
        const headers = { 'Content-Type': 'application/json' };
        return (await fetch('/api/jobs', { method: 'POST', headers, body })).status;
      },
      JSON.stringify({ id: 'cart', rig: raw }),
    );
    expect(made).toBe(201);
    await robin.setViewportSize({ width: 1440, height: 900 });
    await robin.goto(`${shop.address}#cart`);
    const hose = robin.locator('[data-part=hose] .part-row input').first();
    await hose.waitFor({ timeout: 60_000 });
    const before = await hose.inputValue();
    await hose.press('ArrowUp');
    await robin.getByText('you read jobs and do not change them').waitFor();
    expect(await findings(robin)).toEqual([]);
    await robin.getByRole('button', { name: 'Back to the shop’s job' }).click();
    await expect.poll(() => hose.inputValue()).toBe(before);
    await robin.getByText('Saved', { exact: true }).waitFor();
    await robin.goto(`${shop.address}office.html#jobs`);
    await robin.getByRole('button', { name: 'Stop' }).waitFor();
    expect(await robin.getByRole('link', { name: 'Make a quote' }).count()).toBe(0);
    for (const width of WIDTHS) {
      await owner.setViewportSize({ width, height: 900 });
      expect(await fits(owner), `${width} px`).toBe(true);
      expect(await findings(owner), `${width} px`).toEqual([]);
    }
    await owner.getByRole('button', { name: 'Take out Robin Hill' }).click();
    await owner.getByRole('button', { name: 'Take Robin Hill out for good' }).click();
    await owner.getByText('Robin Hill was taken out').waitFor();
    await expect.poll(() => owner.getByText('robin@shop.example').count()).toBe(0);
  });

  it('are told of in the book, by person and day', async () => {
    await owner.goto(`${shop.address}office.html#doings`);
    await owner.getByText('Robin Hill: builder, now shop-hand').waitFor();
    await expect.poll(() => owner.locator('.doing').count()).toBeGreaterThan(6);
    const robins = owner.locator('.doing', { hasText: 'Robin Hill builder' });
    await expect.poll(() => robins.count()).toBeGreaterThan(0);
    await owner.getByLabel('Person').selectOption({ label: 'Dana Field' });
    await expect.poll(() => robins.count()).toBe(0);
    await expect.poll(() => owner.locator('.doing').count()).toBeGreaterThan(4);
    for (const width of WIDTHS) {
      await owner.setViewportSize({ width, height: 900 });
      expect(await fits(owner), `${width} px`).toBe(true);
      expect(await findings(owner), `${width} px`).toEqual([]);
    }
    await owner.getByLabel('Day').fill('2020-01-01');
    await owner.getByText('Nothing was done.').waitFor();
    expect(errors).toEqual([]);
    expect(server.reports).toEqual([]);
  });

  it('leave nothing of what parts cost on the device when they sign out', async () => {
    await owner.goto(shop.address);
    const kept = () =>
      owner.evaluate(async () => (await caches.match(new URL('start.json', location.href))) !== undefined);
    await expect.poll(kept, { timeout: 20_000 }).toBe(true);
    await owner.reload();
    expect(await owner.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    await owner.goto(`${shop.address}password`);
    await owner.getByRole('button', { name: 'Sign out' }).click();
    await expect.poll(kept).toBe(false);
  });
});
