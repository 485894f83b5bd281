/**
 * The desk in Chromium, beside what the same browser takes for nothing at all:
 *   npm run bench -- desk
 * drag, step: from the input's own time to repainted figures (the measure `input-to-repaint` of the page), the peer being one
 * line of text changed by the same kind of input in the same page. Rounds of both alternate, so that other load on the
 * machine falls on both alike. A frame is 16.7 ms: an input comes anywhere in one, and is seen with the next at the earliest.
 * first load: from the address to figures on the sheet, for a device that has never seen the page; the peer is the same
 * page without its scripts.
 */
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { makeJob, openRecords } from '../src/store/index.ts';
import { demoCatalogue, demoShop } from '../test/demo.ts';
import { builtPageAndBrowser } from '../test/desk-page.ts';
import { largeRig } from '../test/large-rig.ts';
import { started } from '../test/started-server.ts';

const ROUNDS = Number(process.env.ROUNDS ?? 8);
const MOVES = 30;
/** Between two moves [ms]: a hand that drags, longer than an answer takes, and not in step with the frames. */
const pauseAfter = (i: number) => 37 + ((i * 7) % 17);
/** Far enough that most moves change a figure [px]. */
const FAR = 3;
const DESK = { width: 1440, height: 900 };
const LOADS = 5;

interface Times {
  readonly name: string;
  readonly all: number[];
}

function tell({ name, all }: Times, note = ''): void {
  const sorted = [...all].sort((a, b) => a - b);
  const at = (share: number) =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? NaN).toFixed(1).padStart(8);
  console.log(
    `${name.padEnd(44)}${at(0)}${at(0.5)}${at(0.95)}${at(1)}${String(all.length).padStart(7)}  ${note}`,
  );
}

/** Puts the rig of 40 parts into the records. @returns its id and how many parts it has */
async function fillRecords(place: string): Promise<{ id: string; parts: number }> {
  const { raw, rig } = largeRig(demoCatalogue(), demoShop());
  const records = await openRecords(place);
  await records.save((t) =>
    makeJob(t, raw.id, { rig: raw, notes: '' } as never, { by: '', at: '2026-03-03T09:00:00.000Z' }),
  );
  await records.close();
  return { id: raw.id, parts: rig.items.size };
}

/** What the page keeps for the bench: long tasks, and the line of text that is the peer. */
function watch(): void {
  const kept = globalThis as unknown as { tasks: number[]; peer: number[] };
  kept.tasks = [];
  kept.peer = [];
  new PerformanceObserver((list) => kept.tasks.push(...list.getEntries().map((e) => e.duration))).observe({
    type: 'longtask',
    buffered: false,
  });
  const line = document.createElement('output');
  line.id = 'bench-peer';
  line.tabIndex = 0;
  line.style.cssText =
    'position:fixed;left:0;bottom:0;width:300px;height:24px;z-index:9;background:#fff;font:12px monospace';
  document.body.append(line);
  let began: number | undefined;
  const changed = (event: Event) => {
    began ??= event.timeStamp;
    line.textContent = `${began}`;
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => {
        if (began !== undefined) kept.peer.push(performance.now() - began);
        began = undefined;
      };
      channel.port2.postMessage(0);
    });
  };
  line.addEventListener('pointerdown', (event) => line.setPointerCapture(event.pointerId));
  line.addEventListener('pointermove', changed);
  line.addEventListener('keydown', changed);
}

const repaints = (page: Page) =>
  page.evaluate(() => {
    const all = performance.getEntriesByName('input-to-repaint').map((e) => e.duration);
    performance.clearMeasures();
    return all;
  });
const taken = (page: Page, name: 'tasks' | 'peer') =>
  page.evaluate((n) => (globalThis as unknown as Record<string, number[]>)[n]!.splice(0), name);

async function drag(page: Page, selector: string, steps: number): Promise<void> {
  // What was stepped before may have scrolled it out of sight.
  await page
    .locator(selector)
    .first()
    .evaluate((handle) => handle.scrollIntoView({ block: 'center' }));
  const box = (await page.locator(selector).first().boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= steps; i++) {
    // There and back, so that a round ends where it began.
    const far = i <= steps / 2 ? i : steps - i;
    await page.mouse.move(x + far * FAR, y - far * FAR);
    await page.waitForTimeout(pauseAfter(i));
  }
  await page.mouse.up();
  await page.waitForTimeout(400);
}

async function step(page: Page, selector: string, steps: number): Promise<void> {
  await page.locator(selector).first().focus();
  for (let i = 0; i < steps; i++) {
    await page.keyboard.press(i % 2 === 0 ? 'ArrowUp' : 'ArrowDown');
    await page.waitForTimeout(pauseAfter(i));
  }
  await page.waitForTimeout(400);
}

