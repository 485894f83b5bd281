import type { RigJson } from '../protocol.ts';
import { changeBetween, changed, type Change } from '@spraywright/engine/quantity';
import { confirming } from '@spraywright/engine/rig';

/** A rig in work with everything that was done to it. */
export interface Job {
  readonly rig: RigJson;
  /** Changes that take the last edits back, the newest last. */
  readonly past: readonly Change[];
  /** Changes that make undone edits again, the next last. */
  readonly future: readonly Change[];
  /** The last document that could be read, while the newest cannot. */
  readonly good?: RigJson;
  /** While the same thing is being dragged or typed, edits are one. */
  readonly merge?: string;
}

const MOST_STEPS = 200;

export function newJob(rig: RigJson): Job {
  return { rig, past: [], future: [] };
}

/** A change made; what it sets in the brief is no start value of ours any more. One that changes nothing is no step. */
export function edited(job: Job, change: Change, merge?: string): Job {
  const { document, inverse } = changed(job.rig, confirming(job.rig, change));
  if (changeBetween(job.rig, document, '').puts.length === 0) return job;
  const goesOn = merge !== undefined && merge === job.merge;
  return {
    ...goodOf(job),
    rig: document,
    past: goesOn ? job.past : [...job.past, inverse].slice(-MOST_STEPS),
    future: [],
    ...(merge === undefined ? {} : { merge }),
  };
}

/** Ends what was being dragged or typed: the next edit is a step of its own. */
export function settled(job: Job): Job {
  const { rig, past, future } = job;
  return { ...goodOf(job), rig, past, future };
}

/** Remembers whether the newest document could be read. */
export function judged(job: Job, readable: boolean, good: RigJson | undefined): Job {
  if (readable) {
    if (job.good === undefined) return job;
    const { good: _, ...rest } = job;
    return rest;
  }
  return job.good !== undefined || good === undefined ? job : { ...job, good };
}

function goodOf(job: Job): Pick<Job, 'good'> {
  return job.good === undefined ? {} : { good: job.good };
}

export function undone(job: Job): Job {
  const last = job.past.at(-1);
  if (last === undefined) return job;
  const { document, inverse } = changed(job.rig, last);
  return { ...goodOf(job), rig: document, past: job.past.slice(0, -1), future: [...job.future, inverse] };
}

/** As if what is being dragged or typed had not been begun; nothing of it is left to redo. */
export function cancelled(job: Job): Job {
  return { ...undone(job), future: [] };
}

export function redone(job: Job): Job {
  const next = job.future.at(-1);
  if (next === undefined) return job;
  const { document, inverse } = changed(job.rig, next);
  return { ...goodOf(job), rig: document, past: [...job.past, inverse], future: job.future.slice(0, -1) };
}
