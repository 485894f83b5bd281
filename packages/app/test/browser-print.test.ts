import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { proveRig } from '@spraywright/engine/rig';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { builtPageAndBrowser, served } from './desk-page.ts';
import { testServer } from './desk-server.ts';
import { dense, wordsOf } from './ink.ts';

const folder = mkdtempSync(join(tmpdir(), 'spraywright-print-'));
const catalogue = demoCatalogue();
const { raw, rig } = demoRig('light-cart', catalogue, demoShop());
let browser: Browser;
beforeAll(async () => {
  browser = await builtPageAndBrowser();
}, 180_000);
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

// Paper is narrower than the window: what folds the sheet for narrow windows must not, or its end is cut.
it.each([1440, 820, 390])(
  'prints the desk whole from a window of %i px: every promise, every part, the price, and nothing to press',
  async (width) => {
    const server = await testServer();
    const { address, close } = await served(server);
    const send = { method: 'POST', headers: { 'Content-Type': 'application/json' } };
    const job = JSON.stringify({ id: 'cart', rig: raw });
    expect((await server.app.request('/api/jobs', { ...send, body: job })).status).toBe(201);
    const page = await browser.newPage({ viewport: { width, height: 900 } });
    await page.goto(`${address}#cart`);
    await page.locator('[data-promise]').first().waitFor({ timeout: 60_000 });
    await page.locator('[data-part=hose], .upright-part').first().waitFor({ timeout: 60_000 });
    const sentences = await page
      .locator('.promise .sentence')
      .evaluateAll((all) =>
        all.map((one) => [...one.childNodes].map((n) => (n.nodeType === 3 ? n.nodeValue : '')).join('')),
      );
    const printed = wordsOf(
      await page.pdf({ format: 'Letter', preferCSSPageSize: true, printBackground: true }),
      folder,
    );
    const proof = proveRig(rig, catalogue, demoShop());
    expect(sentences.length).toBeGreaterThan(20);
    for (const sentence of sentences) expect(printed).toContain(dense(sentence));
    for (const { item, part } of rig.items.values())
      if (width === 1440) expect(printed, item.id).toContain(dense(part.name));
    expect(printed).toContain(dense(`$${Math.round(proof.bill.priceCents / 100).toLocaleString('en-US')}`));
    expect(printed).toContain(dense(proof.title));
    for (const pressed of ['Find a part', 'Show the working', 'Choices', 'The shop keeps', 'All jobs'])
      expect(printed).not.toContain(dense(pressed));
    await page.context().close();
    close();
    await server.close();
  },
  120_000,
);