/** Drags and steps on the desk and on the peer, in turns. */
async function repaint(browser: Browser, address: string, id: string): Promise<void> {
  const page = await browser.newPage({ viewport: DESK });
  await page.goto(`${address}#${id}`);
  await page.locator('[data-part=hose]').waitFor({ timeout: 30_000 });
  await page.waitForTimeout(3000);
  // What compiles the bench wraps named functions in a helper that the page does not have.
  await page.evaluate('globalThis.__name = (f) => f');
  await page.evaluate(watch);
  const handles = await page
    .locator('[data-handle]')
    .evaluateAll((all) => all.map((h) => h.getAttribute('data-handle')!));
  const runs: { name: string; ours: () => Promise<void>; of: Times }[] = [
    ...handles.slice(0, 4).map((handle) => ({
      name: `drag ${handle}`,
      ours: () => drag(page, `[data-handle="${handle}"]`, MOVES),
      of: { name: `drag ${handle}`, all: [] },
    })),
    {
      name: 'step the hose length',
      ours: () => step(page, '[data-part=hose] .part-row input', MOVES),
      of: { name: 'step the length of the hose', all: [] },
    },
  ];
  const peers = { drag: [] as number[], step: [] as number[] };
  const tasks: number[] = [];
  for (const run of runs)
    for (let round = 0; round < ROUNDS; round++) {
      await repaints(page);
      await taken(page, 'tasks');
      await run.ours();
      tasks.push(...(await taken(page, 'tasks')));
      run.of.all.push(...(await repaints(page)));
      const kind = run.name.startsWith('drag') ? 'drag' : 'step';
      await (kind === 'drag' ? drag : step)(page, '#bench-peer', MOVES);
      peers[kind].push(...(await taken(page, 'peer')));
    }
  await page.close();
  for (const run of runs) tell(run.of);
  const drags = runs.filter((run) => run.name.startsWith('drag'));
  tell({ name: 'all drags together (aim 16, 95 % 33)', all: drags.flatMap((run) => run.of.all) });
  tell({ name: 'peer: drag that changes one line of text', all: peers.drag });
  tell({ name: 'peer: key that changes one line of text', all: peers.step });
  const long = tasks.filter((t) => t > 50);
  console.log(
    `tasks over 50 ms meanwhile: ${long.length}${long.length > 0 ? `, longest ${Math.max(...long)} ms` : ''}`,
  );
}

interface Script {
  readonly name: string;
  /** When it was asked for [ms since 1970]. */
  readonly at: number;
  readonly bytes: number;
  readonly packed: number;
}

/** Loads the page as a device does that has never seen it; with no scripts it is only drawn. */
async function load(
  browser: Browser,
  address: string,
  scripts: boolean,
): Promise<{ ms: number; before: readonly Script[] }> {
  const context = await browser.newContext({ viewport: DESK, serviceWorkers: 'block' });
  const page = await context.newPage();
  const reading: Promise<Script | undefined>[] = [];
  page.on('response', (response) => {
    const name = new URL(response.url()).pathname.split('/').at(-1)!;
    if (!name.endsWith('.js')) return;
    const at = response.request().timing().startTime;
    reading.push(
      response.body().then(
        (body) => ({ name, at, bytes: body.length, packed: gzipSync(body).length }),
        () => undefined,
      ),
    );
  });
  if (!scripts) await page.route(/\.js$/, (route) => route.abort());
  await page.addInitScript(() => {
    new MutationObserver((_, watching) => {
      if (document.querySelector('[data-promise]') === null) return;
      watching.disconnect();
      requestAnimationFrame(() => setTimeout(() => performance.mark('usable')));
    }).observe(document, { childList: true, subtree: true });
  });
  await page.goto(address, { waitUntil: 'load' });
  if (scripts) await page.waitForFunction(() => performance.getEntriesByName('usable').length > 0);
  const { ms, origin } = await page.evaluate(() => {
    const [mark] = performance.getEntriesByName('usable');
    const [navigation] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
    return { ms: mark?.startTime ?? navigation!.loadEventStart, origin: performance.timeOrigin };
  });
  const all = await Promise.all(reading);
  await context.close();
  return { ms, before: all.filter((s): s is Script => s !== undefined && s.at < origin + ms) };
}

async function firstLoad(browser: Browser, address: string, id: string): Promise<void> {
  const known: Times = { name: 'first load, a job that is in the records', all: [] };
  const fresh: Times = { name: 'first load, parts chosen for the demo brief', all: [] };
  const bare: Times = { name: 'peer: the same page without its scripts', all: [] };
  let before: readonly Script[] = [];
  for (let i = 0; i < LOADS; i++) {
    const ours = await load(browser, `${address}#${id}`, true);
    known.all.push(ours.ms);
    before = ours.before;
    fresh.all.push((await load(browser, address, true)).ms);
    bare.all.push((await load(browser, address, false)).ms);
  }
  tell(known);
  tell(fresh);
  tell(bare);
  const kb = (of: 'bytes' | 'packed') => (before.reduce((sum, s) => sum + s[of], 0) / 1000).toFixed(0);
  console.log(
    `script before first use, the engine in its worker included: ${kb('packed')} KB gzip, ${kb('bytes')} KB`,
  );
  for (const { name, packed } of [...before].sort((a, b) => b.packed - a.packed).slice(0, 6))
    console.log(`  ${(packed / 1000).toFixed(0).padStart(4)} KB gzip  ${name.replace(/-[^-]*$/, '')}`);
}

const place = mkdtempSync(join(tmpdir(), 'spraywright-desk-'));
const { id, parts } = await fillRecords(place);
const browser = await builtPageAndBrowser();
const { process: server, address } = await started(place);
try {
  console.log(`${id}, ${parts} parts, ${DESK.width} × ${DESK.height}, Chromium ${browser.version()}`);
  console.log('ms                                             least  median    95 %    most  times');
  await firstLoad(browser, address, id);
  await repaint(browser, address, id);
} finally {
  await browser.close();
  server.kill('SIGINT');
  await once(server, 'exit');
  rmSync(place, { recursive: true, force: true });
}
