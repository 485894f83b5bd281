import { useState, type SyntheticEvent } from 'react';
import { askServer, sent } from '../frame/ask.ts';
import { hashOf } from '../frame/hash.ts';
import { whoIsHere } from './kept-machine.ts';

interface JobLine {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  readonly customer: string;
}

/** Begins the building of a job as it stands in the records; its rig and parts are kept with the machine from then on. */
export function BeginMachine() {
  const [words, setWords] = useState('');
  const [serial, setSerial] = useState('');
  const [jobs, setJobs] = useState<readonly JobLine[]>();
  const [answer, setAnswer] = useState('');
  const look = async (event: SyntheticEvent) => {
    event.preventDefault();
    const query = new URLSearchParams({ find: words, limit: '20' });
    const told = await askServer<{ jobs: readonly JobLine[] }>(`api/jobs?${query.toString()}`);
    setJobs(told.is === 'done' ? told.value.jobs : undefined);
    setAnswer(
      told.is === 'done'
        ? told.value.jobs.length === 0
          ? 'No job has all of these words'
          : ''
        : told.is === 'refused'
          ? told.why
          : 'The records cannot be reached',
    );
  };
  const begin = async (job: JobLine) => {
    const number = serial.trim().toUpperCase();
    const body = {
      job: job.id,
      version: job.version,
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
            <button type="button" onClick={() => void begin(job)}>
              <strong>{job.id}</strong>
              <span>{job.title}</span>
              <span>{job.customer === '' ? 'no customer yet' : job.customer}</span>
              <span>begin, as it stands at version {job.version}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
