import { useState } from 'react';
import { askServer } from '../frame/ask.ts';
import { hashOf } from '../frame/hash.ts';
import { useMe, worksInShop } from '../frame/me.ts';
import { dayText } from '../frame/moment.ts';
import { useFound, type Found, type FoundPage } from '../frame/use-found.ts';
import { BeginMachine } from './begin-machine.tsx';
import { Recall } from './recall.tsx';
import { WhoWorks } from './who-works.tsx';
import '../style/machines.css';

interface MachineLine {
  readonly serial: string;
  readonly title: string;
  readonly customer: string;
  readonly madeAt: string;
}

/** All machines, found by serial number, customer or title. */
export function FindMachine() {
  const [words, setWords] = useState('');
  const me = useMe();
  const { found, more } = useFound(words, pageOf);
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
      <p role="status">{toldOf(found)}</p>
      <ul className="machine-lines">
        {found?.items.map((m) => (
          <li key={m.serial}>
            <a href={hashOf(m.serial)}>
              <strong>{m.serial}</strong>
              <span>{m.title}</span>
              <span>{m.customer === '' ? 'no customer told' : m.customer}</span>
              <span>begun {dayText(m.madeAt)}</span>
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
      {worksInShop(me) && <BeginMachine />}
      <Recall />
    </div>
  );
}

async function pageOf(find: string, after?: string): Promise<FoundPage<MachineLine>> {
  const query = new URLSearchParams({ find, ...(after === undefined ? {} : { after }) });
  const answer = await askServer<{ machines: readonly MachineLine[]; next?: string }>(
    `api/machines?${query.toString()}`,
  );
  if (answer.is === 'done') return { items: answer.value.machines, next: answer.value.next };
  return {
    why:
      answer.is === 'refused'
        ? `The list was refused: ${answer.why}`
        : 'The records cannot be reached; a machine that was opened on this device opens by its address',
  };
}

function toldOf(found: Found<string, MachineLine> | undefined): string {
  if (found === undefined) return 'Asking the records';
  const { asked, items, next, why } = found;
  if (why !== undefined) return why;
  if (items.length === 0)
    return asked.trim() === '' ? 'No machine has been begun yet' : 'No machine has all of these words';
  return `${items.length}${next === undefined ? '' : ' and more'} ${items.length === 1 ? 'machine' : 'machines'}, the last begun first`;
}
