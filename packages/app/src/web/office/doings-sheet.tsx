import { useEffect, useState } from 'react';
import { doings, everybody, ROLES, type Doing, type PersonKept } from './people-link.ts';
import '../style/office-people.css';

interface Asked {
  readonly email: string;
  readonly about: string;
  /** As the field gives it: 2026-03-03, where the reader is. */
  readonly day: string;
}

interface Book {
  readonly lines: readonly Doing[];
  readonly next?: string | undefined;
  readonly why?: string;
}

/** Quiet time after a letter before the book is asked [ms]. */
const QUIET = 200;
/** What a line is about, as people say it, and where it is to be seen. */
const KINDS: Readonly<Record<string, { readonly word: string; readonly at?: (id: string) => string }>> = {
  jobs: { word: 'job', at: (id) => `/jobs/${encodeURIComponent(id)}` },
  machines: { word: 'machine', at: (id) => `./machines.html#${encodeURIComponent(id)}` },
  quotes: { word: 'quote' },
  parts: { word: 'part' },
  stock: { word: 'part' },
};

/** The book of who did what, by person, by job and by day; for an owner. */
export function DoingsSheet({ at }: { readonly at: readonly string[] }) {
  const [asked, setAsked] = useState<Asked>({ email: at[0] ?? '', about: '', day: '' });
  const [people, setPeople] = useState<readonly PersonKept[]>([]);
  const [book, setBook] = useState<Book>();
  useEffect(() => void everybody().then((all) => 'value' in all && setPeople(all.value.people)), []);
  useEffect(() => {
    let stale = false;
    const timer = setTimeout(() => void pageOf(asked).then((page) => !stale && setBook(page)), QUIET);
    return () => {
      stale = true;
      clearTimeout(timer);
    };
  }, [asked]);
  const more = async () => {
    if (book?.next === undefined) return;
    const page = await pageOf(asked, book.next);
    setBook({ ...page, lines: [...book.lines, ...page.lines] });
  };
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
        {book?.lines.map((line, k) => (
          <Line key={line.id} line={line} above={book.lines[k - 1]} />
        ))}
      </ol>
      <p role="status">{book === undefined ? '' : wordsOf(book)}</p>
      {book?.next !== undefined && (
        <button className="people-button" onClick={() => void more()}>
          Earlier
        </button>
      )}
    </div>
  );
}

function wordsOf({ why, lines, next }: Book): string {
  if (why !== undefined) return why;
  if (lines.length === 0) return 'Nothing was done.';
  return next === undefined ? 'That is all.' : '';
}

function Line({ line, above }: { readonly line: Doing; readonly above: Doing | undefined }) {
  const moment = new Date(line.at);
  const day = moment.toLocaleDateString();
  const kind = KINDS[line.aboutKind];
  return (
    <li>
      {(above === undefined || new Date(above.at).toLocaleDateString() !== day) && (
        <h2 className="heading">{day}</h2>
      )}
      <div className="doing">
        <time dateTime={line.at}>
          {moment.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}
        </time>
        <span>
          {line.who === '' ? 'nobody signed in' : line.who}
          {line.role !== '' && <small> {ROLES[line.role as keyof typeof ROLES] ?? line.role}</small>}
        </span>
        <span>
          {line.did}
          {line.what !== '' && <>: {line.what}</>}
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

async function pageOf({ email, about, day }: Asked, after?: string): Promise<Book> {
  const answer = await doings({
    ...(email === '' ? {} : { email }),
    ...(about.trim() === '' ? {} : { about: about.trim() }),
    ...(day === '' ? {} : dayHere(day)),
    ...(after === undefined ? {} : { after }),
  });
  if ('why' in answer) return { lines: [], why: answer.why };
  return { lines: answer.value.doings, next: answer.value.next };
}

/** A day where the reader is, as moments of UTC. */
function dayHere(day: string): { from: string; until: string } {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const [from, until] = [new Date(year, month - 1, date), new Date(year, month - 1, date + 1)];
  return { from: from.toISOString(), until: until.toISOString() };
}
