import { once } from 'node:events';
import type { PostgresServer } from './postgres-server.ts';
import { started } from './started-server.ts';

const WRITERS = 8;

export interface KillCount {
  readonly rounds: number;
  readonly acknowledged: number;
  /** Edits that were answered with "saved" and are not there after the next start. */
  readonly lost: number;
}

/**
 * Starts the server on its records, saves from several writers at once, kills it (SIGKILL) in the middle, starts it again and counts
 * what was acknowledged and what is there.
 *
 * @param database killed before the server in every other round, and started again, where the records are in one
 * @param saves how many saves are acknowledged in each round before the kill; those of other writers are then under way
 */
export async function killServer(
  place: string,
  saves: readonly number[],
  database?: Pick<PostgresServer, 'kill' | 'start'>,
): Promise<KillCount> {
  const acknowledged = Array.from({ length: WRITERS }, () => new Set<string>());
  let operation = 0;
  for (const [round, enough] of saves.entries()) {
    const { process: server, address } = await started(place);
    const killed = round % 2 === 1 ? database : undefined;
    await check(address, acknowledged);
    let left = enough;
    const writers = acknowledged.map(async (mine, k) => {
      for (let version = (await jobOf(address, k)).version; ; version++) {
        const name = `operation-${++operation}`;
        const puts = [{ path: ['notes'], value: `${name} ${'x'.repeat(operation % 5000)}` }];
        const body = { base: version, edits: [{ operation: name, about: 'Notes', puts }] };
        const answer = await post(`${address}api/jobs/writer-${k}/edits`, body);
        // With its database gone the server says so, and that it saved nothing.
        if (killed !== undefined && answer.status === 503) return;
        if (!answer.ok) throw new Error(`the server answered ${answer.status}: ${await answer.text()}`);
        mine.add(name);
        if (--left !== 0) continue;
        killed?.kill();
        server.kill('SIGKILL');
      }
    });
    const [outcomes] = await Promise.all([Promise.allSettled(writers), once(server, 'exit')]);
    killed?.start();
    // A writer ends when its request breaks off, which fetch tells by a TypeError.
    for (const outcome of outcomes)
      if (outcome.status === 'rejected' && !(outcome.reason instanceof TypeError)) throw outcome.reason;
  }
  const { process: server, address } = await started(place);
  const lost = await check(address, acknowledged);
  server.kill('SIGKILL');
  await once(server, 'exit');
  return {
    rounds: saves.length,
    acknowledged: acknowledged.reduce((sum, mine) => sum + mine.size, 0),
    lost,
  };
}

/** Acknowledged edits that the history does not have; a job whose parts do not fit each other is an error. */
async function check(address: string, acknowledged: readonly ReadonlySet<string>[]): Promise<number> {
  let lost = 0;
  for (const [k, mine] of acknowledged.entries()) {
    const { version, document } = await jobOf(address, k);
    const there = new Set<string>();
    let last = '';
    for (let after = 0; after < version - 1; after += 500) {
      const page = (await (
        await fetch(`${address}api/jobs/writer-${k}/edits?after=${after === 0 ? 0 : after + 1}&limit=500`)
      ).json()) as {
        edits: { operation: string; version: number }[];
      };
      for (const edit of page.edits) there.add((last = edit.operation));
    }
    if (there.size !== version - 1) throw new Error(`version ${version} with ${there.size} edits`);
    if (last !== '' && !document.notes.startsWith(`${last} `))
      throw new Error(`the document is not that of ${last}`);
    for (const name of mine) if (!there.has(name)) lost++;
  }
  return lost;
}

async function jobOf(address: string, k: number): Promise<{ version: number; document: { notes: string } }> {
  const there = await fetch(`${address}api/jobs/writer-${k}`);
  if (there.ok) return (await there.json()) as never;
  return (await (
    await post(`${address}api/jobs`, { id: `writer-${k}`, rig: { title: `Writer ${k}` } })
  ).json()) as never;
}

function post(address: string, body: unknown): Promise<Response> {
  return fetch(address, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
}
