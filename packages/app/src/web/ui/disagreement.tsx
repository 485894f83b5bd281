import { useState } from 'react';
import type { Disagreement } from '../state/job-keeper.ts';
import { useStore } from './desk-context.ts';
import '../style/job-list.css';

/** Two people changed the same values: both stand side by side until one of each is taken. */
export function DisagreementSheet({ disagreement }: { disagreement: Disagreement }) {
  const store = useStore();
  const [mine, setMine] = useState<readonly string[]>([]);
  const { clashes, theirs } = disagreement;
  const who = theirs.changedBy === '' ? 'Somebody else' : theirs.changedBy;
  return (
    <section className="disagreement" role="alertdialog" aria-labelledby="disagreement-heading">
      <h2 className="heading" id="disagreement-heading">
        {who} changed the same {clashes.length === 1 ? 'value' : `${clashes.length} values`}
      </h2>
      <p className="note">Everything else of both is kept. Nothing is sent until one of each is taken.</p>
      <ul>
        {clashes.map((clash) => {
          const path = clash.path.join('.');
          const isMine = mine.includes(path);
          return (
            <li key={path}>
              <fieldset>
                <legend>{words(clash.path)}</legend>
                <label>
                  <input
                    type="radio"
                    name={path}
                    checked={!isMine}
                    onChange={() => setMine(mine.filter((m) => m !== path))}
                  />{' '}
                  Theirs: {shown(clash.theirs)}
                </label>
                <label>
                  <input
                    type="radio"
                    name={path}
                    checked={isMine}
                    onChange={() => setMine([...mine.filter((m) => m !== path), path])}
                  />{' '}
                  Yours: {shown(clash.mine)}
                </label>
              </fieldset>
            </li>
          );
        })}
      </ul>
      <button
        type="button"
        className="word"
        onClick={() => store.agree((clash) => mine.includes(clash.path.join('.')))}
      >
        Go on with these
      </button>
    </section>
  );
}

/** `brief.duties.0.hoseOut` as "brief, duties 1, hose out". */
function words(path: readonly (string | number)[]): string {
  const parts: string[] = [];
  for (const step of path)
    if (typeof step === 'number') parts.push(`${parts.pop() ?? ''} ${step + 1}`.trim());
    else parts.push(step.replace(/([A-Z])/g, (_, letter: string) => ` ${letter.toLowerCase()}`));
  return parts.length === 0 ? 'the whole job' : parts.join(', ');
}

const LONGEST = 160;

function shown(value: unknown): string {
  if (value === undefined) return 'taken away';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)} ...` : text;
}
