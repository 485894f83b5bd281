import { useState } from 'react';
import { gotFor } from '../got.ts';
import { quotePath, type Sent } from './quotes-link.ts';

/** Sends the newest revision by a link of its own; the link is shown once. */
export function SendQuote(given: {
  readonly number: string;
  readonly revision: string;
  readonly sent: () => Promise<void>;
}) {
  const { number, revision, sent } = given;
  const [to, setTo] = useState('');
  const [message, setMessage] = useState('');
  const [told, setTold] = useState<{ readonly why: string } | Sent>();
  const send = async () => {
    const answer = await gotFor<Sent>(quotePath(number, 'revisions', revision, 'links'), { to, message });
    setTold('why' in answer ? answer : answer.value);
    await sent();
  };
  return (
    <section aria-label="Send">
      <h2 className="heading">Send</h2>
      <form
        className="quote-form"
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <p className="row">
          <label>
            To{' '}
            <input
              type="email"
              value={to}
              placeholder="nobody: only make a link"
              onChange={({ target }) => setTo(target.value)}
            />
          </label>
          <label className="wide">
            With these words{' '}
            <input maxLength={1000} value={message} onChange={({ target }) => setMessage(target.value)} />
          </label>
          <button className="main">
            Send {number} {revision}
          </button>
        </p>
      </form>
      <p role="status">{told !== undefined && 'why' in told ? told.why : ''}</p>
      {told !== undefined && 'address' in told && <Told sent={told} to={to} />}
    </section>
  );
}

function Told({ sent: { address, posted }, to }: { readonly sent: Sent; readonly to: string }) {
  return (
    <div className="made-link">
      <p>
        {POSTED[posted.is](to, posted.file ?? posted.why ?? '')} Whoever has this address reads the quote and
        answers it. It is not shown again.
      </p>
      <input
        readOnly
        value={address}
        aria-label="The customer's link"
        onFocus={(event) => event.target.select()}
      />
    </div>
  );
}

const POSTED: Readonly<Record<Sent['posted']['is'], (to: string, more: string) => string>> = {
  sent: (to) => `The letter to ${to} was sent.`,
  kept: (to, file) =>
    `No mail server is set: the letter to ${to} was not sent. It lies in the outbox as ${file}.`,
  failed: (to, why) => `The letter to ${to} could not be sent (${why}). The link works: send it by hand.`,
  nobody: () => 'No letter was written.',
};
