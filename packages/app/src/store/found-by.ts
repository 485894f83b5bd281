import { sql } from 'kysely';

/** The word stands somewhere in what a search looks through; `%` and `_` of a search stand for themselves. */
export function hasWord(word: string) {
  const pattern = `%${word.toLowerCase().replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
  return sql<boolean>`found_by like ${pattern} escape '\\'`;
}
