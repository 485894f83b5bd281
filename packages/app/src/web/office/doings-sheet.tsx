import { useEffect, useState } from 'react';
import { deskAt } from '../frame/hash.ts';
import { clockText, dayText } from '../frame/moment.ts';
import { useFound, type Found, type FoundPage } from '../frame/use-found.ts';
import { doingInWords } from './doing-words.ts';
import { doings, everybody, ROLES, type Doing, type PersonKept } from './people-link.ts';
import '../style/office-people.css';

interface Asked {
  readonly email: string;
  readonly about: string;
  /** As the field gives it: 2026-03-03, where the reader is. */
  readonly day: string;
}

/** What a line is about, as people say it, and where it is to be seen. */
const KINDS: Readonly<Record<string, { readonly word: string; readonly at?: (id: string) => string }>> = {
  jobs: { word: 'job', at: deskAt },
  machines: { word: 'machine', at: (id) => `./machines.html#${encodeURIComponent(id)}` },
  quotes: { word: 'quote' },
  parts: { word: 'part' },
  stock: { word: 'part' },
};

/** The book of who did what, by person, by job and by day; for an owner. */
export function DoingsSheet({ at }: { readonly at: readonly string[] }) {
  const [asked, setAsked] = useState<Asked>({ email: at[0] ?? '', about: '', day: '' });
  const [people, setPeople] = useState<readonly PersonKept[]>([]);
  const { found, more } = useFound(asked, pageOf);
  useEffect(() => void everybody().then((all) => 'value' in all && setPeople(all.value.people)), []);
  const known = people.some((p) => p.email === asked.email) || asked.email === '';
  return (
    <div className="people">
      <h1>Who did what</h1>
      <form className="people-add" role="search" onSubmit={(event) => event.preventDefault()}>
        <label>
          Person
          <select value={asked.email} onChange={(e) => setAsked({ ...asked, email: e.target.value })}>
            <option value="">everybody</option>
            {people.map(({ email, name }) => (
              <option key={email} value={email}>
                {name}
              </option>
            ))}
            {!known && <option value={asked.email}>{asked.email}</option>}
          </select>
        </label>
        <label>
          Job, quote, machine or part
          <input
            type="search"
            value={asked.about}
            placeholder="its number"
            onChange={(e) => setAsked({ ...asked, about: e.target.value })}
          />
        </label>
        <label>
          Day
          <input
            type="date"
            value={asked.day}
            onChange={(e) => setAsked({ ...asked, day: e.target.value })}
          />
        </label>
      </form>
      <ol className="doings">
        {found?.items.map((line, k) => (
          <Line key={line.id} line={line} above={found.items[k - 1]} />
        ))}
      </ol>
      <p role="status">{found === undefined ? '' : wordsOf(found)}</p>
      {found?.next !== undefined && (
        <button className="people-button" onClick={() => void more()}>
          Earlier
        </button>
      )}
    </div>
  );
}

function wordsOf({ why, items, next }: Found<Asked, Doing>): string {
  if (why !== undefined) return why;
  if (items.length === 0) return 'Nothing was done.';
  return next === undefined ? 'That is all.' : '';
}

function Line({ line, above }: { readonly line: Doing; readonly above: Doing | undefined }) {
  const day = dayText(line.at);
  const kind = KINDS[line.aboutKind];
  return (
    <li>
      {(above === undefined || dayText(above.at) !== day) && <h2 className="heading">{day}</h2>}
      <div className="doing">
        <time dateTime={line.at}>{clockText(line.at)}</time>
        <span>
          {line.who === '' ? 'nobody signed in' : line.who}
          {line.role !== '' && <small> {ROLES[line.role as keyof typeof ROLES] ?? line.role}</small>}
        </span>
        <span>
          {line.did}
          {line.what !== '' && <>: {doingInWords(line)}</>}
        </span>
        <span>
          {kind !== undefined &&
            line.aboutId !== '' &&
            (kind.at === undefined ? (
              `${kind.word} ${line.aboutId}`
            ) : (
              <a href={kind.at(line.aboutId)}>{`${kind.word} ${line.aboutId}`}</a>
            ))}
        </span>
      </div>
    </li>
  );
}

async function pageOf({ email, about, day }: Asked, after?: string): Promise<FoundPage<Doing>> {
  const answer = await doings({
    ...(email === '' ? {} : { email }),
    ...(about.trim() === '' ? {} : { about: about.trim() }),
    ...(day === '' ? {} : dayHere(day)),
    ...(after === undefined ? {} : { after }),
  });
  return 'why' in answer ? answer : { items: answer.value.doings, next: answer.value.next };
}

/** A day where the reader is, as moments of UTC. */
function dayHere(day: string): { from: string; until: string } {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const [from, until] = [new Date(year, month - 1, date), new Date(year, month - 1, date + 1)];
  return { from: from.toISOString(), until: until.toISOString() };
}
