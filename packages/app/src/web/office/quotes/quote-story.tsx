import { useState } from 'react';
import { gotFor, LONG } from '../got.ts';
import { postedText } from './posted-text.ts';
import {
  quotePath,
  type CustomerLink,
  type Posted,
  type Quote,
  type QuoteEvent,
  type Story,
} from './quotes-link.ts';
import { dayText } from '../../frame/moment.ts';

interface Given {
  readonly quote: Quote;
  readonly story: Story;
  readonly changed: () => Promise<void>;
}

/** What happened to a quote, its links, and what the shop can do about them. */
export function QuoteStory({ quote, story, changed }: Given) {
  const [told, setTold] = useState('');
  const [leaving, setLeaving] = useState(false);
  /** @returns whether it was done; what was typed for it stays where it was not */
  const act = async (steps: readonly string[], body: object) => {
    const answer = await gotFor<{ readonly posted?: Posted; readonly to?: string }>(
      quotePath(quote.number, ...steps),
      body,
      LONG,
    );
    const { posted, to = '' } = 'value' in answer ? answer.value : {};
    setTold('why' in answer ? answer.why : posted === undefined ? '' : postedText(posted, to));
    await changed();
    return 'value' in answer;
  };
  const open = quote.state !== 'accepted' && quote.state !== 'withdrawn';
  return (
    <section aria-label="What happened">
      <h2 className="heading">What happened</h2>
      {story.events.length === 0 && <p>Nothing yet.</p>}
      <ol className="story">
        {story.events.map((event) => (
          <li key={event.number}>
            <time dateTime={event.at}>{dayText(event.at)}</time> <span>{eventText(event)}</span>
          </li>
        ))}
      </ol>
      {quote.question && <AnswerForm send={(said) => act(['answers'], { said })} />}
      {story.links.length > 0 && (
        <>
          <h3>Links</h3>
          <ul className="story">
            {story.links.map((link) => (
              <LinkLine key={link.id} link={link} revoke={() => act(['links', link.id, 'revoke'], {})} />
            ))}
          </ul>
        </>
      )}
      <p role="status">{told}</p>
      {open && (
        <p className="acts">
          {leaving ? (
            <>
              <button type="button" onClick={() => void act(['withdraw'], {}).then(() => setLeaving(false))}>
                Take {quote.number} back: nobody can accept it any more
              </button>
              <button type="button" onClick={() => setLeaving(false)}>
                Keep
              </button>
            </>
          ) : (
            <button type="button" onClick={() => setLeaving(true)}>
              Take the quote back
            </button>
          )}
        </p>
      )}
    </section>
  );
}

function LinkLine({
  link,
  revoke,
}: {
  readonly link: CustomerLink;
  readonly revoke: () => Promise<unknown>;
}) {
  const past = Date.parse(link.expiresAt) < Date.now();
  const who = link.sentTo === '' ? 'handed over by the shop' : `to ${link.sentTo}`;
  const how =
    link.revokedAt !== undefined
      ? `taken back ${dayText(link.revokedAt)}`
      : past
        ? `past since ${dayText(link.expiresAt)}`
        : `opens until ${dayText(link.expiresAt)}`;
  return (
    <li>
      <span>
        Revision {link.revision}, {who}; {how}
      </span>{' '}
      {link.revokedAt === undefined && !past && (
        <button type="button" onClick={() => void revoke()}>
          Take the link back
        </button>
      )}
    </li>
  );
}

function AnswerForm({ send }: { readonly send: (said: string) => Promise<boolean> }) {
  const [said, setSaid] = useState('');
  return (
    <form
      className="quote-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send(said).then((done) => done && setSaid(''));
      }}
    >
      <label>
        Answer
        <textarea
          required
          rows={3}
          maxLength={1000}
          value={said}
          onChange={({ target }) => setSaid(target.value)}
        />
      </label>
      <p>
        <button className="main">Answer the customer</button>
      </p>
    </form>
  );
}

function eventText({ kind, revision, option, said, by }: QuoteEvent): string {
  const who = by === '' ? 'the shop' : by;
  const words = said === undefined || said === '' ? '' : `: ${said}`;
  switch (kind) {
    case 'sent':
      return `${revision} sent${said === undefined || said === '' ? ' as a link' : ` to ${said}`} by ${who}`;
    case 'opened':
      return `${revision} opened for the first time by its link`;
    case 'accepted':
      return `${revision} accepted by ${by}${option === undefined ? '' : `: ${option}`}`;
    case 'declined':
      return `${revision} declined by ${by}${words}`;
    case 'asked':
      return `${by} asks${words}`;
    case 'answered':
      return `${who} answers${words}`;
    case 'link-revoked':
      return `A link of ${revision} taken back by ${who}`;
    default:
      return `The quote taken back by ${who}${words}`;
  }
}
