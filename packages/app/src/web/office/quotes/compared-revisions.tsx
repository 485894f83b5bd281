import { useEffect, useState } from 'react';
import { got } from '../got.ts';
import { quotePath, type Changes, type Quote } from './quotes-link.ts';

/** What changed between another revision and the one shown, in sentences. */
export function ComparedRevisions({ quote, to }: { readonly quote: Quote; readonly to: string }) {
  const others = quote.revisions.map((r) => r.revision).filter((r) => r !== to);
  const before = quote.revisions.findIndex((r) => r.revision === to) - 1;
  const [from, setFrom] = useState(quote.revisions[before]?.revision ?? others[0]!);
  const [changes, setChanges] = useState<Changes>();
  const [why, setWhy] = useState('');
  useEffect(() => {
    let wanted = true;
    void got<Changes>(`${quotePath(quote.number, 'changes')}?from=${from}&to=${to}`).then((answer) => {
      if (!wanted) return;
      if ('why' in answer) setWhy(answer.why);
      else setChanges(answer.value);
    });
    return () => {
      wanted = false;
    };
  }, [quote.number, from, to]);
  return (
    <section aria-label="What changed">
      <h2 className="heading">What changed</h2>
      <p>
        <label>
          From revision{' '}
          <select value={from} onChange={({ target }) => setFrom(target.value)}>
            {others.map((r) => (
              <option key={r}>{r}</option>
            ))}
          </select>
        </label>{' '}
        to {to}
      </p>
      <p role="status">{why}</p>
      {changes !== undefined && <Told changes={changes} />}
    </section>
  );
}

function Told({ changes: { terms, options } }: { readonly changes: Changes }) {
  const several = options.length > 1;
  const parts = options.flatMap((o) =>
    [...o.price, ...o.parts, ...o.promises].map((text) => (several ? `${o.name}: ${text}` : text)),
  );
  const all = [...terms, ...parts];
  if (all.length === 0) return <p>Nothing.</p>;
  return (
    <ul className="changes">
      {all.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
