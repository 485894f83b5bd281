// The server killed (SIGKILL) while eight writers save, and PostgreSQL with it; then four processes on the same records.
// npm run soak -- kills [KILLS, default 20]
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { killServer, type KillCount } from '../test/killed-server.ts';
import { postgresServer } from '../test/postgres-server.ts';
import { saveThroughSeveral } from '../test/several-processes.ts';

const KILLS = Number(process.argv[2] ?? 20);
const PROCESSES = 4;
const SAVES_EACH = Number(process.env.SAVES ?? 50);

/** Saves acknowledged before each kill: few and many, so that it falls at other places. */
const saves = (rounds: number) => Array.from({ length: rounds }, (_, n) => 3 + ((n * 37) % 90));

let lost = 0;
function told(where: string, { rounds, acknowledged, lost: missing }: KillCount): void {
  lost += missing;
  console.log(`${where}: ${rounds} rounds, ${acknowledged} saves acknowledged, ${missing} lost`);
}

async function together(where: string, place: string): Promise<void> {
  const {
    acknowledged,
    lost: missing,
    overtaken,
    failed,
  } = await saveThroughSeveral(place, PROCESSES, SAVES_EACH);
  lost += missing + failed.length;
  console.log(
    `${where}, ${PROCESSES} processes: ${acknowledged} saves acknowledged, ${overtaken} overtaken and made again, ${failed.length} failed, ${missing} lost`,
  );
}

const folder = mkdtempSync(join(tmpdir(), 'spraywright-kills-'));
const database = await postgresServer();
try {
  told('SQLite, server killed', await killServer(join(folder, 'killed'), saves(KILLS)));
  // Every other round the database is killed first.
  told(
    `PostgreSQL, server killed, the database in ${KILLS} of them too`,
    await killServer(await database.newDatabase(), saves(2 * KILLS), database),
  );
  await together('SQLite', join(folder, 'together'));
  await together('PostgreSQL', await database.newDatabase());
} finally {
  database.remove();
  rmSync(folder, { recursive: true, force: true });
}
if (lost > 0) process.exitCode = 1;
