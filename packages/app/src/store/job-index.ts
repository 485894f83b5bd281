import { sql, type Kysely } from 'kysely';
import { isSqlite } from './dialect.ts';
import type { Tables } from './schema.ts';

/** Letters of a word that the index needs. */
const SHORTEST = 3;
/** With more jobs than this the last changed are read instead, until a page of them has the words: it is soon full. */
const MANY = 200;

/**
 * Narrows a search to the jobs in which the index of SQLite finds the words, where they are few; these are still to be
 * asked for the words as they are now. PostgreSQL weighs its own index by itself.
 *
 * @returns undefined where the index does not help
 */
export async function jobsFound(db: Kysely<Tables>, words: readonly string[]) {
  const phrases = words.filter((word) => [...word].length >= SHORTEST).map(quoted);
  if (phrases.length === 0 || !isSqlite(db)) return undefined;
  const { rows } = await sql<{
    rowid: number;
  }>`select rowid from jobs_found where jobs_found match ${phrases.join(' ')}
    limit ${MANY + 1}`.execute(db);
  if (rows.length > MANY) return undefined;
  const found = JSON.stringify(rows.map((row) => row.rowid));
  return sql<boolean>`id in (select id from jobs_found where rowid in (select value from json_each(${found})))`;
}

function quoted(word: string): string {
  return `"${word.toLowerCase().replaceAll('"', '""')}"`;
}
