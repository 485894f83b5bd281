import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serverApp, type ServerOptions } from '../src/server/app.ts';
import type { Letter } from '../src/server/mail/mail.ts';
import type { People } from '../src/server/people.ts';
import { catalogueFromFolder } from '../src/server/catalogue-files.ts';
import type { ReachedBy } from '../src/server/reached-by.ts';
import { Reproofs } from '../src/server/reproof/reproofs.ts';
import { Shelf } from '../src/server/shelf.ts';
import { openRecords, type Records } from '../src/store/index.ts';
import { DEMO, demoBriefs } from './demo.ts';

const WEB = fileURLToPath(new URL('../dist/web/', import.meta.url));

export interface TestServer {
  readonly app: ReturnType<typeof serverApp>;
  /** What it was made with: a second one on the same records takes them with one thing changed. */
  readonly options: ServerOptions;
  readonly records: Records;
  readonly reproofs: Reproofs;
  readonly shelf: Shelf;
  /** What the server reported as unforeseen. */
  readonly reports: unknown[];
  /** Letters that were sent. */
  readonly letters: Letter[];
  readonly close: () => Promise<void>;
}

/** The server over the demo, with records in a folder of its own; its clock stands still unless one is given. */
export async function testServer(
  now = () => '2026-03-03T09:00:00.000Z',
  peopleOf?: (records: Records) => People,
  alone = false,
  place?: string,
  reached: ReachedBy = {},
): Promise<TestServer> {
  const folder = mkdtempSync(join(tmpdir(), 'spraywright-server-'));
  const records = await openRecords(place ?? folder);
  const reports: unknown[] = [];
  const letters: Letter[] = [];
  let made = 0;
  const first = catalogueFromFolder(`${DEMO}catalogue`, `${DEMO}shop.json`);
  if (!first.ok) throw new Error(first.problems[0]!.message);
  const shelf = new Shelf(records, first.kept, now);
  const report = (error: unknown) => reports.push(error);
  const reproofs = new Reproofs({ records, shelf, now, report });
  const options: ServerOptions = {
    webFolder: WEB,
    shelf,
    reproofs,
    briefs: demoBriefs().map((b) => b.raw),
    records,
    ...(peopleOf === undefined ? {} : { people: peopleOf(records), alone }),
    reached,
    now,
    mail: (letter) => {
      letters.push(letter);
      return Promise.resolve({ is: 'sent' });
    },
    newId: () => `job-${++made}`,
    report,
  };
  const app = serverApp(options);
  const close = async () => {
    await reproofs.close();
    await records.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { app, options, records, reproofs, shelf, reports, letters, close };
}
