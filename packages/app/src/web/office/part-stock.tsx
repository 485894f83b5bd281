import { useCallback, useEffect, useRef, useState, type SyntheticEvent } from 'react';
import { byWhom } from '../frame/moment.ts';
import { hashOf } from '../frame/hash.ts';
import { useMe } from '../frame/me.ts';
import { operationName } from '../frame/operation-name.ts';
import { movementsOf, moveStock, type PartOpened, type PartStock } from './parts-link.ts';

/** Why a part moves when somebody writes it down here; machines take theirs on their own page. */
const REASONS = { received: 'came in', counted: 'were counted', scrapped: 'were thrown away' } as const;
type Reason = keyof typeof REASONS;
const SAID: Readonly<Record<string, string>> = {
  received: 'came in',
  'put-back': 'put back',
  taken: 'taken',
  scrapped: 'thrown away',
  counted: 'counted anew',
};

/** @returns whether it is written down */
type MoveStock = (operation: string, quantity: number, reason: Reason, note: string) => Promise<boolean>;

/** What is in the store of a part: what was laid in and every movement since. */
export function PartInStore({ part }: { readonly part: PartOpened }) {
  const me = useMe();
  const [stock, setStock] = useState<PartStock>();
  const [why, setWhy] = useState('');
  const load = useCallback(async () => {
    const answer = await movementsOf(part.id);
    if ('why' in answer) setWhy(answer.why);
    else setStock(answer.value);
  }, [part.id]);
  useEffect(() => void load(), [load]);
  const { stock: laidIn = 0, purpose } = part.document as { stock?: number; purpose?: { form?: string } };
  if (stock === undefined) return <p role="status">{why}</p>;
  const { moved, movements } = stock;
  const unit = part.kind === 'hose' || purpose?.form === 'wire' ? ' ft' : '';
  const onHand = laidIn + moved;
  const move: MoveStock = async (operation, quantity, reason, note) => {
    const answer = await moveStock(operation, part.id, quantity, reason, note);
    setWhy('why' in answer ? answer.why : '');
    await load();
    return 'value' in answer;
  };
  return (
    <section aria-label="In the store">
      <h2 className="heading">In the store</h2>
      <p className="part-acts">
        <span>
          <b>
            {onHand}
            {unit} on hand
          </b>
          : {laidIn} laid in with the catalogue, {moved < 0 ? `${-moved} gone` : `${moved} come`} since
          {onHand < 0 && '. Less than nothing cannot be: count it'}
        </span>
      </p>
      {me?.role !== 'support' && <Move onHand={onHand} unit={unit} move={move} say={setWhy} />}
      <p role="status" className="part-said">
        {why}
      </p>
      {movements.length > 0 && (
        <details className="part-uses">
          <summary>What moved</summary>
          <ul>
            {movements.map((m) => (
              <li key={m.operation}>
                {m.quantity > 0 ? '+' : '−'}
                {Math.abs(m.quantity)}
                {unit} {SAID[m.why] ?? m.why}
                {m.serial !== '' && (
                  <>
                    {' '}
                    for <a href={`./machines.html${hashOf(m.serial)}`}>{m.serial}</a>
                  </>
                )}
                , {byWhom(m)}
                {m.note === '' ? '' : `: ${m.note}`}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Move(given: {
  readonly onHand: number;
  readonly unit: string;
  readonly move: MoveStock;
  readonly say: (words: string) => void;
}) {
  const { onHand, unit, move, say } = given;
  const [count, setCount] = useState('');
  const [reason, setReason] = useState<Reason>('received');
  const [note, setNote] = useState('');
  const asked = useRef<{ readonly of: string; readonly operation: string }>(undefined);
  const submit = async (event: SyntheticEvent) => {
    event.preventDefault();
    if (!/^\d{1,5}$/.test(count.trim()))
      return say(`the number is '${count}'; a whole number from 0 to 99999 was expected`);
    const n = Number(count);
    const quantity = reason === 'received' ? n : reason === 'scrapped' ? -n : n - onHand;
    if (quantity === 0)
      return say(reason === 'counted' ? 'It is as the records have it.' : 'Nothing would move.');
    // The same movement asked for again, because no answer came, is written down once.
    const of = `${quantity} ${reason} ${note.trim()}`;
    if (asked.current?.of !== of) asked.current = { of, operation: operationName() };
    if (!(await move(asked.current.operation, quantity, reason, note.trim()))) return;
    asked.current = undefined;
    setCount('');
    setNote('');
  };
  return (
    <form className="part-acts" onSubmit={(event) => void submit(event)} noValidate>
      <label>
        How many{unit === '' ? '' : ' feet'}{' '}
        <input value={count} inputMode="numeric" size={6} onChange={(e) => setCount(e.target.value)} />
      </label>
      <label>
        What happened{' '}
        <select value={reason} onChange={(e) => setReason(e.target.value as Reason)}>
          {Object.entries(REASONS).map(([name, words]) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <label>
        Delivery or reason <input value={note} maxLength={200} onChange={(e) => setNote(e.target.value)} />
      </label>
      <button className="part-button">Write it down</button>
    </form>
  );
}
