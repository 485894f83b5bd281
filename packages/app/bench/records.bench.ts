// The records over HTTP: 50 connections that read, list, search and save, then the same with 100,000 jobs in the store,
// each beside a route that touches no records (the peer: what server and load generator take by themselves).
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import autocannon, { type Result } from 'autocannon';
import { makeJob, makeQuote, openRecords } from '../src/store/index.ts';
import { demoBriefs, demoCatalogue, demoRig, demoShop } from '../test/demo.ts';
import { started } from '../test/started-server.ts';

const CONNECTIONS = 50;
const SECONDS = Number(process.env.SECONDS ?? 10);
const MANY = Number(process.env.JOBS ?? 100_000);
const PLACE = process.env.DATABASE_URL ?? mkdtempSync(join(tmpdir(), 'spraywright-bench-'));

/** Jobs of which one in a hundred is a whole demo rig and one in twenty has a quote that waits to be sent; the rest are short. */
async function fill(from: number, to: number): Promise<void> {
  const records = await openRecords(PLACE);
  const { rig } = demoRig(demoBriefs()[0]!.name, demoCatalogue(), demoShop());
  const whole = rig.document as unknown as Record<string, unknown>;
  for (let start = from; start < to; start += 1000)
    await records.save(async (t) => {
      for (let n = start; n < Math.min(start + 1000, to); n++) {
        const head = { title: `Rig ${n}`, brief: { customer: `Customer ${n % 997}` } };
        const document = { rig: n % 100 === 0 ? { ...whole, ...head } : head, notes: '' };
        const doing = { by: '', at: new Date(1.77e12 + n * 1000).toISOString() };
        await makeJob(t, `bench-${n}`, document, doing);
        if (n % 20 === 0) await makeQuote(t, `bench-${n}`, () => quoteOf(n), doing);
      }
    });
  await records.close();
}

/** A quote as the lists see it. */
const quoteOf = (n: number) => ({
  document: {},
  facts: { title: `Rig ${n}`, customer: `Customer ${n % 997}`, priceCents: 500_000, optionCount: 1 },
});

/** Starts the server and tells how long that took; the answer ends it. */
async function serve(): Promise<{ readonly server: string; readonly stop: () => Promise<void> }> {
  const began = performance.now();
  const { process: child, address } = await started(PLACE);
  console.log(`start to address, from sources: ${Math.round(performance.now() - began)} ms`);
  const stop = async () => {
    child.kill('SIGINT');
    await once(child, 'exit');
  };
  return { server: address.replace(/\/$/, ''), stop };
}

async function edits(): Promise<number> {
  const records = await openRecords(PLACE);
  const { count } = await records.db
    .selectFrom('job_edits')
    .select((e) => e.fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow();
  await records.close();
  return count;
}

function tell(name: string, result: Result): void {
  const { latency, requests, errors, timeouts, non2xx } = result;
  console.log(
    `${name.padEnd(34)}${requests.average.toFixed(0).padStart(8)}${String(latency.p50).padStart(8)}${String(latency.p97_5).padStart(8)}${String(latency.p99).padStart(8)}${String(errors + timeouts + non2xx).padStart(8)}`,
  );
}

const reads = (path: string) =>
  autocannon({ url: `${server}${path}`, connections: CONNECTIONS, duration: SECONDS });

/** Every connection edits a job of its own, each edit on the version before. */
function saves(): Promise<Result> {
  const round = Date.now().toString(36);
  let connection = 0;
  return autocannon({
    url: server,
    connections: CONNECTIONS,
    duration: SECONDS,
    setupClient(client) {
      const job = `bench-${++connection}`;
      let version = 1;
      client.setRequests([
        {
          setupRequest(request) {
            const put = { path: ['notes'], value: `note ${version}` };
            const edit = { operation: `${round}-${job}-${version}`, about: 'Notes', puts: [put] };
            return {
              ...request,
              method: 'POST',
              path: `/api/jobs/${job}/edits`,
              headers: { 'content-type': 'application/json' },
              body: JSON.stringify({ base: version, edits: [edit] }),
            };
          },
        },
      ]);
      client.on('response', (status) => {
        if (status === 200) version++;
      });
    },
  });
}

console.log(
  `${CONNECTIONS} connections, ${SECONDS} s each, on ${PLACE.startsWith('postgres') ? 'PostgreSQL' : 'SQLite'}`,
);
console.log(
  `${''.padEnd(34)}${'a second'.padStart(8)}${'p50 ms'.padStart(8)}${'p97.5'.padStart(8)}${'p99'.padStart(8)}${'failed'.padStart(8)}`,
);
await fill(0, 200);
let { server, stop } = await serve();
tell('peer: a page of no records', await reads('/sums.html'));
tell('open a job', await reads('/api/jobs/bench-100'));
tell('list, 200 jobs', await reads('/api/jobs'));
const saved = await saves();
tell('save', saved);
await stop();
console.log(`  edits in the store: ${await edits()} of ${saved['2xx']} that were answered`);
await fill(200, MANY);
({ server, stop } = await serve());
tell(`list, ${MANY} jobs`, await reads('/api/jobs'));
tell(`search, ${MANY} jobs`, await reads('/api/jobs?find=customer+77'));
tell('search for one of them', await reads(`/api/jobs?find=bench-${Math.floor(MANY * 0.77)}`));
tell('search for what no job has', await reads('/api/jobs?find=nowhere'));
tell(`open one of ${MANY}`, await reads('/api/jobs/bench-50000'));
tell('what waits for whom', await reads('/api/standing'));
tell('list of quotes', await reads('/api/quotes'));
await stop();
if (!PLACE.startsWith('postgres')) rmSync(PLACE, { recursive: true, force: true });
