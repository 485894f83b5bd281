import { useState } from 'react';
import { askServer, sent } from '../../frame/ask.ts';
import { operationName } from '../../frame/operation-name.ts';
import { whoIsHere } from '../kept-machine.ts';
import { byWhom } from '../../frame/moment.ts';
import { useTold } from '../worker/machine-link.ts';
import type { AskedMachine, SlotRow, TriedPart } from '../worker/protocol.ts';
import type { PutIn } from './build-state.ts';

interface InsteadGiven {
  readonly slots: readonly SlotRow[];
  readonly putIn: readonly PutIn[];
  readonly machine: AskedMachine;
  readonly onPutIn: () => void;
}

/** Another part instead of one of the list: the whole rig is proven with it first, here and again by the records. */
export function PartInstead({ slots, putIn, machine, onPutIn }: InsteadGiven) {
  const [slot, setSlot] = useState('');
  const told = useTold('instead', machine, slot === '' ? undefined : { slot });
  const tried = told?.current === true ? told : undefined;
  return (
    <section aria-labelledby="instead-heading">
      <h2 className="heading" id="instead-heading">
        Another part instead
      </h2>
      {putIn.map((p) => (
        <p key={`${p.at} ${p.slot}`}>
          {p.slot}: {p.part} instead of {p.was}: {p.why}. {byWhom(p)}
        </p>
      ))}
      <p className="field">
        <label htmlFor="instead-slot">Instead of</label>
        <select id="instead-slot" value={slot} onChange={({ target }) => setSlot(target.value)}>
          <option value="">choose a part of this machine</option>
          {slots.map((s) => (
            <option key={s.slot} value={s.slot}>
              {s.name}: {s.partName}
            </option>
          ))}
        </select>
      </p>
      {slot !== '' && tried === undefined && <p role="status">Proving the rig with every other part.</p>}
      {slot !== '' && tried?.ok === false && <p role="status">This cannot be tried: {tried.why}.</p>}
      {slot !== '' && tried?.ok === true && (
        <Tried key={slot} slot={slot} parts={tried.value} serial={machine.serial} onPutIn={onPutIn} />
      )}
    </section>
  );
}

function Tried(given: {
  readonly slot: string;
  readonly parts: readonly TriedPart[];
  readonly serial: string;
  readonly onPutIn: () => void;
}) {
  const { slot, parts, serial, onPutIn } = given;
  const [why, setWhy] = useState('');
  const [answer, setAnswer] = useState('');
  const put = async (part: TriedPart) => {
    if (why.trim() === '') return setAnswer('Say first why the part of the list is not used');
    setAnswer(`Asking the records about ${part.name}`);
    const body = { operation: operationName(), slot, part: part.part, why: why.trim(), by: whoIsHere() };
    const told = await askServer(`api/machines/${encodeURIComponent(serial)}/substitutions`, sent(body));
    if (told.is === 'done') onPutIn();
    setAnswer(
      told.is === 'done'
        ? `${part.name} is in the list of this machine`
        : told.is === 'refused'
          ? `Refused: ${told.why}`
          : 'No network: another part is put in only where the records can prove it',
    );
  };
  const good = parts.filter((p) => p.allowed);
  return (
    <>
      <p role="status">
        {good.length} of {parts.length} other parts keep every promise.
      </p>
      <p className="field">
        <label htmlFor="instead-why">Why</label>
        <input id="instead-why" value={why} maxLength={300} onChange={({ target }) => setWhy(target.value)} />
      </p>
      {answer !== '' && <p role="alert">{answer}.</p>}
      <ul className="tried-instead">
        {parts.map((p) => (
          <li key={p.part} data-allowed={p.allowed}>
            <div>
              <strong>{p.name}</strong> <span className="note">{p.part}</span>
              <p>
                {p.allowed ? (
                  'Keeps every promise'
                ) : (
                  <>
                    <b className="broken">Refused</b>: {p.worse.join('; ')}
                  </>
                )}
                {p.also.length > 0 && `; also ${p.also.join(', ')}`}
              </p>
            </div>
            {p.allowed && (
              <button
                type="button"
                className="act"
                aria-label={`Put it in: ${p.name}`}
                onClick={() => void put(p)}
              >
                Put it in
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
