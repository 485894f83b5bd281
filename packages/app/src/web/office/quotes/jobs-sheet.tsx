import { useCallback, useEffect, useState } from 'react';
import { hashOf } from '../../frame/hash.ts';
import { got, JOB_STATES, type JobStanding } from './quotes-link.ts';
import { dayText, waited } from './words.ts';
import '../../style/office-quotes.css';

/** Quiet time after a letter before the records are asked [ms]. */
const QUIET = 150;

/** Every job by how far it has come, with who is to act next and since when. */
export function JobsSheet() {
  const [words, setWords] = useState('');
  const [jobs, setJobs] = useState<readonly JobStanding[]>([]);
  const [said, setSaid] = useState('');
  const load = useCallback(async (find: string) => {
    const answer = await got<{ jobs: readonly JobStanding[] }>(
      `api/standing?find=${encodeURIComponent(find)}`,
    );
    if ('why' in answer) return setSaid(answer.why);
    setJobs(answer.value.jobs);
    setSaid(answer.value.jobs.length === 0 ? 'No job is like that.' : '');
  }, []);
  useEffect(() => {
    const timer = setTimeout(() => void load(words), QUIET);
    return () => clearTimeout(timer);
  }, [words, load]);
  const mark = async (id: string, kind: string) => {
    const answer = await got(`api/jobs/${encodeURIComponent(id)}/marks`, { kind });
    if ('why' in answer) setSaid(answer.why);
    else await load(words);
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
      <p role="status">{said}</p>
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
    </div>
  );
}

function JobLine(given: {
  readonly job: JobStanding;
  readonly mark: (id: string, kind: string) => Promise<void>;
}) {
  const { job, mark } = given;
  const over = job.state === 'stopped' || job.state === 'handed-over';
  return (
    <li className="job-line">
      <a href={`./jobs/${encodeURIComponent(job.id)}`}>
        <strong>{job.title === '' ? job.id : job.title}</strong>
      </a>
      <span>{job.customer === '' ? 'no customer told' : job.customer}</span>
      <span>
        {job.to === ''
          ? `since ${dayText(job.since)}`
          : `the ${job.waitsFor} is to ${job.to}; ${waited(job.since, Date.now())}`}
      </span>
      <span className="acts">
        {job.quote !== undefined && <a href={hashOf('quotes', job.quote)}>{job.quote}</a>}
        {job.serial !== undefined && (
          <a href={`./machines.html#${encodeURIComponent(job.serial)}`}>{job.serial}</a>
        )}
        {job.quote === undefined && !over && <a href={hashOf('quotes', 'new', job.id)}>Make a quote</a>}
        {job.state === 'tested' && (
          <button type="button" onClick={() => void mark(job.id, 'handed-over')}>
            Handed over
          </button>
        )}
        <button type="button" onClick={() => void mark(job.id, over ? 'taken-up' : 'stopped')}>
          {over ? 'Take up again' : 'Stop'}
          <span className="for-readers"> {job.title}</span>
        </button>
      </span>
    </li>
  );
}
