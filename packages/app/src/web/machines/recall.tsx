import { useState, type SyntheticEvent } from 'react';
import { askServer } from '../frame/ask.ts';
import { hashOf } from '../frame/hash.ts';

interface Recalled {
  readonly serial: string;
  readonly title: string;
  readonly customer: string;
  readonly slots: readonly string[];
  readonly replaced: boolean;
  readonly given: number;
  readonly lots: readonly string[];
  readonly match: 'yes' | 'no' | 'unknown';
}

interface Answer {
  readonly part: string;
  readonly lot: string;
  readonly machines: readonly Recalled[];
  readonly csv: string;
}

/** Which machines a part, or one lot of it, went into, and whose they are. */
export function Recall() {
  const [part, setPart] = useState('');
  const [lot, setLot] = useState('');
  const [answer, setAnswer] = useState<Answer>();
  const [trouble, setTrouble] = useState('');
  const look = async (event: SyntheticEvent) => {
    event.preventDefault();
    const asked = { part: part.trim(), lot: lot.trim() };
    if (asked.part === '') return setTrouble('Type the catalogue number of the part');
    const query = new URLSearchParams(asked.lot === '' ? { part: asked.part } : asked).toString();
    const told = await askServer<{ machines: readonly Recalled[] }>(`api/recall?${query}`);
    setTrouble(told.is === 'done' ? '' : told.is === 'refused' ? told.why : 'The records cannot be reached');
    if (told.is === 'done')
      setAnswer({ ...asked, machines: told.value.machines, csv: `api/recall.csv?${query}` });
  };
  return (
    <section aria-labelledby="recall-heading">
      <h2 className="heading" id="recall-heading">
        Which machines have a part
      </h2>
      <form className="field" onSubmit={(event) => void look(event)}>
        <span className="field">
          <label htmlFor="recall-part">Catalogue number</label>
          <input
            id="recall-part"
            value={part}
            maxLength={64}
            onChange={({ target }) => setPart(target.value)}
          />
        </span>
        <span className="field">
          <label htmlFor="recall-lot">Lot</label>
          <input
            id="recall-lot"
            value={lot}
            maxLength={60}
            placeholder="any"
            onChange={({ target }) => setLot(target.value)}
          />
        </span>
        <button type="submit" className="act">
          List machines
        </button>
      </form>
      {trouble !== '' && <p role="alert">{trouble}.</p>}
      {answer !== undefined && <RecallTable answer={answer} />}
    </section>
  );
}

function RecallTable({ answer }: { readonly answer: Answer }) {
  const { part, lot, machines, csv } = answer;
  if (machines.length === 0) return <p role="status">No machine has, had or was given '{part}'.</p>;
  return (
    <>
      <p role="status">
        {machines.length} {machines.length === 1 ? 'machine' : 'machines'} with {part}.{' '}
        {machines.some((m) => m.match === 'unknown') &&
          'Where no lot was written down it may be the one: look at the part. '}
        <a href={csv} download>
          As a table (CSV)
        </a>
      </p>
      <div className="scroll">
        <table className="lines">
          <thead>
            <tr>
              {['serial', 'customer', 'machine', 'where', 'lots', ...(lot === '' ? [] : [`lot ${lot}`])].map(
                (head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {machines.map((m) => (
              <tr key={m.serial}>
                <th scope="row">
                  <a href={hashOf(m.serial, 'service')}>{m.serial}</a>
                </th>
                <td>{m.customer}</td>
                <td>{m.title}</td>
                <td>
                  {m.replaced
                    ? 'had it: replaced since'
                    : m.slots.length > 0
                      ? m.slots.join(', ')
                      : `given by the store: ${m.given}`}
                </td>
                <td>{m.lots.length === 0 ? 'not written down' : m.lots.join(', ')}</td>
                {lot !== '' && (
                  <td>
                    <b>{m.match === 'unknown' ? 'may be: no lot written down' : m.match}</b>
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
