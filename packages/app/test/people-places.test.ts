import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { main } from '../src/cli/main.ts';
import { People } from '../src/server/people.ts';
import { copyLines, layCopy, openRecords } from '../src/store/index.ts';
import { postgresServer, type PostgresServer } from './postgres-server.ts';
import { started } from './started-server.ts';

const DANA = {
  name: 'Dana',
  email: 'dana@shop.example',
  role: 'owner',
  password: 'forty green barrels',
} as const;
let server: PostgresServer;
const folder = mkdtempSync(join(tmpdir(), 'spraywright-people-'));

beforeAll(async () => {
  server = await postgresServer();
}, 180_000);
afterAll(() => {
  server.remove();
  rmSync(folder, { recursive: true, force: true });
});

it('people sign in on PostgreSQL as on SQLite, and still do after their records moved there', async () => {
  const here = await openRecords(join(folder, 'moved'));
  const there = await openRecords(await server.newDatabase());
  await new People(here, Date.now).add(DANA);
  await layCopy(there, copyLines(here));
  const people = new People(there, Date.now);
  const answer = await people.signIn(DANA.email, DANA.password);
  expect(answer.ok).toBe(true);
  if (!answer.ok) return;
  const Cookie = answer.headers.getSetCookie()[0]!.split(';')[0]!;
  expect(await people.signedIn(new Headers({ Cookie }))).toMatchObject({ name: 'Dana', role: 'owner' });
  // Another process, and a new start, know the session; the records that were left do not.
  expect(await new People(there, Date.now).signedIn(new Headers({ Cookie }))).toMatchObject({ name: 'Dana' });
  expect(await new People(here, Date.now).signedIn(new Headers({ Cookie }))).toBeUndefined();
  await people.add({ ...DANA, email: 'robin@shop.example', role: 'support' });
  expect((await people.list()).map((p) => p.role)).toEqual(['owner', 'support']);
  await people.remove('robin@shop.example');
  expect(await people.list()).toHaveLength(1);
  await here.close();
  await there.close();
}, 180_000);

it('another address than the loopback serves nothing until the first owner made the account, once', async () => {
  const place = join(folder, 'nobody');
  const { process: child, address, text } = await started(place, ['--host', '0.0.0.0']);
  try {
    const ask = (path: string, init?: RequestInit) =>
      fetch(new URL(path, address), { redirect: 'manual', ...init });
    for (const path of ['', 'api/jobs', 'start.json', 'office.html', 'api/people'])
      expect([303, 401], path).toContain((await ask(path)).status);
    const link = /First owner: (\S+)/.exec(text)![1]!;
    expect((await ask(`${link}x`)).status).toBe(410);
    expect(await (await ask(link)).text()).toContain('Make the account');
    const { name, email, password: next } = DANA;
    const form = (values: Record<string, string>) =>
      ask(link, { method: 'POST', body: new URLSearchParams(values) });
    expect((await form({ name, email, next: 'short' })).status).toBe(422);
    expect((await form({ name, email: 'dana', next })).status).toBe(422);
    const made = await form({ name, email, next });
    expect(made.status).toBe(303);
    const Cookie = made.headers.getSetCookie()[0]!.split(';')[0]!;
    expect(await (await ask('api/me', { headers: { Cookie } })).json()).toMatchObject({ role: 'owner' });
    expect((await form({ name, email: 'other@shop.example', next })).status).toBe(410);
    expect((await ask(link)).status).toBe(410);
  } finally {
    child.kill('SIGINT');
    await once(child, 'exit');
  }
  const again = await started(place, ['--host', '0.0.0.0']);
  expect(again.text).not.toContain('First owner');
  again.process.kill('SIGINT');
}, 180_000);

it('the command names the field that is wrong', async () => {
  const place = join(folder, 'wrong');
  const told = async (...args: string[]) => {
    const said: string[] = [];
    const terminal = { out: () => undefined, err: (text: string) => said.push(text) };
    expect(await main(['people', ...args, '--records', place], terminal)).toBe(2);
    return said.join('\n');
  };
  expect(await told('add', 'Dana', '--email', 'dana', '--role', 'owner')).toContain("email is 'dana'");
  expect(await told('add', 'Dana', '--email', DANA.email, '--role', 'king')).toContain("role is 'king'");
  expect(await told('add', '', '--email', DANA.email, '--role', 'owner')).toContain('name has');
  expect(await told('remove', DANA.email)).toContain('nobody has');
  expect(await told('promote')).toContain("not 'promote'");
});
