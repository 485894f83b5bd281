import { useEffect, useState } from 'react';
import { useStore } from './desk-context.ts';
import type { Answers } from '../protocol.ts';
import { openStored, type JobLine } from '../state/records-link.ts';

/** What each version of a job came to; a change of the catalogue is a new page. */
const known = new Map<string, Answers['price']>();

const keyOf = ({ id, version }: JobLine) => `${id} ${version}`;

/** Prices of listed jobs, proven one after another in the background, by job. */
export function useListedPrices(jobs: readonly JobLine[]): (job: JobLine) => Answers['price'] | undefined {
  const store = useStore();
  const [, setCount] = useState(0);
  useEffect(() => {
    let left = false;
    const work = async () => {
      for (const job of jobs) {
        if (left) return;
        if (known.has(keyOf(job))) continue;
        const answer = await openStored(job.id);
        if (answer.is !== 'done') continue;
        known.set(keyOf(job), await store.ask({ about: 'price' }, answer.value.document.rig));
        if (!left) setCount((n) => n + 1);
      }
    };
    void work();
    return () => {
      left = true;
    };
  }, [store, jobs]);
  return (job) => known.get(keyOf(job));
}
