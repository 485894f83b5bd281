import { STATE_WORDS } from '@spraywright/engine/drawings';
import { lazy, memo, Suspense, useState } from 'react';
import type { Effect } from '../protocol.ts';
import { useDesk, useStore } from './desk-context.ts';
import { Mark } from './marks.tsx';

const FIRST_SHOWN = 12;

// Fetched when a part is first laid in.
const OwnPartForm = lazy(() =>
  import('../own-part/own-part-form.tsx').then((m) => ({ default: m.OwnPartForm })),
);

/** The parts that could be in a slot instead, each with what the whole rig would then be. */
export function Alternatives({ slot, title, optional }: { slot: string; title: string; optional?: boolean }) {
  const store = useStore();
  const effects = useDesk((s) => (s.effects?.slot === slot ? s.effects : undefined));
  const massUnit = useDesk((s) => s.body?.massUnit ?? '');
  const row = useDesk((s) => s.body?.parts.find((p) => p.item === slot));
  const [all, setAll] = useState(false);
  const [laying, setLaying] = useState(false);
  const list = effects?.list ?? [];
  const shown = all ? list : list.slice(0, FIRST_SHOWN);
  const name = `instead of the ${title}`;
  return (
    <div className="alternatives">
      <div className="alternatives-head note">
        <span>
          {name}
          {effects !== undefined && !effects.done && `: ${list.length} of ${effects.total} tried`}
        </span>
        <span>{effects?.what}</span>
        <span>{massUnit}</span>
        <span>$</span>
      </div>
      <ul aria-label={name} aria-busy={effects?.done !== true}>
        {shown.map((e) => (
          <Alternative key={e.part} slot={slot} effect={e} />
        ))}
      </ul>
      <p className="alternatives-foot">
        {list.length > FIRST_SHOWN && (
          <button type="button" className="word" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? `The first ${FIRST_SHOWN} only` : `All ${list.length}`}
          </button>
        )}
        {row !== undefined && (
          <button
            type="button"
            className="word"
            aria-pressed={row.pin.held}
            title="A pinned part stays as it is in ways out, choices and when the parts are chosen again"
            onClick={() => store.pin(row)}
          >
            {row.pin.held ? 'Pinned: loosen it' : 'Pin it'}
          </button>
        )}
        {optional === true && (
          <button
            type="button"
            className="word"
            onClick={() => store.take(slot, undefined, `Leave out the ${title}`)}
          >
            Leave it out
          </button>
        )}
        <button type="button" className="word" aria-expanded={laying} onClick={() => setLaying(!laying)}>
          {row?.own === true ? 'Change its figures' : 'Lay in one that is not listed'}
        </button>
        <button type="button" className="word" onClick={() => store.setSlot(undefined)}>
          Fold
        </button>
        {effects?.done === true && list.length === 0 && (
          <span className="note">The catalogue has no other part for this place.</span>
        )}
      </p>
      {laying && (
        <Suspense>
          <OwnPartForm slot={slot} title={title} close={() => setLaying(false)} />
        </Suspense>
      )}
    </div>
  );
}

const Alternative = memo(
  function Alternative({ slot, effect: e }: { slot: string; effect: Effect }) {
    const store = useStore();
    const words = [
      ...(e.also === undefined ? [] : [e.also]),
      ...(e.mends.length > 0 ? [`mends: ${e.mends.join('; ')}`] : []),
    ].join('. ');
    return (
      <li>
        <button
          type="button"
          className="alternative"
          data-take={e.part}
          onClick={() => store.take(slot, e.part, `Take ${e.name}`)}
        >
          <span className="alternative-name">
            <span className="for-readers">Take </span>
            {e.name}
            {words !== '' && <small>{words}</small>}
            {e.breaks.length > 0 && <small className="breaks">breaks: {e.breaks.join('; ')}</small>}
          </span>
          <span className={`alternative-change ${e.state}`}>
            <Mark state={e.state} />
            {e.broken > 0 && <b className="broken-count">{e.broken}</b>}
            <span className="for-readers">{STATE_WORDS[e.state].toLowerCase()}, </span>
            <span className="change">{e.change}</span>
          </span>
          <span className="mass">{e.mass}</span>
          <span className="price">{e.price}</span>
        </button>
      </li>
    );
  },
  (a, b) => a.slot === b.slot && JSON.stringify(a.effect) === JSON.stringify(b.effect),
);
