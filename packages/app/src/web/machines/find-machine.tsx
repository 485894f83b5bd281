import { useEffect, useState } from 'react';
import { askServer } from '../frame/ask.ts';
import { hashOf } from '../frame/hash.ts';
import { BeginMachine } from './begin-machine.tsx';
import { Recall } from './recall.tsx';
import { WhoWorks } from './who-works.tsx';
import '../style/machines.css';

/** Quiet time after a letter before the records are asked [ms]. */
const QUIET = 150;

interface MachineLine {
  readonly serial: string;
  readonly title: string;
  readonly customer: string;
  readonly madeAt: string;
}

interface Found {
  readonly machines: readonly MachineLine[];
  readonly next?: string;
  readonly trouble?: string;
}

/** All machines, found by serial number, customer or title. */
export function FindMachine() {
  const [words, setWords] = useState('');
  const [found, setFound] = useState<Found>();
  useEffect(() => {
    let wanted = true;
    const timer = setTimeout(() => void pageOf(words).then((page) => wanted && setFound(page)), QUIET);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [words]);
  const more = async () => {
    if (found?.next === undefined) return;
    const page = await pageOf(words, found.next);
    setFound({ ...page, machines: [...found.machines, ...page.machines] });
  };
  return (
    <div className="machine-sheet">
      <header className="machine-head">
        <h1>Machines by serial number</h1>
      </header>
      <p className="field">
        <label htmlFor="find-machine">Find</label>
        <input
          id="find-machine"
          type="search"
          value={words}
          placeholder="serial number, customer, title or job"
          onChange={({ target }) => setWords(target.value)}
        />
      </p>
      <p role="status">{toldOf(found, words)}</p>
      <ul className="machine-lines">
        {found?.machines.map((m) => (
          <li key={m.serial}>
            <a href={hashOf(m.serial)}>
              <strong>{m.serial}</strong>
              <span>{m.title}</span>
              <span>{m.customer === '' ? 'no customer told' : m.customer}</span>
              <span>begun {m.madeAt.slice(0, 10)}</span>
            </a>
          </li>
        ))}
      </ul>
      {found?.next !== undefined && (
        <button type="button" className="word" onClick={() => void more()}>
          Show more
        </button>
      )}
      <WhoWorks />
      <BeginMachine />
      <Recall />
    </div>
  );
}

async function pageOf(find: string, after?: string): Promise<Found> {
  const query = new URLSearchParams({ find, ...(after === undefined ? {} : { after }) });
  const answer = await askServer<Found>(`api/machines?${query.toString()}`);
  if (answer.is === 'done') return answer.value;
  return {
    machines: [],
    trouble:
      answer.is === 'refused'
        ? `The list was refused: ${answer.why}`
        : 'The records cannot be reached; a machine that was opened on this device opens by its address',
  };
}

function toldOf(found: Found | undefined, words: string): string {
  if (found === undefined) return 'Asking the records';
  if (found.trouble !== undefined) return found.trouble;
  const { length } = found.machines;
  if (length === 0)
    return words.trim() === '' ? 'No machine has been begun yet' : 'No machine has all of these words';
  return `${length}${found.next === undefined ? '' : ' and more'} ${length === 1 ? 'machine' : 'machines'}, the last begun first`;
}
