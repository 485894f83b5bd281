// Screenshots of every screen at the three folds, day and night, into shots/: the sheets of the demo job, with a quote and a
// machine made of it, office, machines, sums and the design system. `npm run shots -- roof-skid` takes the sheets of one job,
// `--width 390` one width, `--day` or `--night` one sheet, `--address http://127.0.0.1:4173/` a server that already runs, to
// whose records nothing is added but the demo job.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from 'node:child_process';
import { parseArgs } from 'node:util';
import { chromium } from 'playwright-core';
import { ensureBuilt, ensureChromium, root, say } from './ensure.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    width: { type: 'string' },
    night: { type: 'boolean' },
    day: { type: 'boolean' },
    address: { type: 'string' },
  },
});
const jobs = positionals.length > 0 ? positionals : ['tall-elms'];
const LEAVES = ['', 'plumbing', 'curves', 'choices'];
/** Screens beside the desk, by the name of their picture. */
const BESIDE = {
  'office-jobs': 'office.html#jobs',
  'office-quotes': 'office.html#quotes',
  'office-calendar': 'office.html#calendar',
  'office-parts': 'office.html#parts',
  'office-learned': 'office.html#learned',
  'office-shop': 'office.html#shop',
  'office-people': 'office.html#people',
  'office-doings': 'office.html#doings',
  machines: 'machines.html',
  sums: 'sums.html',
  design: 'design.html',
};
const deskScreens = jobs.flatMap((job) =>
  LEAVES.map((leaf) => ({
    name: leaf === '' ? job : `${job}-${leaf}`,
    path: leaf === '' ? `#${job}` : `#${job}/${leaf}`,
    ready: '.part, .upright-part',
  })),
);
const beside = (screens) =>
  Object.entries(screens).map(([name, path]) => ({ name, path, ready: 'main, #sheet h1' }));
/** What stands on a sheet while its engine still works. */
const WAITING = ['Reading the machine.', 'Being worked out.'];
const FOLDS = [
  { width: 1440, height: 1000 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
].filter((f) => values.width === undefined || f.width === Number(values.width));
const CHROMIUM_ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const executablePath = ensureChromium();
const out = join(root, 'shots');
mkdirSync(out, { recursive: true });
const server =
  values.address === undefined ? await startServer() : { address: values.address, end: () => {} };
const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
try {
  const ofDemo = await readied();
  const screens =
    positionals.length > 0 ? deskScreens : [...deskScreens, ...beside({ ...BESIDE, ...ofDemo })];
  for (const viewport of FOLDS)
    for (const colorScheme of values.night ? ['dark'] : values.day ? ['light'] : ['light', 'dark']) {
      const context = await browser.newContext({ viewport, colorScheme, deviceScaleFactor: 2 });
      for (const { name, path, ready } of screens) {
        const page = await context.newPage();
        page.on('pageerror', (error) => say(`page: ${error.message}`));
        await page.goto(new URL(path, server.address).href);
        await page.locator(ready).first().waitFor({ timeout: 120_000 });
        for (const waiting of WAITING)
          await page.getByText(waiting, { exact: true }).waitFor({ state: 'hidden', timeout: 120_000 });
        await page.waitForTimeout(2500);
        const sheet = colorScheme === 'dark' ? 'night' : 'day';
        const file = join(out, `${name}-${viewport.width}-${sheet}.png`);
        await page.screenshot({ path: file });
        await page.screenshot({ path: file.replace('.png', '-whole.png'), fullPage: true });
        say(file);
        await page.close();
      }
      await context.close();
    }
} finally {
  await browser.close();
  server.end();
}

/** Chooses the parts of the jobs; of the demo job in records of our own, also makes a quote and a machine. @returns their screens */
async function readied() {
  const page = await browser.newPage();
  for (const job of jobs) {
    await page.goto(new URL(`#${job}`, server.address).href);
    await page.getByText('Saved', { exact: true }).waitFor({ timeout: 120_000 });
  }
  const [job] = jobs;
  const made = async (path, body) => {
    const headers = { Origin: new URL(server.address).origin };
    const answer = await page.request.post(new URL(path, server.address).href, { data: body, headers });
    if (!answer.ok()) throw new Error(`${path} answered ${answer.status()}: ${await answer.text()}`);
    return answer.json();
  };
  try {
    if (values.address !== undefined || positionals.length > 0) return {};
    const { number } = await made('api/quotes', { job });
    const { serial } = await made('api/machines', { job, version: 1 });
    return {
      'office-quote': `office.html#quotes/${number}`,
      'machine-build': `machines.html#${serial}/build`,
      'machine-yard': `machines.html#${serial}/yard`,
      'machine-service': `machines.html#${serial}/service`,
    };
  } finally {
    await page.close();
  }
}

/** The built program on a free port, with records of its own; its address is in what it prints. */
async function startServer() {
  ensureBuilt();
  const records = mkdtempSync(join(tmpdir(), 'spraywright-shots-'));
  const args = ['packages/app/bin/spraywright.mjs', 'start', '--port', '0', '--records', records];
  const child = spawn('node', args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise((resolve, reject) => {
    let text = '';
    child.stdout.on('data', (chunk) => {
      text += chunk;
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(text);
      if (found) resolve(found[0]);
    });
    child.on('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });
  return {
    address,
    end: () => {
      child.on('exit', () => rmSync(records, { recursive: true, force: true }));
      child.kill('SIGINT');
    },
  };
}
