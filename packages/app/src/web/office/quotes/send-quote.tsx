import { useState } from 'react';
import { gotFor, LONG } from '../got.ts';
import { ShownAddress } from '../shown-address.tsx';
import { postedText } from './posted-text.ts';
import { quotePath, type Sent } from './quotes-link.ts';

type Told =
  | { readonly is: 'nothing' }
  | { readonly is: 'sending' }
  | { readonly is: 'refused'; readonly why: string }
  | { readonly is: 'sent'; readonly sent: Sent; readonly to: string };

/** Sends the newest revision by a link of its own; the link is shown once. */
export function SendQuote(given: {
  readonly number: string;
  readonly revision: string;
  readonly sent: () => Promise<void>;
}) {
  const { number, revision, sent } = given;
  const [to, setTo] = useState('');
  const [message, setMessage] = useState('');
  const [told, setTold] = useState<Told>({ is: 'nothing' });
  const send = async () => {
    setTold({ is: 'sending' });
    const path = quotePath(number, 'revisions', revision, 'links');
    const answer = await gotFor<Sent>(path, { to, message }, LONG);
    setTold('why' in answer ? { is: 'refused', why: answer.why } : { is: 'sent', sent: answer.value, to });
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
          <button className="main" disabled={told.is === 'sending'}>
            Send {number} {revision}
          </button>
        </p>
      </form>
      <p role="status">{told.is === 'refused' ? told.why : told.is === 'sending' ? 'Being sent.' : ''}</p>
      {told.is === 'sent' && (
        <div className="made-link">
          <p>
            {postedText(told.sent.posted, told.to)} Whoever has this address reads the quote and answers it.
            It is not shown again.
          </p>
          <ShownAddress key={told.sent.address} address={told.sent.address} name="The customer's link" />
        </div>
      )}
    </section>
  );
}
