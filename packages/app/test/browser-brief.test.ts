import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startValuesOf, type RawRig } from '@spraywright/engine/rig';
import { builtPageAndBrowser, findings, served } from './desk-page.ts';
import { testServer } from './desk-server.ts';

/** Choosing the parts of a demo job takes the page's engine seconds on a slow machine. */
const LONG = 90_000;
const DESK = { width: 1440, height: 1000 };
const PHONE = { width: 390, height: 844 };

let browser: Browser;
const errors: string[] = [];
const open: (() => Promise<void>)[] = [];

beforeAll(async () => {
  browser = await builtPageAndBrowser();
}, 180_000);

afterAll(async () => {
  for (const close of open) await close();
  await browser?.close();
});

async function openDesk(
  job: string,
  viewport: { width: number; height: number },
  touch = false,
): Promise<Page> {
  const server = await testServer();
  const { address, close } = await served(server);
  const context = await browser.newContext({ viewport, hasTouch: touch });
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
  await page.goto(`${address}#${job}`);
  await page.locator('[data-part=tank]').waitFor({ timeout: LONG });
  return page;
}

interface RawBrief {
  duties: { id: string; name: string; open: string[]; flow?: string; tankLevel: string; target?: unknown }[];
  liquids: { id: string; name: string }[];
  carrier: { hitchCategory?: string; towRating?: string };
}

async function rigOf(page: Page): Promise<RawRig & { brief: RawBrief }> {
  await page.evaluate(() => dispatchEvent(new Event('pagehide')));
  return page.evaluate(() => {
    const kept = JSON.parse(localStorage.getItem('spraywright-desk-1') ?? '{}') as {
      current: string;
      jobs: Record<string, { rig: unknown }>;
    };
    return kept.jobs[kept.current]!.rig;
  }) as Promise<RawRig & { brief: RawBrief }>;
}

const briefOf = async (page: Page) => (await rigOf(page)).brief;
const tabs = (page: Page) => page.locator('.duties li').count();
const tab = (page: Page, name: string) => page.locator('.duties button', { hasText: name });

