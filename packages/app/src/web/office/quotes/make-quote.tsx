import { useEffect, useState } from 'react';
import { hashOf } from '../../frame/hash.ts';
import { EMPTY_OPTION, OptionFields, type OptionTyped } from './option-fields.tsx';
import { got, gotFor, LONG } from '../got.ts';
import { quotePath, type QuoteHead, type Revision } from './quotes-link.ts';

interface Given {
  readonly job: string;
  readonly units: 'us' | 'metric';
  /** The quote that is drawn up anew, and what its newest revision says. */
  readonly revising?: { readonly quote: QuoteHead; readonly from: Revision };
  readonly done?: () => void;
}

interface Typed {
  readonly job: string;
  readonly options: readonly OptionTyped[];
  readonly note: string;
  readonly depositPercent: string;
  readonly validDays: string;
  /** As the revision before had them; absent: the shop's own. */
  readonly terms: readonly string[] | undefined;
}

/** A quote of a job, or a new revision: its options, a word to the customer, deposit and validity. */
export function MakeQuote({ job, units, revising, done }: Given) {
  const [typed, setTyped] = useState<Typed>(() => startFrom(job, revising?.from));
  const [jobs, setJobs] = useState<readonly string[]>([]);
  const [why, setWhy] = useState('');
  const [busy, setBusy] = useState(false);
  useEffect(() => {
    void got<{ jobs: readonly { id: string }[] }>('api/jobs?limit=200').then(
      (a) => 'value' in a && setJobs(a.value.jobs.map((j) => j.id)),
    );
  }, []);
  const put = (fields: Partial<Typed>) => setTyped({ ...typed, ...fields });
  const make = async () => {
    const odd = noNumber(typed);
    if (odd !== undefined) return setWhy(odd);
    setBusy(true);
    setWhy('');
    const path = revising === undefined ? 'api/quotes' : quotePath(revising.quote.number, 'revisions');
    const answer = await gotFor<QuoteHead>(path, bodyOf(typed, units, revising !== undefined), LONG);
    setBusy(false);
    if ('why' in answer) return setWhy(answer.why);
    done?.();
    location.hash = hashOf('quotes', answer.value.number, answer.value.revision);
  };
  return (
    <form
      className="quotes quote-form"
      onSubmit={(event) => {
        event.preventDefault();
        void make();
      }}
    >
      {revising === undefined ? <h1>Make a quote</h1> : <h2 className="heading">Draw it up anew</h2>}
      {revising === undefined && (
        <p>
          <label>
            Job{' '}
            <input
              required
              list="jobs-known"
              value={typed.job}
              onChange={({ target }) => put({ job: target.value })}
            />
          </label>
        </p>
      )}
      <datalist id="jobs-known">
        {jobs.map((id) => (
          <option key={id} value={id} />
        ))}
      </datalist>
      {typed.options.map((option, i) => (
        <OptionFields
          key={i}
          place={i + 1}
          option={option}
          put={(fields) => put({ options: typed.options.map((o, k) => (k === i ? { ...o, ...fields } : o)) })}
          {...(typed.options.length > 1
            ? { leaveOut: () => put({ options: typed.options.filter((_, k) => k !== i) }) }
            : {})}
        />
      ))}
      {typed.options.length < 4 && (
        <p>
          <button type="button" onClick={() => put({ options: [...typed.options, EMPTY_OPTION] })}>
            Another option beside it
          </button>
        </p>
      )}
      <p>
        <label>
          A word to the customer
          <textarea
            rows={2}
            maxLength={600}
            value={typed.note}
            onChange={({ target }) => put({ note: target.value })}
          />
        </label>
      </p>
      <p className="row">
        <label>
          To pay on order, %{' '}
          <input
            inputMode="decimal"
            size={6}
            placeholder="as usual"
            value={typed.depositPercent}
            onChange={({ target }) => put({ depositPercent: target.value })}
          />
        </label>
        <label>
          The quote holds, days{' '}
          <input
            inputMode="numeric"
            size={6}
            placeholder="as usual"
            value={typed.validDays}
            onChange={({ target }) => put({ validDays: target.value })}
          />
        </label>
      </p>
      <p role="alert" className="broken">
        {why}
      </p>
      <p>
        <button className="main" disabled={busy}>
          {revising === undefined ? 'Draw up the quote' : 'Draw up the revision'}
        </button>
      </p>
    </form>
  );
}

function startFrom(job: string, from: Revision | undefined): Typed {
  if (from === undefined)
    return {
      job,
      options: [{ ...EMPTY_OPTION, name: 'As drawn' }],
      note: '',
      depositPercent: '',
      validDays: '',
      terms: undefined,
    };
  const { options, note, shop } = from.document;
  return {
    job,
    options: options.map((option): OptionTyped => ({
      name: option.name,
      job: option.job === job ? '' : (option.job ?? ''),
      discount: String(option.rig.pricing?.discountPercent ?? ''),
      // A rig that was sent along stays what it was, until a job is named.
      kept: option.job === undefined ? option.rig : undefined,
    })),
    note,
    depositPercent: String(shop.depositPercent),
    validDays: String(shop.validDays),
    terms: shop.terms,
  };
}

/** A figure as people type it: 3, 3.5, 3,5 or 3 %; undefined when nothing was typed, NaN when it is no figure. */
function figure(text: string): number | undefined {
  const figures = text.replace(/%\s*$/, '').trim();
  return figures === '' ? undefined : Number(figures.replace(',', '.'));
}

/** The first field that holds no figure where one belongs. */
function noNumber({ options, depositPercent, validDays }: Typed): string | undefined {
  const fields = [
    ...options.map(({ name, discount }) => [`The discount of '${name}', in percent,`, discount]),
    ['What is paid on order, in percent,', depositPercent],
    ['For how many days the quote holds', validDays],
  ] as [string, string][];
  const odd = fields.find(([, text]) => Number.isNaN(figure(text)));
  return odd === undefined ? undefined : `${odd[0]} is '${odd[1]}'; a number was expected.`;
}

function bodyOf(typed: Typed, units: 'us' | 'metric', revised: boolean): unknown {
  return {
    ...(revised ? {} : { job: typed.job.trim() }),
    options: typed.options.map(({ name, job, discount, kept }) => ({
      name,
      ...(job.trim() === '' ? { rig: kept } : { job: job.trim() }),
      ...(figure(discount) === undefined ? {} : { pricing: { discountPercent: figure(discount) } }),
    })),
    units,
    note: typed.note,
    depositPercent: figure(typed.depositPercent),
    validDays: figure(typed.validDays),
    terms: typed.terms,
  };
}
