import { useState } from 'react';
import type { Keeping } from '../state/job-keeper.ts';
import { SignedIn } from '../frame/signed-in.tsx';
import { useDesk, useStore } from './desk-context.ts';
import { OtherSheets } from './other-sheets.tsx';
import { downloadQuote } from '../state/quote.ts';

/** Index of the jobs, and what can be done to the sheet as a whole. */
export function IndexRow() {
  const store = useStore();
  const fold = useDesk((s) => s.fold);
  const title = useDesk((s) => s.body?.title);
  const customer = useDesk((s) => s.body?.customer);
  const [open, setOpen] = useState(false);
  if (fold !== 'phone')
    return (
      <nav className="index" aria-label="Jobs and sheet">
        <Jobs />
        <span className="index-gap" />
        <Tools />
      </nav>
    );
  return (
    <nav className="index" aria-label="Jobs and sheet">
      <div className="job-line">
        <div className="job-name">
          <strong>{title ?? 'Spraywright'}</strong>
          <span>
            {customer === undefined ? '' : `${customer}, `}
            <Saved className="saved" />
          </span>
        </div>
        <UndoButton />
        <button
          type="button"
          className="tool"
          aria-expanded={open}
          onClick={() => {
            setOpen(!open);
          }}
        >
          {open ? 'Fold' : 'Index'}
        </button>
      </div>
      {open && (
        <div className="index-open" onClick={() => store.setSlot(undefined)}>
          <Jobs picked={() => setOpen(false)} />
          <Tools />
        </div>
      )}
    </nav>
  );
}

function Jobs({ picked }: { picked?: () => void }) {
  const store = useStore();
  const briefs = useDesk((s) => s.briefs);
  const current = useDesk((s) => s.choosing?.id ?? s.current);
  const title = useDesk((s) => s.choosing?.title ?? s.body?.title);
  const listing = useDesk((s) => s.listing);
  const other = current !== undefined && !briefs.some((b) => b.id === current);
  return (
    <ul className="jobs">
      <li>
        <button
          type="button"
          aria-expanded={listing}
          onClick={() => {
            store.list(!listing);
            picked?.();
          }}
        >
          All jobs
        </button>
      </li>
      {other && (
        <li>
          <button type="button" aria-current="page" title={title}>
            {title ?? current}
          </button>
        </li>
      )}
      {briefs.map((b, i) => (
        <li key={b.id}>
          <button
            type="button"
            aria-current={b.id === current ? 'page' : undefined}
            title={b.title}
            onClick={() => {
              store.open(b.id);
              picked?.();
            }}
          >
            <span className="nth">{i + 1}</span> {b.name}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Where the last change is: in the shop's records, only on this device, or nowhere yet. */
function savedWord(here: boolean, keeping: Keeping): string {
  if (keeping === 'kept') return 'Saved';
  if (keeping === 'sending') return 'Saving';
  if (keeping === 'clash') return 'Not agreed';
  if (!here) return 'Not saved';
  if (keeping === 'signed-out') return 'Saved here, signed out';
  if (keeping === 'looking') return 'Not sent';
  return keeping === 'away' ? 'Saved here, no connection' : 'Saved here, refused';
}

function Saved({ className }: { className: string }) {
  const kept = useDesk((s) => s.kept);
  const keeping = useDesk((s) => s.keeping);
  const why = useDesk((s) => s.keepingWhy);
  return (
    <span className={className} role="status" title={why}>
      {savedWord(kept, keeping)}
    </span>
  );
}

function UndoButton() {
  const store = useStore();
  const last = useDesk((s) => (s.current === undefined ? undefined : s.jobs[s.current]?.past.at(-1)));
  return (
    <button
      type="button"
      className="tool"
      disabled={last === undefined}
      title={last === undefined ? undefined : `Take back: ${last.about}`}
      onClick={() => store.undo()}
    >
      Undo
    </button>
  );
}

function Tools() {
  const store = useStore();
  const fold = useDesk((s) => s.fold);
  const next = useDesk((s) => (s.current === undefined ? undefined : s.jobs[s.current]?.future.at(-1)));
  const units = useDesk((s) => s.units);
  const sheet = useDesk((s) => s.sheet);
  const ready = useDesk((s) => s.body !== undefined);
  const sells = useDesk((s) => s.body?.pricing !== undefined);
  const refused = useDesk((s) => s.problems.length > 0);
  return (
    <div className="tools">
      {fold !== 'phone' && <UndoButton />}
      <button
        type="button"
        className="tool"
        disabled={next === undefined}
        title={next === undefined ? undefined : `Do again: ${next.about}`}
        onClick={() => store.redo()}
      >
        Redo
      </button>
      <button
        type="button"
        className="tool"
        aria-label={`US / SI: units, now ${units === 'us' ? 'US' : 'SI'}`}
        onClick={() => store.setUnits(units === 'us' ? 'metric' : 'us')}
      >
        <b data-on={units === 'us'}>US</b> / <b data-on={units === 'metric'}>SI</b>
      </button>
      <button
        type="button"
        className="tool"
        aria-label={`Day / Night: sheet, now ${sheet}`}
        onClick={() => store.setSheet(sheet === 'day' ? 'night' : 'day')}
      >
        <b data-on={sheet === 'day'}>Day</b> / <b data-on={sheet === 'night'}>Night</b>
      </button>
      {fold === 'phone' && <OtherSheets />}
      <SignedIn className="tool" />
      <button
        type="button"
        className="tool"
        disabled={!ready}
        onClick={() => store.print(() => window.print())}
      >
        Print
      </button>
      {(sells || !ready) && (
        <button
          type="button"
          className="tool quote"
          disabled={!ready || refused}
          onClick={() => void downloadQuote(store)}
        >
          Quote, PDF
        </button>
      )}
      {fold !== 'phone' && <Saved className="tool saved" />}
    </div>
  );
}
