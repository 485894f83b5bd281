import { STATE_WORDS } from '@spraywright/engine/drawings';
import type { PromiseKind, PromiseState } from '@spraywright/engine/rig';
import { useState } from 'react';
import type { PromiseRow } from '../protocol.ts';
import { useDesk } from './desk-context.ts';
import { Mark } from './marks.tsx';
import { PromiseLine } from './promise-line.tsx';

const GROUPS: readonly PromiseState[] = ['broken', 'thin', 'unknown', 'kept'];
/** Kept promises of these kinds are always told; the rest of what is kept is folded to a line. */
const TOLD: readonly PromiseKind[] = [
  'reach',
  'hold',
  'flow',
  'tip-pressure',
  'suction',
  'rating',
  'power',
  'agitation',
  'price',
  'ready',
  'weight',
  'stability',
  'day',
];
const NONE: readonly PromiseRow[] = [];

/** All promises: the broken first, then thin, unknown, kept. Of the kept ones those of other duties and of lesser kinds are folded. */
export function Promises() {
  const rows = useDesk((s) => s.body?.promises ?? NONE);
  const duty = useDesk((s) => s.body?.duty);
  const counts = useDesk((s) => s.body?.counts);
  const slotOpen = useDesk((s) => s.slot !== undefined && s.fold === 'desk');
  const [all, setAll] = useState(false);
  if (counts === undefined) return null;
  const elsewhere = (p: PromiseRow) => p.duty !== undefined && p.duty !== duty;
  const folded = rows.filter(
    (p) => !all && p.state === 'kept' && (slotOpen || elsewhere(p) || !TOLD.includes(p.kind)),
  );
  return (
    <section className="promises" aria-labelledby="promises-heading">
      <div className="area-head">
        <h2 className="heading" id="promises-heading">
          Promises
        </h2>
        <Counts counts={counts} />
        <span className="columns note" aria-hidden="true">
          <span>has</span>
          <span>asked</span>
          <span className="short">short</span>
          <span className="spare">spare</span>
        </span>
      </div>
      {GROUPS.map((state) => {
        const shown = rows.filter((p) => p.state === state && !folded.includes(p));
        return shown.length === 0 ? null : (
          <div key={state} className={`group ${state}`}>
            <p className="group-word" aria-hidden="true">
              {STATE_WORDS[state]}
            </p>
            <ul>
              {shown.map((p) => (
                <PromiseLine key={p.id} row={p} />
              ))}
            </ul>
          </div>
        );
      })}
      {(folded.length > 0 || all) && (
        <button type="button" className="fold-line" aria-expanded={all} onClick={() => setAll(!all)}>
          <Mark state="kept" />
          {all ? 'Fold what is kept' : `${folded.length} more kept`}
        </button>
      )}
    </section>
  );
}

/** The four counts in words, in the colours of their states. */
function Counts({ counts }: { counts: Readonly<Record<PromiseState, number>> }) {
  return (
    <span className="counts">
      {GROUPS.map((state) => (
        <span key={state} className={counts[state] === 0 ? 'none' : state}>
          {counts[state]} {STATE_WORDS[state].toLowerCase()}
        </span>
      ))}
    </span>
  );
}
