import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { moneyText } from '@spraywright/engine/quantity';
import type { Proof } from '@spraywright/engine/rig';
import { main } from '../src/cli/main.ts';
import { builtPageAndBrowser, findings, served } from './desk-page.ts';
import { testServer, type TestServer } from './desk-server.ts';

/** Screens as they look in the call, to be looked at; not part of the source. */
const SEEN = fileURLToPath(new URL('../dist/seen/', import.meta.url));
/** Choosing the parts of a job, and proving what could be instead, takes the engine seconds on a slow machine. */
const LONG = 90_000;
const CALL = 300_000;
/** A reach that the rig chosen for the start values of tall trees does not have. */
const TOO_HIGH = '43 feet';
const REACH = '[data-promise="reach:duty"]';

/** How a person works the page. */
interface Hands {
  press(what: Locator): Promise<void>;
  type(box: Locator, text: string): Promise<void>;
  choose(list: Locator, entry: string): Promise<void>;
}

let browser: Browser;
let folder: string;
const errors: string[] = [];
const open: (() => Promise<void>)[] = [];

beforeAll(async () => {
  mkdirSync(SEEN, { recursive: true });
  folder = mkdtempSync(join(tmpdir(), 'spraywright-call-'));
  browser = await builtPageAndBrowser();
}, 180_000);

afterAll(async () => {
  for (const close of open) await close();
  await browser?.close();
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
});

