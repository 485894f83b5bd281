import { once } from 'node:events';
import { People } from '../src/server/people.ts';
import { openRecords } from '../src/store/index.ts';
import { started } from './started-server.ts';

const PASSWORD = 'forty green barrels';
const JOBS = 3;
const WRITERS_EACH = 2;

export interface ProcessesCount {
  readonly processes: number;
  /** Edits that were answered with "saved". */
  readonly acknowledged: number;
  /** Of these, edits that the history does not have, and fields that do not hold what was last saved into them. */
  readonly lost: number;
  /** Edits that somebody else's came before; each was made again on the newest version. */
  readonly overtaken: number;
  /** Answers that were neither saved nor overtaken. */
  readonly failed: readonly string[];
}

/**
 * Starts servers on one place of records; two people save through all of them into the same jobs, each writer into a field
 * of its own, and whoever is overtaken takes the newest version and saves again.
 */
export async function saveThroughSeveral(
  place: string,
  processes: number,
  savesEach: number,
): Promise<ProcessesCount> {
  await addPeople(place);
  const servers = await Promise.all(Array.from({ length: processes }, () => started(place)));
  try {
    const first = servers[0]!.address;
    const cookies = [await signIn(first, 'dana@shop.example'), await signIn(first, 'robin@shop.example')];
    const ask = async (at: number, who: number, path: string, body?: unknown) =>
      fetch(`${servers[at % processes]!.address}api/${path}`, {
        headers: { Cookie: cookies[who % 2]!, 'Content-Type': 'application/json' },
        ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
      });
    for (let j = 0; j < JOBS; j++) await ask(0, 0, 'jobs', { id: `job-${j}`, rig: { title: `Job ${j}` } });
    let overtaken = 0;
    const failed: string[] = [];
    const saved = new Map<string, { job: string; field: string; n: number }>();
    const last = new Map<string, number>();
    const write = async (writer: number) => {
      const field = `writer-${writer}`;
      for (let n = 1; n <= savesEach; n++) {
        const job = `job-${(writer + n) % JOBS}`;
        const operation = `operation-${writer}-${n}`;
        const edits = [{ operation, about: field, puts: [{ path: ['rig', field], value: n }] }];
        for (let tries = 0; ; tries++) {
          // Another process each time: none may know better than the records.
          const { version } = (await (await ask(writer + tries, writer, `jobs/${job}`)).json()) as {
            version: number;
          };
          const answer = await ask(writer + n + tries, writer, `jobs/${job}/edits`, { base: version, edits });
          if (answer.ok) {
            saved.set(operation, { job, field, n });
            last.set(`${job} ${field}`, n);
            break;
          }
          const text = await answer.text();
          if (answer.status === 409) overtaken++;
          else failed.push(`${answer.status}: ${text}`);
          if (failed.length > 20) return;
        }
      }
    };
    await Promise.all(Array.from({ length: processes * WRITERS_EACH }, (_, writer) => write(writer)));
    let lost = 0;
    for (let j = 0; j < JOBS; j++) {
      const job = `job-${j}`;
      const { document, version } = (await (await ask(j, j, `jobs/${job}`)).json()) as {
        document: { rig: Record<string, unknown> };
        version: number;
      };
      const there = new Set<string>();
      for (let after = 0; after + 1 < version; after += 500) {
        const page = (await (
          await ask(j, j, `jobs/${job}/edits?after=${after === 0 ? 0 : after + 1}&limit=500`)
        ).json()) as {
          edits: { operation: string }[];
        };
        for (const edit of page.edits) there.add(edit.operation);
      }
      if (there.size !== version - 1)
        throw new Error(`${job} has version ${version} and ${there.size} edits`);
      for (const [operation, of] of saved) if (of.job === job && !there.has(operation)) lost++;
      for (const [key, n] of last) {
        const [of = '', field = ''] = key.split(' ');
        if (of === job && document.rig[field] !== n) lost++;
      }
    }
    return { processes, acknowledged: saved.size, lost, overtaken, failed };
  } finally {
    for (const { process: child } of servers) {
      child.kill('SIGINT');
      if (child.exitCode === null) await once(child, 'exit');
    }
  }
}

async function addPeople(place: string): Promise<void> {
  const records = await openRecords(place);
  const people = new People(records, Date.now);
  await people.add({ name: 'Dana', email: 'dana@shop.example', role: 'owner', password: PASSWORD });
  await people.add({ name: 'Robin', email: 'robin@shop.example', role: 'builder', password: PASSWORD });
  await records.close();
}

async function signIn(address: string, email: string): Promise<string> {
  const body = new URLSearchParams({ email, password: PASSWORD });
  const answer = await fetch(`${address}sign-in`, { method: 'POST', body, redirect: 'manual' });
  return answer.headers.getSetCookie()[0]!.split(';')[0]!;
}
