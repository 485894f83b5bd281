import { useEffect, useState } from 'react';
import { moneyText } from '@spraywright/engine/quantity';
import { hashOf } from '../../frame/hash.ts';
import { MakeQuote } from './make-quote.tsx';
import { QuoteSheet } from './quote-sheet.tsx';
import { got, QUOTE_STATES, type QuoteHead } from './quotes-link.ts';
import { dayText } from './words.ts';
import '../../style/office-quotes.css';

const QUIET = 150;

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
  const [words, setWords] = useState('');
  const [state, setState] = useState('');
  const [quotes, setQuotes] = useState<readonly QuoteHead[]>([]);
  const [said, setSaid] = useState('');
  useEffect(() => {
    let wanted = true;
    const ask = async () => {
      const of = state === '' ? '' : `&state=${state}`;
      const answer = await got<{ quotes: readonly QuoteHead[] }>(
        `api/quotes?limit=200&find=${encodeURIComponent(words)}${of}`,
      );
      if (!wanted) return;
      if ('why' in answer) return setSaid(answer.why);
      setQuotes(answer.value.quotes);
      setSaid(answer.value.quotes.length === 0 ? 'No quote is like that.' : '');
    };
    const timer = setTimeout(() => void ask(), QUIET);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [words, state]);
  return (
    <div className="quotes">
      <h1>Quotes</h1>
      <p className="ask">
        <label htmlFor="find-quote">Find</label>{' '}
        <input
          id="find-quote"
          type="search"
          value={words}
          placeholder="number, title, customer or job"
          onChange={({ target }) => setWords(target.value)}
        />{' '}
        <label htmlFor="quote-state">that are</label>{' '}
        <select id="quote-state" value={state} onChange={({ target }) => setState(target.value)}>
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
      <p role="status">{said}</p>
      <ul className="quote-lines">
        {quotes.map((q) => (
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
    </div>
  );
}
