import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { People } from '../src/server/people.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { builtPageAndBrowser, findings, served } from './desk-page.ts';
import { testServer, type TestServer } from './desk-server.ts';

const PASSWORD = 'forty green barrels';
const WIDTHS = [390, 820, 1440];
let browser: Browser;
let server: TestServer;
let shop: Awaited<ReturnType<typeof served>>;
const errors: string[] = [];

async function newPage(width = 1440, script = true): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width, height: 844 },
    javaScriptEnabled: script,
    hasTouch: width < 600,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  page.on('pageerror', (error) => errors.push(error.message));
  return page;
}

/** Whether the page is no wider than its window. */
const fits = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);

async function signedIn(role: string): Promise<Page> {
  const page = await newPage();
  await page.goto(`${shop.address}sign-in`);
  await page.getByLabel('E-mail address').fill(`${role}@shop.example`);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL(shop.address);
  return page;
}

beforeAll(async () => {
  browser = await builtPageAndBrowser();
  server = await testServer(
    () => new Date().toISOString(),
    (records) => new People(records, Date.now),
    true,
  );
  const people = new People(server.records, Date.now);
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  const body = JSON.stringify({ id: 'light-cart', rig: raw, by: 'Dana' });
  await server.app.request('/api/jobs', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body,
  });
  for (const role of ['owner', 'builder', 'shop-hand'] as const)
    await people.add({ name: `The ${role}`, email: `${role}@shop.example`, role, password: PASSWORD });
  shop = await served(server);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  shop?.close();
  await server?.close();
});

