import { askServer, sent, type Problem } from '../frame/ask.ts';
import { costsAsPrices } from '../frame/costs-as-prices.ts';
import type { JobStanding } from '../frame/job-standing.ts';
import type { RigJson } from '../protocol.ts';

/** A job as the records have it. */
export interface StoredJob {
  readonly id: string;
  readonly version: number;
  readonly changedBy: string;
  readonly document: { readonly rig: RigJson };
}

/** A line of the list of jobs. */
export interface JobLine {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  readonly customer: string;
  readonly changedAt: string;
  readonly changedBy: string;
}

/** An edit under a name of its own, so that it is made once however often it is sent. */
export interface SentEdit {
  readonly operation: string;
  readonly about: string;
  readonly puts: readonly { readonly path: readonly (string | number)[]; readonly value?: unknown }[];
}

export type Answer<T> =
  | { readonly is: 'done'; readonly value: T }
  /** Somebody was first; the job as it now stands. */
  | { readonly is: 'stale'; readonly job: StoredJob }
  | { readonly is: 'absent' }
  | { readonly is: 'taken' }
  | { readonly is: 'unchanged' }
  /** No connection, or the server cannot reach its records: worth sending again. */
  | { readonly is: 'away' }
  /** The sign-in has ended. */
  | { readonly is: 'signed-out' }
  /** Who is signed in reads jobs and does not change them. */
  | { readonly is: 'not-yours' }
  | { readonly is: 'refused'; readonly why: string };

export async function openStored(id: string, known?: number): Promise<Answer<StoredJob>> {
  const answer = await ask<StoredJob>(
    `api/jobs/${id}`,
    known === undefined ? {} : { headers: { 'If-None-Match': `"${known}"` } },
  );
  return answer.is === 'done' ? { ...answer, value: costsAsPrices(answer.value) } : answer;
}

/** Opens a job that may not be there: the list is asked first, so that its absence is no failed request. */
export async function findStored(id: string): Promise<Answer<StoredJob>> {
  const list = await listStored(id);
  if (list.is !== 'done') return list;
  return list.value.jobs.some((job) => job.id === id) ? openStored(id) : { is: 'absent' };
}

export function makeStored(id: string, rig: RigJson): Promise<Answer<StoredJob>> {
  return ask('api/jobs', sent({ id, rig }));
}

export function editStored(
  id: string,
  base: number,
  edit: SentEdit,
): Promise<Answer<{ readonly version: number }>> {
  return ask(`api/jobs/${id}/edits`, sent({ base, edits: [edit] }));
}

export function listStored(
  find: string,
  after?: string,
): Promise<Answer<{ readonly jobs: readonly JobLine[]; readonly next?: string }>> {
  const query = new URLSearchParams({ find, ...(after === undefined ? {} : { after }) });
  return ask(`api/jobs?${query.toString()}`, {});
}

/** How far the jobs of one page have come, the last changed first; found by words or by their id. */
export function listStandings(
  find: string,
  after?: string,
): Promise<Answer<{ readonly jobs: readonly JobStanding[] }>> {
  const query = new URLSearchParams({ find, ...(after === undefined ? {} : { after }) });
  return ask(`api/standing?${query.toString()}`, {});
}

async function ask<T>(path: string, init: RequestInit): Promise<Answer<T>> {
  const answer = await askServer<T>(path, init);
  if (answer.is !== 'refused') return answer;
  const { code, job } = answer.problem as Problem & { readonly job?: StoredJob };
  if (code === 'stale-version' && job !== undefined) return { is: 'stale', job };
  if (code === 'sign-in-first') return { is: 'signed-out' };
  if (code === 'not-allowed') return { is: 'not-yours' };
  if (code === 'no-such-job') return { is: 'absent' };
  if (code === 'job-exists') return { is: 'taken' };
  return { is: 'refused', why: answer.why };
}
