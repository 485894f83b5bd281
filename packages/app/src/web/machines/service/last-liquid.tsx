import { useState } from 'react';
import type { MachineKeeper } from '../machine-keeper.ts';
import { byWhom } from '../../frame/moment.ts';
import { useTold } from '../worker/machine-link.ts';
import type { AskedMachine, LiquidSheet } from '../worker/protocol.ts';
import type { ServiceState } from './service-state.ts';

interface LiquidGiven {
  readonly machine: AskedMachine;
  readonly record: ServiceState;
  readonly keeper: MachineKeeper;
}

/** What the machine carried last, and what that asks before the next liquid goes in. */
export function LastLiquid({ machine, record, keeper }: LiquidGiven) {
  const [next, setNext] = useState('');
  const { last, flushes } = record;
  const told = useTold('liquids', machine, {
    ...(last === undefined ? {} : { last: last.liquid }),
    ...(next === '' ? {} : { next }),
  });
  const flushed = flushes.at(-1);
  if (told?.ok !== true) return told === undefined ? null : <p role="alert">{told.why}</p>;
  const { liquids } = told.value;
  const nameOf = (id: string) => liquids.find((l) => l.id === id)?.name ?? id;
  return (
    <section aria-labelledby="liquid-heading">
      <h2 className="heading" id="liquid-heading">
        Last liquid
      </h2>
      <p>
        {last === undefined ? (
          <b>Nobody has written down what this machine carried last: ask before anything is filled in.</b>
        ) : (
          <>
            It carried <b>{nameOf(last.liquid)}</b> last. {byWhom(last)}
          </>
        )}
      </p>
      {flushed !== undefined && (
        <p>
          Flushed of {nameOf(flushed.after)} before {nameOf(flushed.next)}: {flushed.how}. {byWhom(flushed)}
        </p>
      )}
      <p className="field">
        <label htmlFor="next-liquid">Next liquid</label>
        <select id="next-liquid" value={next} onChange={({ target }) => setNext(target.value)}>
          <option value="">choose</option>
          {liquids.map((l) => (
            <option key={l.id} value={l.id}>
              {l.name}
            </option>
          ))}
        </select>
      </p>
      {next !== '' && !told.current && <p role="status">Looking up what must not meet.</p>}
      {next !== '' && told.current && (
        <BeforeNext
          key={next}
          between={told.value.between}
          sameLiquid={next === last?.liquid}
          nameOfNext={nameOf(next)}
          onFill={(how, dangers) => {
            if (last !== undefined && how !== '')
              keeper.write('flush', { after: last.liquid, next, how, dangers });
            keeper.write('last-liquid', { liquid: next });
            setNext('');
          }}
        />
      )}
    </section>
  );
}

function BeforeNext(given: {
  readonly between: LiquidSheet['between'];
  readonly sameLiquid: boolean;
  readonly nameOfNext: string;
  readonly onFill: (how: string, dangers: readonly string[]) => void;
}) {
  const { between, sameLiquid, nameOfNext, onFill } = given;
  const [how, setHow] = useState('');
  const [problem, setProblem] = useState('');
  const dangers = between?.dangers ?? [];
  const never = dangers.some((d) => d.severity === 'never');
  const fill = () => {
    if (dangers.length > 0 && how.trim() === '')
      return setProblem('Write down how it was flushed, and by what it was seen to be clean');
    onFill(
      how.trim(),
      dangers.map((d) => `${d.a} with ${d.b}: ${d.result}`).map((text) => text.slice(0, 200)),
    );
  };
  return (
    <>
      {dangers.length > 0 && (
        <div className="never" role="alert">
          <strong>{never ? 'These must never meet: people can die' : 'These should not meet'}</strong>
          <ul className="dangers">
            {dangers.map((d, i) => (
              <li key={i}>
                <b>
                  {d.a} with {d.b}: {d.result}
                </b>{' '}
                <span className="note">{d.sources}</span>
              </li>
            ))}
          </ul>
          <p>
            The label of both products comes first. Do not fill it before the flush is done and written down.
          </p>
        </div>
      )}
      {between === undefined && (
        <div className="never" role="alert">
          <strong>Not known what it carried: no pair can be ruled out</strong>
          <p>Ask who used it last. Until then flush as for the worst that it may have carried.</p>
        </div>
      )}
      {between !== undefined && !sameLiquid && (
        <>
          <h3>After {between.after}</h3>
          <ol>
            {between.steps.map((s) => (
              <li key={s}>{s}</li>
            ))}
          </ol>
        </>
      )}
      {between !== undefined && !sameLiquid && (
        <p className="field">
          <label htmlFor="flush-how">How it was flushed</label>
          <input id="flush-how" value={how} maxLength={500} onChange={({ target }) => setHow(target.value)} />
        </p>
      )}
      <button type="button" className="act" onClick={fill}>
        {nameOfNext} goes in: write it down
      </button>
      {problem !== '' && (
        <p className="broken" role="alert">
          {problem}.
        </p>
      )}
    </>
  );
}
