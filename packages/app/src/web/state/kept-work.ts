import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Synced } from './job-keeper.ts';
import { settled, type Job } from './job.ts';

/** What is kept in the browser so that closing the page loses nothing. */
export interface KeptWork {
  readonly jobs: Readonly<Record<string, Job>>;
  readonly synced: Readonly<Record<string, Synced>>;
  readonly current: string | undefined;
  readonly units: UnitSystem;
  readonly sheet: 'day' | 'night';
}

const KEY = 'spraywright-desk-1';

/** A browser may forbid storage altogether; the page works without. */
export function browserStorage(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}

export function loadWork(storage: Storage | undefined, night: boolean): KeptWork {
  const fresh: KeptWork = {
    jobs: {},
    synced: {},
    current: undefined,
    units: 'us',
    sheet: night ? 'night' : 'day',
  };
  try {
    const text = storage?.getItem(KEY);
    if (text === null || text === undefined) return fresh;
    const kept = JSON.parse(text) as Partial<KeptWork>;
    return {
      jobs: Object.fromEntries(Object.entries(kept.jobs ?? {}).filter(([, job]) => isJob(job))),
      synced: Object.fromEntries(Object.entries(kept.synced ?? {}).filter(([, synced]) => isSynced(synced))),
      current: typeof kept.current === 'string' ? kept.current : undefined,
      units: kept.units === 'metric' ? 'metric' : 'us',
      sheet: kept.sheet === 'night' ? 'night' : kept.sheet === 'day' ? 'day' : fresh.sheet,
    };
  } catch {
    return fresh;
  }
}

/** Keeps the work; false when the browser refuses to. */
export function keepWork(storage: Storage | undefined, work: KeptWork): boolean {
  try {
    const jobs = Object.fromEntries(Object.entries(work.jobs).map(([id, job]) => [id, settled(job)]));
    storage?.setItem(KEY, JSON.stringify({ ...work, jobs }));
    return storage !== undefined;
  } catch {
    return false;
  }
}

function isSynced(synced: unknown): synced is Synced {
  const { version, rig } = (synced ?? {}) as Partial<Synced>;
  return typeof version === 'number' && typeof rig === 'object';
}

function isJob(job: unknown): job is Job {
  const { rig, past, future } = (job ?? {}) as Partial<Job>;
  return typeof rig === 'object' && Array.isArray(past) && Array.isArray(future);
}