describe('A quote on the page', () => {
  let builder: Page;
  let link: string;

  it('is drawn up by a builder, who is told when a discount goes too far', async () => {
    builder = await signedIn('builder');
    await builder.goto(`${shop.address}office.html#quotes`);
    await builder.getByText('No quote has been made yet.').waitFor();
    await builder.goto(`${shop.address}office.html#quotes/new/light-cart`);
    await builder.getByLabel('Discount, %').fill('8');
    await builder.getByRole('button', { name: 'Draw up the quote' }).click();
    await builder.getByText('a builder gives 6 % at most; an owner may give more').waitFor();
    await builder.getByLabel('Discount, %').fill('3');
    await builder.getByRole('button', { name: 'Draw up the quote' }).click();
    await builder.getByRole('heading', { name: /^Q-0001 A: Light cart/ }).waitFor();
    await builder.getByText('drawn up, not sent').waitFor();
  }, 60_000);

  it('is sent, revised with a second option, and says what changed', async () => {
    await builder.getByLabel('To', { exact: true }).fill('kim@parks.example');
    await builder.getByRole('button', { name: 'Send Q-0001 A' }).click();
    await builder.getByText('The letter to kim@parks.example was sent.').waitFor();
    await builder.getByRole('button', { name: 'Draw it up anew' }).click();
    await builder.getByRole('button', { name: 'Another option beside it' }).click();
    const second = builder.getByRole('group', { name: 'Option 2' });
    await second.getByLabel('Called').fill('Without discount');
    await builder.getByRole('button', { name: 'Draw up the revision' }).click();
    await builder.getByRole('heading', { name: /^Q-0001 B: Light cart/ }).waitFor();
    await builder.getByText("Option 'Without discount' is new: $3,234.62.").waitFor();
    await builder.getByRole('button', { name: 'Send Q-0001 B' }).click();
    link = await builder.getByLabel("The customer's link").inputValue();
    expect(link).toMatch(/\/q\/[\w-]{43}$/);
  }, 60_000);

  it('is opened by its link on a telephone without script, asked about, and accepted', async () => {
    const customer = await newPage(390, false);
    await customer.goto(link);
    await customer.getByRole('heading', { name: 'What it will not do' }).first().waitFor();
    await customer.getByRole('link', { name: /The whole quote as a PDF/ }).waitFor();
    const ask = customer.locator('form[action$="/ask"]');
    await ask.getByLabel('Your name').fill('Kim Alder');
    await ask.getByLabel('Your question').fill('Can it spray oil?');
    await ask.getByRole('button', { name: 'Ask the shop' }).click();
    await customer.getByText('Can it spray oil?').waitFor();
    const accept = customer.locator('form[action$="/accept"]');
    await accept.getByLabel(/^2\. Without discount/).check();
    await accept.getByLabel('Your name').fill('Kim Alder');
    await accept.getByRole('button', { name: 'Accept this quote' }).click();
    await customer.getByText(/^Accepted by Kim Alder on .*: Without discount\.$/).waitFor();
    expect(await customer.getByRole('button', { name: 'Accept this quote' }).count()).toBe(0);
  }, 60_000);

  it('reads well on the telephone: no wider than the screen, everything 44 px to touch, nothing for axe to find', async () => {
    const phone = await newPage(390);
    await phone.goto(link);
    expect(await fits(phone)).toBe(true);
    expect(await findings(phone)).toEqual([]);
    const small = await phone.evaluate(() =>
      [...document.querySelectorAll('a, button, input:not([type=hidden]), textarea')]
        .filter((e) => e.getBoundingClientRect().height < 44)
        .map((e) => e.outerHTML.slice(0, 80)),
    );
    expect(small).toEqual([]);
  }, 60_000);

  it('shows the owner who did what, the shop hand what to begin, and nobody else a price', async () => {
    const owner = await signedIn('owner');
    await owner.goto(`${shop.address}office.html#doings`);
    await owner.getByText('Accept a quote by its link').waitFor();
    await owner.getByText('Kim Alder').first().waitFor();
    const book = await owner.locator('main').innerText();
    expect(book).toMatch(
      /The builder[^]*Send a quote by a link for the customer: Q-0001 A to kim@parks\.example/,
    );
    const hand = await signedIn('shop-hand');
    await hand.goto(`${shop.address}office.html#jobs`);
    await hand.getByText('the shop hand is to begin the machine; today').waitFor();
    await hand.goto(`${shop.address}office.html#quotes/Q-0001`);
    await hand.getByText('you are signed in as shop hand').waitFor();
    expect(await hand.getByText('$3,2').count()).toBe(0);
    // From the list to the desk, which tells a shop hand list prices and offers no quote.
    await hand.goto(`${shop.address}office.html#jobs`);
    await hand.getByRole('link', { name: 'Light cart' }).first().click();
    await hand.locator('[data-part=hose]').waitFor({ timeout: 30_000 });
    await hand.getByText('List price').first().waitFor();
    expect(await hand.getByRole('button', { name: 'Quote, PDF' }).count()).toBe(0);
    expect(await hand.getByText('The shop keeps').count()).toBe(0);
  }, 120_000);

  it('stands in the calendar, which is drawn and fits every width, as all its sheets do', async () => {
    for (const width of WIDTHS) {
      await builder.setViewportSize({ width, height: 900 });
      for (const [section, waits] of [
        ['calendar', 'Q-0001, Light cart'],
        ['jobs', 'Light cart'],
        ['quotes', 'Q-0001 B'],
        ['quotes/Q-0001', 'What happened'],
        ['quotes/new/light-cart', 'Draw up the quote'],
      ] as const) {
        await builder.goto('about:blank');
        await builder.goto(`${shop.address}office.html#${section}`);
        await builder.getByText(waits).first().waitFor();
        expect(await fits(builder), `${section} at ${width}`).toBe(true);
        expect(await findings(builder), `${section} at ${width}`).toEqual([]);
      }
    }
    await builder.goto(`${shop.address}office.html#calendar`);
    // Its 15.5 hours stand in the drawing as at least one piece.
    await expect.poll(() => builder.locator('.week-piece').count()).toBeGreaterThan(0);
    expect(errors).toEqual([]);
    expect(server.reports).toEqual([]);
  }, 120_000);
});
