// GET /api/learned of a shop that tested 200 machines: the first answer, the next, the answer after one more test, and how
// long the server could not answer others meanwhile; beside it the same work on the server's own thread.
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { yardSheet, type SheetReading } from '@spraywright/engine/yard';
import { proveRig } from '@spraywright/engine/rig';
import { learnFromTests } from '../src/server/learning/learn-from-tests.ts';
import { TEACHING_KINDS } from '../src/server/learning/tested-machines.ts';
import { addEntries, makeJob, writtenMachines } from '../src/store/index.ts';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';
import { testServer } from '../test/desk-server.ts';
import { syntheticShop } from '../test/synthetic-shop.ts';
import { toldTest } from '../test/told-tests.ts';

const MACHINES = Number(process.env.MACHINES ?? 200);
const DOING = { by: 'Bench', at: '2026-03-03T09:00:00.000Z' };
const catalogue = demoCatalogue();
const rigs = demoBriefs().map(({ name }) => demoRig(name, catalogue, demoShop()));
const rows = new Map<string, readonly SheetReading[]>();
for (const { rig } of rigs) {
  const { readings } = yardSheet(rig, proveRig(rig, catalogue, demoShop()));
  rows.set(rig.document.id, readings);
}
const shop = syntheticShop(
  rigs.map((r) => r.rig),
  { count: MACHINES + 1, seed: 1 },
);
const server = await testServer();

async function ask(path: string, body?: unknown): Promise<unknown> {
  const answer = await server.app.request(
    path,
    body === undefined
      ? {}
      : { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) },
  );
  const told: unknown = await answer.json();
  if (!answer.ok) throw new Error(JSON.stringify(told));
  return told;
}

async function put(n: number): Promise<void> {
  const { rig, serial } = shop.machines[n]!;
  await ask('/api/machines', { job: rig.document.id, version: 1, serial });
  const entries = toldTest(shop.machines[n]!, rows.get(rig.document.id)!);
  await server.records.save((t) => addEntries(t, serial!, entries, DOING));
}

await server.records.save(async (t) => {
  for (const { raw, rig } of rigs)
    await makeJob(t, rig.document.id, { rig: raw as Record<string, unknown>, notes: '' }, DOING);
});
for (let n = 0; n < MACHINES; n++) await put(n);

/** Seconds that something took, and the longest that the thread of the server was busy meanwhile. */
async function timed(name: string, work: () => Promise<unknown>): Promise<void> {
  const delay = monitorEventLoopDelay({ resolution: 5 });
  delay.enable();
  await new Promise((done) => setTimeout(done, 20));
  const began = performance.now();
  await work();
  const took = performance.now() - began;
  await new Promise((done) => setTimeout(done, 20));
  delay.disable();
  console.log(
    `  ${name.padEnd(52)}${(took / 1000).toFixed(2).padStart(8)} s, others waited ${(delay.max / 1e9).toFixed(2)} s at most`,
  );
}

const written = await writtenMachines(server.records.db, TEACHING_KINDS);
const entries = written.reduce((sum, m) => sum + m.entries.length, 0);
console.log(`${written.length} tested machines of ${rigs.length} kinds, ${entries} entries`);
await timed('first answer', () => ask('/api/learned'));
await timed('the next, held', () => ask('/api/learned'));
await timed('with what each machine says, held', () => ask('/api/learned?machines=yes'));
await put(MACHINES);
await timed('after one more test', () => ask('/api/learned'));
const { files } = await server.shelf.current();
await timed('peer: the same on the thread of the server', () => {
  learnFromTests({ written, files });
  return Promise.resolve();
});
await server.close();
