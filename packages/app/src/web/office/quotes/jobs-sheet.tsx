import { useState } from 'react';
import { deskAt, hashOf } from '../../frame/hash.ts';
import { JOB_STATES, type JobStanding } from '../../frame/job-standing.ts';
import { sells, useMe, worksInShop } from '../../frame/me.ts';
import { dayText, waited } from '../../frame/moment.ts';
import { useFound, type Found, type FoundPage } from '../../frame/use-found.ts';
import { got, gotFor } from '../got.ts';
import '../../style/office-quotes.css';

/** Jobs asked for at a time. */
const PAGE = 200;

/** Every job by how far it has come, with who is to act next and since when. */
export function JobsSheet() {
  const [words, setWords] = useState('');
  const [refused, setRefused] = useState('');
  const { found, again, more } = useFound(words, standings);
  // A job with a quote at work may stand on a later page among those changed last too.
  const jobs = [...new Map(found?.items.map((job) => [job.id, job])).values()];
  const mark = async (id: string, kind: string) => {
    const answer = await gotFor(`api/jobs/${encodeURIComponent(id)}/marks`, { kind });
    setRefused('why' in answer ? answer.why : '');
    await again();
  };
  return (
    <div className="quotes">
      <h1>Jobs by how far they have come</h1>
      <p className="ask">
        <label htmlFor="find-standing">Find</label>{' '}
        <input
          id="find-standing"
          type="search"
          value={words}
          placeholder="title, customer or job"
          onChange={({ target }) => setWords(target.value)}
        />
      </p>
      <p role="status">{refused === '' ? told(found) : refused}</p>
      {Object.entries(JOB_STATES).map(([state, name]) => {
        const here = jobs.filter((j) => j.state === state);
        if (here.length === 0) return null;
        return (
          <section key={state} aria-label={name}>
            <h2 className="heading">
              {name} <span className="count">{here.length}</span>
            </h2>
            <ul className="quote-lines">
              {here.map((job) => (
                <JobLine key={job.id} job={job} mark={mark} />
              ))}
            </ul>
          </section>
        );
      })}
      {found?.next !== undefined && (
        <p className="acts">
          <button type="button" onClick={() => void more()}>
            More jobs
          </button>
        </p>
      )}
    </div>
  );
}

async function standings(find: string, after?: string): Promise<FoundPage<JobStanding>> {
  const query = new URLSearchParams({ find, limit: String(PAGE), ...(after === undefined ? {} : { after }) });
  const answer = await got<{ jobs: readonly JobStanding[]; next?: string }>(`api/standing?${query}`);
  return 'why' in answer ? answer : { items: answer.value.jobs, next: answer.value.next };
}

function told(found: Found<string, JobStanding> | undefined): string {
  if (found === undefined) return '';
  if (found.why !== undefined) return found.why;
  if (found.items.length > 0 && found.next === undefined) return '';
  if (found.items.length > 0)
    return found.asked.trim() === ''
      ? 'The jobs changed last, and those whose quote moved last. Others: More below, or find them by a word.'
      : 'The jobs found that were changed last; more below.';
  return found.asked.trim() === '' ? 'No job has been begun yet.' : 'No job is like that.';
}

function JobLine(given: {
  readonly job: JobStanding;
  readonly mark: (id: string, kind: string) => Promise<void>;
}) {
  const { job, mark } = given;
  const me = useMe();
  const over = job.state === 'stopped' || job.state === 'handed-over';
  return (
    <li className="job-line">
      <a href={deskAt(job.id)}>
        <strong>{job.title === '' ? job.id : job.title}</strong>
      </a>
      <span>{job.customer === '' ? 'no customer told' : job.customer}</span>
      <span>
        {job.to === ''
          ? `since ${dayText(job.since)}`
          : `the ${job.waitsFor} is to ${job.to}; ${waited(job.since, Date.now())}`}
      </span>
      <span className="acts">
        {job.quote !== undefined &&
          (sells(me) ? <a href={hashOf('quotes', job.quote)}>{job.quote}</a> : <span>{job.quote}</span>)}
        {job.serial !== undefined && (
          <a href={`./machines.html#${encodeURIComponent(job.serial)}`}>{job.serial}</a>
        )}
        {job.quote === undefined && !over && sells(me) && (
          <a href={hashOf('quotes', 'new', job.id)}>Make a quote</a>
        )}
        {job.state === 'tested' && worksInShop(me) && (
          <button type="button" onClick={() => void mark(job.id, 'handed-over')}>
            Handed over
          </button>
        )}
        {worksInShop(me) && (
          <button type="button" onClick={() => void mark(job.id, over ? 'taken-up' : 'stopped')}>
            {over ? 'Take up again' : 'Stop'}
            <span className="for-readers"> {job.title}</span>
          </button>
        )}
      </span>
    </li>
  );
}
