import { useEffect, useState } from 'react';
import type { JobStanding } from '../frame/job-standing.ts';
import { listStandings } from '../state/records-link.ts';
import { useDesk } from './desk-context.ts';

/** How far the job on the desk has come, as the records say; undefined until it is known, and without a connection. */
export function useStanding(): JobStanding | undefined {
  const job = useDesk((s) => s.current);
  // From the first change on a job that was only asked for is being designed.
  const step = useDesk((s) => (s.current === undefined ? 0 : Math.min(2, s.synced[s.current]?.version ?? 0)));
  const [standing, setStanding] = useState<JobStanding>();
  useEffect(() => {
    if (job === undefined || step === 0) return;
    let left = false;
    void listStandings(job).then((answer) => {
      if (!left && answer.is === 'done') setStanding(answer.value.jobs.find((j) => j.id === job));
    });
    return () => {
      left = true;
    };
  }, [job, step]);
  return standing?.id === job ? standing : undefined;
}
