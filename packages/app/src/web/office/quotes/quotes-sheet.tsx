import { useState } from 'react';
import { moneyText } from '@spraywright/engine/quantity';
import { hashOf } from '../../frame/hash.ts';
import { dayText } from '../../frame/moment.ts';
import { useFound, type Found, type FoundPage } from '../../frame/use-found.ts';
import { MakeQuote } from './make-quote.tsx';
import { QuoteSheet } from './quote-sheet.tsx';
import { got } from '../got.ts';
import { QUOTE_STATES, type QuoteHead } from './quotes-link.ts';
import '../../style/office-quotes.css';

interface Asked {
  readonly find: string;
  readonly state: string;
}

/** The quotes: `#quotes` lists them, `#quotes/Q-0412` is one, `#quotes/new/JOB` makes one. */
export function QuotesSheet({
  at,
  units,
}: {
  readonly at: readonly string[];
  readonly units: 'us' | 'metric';
}) {
  const [number, more] = at;
  if (number === 'new') return <MakeQuote key={more} job={more ?? ''} units={units} />;
  if (number !== undefined && number !== '')
    return <QuoteSheet key={number} number={number} revision={more} units={units} />;
  return <QuoteList />;
}

function QuoteList() {
  const [asked, ask] = useState<Asked>({ find: '', state: '' });
  const { found, more } = useFound(asked, pageOf);
  return (
    <div className="quotes">
      <h1>Quotes</h1>
      <p className="ask">
        <label htmlFor="find-quote">Find</label>{' '}
        <input
          id="find-quote"
          type="search"
          value={asked.find}
          placeholder="number, title, customer or job"
          onChange={({ target }) => ask({ ...asked, find: target.value })}
        />{' '}
        <label htmlFor="quote-state">that are</label>{' '}
        <select
          id="quote-state"
          value={asked.state}
          onChange={({ target }) => ask({ ...asked, state: target.value })}
        >
          <option value="">of any state</option>
          {Object.entries(QUOTE_STATES).map(([value, name]) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </select>{' '}
        <a className="way" href={hashOf('quotes', 'new')}>
          Make a quote
        </a>
      </p>
      <p role="status">{found === undefined ? '' : told(found)}</p>
      <ul className="quote-lines">
        {found?.items.map((q) => (
          <li key={q.number} className="quote-line">
            <a href={hashOf('quotes', q.number)}>
              <strong>
                {q.number} {q.revision}
              </strong>
            </a>
            <span>
              {q.title}, for {q.customer}
            </span>
            <span className="figure">
              {moneyText(q.priceCents)}
              {q.optionCount > 1 ? ` and ${q.optionCount - 1} more` : ''}
            </span>
            <span>
              {QUOTE_STATES[q.state]}, {dayText(q.since)}
              {q.question && <strong>; a question waits for an answer</strong>}
            </span>
          </li>
        ))}
      </ul>
      {found?.next !== undefined && (
        <p>
          <button type="button" onClick={() => void more()}>
            Show more
          </button>
        </p>
      )}
    </div>
  );
}

async function pageOf({ find, state }: Asked, after?: string): Promise<FoundPage<QuoteHead>> {
  const query = new URLSearchParams({
    find,
    ...(state === '' ? {} : { state }),
    ...(after === undefined ? {} : { after }),
  });
  const answer = await got<{ quotes: readonly QuoteHead[]; next?: string }>(`api/quotes?${query.toString()}`);
  return 'why' in answer ? answer : { items: answer.value.quotes, next: answer.value.next };
}

function told({ asked, items, why }: Found<Asked, QuoteHead>): string {
  if (why !== undefined) return why;
  if (items.length > 0) return '';
  return asked.find.trim() === '' && asked.state === ''
    ? 'No quote has been made yet.'
    : 'No quote is like that.';
}
