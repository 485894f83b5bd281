import { useState } from 'react';
import type { MachineKeeper } from '../machine-keeper.ts';
import type { StockKeeper, StockState } from '../stock-keeper.ts';
import type { FetchRow } from '../worker/protocol.ts';
import { CountPart } from './count-part.tsx';

interface FetchGiven {
  readonly rows: readonly FetchRow[];
  readonly lots: ReadonlyMap<string, readonly string[]>;
  readonly stock: StockState;
  readonly store: StockKeeper;
  readonly keeper: MachineKeeper;
}

/** What is fetched from the store: taking it is written down there at once. */
export function FetchRows({ rows, lots, stock, store, keeper }: FetchGiven) {
  const groups = [...new Set(rows.map((r) => r.group))];
  const toFetch = rows.filter((r) => r.take > 0);
  const short = rows.filter((r) => r.short > 0).length;
  return (
    <section aria-labelledby="fetch-heading">
      <h2 className="heading" id="fetch-heading">
        Fetch from the store
      </h2>
      <p role="status">
        {toFetch.length} of {rows.length} lines to fetch; {short === 0 ? 'none' : short} short.
        {stock.moved === undefined &&
          ' What moved in the store is not known yet: counts are those of the catalogue.'}
        {stock.waiting > 0 && ` ${stock.waiting} movements wait for the network.`}
        {stock.refused !== undefined && ` The records refused a movement: ${stock.refused}.`}
      </p>
      {toFetch.length > 0 && (
        <button
          type="button"
          className="act"
          onClick={() => toFetch.forEach((r) => store.move(r.part, -r.take, 'taken'))}
        >
          Take all that is there
        </button>
      )}
      <CountPart rows={rows} store={store} />
      {groups.map((group) => (
        <div key={group}>
          <h3>{group}</h3>
          <ul className="fetch-rows">
            {rows
              .filter((r) => r.group === group)
              .map((r) => (
                <FetchLine key={r.part} row={r} lots={lots.get(r.part) ?? []} store={store} keeper={keeper} />
              ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

function FetchLine(given: {
  readonly row: FetchRow;
  readonly lots: readonly string[];
  readonly store: StockKeeper;
  readonly keeper: MachineKeeper;
}) {
  const { row, lots, store, keeper } = given;
  const [lot, setLot] = useState('');
  const count = (n: number) => (row.unit === 'ft' ? `${n} ft` : String(n));
  return (
    <li className={row.short > 0 ? 'short' : undefined}>
      <div className="fetch-name">
        {row.numbers !== '' && <span className="numbers">{row.numbers}</span>}
        <strong>{row.name}</strong>
        <span className="note">{row.part}</span>
      </div>
      <p className="fetch-figures">
        needs <b>{count(row.need)}</b>, has {count(row.taken)}, in store {count(row.onHand)}
        {row.short > 0 && (
          <>
            , <b className="broken">short {count(row.short)}</b>
          </>
        )}
        {lots.length > 0 && `; lot ${lots.join(', ')}`}
      </p>
      <div className="fetch-acts">
        {row.take > 0 && (
          <button
            type="button"
            className="act"
            aria-label={`Take ${count(row.take)} of ${row.name}`}
            onClick={() => store.move(row.part, -row.take, 'taken')}
          >
            Take {count(row.take)}
          </button>
        )}
        {row.taken > 0 && (
          <>
            <form
              onSubmit={(event) => {
                event.preventDefault();
                if (lot.trim() === '') return;
                keeper.write('lot', { part: row.part, lot: lot.trim() });
                setLot('');
              }}
            >
              <input
                aria-label={`Lot of ${row.name}`}
                placeholder="lot"
                maxLength={60}
                value={lot}
                onChange={({ target }) => setLot(target.value)}
              />
              <button type="submit" className="word" disabled={lot.trim() === ''}>
                Keep lot
              </button>
            </form>
            <button
              type="button"
              className="word"
              aria-label={`Put back ${count(row.taken)} of ${row.name}`}
              onClick={() => store.move(row.part, row.taken, 'put-back')}
            >
              Put back
            </button>
          </>
        )}
      </div>
    </li>
  );
}
