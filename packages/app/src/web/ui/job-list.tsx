import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { JOB_STATES, type JobStanding } from '../frame/job-standing.ts';
import { momentText, waited } from '../frame/moment.ts';
import { useFound, type Found, type FoundPage } from '../frame/use-found.ts';
import { listStandings, listStored, type JobLine } from '../state/records-link.ts';
import { useDesk, useStore } from './desk-context.ts';
import { useListedPrices } from './listed-prices.ts';
import { Mark } from './marks.tsx';
import '../style/job-list.css';

const NONE: readonly Listed[] = [];

interface Listed extends JobLine {
  readonly standing: JobStanding | undefined;
}

/** All jobs of the records, found by words; and new ones, by the kind of work. */
export function JobList() {
  const store = useStore();
  const current = useDesk((s) => s.current);
  const [words, setWords] = useState('');
  const { found, more, again } = useFound(words, pageOf);
  // A job that is saved while the list lies open may be new to it, as the first one of a new shop is.
  const synced = useDesk((s) => s.synced);
  const listed = useRef(synced);
  useEffect(() => {
    if (listed.current === synced) return;
    listed.current = synced;
    void again();
  }, [synced, again]);
  const priceOf = useListedPrices(found?.items ?? NONE);
  const list = useRef<HTMLUListElement>(null);
  const box = useRef<HTMLInputElement>(null);
  // Arrows walk the list from the box on, and back.
  const walk = (event: KeyboardEvent) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (event.key === 'Escape') store.list(false);
    else if (by !== undefined && !(event.target instanceof HTMLSelectElement)) {
      const rows = [...(list.current?.querySelectorAll('button') ?? [])];
      const at = rows.findIndex((row) => row === document.activeElement) + by;
      (at < 0 ? box.current : rows[Math.min(at, rows.length - 1)])?.focus();
    } else return;
    event.preventDefault();
  };
  return (
    <section className="job-list" aria-labelledby="job-list-heading" onKeyDown={walk}>
      <div className="job-list-head">
        <h2 className="heading" id="job-list-heading">
          All jobs
        </h2>
        <label>
          Find{' '}
          <input
            type="search"
            autoFocus
            ref={box}
            value={words}
            placeholder="title, customer or number"
            onChange={(event) => setWords(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') list.current?.querySelector('button')?.click();
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
      <ul ref={list}>
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
              <span>
                <strong>{job.title === '' ? job.id : job.title}</strong>
                <small>{job.customer === '' ? 'no customer yet' : job.customer}</small>
              </span>
              <Standing standing={job.standing} />
              <span>
                {momentText(job.changedAt)}
                <small>{job.changedBy === '' ? 'changed' : `changed by ${job.changedBy}`}</small>
              </span>
              <Price told={priceOf(job)} />
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

/** How far a job has come, and who is to do what next. */
function Standing({ standing }: { standing: JobStanding | undefined }) {
  if (standing === undefined) return <span>not known how far</span>;
  const { state, waitsFor, to, since } = standing;
  return (
    <span>
      {JOB_STATES[state]}
      <small>
        {to === '' ? 'nothing is to do' : `${waitsFor} is to ${to}`}, {sinceWord(waited(since, Date.now()))}
      </small>
    </span>
  );
}

function sinceWord(time: string): string {
  return time === 'today' ? 'since today' : `for ${time}`;
}

function Price({ told }: { told: ReturnType<ReturnType<typeof useListedPrices>> }) {
  if (told === undefined) return <span className="price note">being reckoned</span>;
  if (told.price === undefined || told.counts === undefined)
    return <span className="price note">cannot be read</span>;
  const { broken } = told.counts;
  return (
    <span className="price">
      <b>{told.price}</b>
      {broken > 0 && (
        <small className="broken">
          <Mark state="broken" /> {broken} broken
        </small>
      )}
    </span>
  );
}

/** A select that began the job at once would begin the first kind of work that the arrow keys come to. */
function NewJob() {
  const store = useStore();
  const works = useDesk((s) => s.works);
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
          {works.map((w) => (
            <option key={w.id} value={w.id}>
              {w.name}
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

async function pageOf(words: string, after?: string): Promise<FoundPage<Listed>> {
  const [answer, standings] = await Promise.all([listStored(words, after), listStandings(words, after)]);
  const known = new Map(standings.is === 'done' ? standings.value.jobs.map((job) => [job.id, job]) : []);
  if (answer.is === 'done') {
    const items = answer.value.jobs.map((job): Listed => ({ ...job, standing: known.get(job.id) }));
    return { items, next: answer.value.next };
  }
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
