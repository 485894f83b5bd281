import { STATE_WORDS } from '@spraywright/engine/drawings';
import { memo } from 'react';
import type { NoOdds, Odds } from '@spraywright/engine/rig';
import type { PromiseRow } from '../protocol.ts';
import { useDesk, useStore } from './desk-context.ts';
import { Decisions } from './decisions.tsx';
import { Mark } from './marks.tsx';
import { Scale } from './scale.tsx';
import { takeByLetter, WaysOut } from './ways-out.tsx';

/** What is kept nine times in ten or more goes without saying in the row; the working still tells how often. */
const SURE_ENOUGH = 0.9;

/** One promise: mark, sentence, has and asked, and its point on the scale that all rows share. */
export const PromiseLine = memo(function PromiseLine({ row }: { row: PromiseRow }) {
  const store = useStore();
  const open = useDesk((s) => s.working.includes(row.id));
  const odds = useDesk((s) => s.odds?.odds[row.id]);
  const told = row.state !== 'kept';
  const toggle = () => store.toggleWorking(row.id);
  return (
    <li
      className={`promise ${row.state}`}
      data-promise={row.id}
      onKeyDown={(event) => takeByLetter(event, store, row.id)}
    >
      <div className="promise-row">
        <Mark state={row.state} />
        <button type="button" className="sentence" aria-expanded={open} onClick={toggle}>
          <span className="for-readers">{STATE_WORDS[row.state]}: </span>
          {row.letter !== undefined && <b className="letter">{row.letter}</b>}
          {row.sentence}
          {odds !== undefined && 'share' in odds && odds.share < SURE_ENOUGH && (
            <span className="odds">, {odds.kept}</span>
          )}
        </button>
        <span className="figures">
          <span className="state-word" aria-hidden="true">
            {STATE_WORDS[row.state]}
            {row.has === undefined ? '' : ', '}
          </span>
          {row.has !== undefined && (
            <span className="has">
              <span className="has-word">has </span>
              {row.has}
            </span>
          )}
          {row.asked !== undefined && (
            <span className="asked">
              <span className="has-word">, asked </span>
              {row.asked}
            </span>
          )}
        </span>
        <Scale scale={row.scale} />
      </div>
      {(told || open) && (
        <div className="why">
          <p className="cause">
            {row.cause === '' ? 'No cause is named' : upperFirst(row.cause)}.{' '}
            {told && (
              <button type="button" className="word" aria-expanded={open} onClick={toggle}>
                {open ? 'Fold the working' : 'Show the working'}
              </button>
            )}
          </p>
          {open && <Working row={row} />}
          {row.state === 'broken' && <WaysOut id={row.id} />}
          {row.decisions.length > 0 && row.state !== 'kept' && <Decisions about={row.decisions} />}
        </div>
      )}
    </li>
  );
});

/** How it is worked out: figures from tip to promise, the method and where it comes from. */
function Working({ row }: { row: PromiseRow }) {
  const store = useStore();
  const odds = useDesk((s) => s.odds);
  return (
    <div className="working">
      {row.working !== undefined && row.working.length > 0 && (
        <table>
          <tbody>
            {row.working.map((step, i) => (
              <tr key={i}>
                <th scope="row">{step.text}</th>
                <td>{step.figure ?? ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {odds?.odds[row.id] !== undefined && (
        <Doubt odds={odds.odds[row.id]!} draws={odds.draws} sharper={odds.sharper} />
      )}
      <p className="note">
        Method: {row.method}. Source: {row.source}.
      </p>
      {row.items.length > 0 && (
        <p className="note">
          Decided by{' '}
          {row.items.map((i) => (
            <button
              type="button"
              className="balloon"
              key={i.item}
              title={i.name}
              aria-label={`Part ${i.number}, ${i.name}: open its alternatives`}
              onClick={() => store.setSlot(i.item)}
              onPointerEnter={() => store.setLit(i.item)}
              onPointerLeave={() => store.setLit(undefined)}
            >
              {i.number}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}

/** The band of a promise, what decides it most, and what would take the doubt away. */
function Doubt({ odds, draws, sharper }: { odds: Odds | NoOdds; draws: number; sharper: readonly string[] }) {
  if ('none' in odds) return <p className="note">{upperFirst(odds.none)}.</p>;
  return (
    <>
      <p className="note">
        {upperFirst(odds.kept)} in {draws} draws of the tolerances; {odds.band}. Most tolerances are
        judgement: a water test of the built rig says more.
      </p>
      {sharper.length > 0 && (
        <details className="note">
          <summary className="word">{sharper[0]!.replace(/:$/, '')}</summary>
          {sharper.slice(1).map((line) => (
            <p key={line}>{line.trim()}</p>
          ))}
        </details>
      )}
      {odds.matters.length > 0 && (
        <p className="note">
          {odds.matters.map((m, i) => `${i === 0 ? 'Decided most by' : ', and by'} ${m.name} (${m.check})`)}.
        </p>
      )}
    </>
  );
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1).replace(/\.$/, '');
}
