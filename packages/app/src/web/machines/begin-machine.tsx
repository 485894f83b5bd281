import { useState, type SyntheticEvent } from 'react';
import { askServer, sent } from '../frame/ask.ts';
import { hashOf } from '../frame/hash.ts';
import { whoIsHere } from './kept-machine.ts';
import { soldText } from './sold-text.ts';

interface JobLine {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  readonly customer: string;
  /** What was sold of it; absent where no quote was accepted. */
  readonly sold?: SoldLine;
}

interface SoldLine {
  readonly number: string;
  readonly revision: string;
  readonly option: string;
  readonly acceptedAt: string;
  readonly title: string;
  readonly options: number;
}

/**
 * Begins the building of what was sold of a job, or of the job as it stands where nothing was; the rig and its parts are
 * kept with the machine from then on.
 */
export function BeginMachine() {
  const [words, setWords] = useState('');
  const [serial, setSerial] = useState('');
  const [jobs, setJobs] = useState<readonly JobLine[]>();
  const [answer, setAnswer] = useState('');
  const look = async (event: SyntheticEvent) => {
    event.preventDefault();
    const query = new URLSearchParams({ find: words, limit: '20' });
    const told = await askServer<{ jobs: readonly JobLine[] }>(`api/jobs?${query.toString()}`);
    if (told.is !== 'done') {
      setJobs(undefined);
      return setAnswer(told.is === 'refused' ? told.why : 'The records cannot be reached');
    }
    setJobs(await Promise.all(told.value.jobs.map(withSold)));
    setAnswer(told.value.jobs.length === 0 ? 'No job has all of these words' : '');
  };
  const begin = async (job: JobLine, from: 'quote' | 'job') => {
    const number = serial.trim().toUpperCase();
    const body = {
      job: job.id,
      version: job.version,
      from,
      by: whoIsHere(),
      ...(number === '' ? {} : { serial: number }),
    };
    const told = await askServer<{ serial: string }>('api/machines', sent(body));
    if (told.is === 'done') location.hash = hashOf(told.value.serial);
    else setAnswer(told.is === 'refused' ? `Not begun: ${told.why}` : 'The records cannot be reached');
  };
  return (
    <section aria-labelledby="begin-heading">
      <h2 className="heading" id="begin-heading">
        Begin a machine
      </h2>
      <form className="field" onSubmit={(event) => void look(event)}>
        <label htmlFor="begin-job">Job</label>
        <input
          id="begin-job"
          value={words}
          placeholder="title, customer or number of the job"
          onChange={({ target }) => setWords(target.value)}
        />
        <button type="submit" className="act">
          Find jobs
        </button>
      </form>
      <p className="field">
        <label htmlFor="begin-serial">Serial number</label>
        <input
          id="begin-serial"
          value={serial}
          maxLength={40}
          placeholder="the next free one"
          onChange={({ target }) => setSerial(target.value)}
        />
      </p>
      {answer !== '' && <p role="alert">{answer}.</p>}
      <ul className="machine-lines">
        {jobs?.map((job) => (
          <li key={job.id}>
            <button type="button" onClick={() => void begin(job, 'quote')}>
              <strong>{job.id}</strong>
              <span>{job.sold?.title ?? job.title}</span>
              <span>{job.customer === '' ? 'no customer yet' : job.customer}</span>
              <span>
                {job.sold === undefined
                  ? `begin, as it stands at version ${job.version}: no quote was accepted`
                  : `begin what was sold: ${soldText(job.sold)}`}
              </span>
            </button>
            {job.sold !== undefined && (
              <button type="button" className="word begin-otherwise" onClick={() => void begin(job, 'job')}>
                Begin {job.id} as the job stands at version {job.version} instead, whatever was sold
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A job with what was sold of it; that is asked again when the machine is begun. */
async function withSold(job: JobLine): Promise<JobLine> {
  const told = await askServer<{ sold?: SoldLine }>(`api/jobs/${encodeURIComponent(job.id)}/sold`);
  return told.is === 'done' && told.value.sold !== undefined ? { ...job, sold: told.value.sold } : job;
}
