import { memo, useEffect, useRef, useState } from 'react';
import type { PartRow } from '../protocol.ts';
import { Alternatives } from './alternatives.tsx';
import { Cautions } from './cautions.tsx';
import { useDesk, useStore } from './desk-context.ts';
import { FieldProblems, GivenBox } from './given-box.tsx';
import { Balloon } from './marks.tsx';
import { PinSign } from './signs.tsx';

const NO_PARTS: readonly PartRow[] = [];
const NO_SLOTS: readonly { slot: string; name: string; does: string }[] = [];

/** Every part with its number, mass and price; each slot opens to the parts that could be there instead. */
export function Parts() {
  const store = useStore();
  const all = useDesk((s) => s.body?.parts ?? NO_PARTS);
  const upright = useDesk((s) => s.pictures?.upright);
  const empty = useDesk((s) => s.body?.notFitted ?? NO_SLOTS);
  const massUnit = useDesk((s) => s.body?.massUnit ?? '');
  const slot = useDesk((s) => s.slot);
  const [words, setWords] = useState('');
  if (all.length === 0) return null;
  const looking = words.trim() !== '';
  // Parts that stand in the upright line are listed there.
  const here =
    upright === undefined || looking ? all : all.filter((p) => !upright.steps.some((s) => s.item === p.item));
  const parts = here.filter((p) => hasWords(`${p.slot} ${p.name} ${p.does}`, words));
  const unfilled = empty.filter((e) => hasWords(`${e.name} ${e.does}`, words));
  return (
    <section className="parts" aria-labelledby="parts-heading">
      <div className="area-head">
        <h2 className="heading" id="parts-heading">
          {upright === undefined ? 'Parts' : 'Parts beside the line'}
        </h2>
        <button type="button" className="word" onClick={() => store.chooseAgain()}>
          Choose the parts again
        </button>
        <span className="columns note" aria-hidden="true">
          <span>{massUnit}</span>
          <span>$</span>
        </span>
      </div>
      <p className="part-find">
        <label>
          Find a part{' '}
          <input
            type="search"
            value={words}
            placeholder="by name, or by what it does"
            onChange={(event) => setWords(event.target.value)}
          />
        </label>{' '}
        <span className="note" role="status">
          {!looking ? '' : foundWord(parts.length + unfilled.length)}
        </span>
      </p>
      <ol className="part-list">
        {parts.map((p) => (
          <PartLine key={p.item} row={p} open={slot === p.item} />
        ))}
        {unfilled.map((e) => (
          <li key={e.slot} className="part empty">
            <div className="part-row">
              <span className="balloon none" />
              <button
                type="button"
                className="part-name"
                aria-expanded={slot === e.slot}
                onClick={() => store.setSlot(slot === e.slot ? undefined : e.slot)}
              >
                {e.name}: none
              </button>
            </div>
            {slot === e.slot && <Alternatives slot={e.slot} title={e.name.toLowerCase()} />}
          </li>
        ))}
      </ol>
      <Cautions place="parts" />
    </section>
  );
}

/** Whether a text has each of the words somewhere. */
function hasWords(text: string, words: string): boolean {
  const low = text.toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => low.includes(word));
}

function foundWord(count: number): string {
  if (count === 0) return 'no part of this rig is found by these words';
  return count === 1 ? '1 place' : `${count} places`;
}

const PartLine = memo(function PartLine({ row, open }: { row: PartRow; open: boolean }) {
  const store = useStore();
  const lit = useDesk((s) => s.lit === row.item);
  const ref = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (open) ref.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  return (
    <li className={lit || open ? 'part lit' : 'part'} data-part={row.item} ref={ref}>
      <div
        className="part-row"
        onPointerEnter={() => store.setLit(row.item)}
        onPointerLeave={() => store.setLit(undefined)}
      >
        <Balloon number={row.number} lit={lit || open} />
        <button
          type="button"
          className="part-name"
          aria-expanded={open}
          title={row.note === undefined ? row.stock : `${row.stock}. ${row.note}`}
          onClick={() => store.setSlot(open ? undefined : row.item)}
          onFocus={() => store.setLit(row.item)}
          onBlur={() => store.setLit(undefined)}
        >
          {row.count > 1 ? `${row.count} × ` : ''}
          {row.name}
          {row.own && <small className="own-mark">own figures</small>}
          {row.pin.held && <PinSign />}
        </button>
        {row.givens.map(({ before, given, after }) => (
          <span className="part-given" key={given.path}>
            {before}
            <GivenBox given={given} />
            {after}
          </span>
        ))}
        <span className="mass">{row.mass}</span>
        <span className="price">{row.price}</span>
        <FieldProblems givens={row.givens.map((g) => g.given)} />
      </div>
      {open && (
        <>
          <p className="part-note note">
            {row.slot}, no. {row.number}: {row.stock}
            {row.note === undefined ? '' : `. ${row.note}`}
          </p>
          <Alternatives slot={row.item} title={row.slot.toLowerCase()} optional={row.optional} />
        </>
      )}
    </li>
  );
});
