import { useState } from 'react';
import type { StockKeeper } from '../stock-keeper.ts';
import type { FetchRow } from '../worker/protocol.ts';

interface CountGiven {
  readonly rows: readonly FetchRow[];
  readonly store: StockKeeper;
}

/** What somebody counted on the shelf: the difference is written down, so that what moved before stays as it was. */
export function CountPart({ rows, store }: CountGiven) {
  const [part, setPart] = useState('');
  const [counted, setCounted] = useState('');
  const [answer, setAnswer] = useState('');
  const row = rows.find((r) => r.part === part);
  const unit = row?.unit === 'ft' ? 'ft' : '';
  return (
    <form
      className="field"
      aria-label="Count a part"
      onSubmit={(event) => {
        event.preventDefault();
        if (row === undefined) return setAnswer('Choose the part that was counted');
        if (!/^\d{1,5}$/.test(counted.trim()))
          return setAnswer(`counted is '${counted}'; a whole number from 0 to 99999 was expected`);
        const off = Number(counted) - row.inStore;
        if (off !== 0) store.move(part, off, 'counted');
        setAnswer(off === 0 ? 'It is as the records have it' : `The records are off by ${off}: put right`);
        setCounted('');
      }}
    >
      <label htmlFor="count-part">Counted in the store</label>
      <select id="count-part" value={part} onChange={({ target }) => setPart(target.value)}>
        <option value="">choose a part</option>
        {rows
          .filter((r, i) => rows.findIndex((other) => other.part === r.part) === i)
          .map((r) => (
            <option key={r.part} value={r.part}>
              {r.name}
            </option>
          ))}
      </select>
      <label htmlFor="count-number">are there {unit}</label>
      <input
        id="count-number"
        inputMode="numeric"
        value={counted}
        onChange={({ target }) => setCounted(target.value)}
      />
      <button type="submit" className="act">
        Put right
      </button>
      {answer !== '' && <span role="status">{answer}.</span>}
    </form>
  );
}
