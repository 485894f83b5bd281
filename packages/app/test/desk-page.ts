import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { serve } from '@hono/node-server';
import { chromium, type Browser, type Page } from 'playwright-core';
import type { TestServer } from './desk-server.ts';

const CONFIG = fileURLToPath(new URL('../vite.config.ts', import.meta.url));
const VITE = fileURLToPath(new URL('../../../node_modules/vite/bin/vite.js', import.meta.url));
const AXE = fileURLToPath(new URL('../../../node_modules/axe-core/axe.min.js', import.meta.url));
const DIST = fileURLToPath(new URL('../dist/', import.meta.url));
const BUILDING = `${DIST}building`;
const BUILT = `${DIST}built-for`;

/** The built page and a browser: what every test of the page begins with. */
export async function builtPageAndBrowser(): Promise<Browser> {
  await builtOnce();
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** Files of tests run beside each other: the first of a run builds, the others wait for it. */
async function builtOnce(): Promise<void> {
  const run = String(process.ppid);
  mkdirSync(DIST, { recursive: true });
  for (;;) {
    try {
      mkdirSync(BUILDING);
      break;
    } catch {
      // A build that was ended has left its mark.
      const builder = existsSync(`${BUILDING}/run`) ? readFileSync(`${BUILDING}/run`, 'utf8') : run;
      if (builder !== run) rmSync(BUILDING, { recursive: true, force: true });
      await wait(200);
    }
  }
  try {
    writeFileSync(`${BUILDING}/run`, run);
    if (existsSync(BUILT) && readFileSync(BUILT, 'utf8') === run) return;
    // In a process of its own: a test's environment would build the development page.
    execFileSync('node', [VITE, 'build', '--config', CONFIG, '--logLevel', 'warn'], {
      env: { ...process.env, NODE_ENV: 'production', VITEST: undefined },
    });
    writeFileSync(BUILT, run);
  } finally {
    rmSync(BUILDING, { recursive: true, force: true });
  }
}

/** Serves a shop on a free port of this machine. @returns its address, and what ends it */
export function served({ app }: TestServer, at = 0): Promise<{ address: string; close: () => void }> {
  return new Promise((resolve) => {
    const http = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: at }, ({ port }) =>
      resolve({
        address: `http://127.0.0.1:${port}/`,
        close: () => {
          http.close();
          if ('closeAllConnections' in http) http.closeAllConnections();
        },
      }),
    );
  });
}

/** Serious and critical findings of axe on the page as it stands. */
export const seriousFindings = async (page: Page) =>
  (await findings(page)).filter((finding) => /^(serious|critical) /.test(finding));

/** Everything that axe finds on the page as it stands. */
export async function findings(page: Page): Promise<string[]> {
  await page.evaluate(readFileSync(AXE, 'utf8'));
  return page.evaluate(async () => {
    const axe = (globalThis as unknown as { axe: { run(): Promise<{ violations: Finding[] }> } }).axe;
    interface Finding {
      impact: string;
      id: string;
      nodes: { target: string[] }[];
    }
    const { violations } = await axe.run();
    return violations.map(
      (v) =>
        `${v.impact} ${v.id}: ${v.nodes
          .map((n) => n.target.join(' '))
          .slice(0, 5)
          .join(' | ')}`,
    );
  });
}