describe('Another thing to spray', () => {
  let page: Page;
  beforeAll(async () => {
    page = await openDesk('three-point-pasture', DESK);
  }, LONG);

  it(
    'is added with start values that are marked, and confirmed by typing or by Enter',
    async () => {
      await page.getByRole('button', { name: 'Add a duty' }).click();
      const form = page.getByRole('form', { name: 'Add a duty' });
      await form.getByRole('button', { name: 'Add it' }).click();
      await form.getByText("The name of the duty is ''; 2 to 80 characters are needed.").waitFor();
      expect(await findings(page)).toEqual([]);
      await form.getByLabel('What is sprayed besides').fill('Thistles by the ditch');
      await form.getByRole('button', { name: 'Add it' }).click();
      await form.waitFor({ state: 'detached' });
      await tab(page, 'Thistles by the ditch').waitFor({ timeout: LONG });
      await expect.poll(() => tab(page, 'Thistles by the ditch').getAttribute('aria-current')).toBe('true');
      const added = (await briefOf(page)).duties[2]!;
      expect(added).toMatchObject({ id: 'thistles-by-the-ditch', open: ['gun'], flow: '1.5 gpm' });

      const flow = page.locator('input[data-path="brief.duties.2.flow"]');
      await expect.poll(() => flow.inputValue()).toBe('(1.5 gpm)');
      await flow.click();
      await flow.press('Enter');
      await expect.poll(() => flow.inputValue(), { timeout: LONG }).toBe('1.5 gpm');
      const far = page.locator('input[data-path="brief.duties.2.target.distance"]');
      await expect.poll(() => far.inputValue()).toBe('(20 ft)');
      await far.fill('12 ft');
      await far.press('Escape');
      await expect.poll(() => far.inputValue(), { timeout: LONG }).toBe('(20 ft)');
      await far.fill('12 ft');
      await far.blur();
      await expect.poll(() => far.inputValue(), { timeout: LONG }).toBe('12 ft');
      const left = startValuesOf(await briefOf(page));
      expect(left).toContain('duties.2.tankLevel');
      expect(left).not.toContain('duties.2.flow');
      expect(left).not.toContain('duties.2.target.distance');
      await page.getByText('Saved', { exact: true }).first().waitFor({ timeout: LONG });
    },
    LONG,
  );

  it(
    'is taken away again, and Undo brings it back',
    async () => {
      await page.getByRole('button', { name: 'The whole brief' }).click();
      await page.getByRole('button', { name: 'Take this duty away' }).click();
      await expect.poll(() => tabs(page), { timeout: LONG }).toBe(2);
      await page.getByRole('button', { name: 'Undo' }).click();
      await tab(page, 'Thistles by the ditch').waitFor({ timeout: LONG });
      expect(await tabs(page)).toBe(3);
    },
    LONG,
  );

  it(
    'may ask an outlet that the rig does not have: it says so, and the parts chosen again have it',
    async () => {
      for (const name of ['Thistles by the ditch', 'Fence row']) {
        await tab(page, name).click();
        await expect.poll(() => tab(page, name).getAttribute('aria-current'), { timeout: LONG }).toBe('true');
        await page.getByRole('button', { name: 'Take this duty away' }).click();
        await expect.poll(() => tab(page, name).count(), { timeout: LONG }).toBe(0);
      }
      await page.getByText('The only duty: it is changed, not taken away.').waitFor();
      const amiss = page.locator('.duties-amiss');
      await amiss.getByText('No duty uses the gun line any more').waitFor({ timeout: LONG });
      await amiss.getByRole('button', { name: 'Choose the parts again' }).click();
      await expect.poll(() => page.locator('[data-part=gun]').count(), { timeout: LONG }).toBe(0);
      await amiss.waitFor({ state: 'detached', timeout: LONG });

      await page.getByRole('button', { name: 'Add a duty' }).click();
      const form = page.getByRole('form', { name: 'Add a duty' });
      await form.getByLabel('What is sprayed besides').fill('Gate posts');
      await form.getByLabel('by the').selectOption('gun');
      await form.getByText('This rig does not have it yet').waitFor();
      await form.getByRole('button', { name: 'Add it' }).click();
      await amiss.getByText('This rig has no gun for “Gate posts”').waitFor({ timeout: LONG });
      expect(await findings(page)).toEqual([]);
      await amiss.getByRole('button', { name: 'Choose the parts again' }).click();
      await page.locator('[data-part=gun]').waitFor({ timeout: LONG });
      await amiss.waitFor({ state: 'detached', timeout: LONG });
    },
    LONG * 2,
  );
});

