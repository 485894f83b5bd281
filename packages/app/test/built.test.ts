import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';

const BIN = fileURLToPath(new URL('../bin/spraywright.mjs', import.meta.url));
let folder: string;
let server: ChildProcess;
let address: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spraywright-built-'));
  server = spawn('node', [BIN, 'start', '--port', '0', '--records', folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  for await (const chunk of server.stdout!) {
    text += String(chunk);
    const found = /Open (https?:\S+)\//.exec(text);
    if (found !== null) return void (address = found[1]!);
  }
  throw new Error(`the built server did not start:\n${text}`);
}, 120_000);
afterAll(async () => {
  server.kill('SIGINT');
  const [code] = (await once(server, 'exit')) as [number];
  rmSync(folder, { recursive: true, force: true });
  expect(code).toBe(0);
});

const ask = (path: string, method = 'GET', body?: object) =>
  fetch(address + path, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }),
  });
const told = async <T>(path: string, method?: string, body?: object) => {
  const answer = await ask(path, method, body);
  expect([path, answer.status < 300]).toEqual([path, true]);
  return (await answer.json()) as T;
};

/** What is bundled must still find the files and threads that it looks for from the place of its source. */
describe('What the build bundles for Node', () => {
  it('answers on the command line', () => {
    expect(execFileSync('node', [BIN, 'help'], { encoding: 'utf8' })).toContain('start');
  });

  it('finds the page, its documents and the faces of its papers', async () => {
    for (const path of ['/', '/start.json', '/api/problems', '/api/openapi.json'])
      expect([path, (await ask(path)).status]).toEqual([path, 200]);
    const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
    await told('/api/jobs', 'POST', { id: 'one', rig: raw });
    const { number } = await told<{ number: string }>('/api/quotes', 'POST', { job: 'one' });
    const paper = await ask(`/api/quotes/${number}/revisions/A/quote.pdf`);
    expect((await paper.text()).slice(0, 5)).toBe('%PDF-');
  });

  it('starts the threads that prove quotes again', async () => {
    const [hose] = (await told<{ parts: { id: string }[] }>('/api/parts?kind=hose&limit=1')).parts;
    const part = await told<{ edition: number; document: object }>(`/api/parts/${hose!.id}`);
    await told(`/api/parts/${hose!.id}`, 'PUT', {
      madeOn: part.edition,
      part: { ...part.document, priceCents: 999_00 },
    });
    type Rounds = { rounds: { state: string; done: number; total: number; trouble: string }[] };
    let last: Rounds['rounds'][number] | undefined;
    for (let i = 0; i < 600 && last?.state !== 'done'; i++) {
      await wait(100);
      last = (await told<Rounds>('/api/quotes-again')).rounds[0];
    }
    expect(last).toMatchObject({ state: 'done', done: 1, total: 1, trouble: '' });
  });
});
