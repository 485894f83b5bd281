import { sql } from 'kysely';

/** The word stands somewhere in what a search looks through; `%` and `_` of a search stand for themselves. */
export function hasWord(word: string) {
  const pattern = `%${word.toLowerCase().replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
  return sql<boolean>`found_by like ${pattern} escape '\\'`;
}

/** A place in a list that runs from the latest back: a moment, and what tells rows of one moment apart. */
export interface Place {
  readonly at: string;
  readonly name: string;
}

/** The row comes after a place, in the order of two falling columns. */
export function isBehind({ at, name }: Place, columns: { readonly at: string; readonly name: string }) {
  return sql<boolean>`(${sql.ref(columns.at)}, ${sql.ref(columns.name)}) < (${at}, ${name})`;
}
