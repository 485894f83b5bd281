import { Migrator, type Kysely, type Migration } from 'kysely';
import { up as jobs } from './migrations/0001-jobs.ts';
import { up as people } from './migrations/0002-people.ts';
import { up as machines } from './migrations/0003-machines.ts';
import { up as quotes } from './migrations/0004-quotes.ts';
import { up as catalogue } from './migrations/0005-catalogue.ts';
import { up as doings } from './migrations/0006-doings.ts';
import { up as stock } from './migrations/0007-stock.ts';
import { up as marks } from './migrations/0008-job-marks.ts';
import { up as reproofs } from './migrations/0010-reproofs.ts';
import { up as asks } from './migrations/0011-asks.ts';
import { up as shopEditions } from './migrations/0012-shop-editions.ts';
import { up as quickLists } from './migrations/0013-quick-lists.ts';
import type { Tables } from './schema.ts';

/** Every step of the schema in order. A step that has been released is never edited: the next one changes what it made. */
const STEPS: Readonly<Record<string, Migration>> = {
  '0001-jobs': { up: jobs },
  '0002-people': { up: people },
  '0003-machines': { up: machines },
  '0004-quotes': { up: quotes },
  '0005-catalogue': { up: catalogue },
  '0006-doings': { up: doings },
  '0007-stock': { up: stock },
  '0008-job-marks': { up: marks },
  '0010-reproofs': { up: reproofs },
  '0011-asks': { up: asks },
  '0012-shop-editions': { up: shopEditions },
  '0013-quick-lists': { up: quickLists },
};

/**
 * Brings the tables up to date, all steps or none.
 *
 * @throws Error when the records were written by a newer program, or a step fails
 */
export async function migrate(db: Kysely<Tables>): Promise<void> {
  const done = await stepsDone(db);
  const unknown = done.filter((name) => !(name in STEPS));
  if (unknown.length > 0)
    throw new Error(`the records were written by a newer Spraywright (step ${unknown[0]}); start that one`);
  if (done.length === Object.keys(STEPS).length) return;
  const migrator = new Migrator({
    db,
    provider: { getMigrations: () => Promise.resolve({ ...STEPS }) },
    // Steps are numbered before they are written, and need not be released in that order.
    // Steps with lower numbers may be released after ones with higher; each stands on its own tables.
    allowUnorderedMigrations: true,
  });
  const { error } = await migrator.migrateToLatest();
  if (error !== undefined) throw error instanceof Error ? error : new Error('the tables cannot be made');
}

/** Steps that the tables have been through, the first first. */
export async function stepsDone(db: Kysely<Tables>): Promise<string[]> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!tables.some((t) => t.name === 'kysely_migration')) return [];
  const rows = await db
    .withTables<{ kysely_migration: { name: string } }>()
    .selectFrom('kysely_migration')
    .select('name')
    .orderBy('name')
    .execute();
  return rows.map((row) => row.name);
}