async function newDesk(viewport: { width: number; height: number }, touch = false) {
  const server: TestServer = await testServer();
  const { address, close } = await served(server);
  const context: BrowserContext = await browser.newContext({
    viewport,
    hasTouch: touch,
    acceptDownloads: true,
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  open.push(async () => {
    await context.close();
    close();
    await server.close();
    expect(server.reports).toEqual([]);
  });
  await page.goto(address);
  await page.locator('[data-part=hose]').waitFor({ timeout: LONG });
  return { page, server };
}

const mouse: Hands = {
  press: (what) => what.click(),
  type: async (box, text) => {
    await box.click();
    await box.fill(text);
    await box.blur();
  },
  choose: async (list, entry) => {
    await list.selectOption({ label: entry });
  },
};

const finger: Hands = { ...mouse, press: (what) => what.tap() };

/** Nothing but keys: the focus is led by Tab to where it is wanted, and a list is chosen from by its letters. */
function keyboard(page: Page): Hands {
  const to = async (what: Locator) => {
    await what.waitFor({ timeout: LONG });
    for (let i = 0; i < 400; i++) {
      if (await what.evaluate((node) => node === document.activeElement)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`Tab does not lead to ${what.toString()}`);
  };
  return {
    press: async (what) => {
      await to(what);
      await page.keyboard.press('Enter');
    },
    type: async (box, text) => {
      await to(box);
      await page.waitForTimeout(50);
      await page.keyboard.press('Control+A');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    },
    choose: async (list, entry) => {
      // Letters that come too slowly begin a new word: on a busy machine the word is typed again.
      for (let tries = 0; tries < 5; tries++) {
        await to(list);
        await page.keyboard.type(entry);
        if ((await list.locator('option:checked').textContent()) === entry) return;
        await page.waitForTimeout(1500);
      }
      throw new Error(`the letters of '${entry}' do not choose it`);
    },
  };
}

const price = async (page: Page) =>
  (await page.locator('.title-block .cell.price > span').textContent())!.trim();

/** The job as the records have it, proven by the command line. */
async function provenByCli(page: Page, server: TestServer): Promise<{ proof: Proof; rig: SavedRig }> {
  await page.getByText('Saved', { exact: true }).first().waitFor({ timeout: LONG });
  const id = decodeURIComponent(new URL(page.url()).hash.slice(1).split('/')[0]!);
  const answer = await server.app.request(`/api/jobs/${id}`);
  expect(answer.status).toBe(200);
  const { document } = (await answer.json()) as { document: { rig: SavedRig } };
  const file = join(folder, `${id}.json`);
  writeFileSync(file, JSON.stringify(document.rig));
  let out = '';
  const code = await main(['prove', file, '--json'], { out: (text) => (out += text), err: () => undefined });
  expect([0, 1]).toContain(code);
  return { proof: JSON.parse(out) as Proof, rig: document.rig };
}

interface SavedRig {
  title: string;
  brief: { customer: string; duties: { target: { height: string } }[] };
  items: { id: string; part: string }[];
}

/** What makes the page wider than its window, by class and text. */
const beyond = (page: Page) =>
  page.evaluate(() =>
    document.documentElement.scrollWidth <= innerWidth
      ? []
      : [...document.querySelectorAll('body *')]
          .filter((node) => node.getBoundingClientRect().right > innerWidth + 1)
          .map(
            (node) => `${node.tagName} ${node.getAttribute('class') ?? ''}: ${node.textContent.slice(0, 20)}`,
          )
          .slice(0, 12),
  );

/** From the ringing telephone to the quote in the hand. */
async function call(page: Page, server: TestServer, hands: Hands, name: string): Promise<void> {
  const { width } = page.viewportSize()!;
  const look = async (screen: string) => {
    expect(await findings(page), screen).toEqual([]);
    expect(await beyond(page), `beyond the edge of ${screen}`).toEqual([]);
    await page.screenshot({ path: join(SEEN, `${name}-${screen}.png`), fullPage: true });
  };
  const sheet = (label: string) => page.locator('.leaves').getByRole('button', { name: label });

  // A new job.
  const index = page.getByRole('button', { name: 'Index' });
  if (width < 600) await hands.press(index);
  await hands.press(page.getByRole('button', { name: 'All jobs' }));
  await page.locator('.job-list li button').first().waitFor();
  await look('jobs');
  await hands.choose(page.getByLabel('New job'), 'Tall trees');
  await hands.press(page.getByRole('button', { name: 'Begin it' }));
  await expect.poll(() => page.url(), { timeout: LONG }).toMatch(/#tall-trees-[0-9a-f]{8}$/);
  await page.locator('[data-part=hose]').waitFor({ timeout: LONG });

  // The brief, typed as people type.
  await hands.type(page.getByLabel(/^Customer/), 'Oakhurst Estate');
  await hands.type(page.getByLabel('What the job is called'), 'Elms along the ride');
  await hands.type(page.locator('input[data-path="brief.duties.0.target.height"]'), TOO_HIGH);
  const reach = page.locator(REACH);
  await expect.poll(() => reach.getAttribute('class'), { timeout: LONG }).toContain('broken');
  await look('broken');

  // The broken promise is mended by a way out.
  await hands.press(reach.locator('.ways .take').first());
  await expect.poll(() => reach.getAttribute('class'), { timeout: LONG }).not.toContain('broken');
  expect(await page.locator('.promise.broken').count()).toBe(0);

  // A choice is made among the rigs that could be instead.
  const before = await price(page);
  await hands.press(sheet('Choices'));
  await page.locator('.choices[aria-busy=false] .best li').first().waitFor({ timeout: LONG });
  await look('choices');
  await hands.press(page.locator('.side-by-side thead').getByRole('button', { name: 'Take' }).last());
  await expect.poll(() => price(page), { timeout: LONG }).not.toBe(before);
  await hands.press(sheet('Desk'));
  await expect.poll(() => page.locator('.promise.broken').count(), { timeout: LONG }).toBe(0);
  await look('mended');

  // The quote, with the price that the command line has for what was saved.
  const { proof, rig } = await provenByCli(page, server);
  expect(rig.brief.customer).toBe('Oakhurst Estate');
  expect(rig.title).toBe('Elms along the ride');
  expect(rig.brief.duties[0]!.target.height).toBe(TOO_HIGH);
  expect(proof.counts.broken).toBe(0);
  const dollars = `$${Math.round(proof.bill.priceCents / 100).toLocaleString('en-US')}`;
  expect(await price(page)).toBe(dollars);
  if (width < 600 && (await index.count()) > 0) await hands.press(index);
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: LONG }),
    hands.press(page.getByRole('button', { name: 'Quote, PDF' })),
  ]);
  const file = join(folder, `${name}.pdf`);
  await download.saveAs(file);
  const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
  expect(text).toContain(moneyText(proof.bill.priceCents));
  expect(text).toContain('Oakhurst Estate');
  expect(text).toContain('Elms along the ride');
}

describe('The whole call', () => {
  it(
    'is worked with the mouse at 1440',
    async () => {
      const { page, server } = await newDesk({ width: 1440, height: 1000 });
      await call(page, server, mouse, 'mouse');
    },
    CALL,
  );

  it(
    'is worked by keyboard alone',
    async () => {
      const { page, server } = await newDesk({ width: 1440, height: 1000 });
      await call(page, server, keyboard(page), 'keyboard');
    },
    CALL,
  );

  it(
    'is worked with a finger at 390',
    async () => {
      const { page, server } = await newDesk({ width: 390, height: 844 }, true);
      await call(page, server, finger, 'finger');
    },
    CALL,
  );

  it('wrote no error to the console', () => {
    expect(errors).toEqual([]);
  });
});