describe('The whole brief', () => {
  it(
    'takes what a customer says of the tractor, lets it be unsaid, and aims a duty elsewhere',
    async () => {
      const page = await openDesk('three-point-pasture', DESK);
      await page.getByRole('button', { name: 'The whole brief' }).click();
      await page.locator('.brief-fold summary', { hasText: 'Vehicle and carrier' }).click();
      const hitch = page.getByLabel('category of the three-point hitch');
      await expect.poll(() => hitch.inputValue()).toBe('2');
      await hitch.selectOption('1');
      await expect.poll(async () => (await briefOf(page)).carrier.hitchCategory).toBe('1');
      await hitch.selectOption({ label: 'not said' });
      await expect.poll(async () => (await briefOf(page)).carrier.hitchCategory).toBeUndefined();

      const tow = page.getByLabel('gross rating of the tow vehicle');
      await expect.poll(() => tow.inputValue()).toBe('');
      await tow.fill('heavy');
      await page.locator('.brief-fields .field-problem').waitFor({ timeout: LONG });
      expect(await page.locator('.notice.bad').textContent()).toContain(
        "could be read. Gross rating of the tow vehicle: 'heavy' ",
      );
      expect(await findings(page)).toEqual([]);
      await tow.fill('9000 lb');
      await tow.blur();
      await page.locator('.brief-fields .field-problem').waitFor({ state: 'detached', timeout: LONG });
      expect((await briefOf(page)).carrier.towRating).toBe('9000 lb');
      await tow.fill('');
      await tow.blur();
      await expect.poll(async () => (await briefOf(page)).carrier.towRating).toBeUndefined();

      await tab(page, 'Fence row').click();
      const aims = page.getByLabel('Aims');
      await expect.poll(() => aims.inputValue(), { timeout: LONG }).toBe('distance');
      await aims.selectOption('height');
      const up = page.locator('.brief ol input[data-path="brief.duties.1.target.height"]');
      await expect.poll(() => up.inputValue(), { timeout: LONG }).toBe('(30 ft)');
      expect(await findings(page)).toEqual([]);
    },
    LONG * 2,
  );

  it(
    'is filled by keyboard alone: another liquid, sprayed and then taken away',
    async () => {
      const page = await openDesk('three-point-pasture', DESK);
      const to = async (name: string, role = 'button') => {
        const wanted = page.getByRole(role as 'button', { name, exact: true }).first();
        await wanted.waitFor({ timeout: LONG });
        for (let i = 0; i < 300; i++) {
          if (await wanted.evaluate((node) => node === document.activeElement)) return;
          await page.keyboard.press('Tab');
        }
        throw new Error(`Tab does not lead to '${name}'`);
      };
      await to('Add a liquid');
      await page.keyboard.press('Enter');
      await page.getByRole('form', { name: 'Add a liquid' }).waitFor({ timeout: LONG });
      await to('Liquid', 'combobox');
      await page.keyboard.type('Caustic');
      await to('called', 'textbox');
      await page.keyboard.type('Gutter cleaner');
      await page.keyboard.press('Enter');
      await expect.poll(async () => (await briefOf(page)).liquids.at(-1)?.name).toBe('Gutter cleaner');
      await page.getByLabel('Liquid sprayed').selectOption({ label: 'Gutter cleaner' });
      const strength = page.locator('.brief ol input[data-path="brief.liquids.2.strength"]');
      await expect.poll(() => strength.inputValue(), { timeout: LONG }).toBe('(10)');
      await to('The whole brief');
      await page.keyboard.press('Enter');
      const fold = page.locator('.brief-fold', { hasText: 'Liquid: Gutter cleaner' });
      await fold.locator('summary').press('Enter');
      await fold.getByRole('button', { name: 'Take this liquid away' }).press('Enter');
      await page
        .getByText('"Gutter cleaner" is sprayed in "Pasture, 20 ft boom": choose another there first')
        .waitFor();
      await page.getByLabel('Liquid sprayed').selectOption({ label: 'Weed killer mix' });
      await fold.getByRole('button', { name: 'Take this liquid away' }).press('Enter');
      await expect.poll(async () => (await briefOf(page)).liquids.length).toBe(2);
    },
    LONG * 2,
  );

  it(
    'is filled with a finger at 390, where nothing is wider than the window',
    async () => {
      const page = await openDesk('three-point-pasture', PHONE, true);
      const narrow = async () =>
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
      await page.getByRole('button', { name: 'Add a duty' }).tap();
      const form = page.getByRole('form', { name: 'Add a duty' });
      await form.waitFor({ timeout: LONG });
      await narrow();
      expect(await findings(page)).toEqual([]);
      await form.getByLabel('What is sprayed besides').fill('Nettles');
      await form.getByRole('button', { name: 'Add it' }).tap();
      await tab(page, 'Nettles').waitFor({ timeout: LONG });
      await page.getByRole('button', { name: 'The whole brief' }).tap();
      const folds = page.locator('.brief-fold summary');
      await folds.first().waitFor({ timeout: LONG });
      for (let i = 1; i < (await folds.count()); i++) await folds.nth(i).tap();
      await narrow();
      expect(await findings(page)).toEqual([]);
      const heights = await page
        .locator('.brief-panel')
        .evaluate((panel) =>
          [
            ...panel.querySelectorAll('summary, .brief-fields li, .brief-outlets label, .brief-aim select'),
          ].map((node) => node.getBoundingClientRect().height),
        );
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
      await page.getByRole('button', { name: 'Take this duty away' }).tap();
      await expect.poll(() => tab(page, 'Nettles').count(), { timeout: LONG }).toBe(0);
    },
    LONG,
  );

  it('wrote no error to the console', () => {
    expect(errors).toEqual([]);
  });
});
