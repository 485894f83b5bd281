import type { Kysely } from 'kysely';
import type { Doing } from './job.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import type { ReproofRow } from './reproof-tables.ts';
import type { Tables } from './schema.ts';

export interface Reproof {
  readonly id: string;
  readonly edition: number;
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly total: number;
  readonly done: number;
  readonly changed: number;
  readonly trouble: string;
  readonly askedAt: string;
  readonly askedBy: string;
}

/** What an open quote says now beside what it said. */
export interface ReproofFinding {
  readonly quote: string;
  readonly revision: string;
  readonly title: string;
  readonly customer: string;
  readonly beforeCents: number;
  /** Absent when it can no longer be proven. */
  readonly afterCents?: number;
  /** Broken promises of all its rigs. */
  readonly brokenBefore: number;
  readonly brokenAfter?: number;
  /** What changed, in sentences. */
  readonly said: readonly string[];
}

/** An open quote with its newest revision as it is kept. */
export interface OpenQuote {
  readonly number: string;
  readonly revision: string;
  readonly text: string;
}

const OPEN = ['drawn', 'sent'];

/**
 * Asks for a round; one that waits already will see the newest catalogue and is not asked for twice.
 *
 * @returns the id of the round
 */
export async function askReproof(
  db: Kysely<Tables>,
  id: string,
  edition: number,
  { by, at }: Doing,
): Promise<string> {
  const waiting = await db
    .selectFrom('reproofs')
    .select('id')
    .where('state', '=', 'waiting')
    .executeTakeFirst();
  if (waiting !== undefined) return waiting.id;
  await db
    .insertInto('reproofs')
    .values({
      id,
      edition,
      state: 'waiting',
      total: 0,
      done: 0,
      changed: 0,
      trouble: '',
      asked_at: at,
      asked_by: by,
      moved_at: at,
    })
    .execute();
  return id;
}

/**
 * Takes a round that waits, or one that has not moved since a moment because its process ended.
 *
 * @returns undefined when there is none, or another process was first
 */
export async function takeReproof(
  db: Kysely<Tables>,
  at: string,
  stuckSince: string,
): Promise<Reproof | undefined> {
  const row = await db
    .selectFrom('reproofs')
    .selectAll()
    .where((e) =>
      e.or([e('state', '=', 'waiting'), e.and([e('state', '=', 'running'), e('moved_at', '<', stuckSince)])]),
    )
    .orderBy('asked_at')
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const { numUpdatedRows } = await db
    .updateTable('reproofs')
    .set({ state: 'running', done: 0, changed: 0, moved_at: at })
    .where('id', '=', row.id)
    .where('state', '=', row.state)
    .where('moved_at', '=', row.moved_at)
    .executeTakeFirst();
  if (numUpdatedRows !== 1n) return undefined;
  await db.deleteFrom('reproof_findings').where('reproof_id', '=', row.id).execute();
  return { ...reproofOf(row), state: 'running' };
}

/** Whether a round waits or is under way, in whatever process. */
export async function reproofsLeft(db: Kysely<Tables>): Promise<boolean> {
  const row = await db
    .selectFrom('reproofs')
    .select('id')
    .where('state', 'in', ['waiting', 'running'])
    .executeTakeFirst();
  return row !== undefined;
}

/** Writes how far a round is. */
export async function moveReproof(
  db: Kysely<Tables>,
  id: string,
  step: Partial<Pick<ReproofRow, 'state' | 'edition' | 'total' | 'done' | 'changed' | 'trouble'>>,
  at: string,
): Promise<void> {
  await db
    .updateTable('reproofs')
    .set({ ...step, moved_at: at })
    .where('id', '=', id)
    .execute();
}

export async function addFindings(
  db: Kysely<Tables>,
  id: string,
  findings: readonly ReproofFinding[],
): Promise<void> {
  if (findings.length === 0) return;
  await db
    .insertInto('reproof_findings')
    .values(findings.map((f) => ({ reproof_id: id, quote: f.quote, document: toJsonText(f) })))
    .execute();
}

/** The rounds there were, the last first. */
export async function listReproofs(db: Kysely<Tables>, limit: number): Promise<Reproof[]> {
  const rows = await db
    .selectFrom('reproofs')
    .selectAll()
    .orderBy('asked_at', 'desc')
    .orderBy('id', 'desc')
    .limit(limit)
    .execute();
  return rows.map(reproofOf);
}

/** What a round found, in the order of the quotes. */
export async function findingsOf(
  db: Kysely<Tables>,
  id: string,
  limit: number,
  after = '',
): Promise<ReproofFinding[]> {
  const rows = await db
    .selectFrom('reproof_findings')
    .select('document')
    .where('reproof_id', '=', id)
    .where('quote', '>', after)
    .orderBy('quote')
    .limit(limit)
    .execute();
  return rows.map((row) => fromJsonText<ReproofFinding>(row.document));
}

export async function countOpenQuotes(db: Kysely<Tables>): Promise<number> {
  const { count } = await db
    .selectFrom('quotes')
    .select((e) => e.fn.countAll<number>().as('count'))
    .where('state', 'in', OPEN)
    .executeTakeFirstOrThrow();
  return Number(count);
}

/** Quotes that may still be accepted, in the order of their numbers. */
export async function openQuotes(db: Kysely<Tables>, limit: number, after: string): Promise<OpenQuote[]> {
  return db
    .selectFrom('quotes as q')
    .innerJoin('quote_revisions as r', (j) =>
      j.onRef('r.quote', '=', 'q.number').onRef('r.revision', '=', 'q.revision'),
    )
    .select(['q.number', 'q.revision', 'r.document as text'])
    .where('q.state', 'in', OPEN)
    .where('q.number', '>', after)
    .orderBy('q.number')
    .limit(limit)
    .execute();
}

function reproofOf(row: ReproofRow): Reproof {
  const { id, edition, total, done, changed, trouble } = row;
  return {
    id,
    edition,
    state: row.state as Reproof['state'],
    total,
    done,
    changed,
    trouble,
    askedAt: row.asked_at,
    askedBy: row.asked_by,
  };
}
