import { useCallback, useEffect, useRef, useState } from 'react';
import { deskAt, hashOf } from '../../frame/hash.ts';
import { ComparedRevisions } from './compared-revisions.tsx';
import { MakeQuote } from './make-quote.tsx';
import { OptionsTable } from './options-table.tsx';
import { got } from '../got.ts';
import { QUOTE_STATES, quotePath, type Quote, type Revision, type Story } from './quotes-link.ts';
import { SendQuote } from './send-quote.tsx';
import { QuoteStory } from './quote-story.tsx';
import { dayText } from '../../frame/moment.ts';

interface Shown {
  readonly quote: Quote;
  readonly revision: Revision;
  readonly story: Story;
}

/** One quote: a revision as it is frozen, what happened, and what can be done. */
export function QuoteSheet(given: {
  readonly number: string;
  readonly revision: string | undefined;
  readonly units: 'us' | 'metric';
}) {
  const { number, revision: asked, units } = given;
  const [shown, setShown] = useState<Shown>();
  const [why, setWhy] = useState('');
  const [revising, setRevising] = useState(false);
  const asking = useRef(0);
  const load = useCallback(async () => {
    // What is asked later is newer, whichever answer comes first.
    const turn = ++asking.current;
    const quote = await got<Quote>(quotePath(number));
    if (turn !== asking.current) return;
    if ('why' in quote) return setWhy(quote.why);
    const letter = asked ?? quote.value.revision;
    const [revision, story] = await Promise.all([
      got<Revision>(quotePath(number, 'revisions', letter)),
      got<Story>(quotePath(number, 'story')),
    ]);
    if (turn !== asking.current) return;
    if ('why' in revision) return setWhy(revision.why);
    if ('why' in story) return setWhy(story.why);
    setWhy('');
    setShown({ quote: quote.value, revision: revision.value, story: story.value });
  }, [number, asked]);
  useEffect(() => void load(), [load]);
  if (shown === undefined) return <p role="alert">{why}</p>;
  const { quote, revision, story } = shown;
  const { document } = revision;
  const newest = quote.revision === revision.revision;
  const open = newest && quote.state !== 'accepted';
  return (
    <div className="quotes">
      <p>
        <a href={hashOf('quotes')}>All quotes</a>
      </p>
      <h1>
        {number} {revision.revision}: {quote.title}
      </h1>
      <p>
        For {quote.customer}, of the job <a href={deskAt(quote.job)}>{quote.job}</a>. The quote is{' '}
        <strong>{QUOTE_STATES[quote.state]}</strong> since {dayText(quote.since)}
        {newest ? '' : `; its newest revision is ${quote.revision}`}.
      </p>
      <RevisionRow quote={quote} shown={revision.revision} />
      <p>
        Drawn up {dayText(revision.madeAt)}
        {revision.madeBy === '' ? '' : ` by ${revision.madeBy}`},{' '}
        {revision.sentAt === undefined ? 'not sent yet' : `first sent ${dayText(revision.sentAt)}`}. Holds
        until {dayText(document.validUntil)}; {document.shop.depositPercent} % on order. Catalogue{' '}
        {document.catalogue.version}, engine {document.engineVersion}.
      </p>
      {document.note !== '' && <p className="note">{document.note}</p>}
      <p>
        <a className="way" href={quotePath(number, 'revisions', revision.revision, 'quote.pdf')}>
          The quote as a PDF
        </a>{' '}
        <a className="way" href={quotePath(number, 'revisions', revision.revision)}>
          Everything of it as JSON
        </a>
      </p>
      <OptionsTable document={document} />
      {open && quote.state !== 'withdrawn' && (
        <SendQuote key={revision.revision} number={number} revision={revision.revision} sent={load} />
      )}
      {quote.revisions.length > 1 && (
        <ComparedRevisions key={revision.revision} quote={quote} to={revision.revision} />
      )}
      <QuoteStory quote={quote} story={story} changed={load} />
      {open && (
        <section>
          {revising ? (
            <MakeQuote
              job={quote.job}
              units={units}
              revising={{ quote, from: revision }}
              done={() => setRevising(false)}
            />
          ) : (
            <button type="button" onClick={() => setRevising(true)}>
              Draw it up anew
            </button>
          )}
        </section>
      )}
    </div>
  );
}

function RevisionRow({ quote, shown }: { readonly quote: Quote; readonly shown: string }) {
  if (quote.revisions.length < 2) return null;
  return (
    <nav aria-label="Revisions">
      <ul className="revisions">
        {quote.revisions.map((r) => (
          <li key={r.revision}>
            <a
              href={hashOf('quotes', quote.number, r.revision)}
              aria-current={r.revision === shown ? 'true' : undefined}
            >
              {r.revision}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
