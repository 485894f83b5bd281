import type { Kysely } from 'kysely';
import type { DoingRow } from './people-tables.ts';
import type { Tables } from './schema.ts';

/** Which lines of the book are asked for; what is left out does not narrow. */
interface DoingQuery {
  /** E-mail address. */
  readonly email?: string | undefined;
  /** Id of a job, quote, machine, part. */
  readonly about?: string | undefined;
  /** Days or moments of UTC: the first that counts, and the first that counts no more. */
  readonly from?: string | undefined;
  readonly until?: string | undefined;
  /** The last line of the page before. */
  readonly after?: string | undefined;
  readonly limit: number;
}

/** Writes a line; together with what it tells of, when both stand in one transaction. */
export async function addDoing(db: Kysely<Tables>, doing: DoingRow): Promise<void> {
  await db.insertInto('doings').values(doing).execute();
}

/** Lines of the book, the last first. */
export function listDoings(db: Kysely<Tables>, query: DoingQuery): Promise<DoingRow[]> {
  let lines = db.selectFrom('doings').selectAll();
  if (query.email !== undefined) lines = lines.where('email', '=', query.email);
  if (query.about !== undefined) lines = lines.where('about_id', '=', query.about);
  if (query.from !== undefined) lines = lines.where('id', '>=', query.from);
  if (query.until !== undefined) lines = lines.where('id', '<', query.until);
  if (query.after !== undefined) lines = lines.where('id', '<', query.after);
  return lines.orderBy('id', 'desc').limit(query.limit).execute();
}
