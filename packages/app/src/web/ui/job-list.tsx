import { useState } from 'react';
import { momentText } from '../frame/moment.ts';
import { useFound, type Found, type FoundPage } from '../frame/use-found.ts';
import { listStored, type JobLine } from '../state/records-link.ts';
import { useDesk, useStore } from './desk-context.ts';
import '../style/job-list.css';

/** All jobs of the records, found by words; and new ones, by the kind of work. */
export function JobList() {
  const store = useStore();
  const current = useDesk((s) => s.current);
  const [words, setWords] = useState('');
  const { found, more } = useFound(words, pageOf);
  return (
    <section className="job-list" aria-labelledby="job-list-heading">
      <div className="job-list-head">
        <h2 className="heading" id="job-list-heading">
          All jobs
        </h2>
        <label>
          Find{' '}
          <input
            type="search"
            autoFocus
            value={words}
            placeholder="title, customer or number"
            onChange={(event) => setWords(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Escape') store.list(false);
            }}
          />
        </label>
        <NewJob />
        <button type="button" className="word" onClick={() => store.list(false)}>
          Fold
        </button>
      </div>
      <p className="note" role="status">
        {told(found)}
      </p>
      <ul>
        {found?.items.map((job) => (
          <li key={job.id}>
            <button
              type="button"
              aria-current={job.id === current ? 'page' : undefined}
              onClick={() => {
                store.list(false);
                store.open(job.id);
              }}
            >
              <strong>{job.title === '' ? job.id : job.title}</strong>
              <span>{job.customer === '' ? 'no customer yet' : job.customer}</span>
              <span>{job.id}</span>
              <span>
                {momentText(job.changedAt)}
                {job.changedBy === '' ? '' : `, ${job.changedBy}`}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {found?.next !== undefined && (
        <button type="button" className="word" onClick={() => void more()}>
          Show more
        </button>
      )}
    </section>
  );
}

/** A select that began the job at once would begin the first kind of work that the arrow keys come to. */
function NewJob() {
  const store = useStore();
  const briefs = useDesk((s) => s.briefs);
  const [work, setWork] = useState('');
  return (
    <form
      className="new-job"
      onSubmit={(event) => {
        event.preventDefault();
        store.begin(work);
      }}
    >
      <label>
        New job{' '}
        <select value={work} onChange={(event) => setWork(event.target.value)}>
          <option value="">choose the work</option>
          {briefs.map((b) => (
            <option key={b.id} value={b.id}>
              {b.title}
            </option>
          ))}
        </select>
      </label>{' '}
      <button type="submit" className="word" disabled={work === ''}>
        Begin it
      </button>
    </form>
  );
}

async function pageOf(words: string, after?: string): Promise<FoundPage<JobLine>> {
  const answer = await listStored(words, after);
  if (answer.is === 'done') return { items: answer.value.jobs, next: answer.value.next };
  return {
    why:
      answer.is === 'refused'
        ? `The list was refused: ${answer.why}`
        : 'The records cannot be reached; the jobs of this device stay open to you by their tabs',
  };
}

function told(found: Found<string, JobLine> | undefined): string {
  if (found === undefined) return 'Asking the records';
  const { asked, items, next, why } = found;
  if (why !== undefined) return why;
  const count = `${items.length}${next === undefined ? '' : ' and more'}`;
  const jobs = items.length === 1 ? 'job' : 'jobs';
  if (asked.trim() === '') return `${count} ${jobs}, the last changed first`;
  return items.length === 0 ? `No job has all of these words` : `${count} ${jobs} found`;
}
