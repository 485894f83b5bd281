import { memo, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import type { Given } from '../protocol.ts';
import { pathOf, valueAt } from '@spraywright/engine/quantity';
import { stepped } from '../state/stepped.ts';
import { typedValue } from '../state/typed-value.ts';
import { useDesk, useStore } from './desk-context.ts';
import { moves } from './moves.ts';

/** Pixels of a drag that are one step. */
const STEP_PIXELS = 5;

/** A given value in its box: press to type, drag or use the arrows to step. */
export const GivenBox = memo(
  function GivenBox({ given }: { given: Given }) {
    return given.choices === undefined ? <TypedBox given={given} /> : <ChoiceBox given={given} />;
  },
  (a, b) =>
    a.given.path === b.given.path &&
    a.given.shown === b.given.shown &&
    a.given.start === b.given.start &&
    a.given.choices?.join() === b.given.choices?.join(),
);

/** What is wrong with fields, under the sentence or row that they stand in. */
export const FieldProblems = memo(
  function FieldProblems({ givens }: { givens: readonly Given[] }) {
    const problems = useDesk((s) => s.problems);
    return problems
      .filter((p) => givens.some((g) => g.path === p.path))
      .map((p) => (
        <span className="field-problem" id={problemId(p.path)} role="alert" key={p.path}>
          {p.message}. The figures stay as they were.
        </span>
      ));
  },
  (a, b) => a.givens.map((g) => g.path).join() === b.givens.map((g) => g.path).join(),
);

function problemId(path: string): string {
  return `problem-${path}`;
}

function TypedBox({ given }: { given: Given }) {
  const store = useStore();
  const { path, shown, start, label } = given;
  const words = given.sort === 'text';
  const problem = useDesk((s) => s.problems.find((p) => p.path === path)?.message);
  const steps = useMemo(() => pathOf(path), [path]);
  const raw = useDesk((s) => {
    const job = s.current === undefined ? undefined : s.jobs[s.current];
    return valueAt(job?.rig, steps) as string | number | undefined;
  });
  const [text, setText] = useState<string>();
  const drag = useRef<{ x: number; from: string; moved: boolean } | undefined>(undefined);
  // A refused text stays as it was typed, whatever the last good figures say.
  const idle = problem === undefined ? (start === true ? `(${shown})` : shown) : String(raw ?? '');
  const value = text ?? idle;

  const put = (next: string) => {
    if (given.clears !== undefined && next.trim() === '')
      return store.edit({ about: label, puts: [{ path: pathOf(given.clears) }] }, path);
    const value = typedValue(given, next, shown);
    const paths = given.also === undefined ? [path] : [path, given.also];
    store.edit({ about: label, puts: paths.map((p) => ({ path: pathOf(p), value })) }, path);
  };
  const change = (next: string) => {
    setText(next);
    put(next);
  };
  const step = (from: string, by: number) => {
    const next = words ? undefined : stepped(from, by);
    if (next !== undefined) change(next);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (by !== undefined) {
      event.preventDefault();
      step(value.replace(/^\((.*)\)$/, '$1'), by * (event.shiftKey ? 10 : 1));
    } else if (event.key === 'Enter') {
      // A start value is confirmed as it stands.
      if (start === true && text === shown && shown !== '?') put(shown);
      event.currentTarget.blur();
    } else if (event.key === 'Escape') {
      event.preventDefault();
      store.cancel(path);
      setText(undefined);
      event.currentTarget.blur();
    }
  };
  const onPointerDown = (event: PointerEvent<HTMLInputElement>) => {
    if (event.pointerType === 'touch' || document.activeElement === event.currentTarget) return;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { x: event.clientX, from: shown, moved: false };
  };
  const onPointerMove = (event: PointerEvent<HTMLInputElement>) => {
    const d = drag.current;
    if (d === undefined) return;
    const by = Math.trunc((event.clientX - d.x) / STEP_PIXELS);
    if (by === 0 && !d.moved) return;
    d.moved = true;
    step(d.from, by * (event.shiftKey ? 10 : 1));
  };
  const onPointerUp = (event: PointerEvent<HTMLInputElement>) => {
    const d = drag.current;
    drag.current = undefined;
    if (d === undefined) return;
    if (d.moved) {
      setText(undefined);
      store.settle();
    } else event.currentTarget.focus();
  };
  return (
    <span className={problem === undefined ? 'given' : 'given refused'}>
      <input
        type="text"
        data-path={path}
        value={value}
        aria-label={start === true ? `${label}, our start value` : label}
        placeholder={given.clears === undefined ? undefined : 'not said'}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : problemId(path)}
        autoComplete="off"
        spellCheck={false}
        style={{ width: `${boxWidth(value)}ch` }}
        onFocus={(event) => {
          const box = event.currentTarget;
          const first = problem === undefined ? shown : box.value;
          // At once, not with the next painting: whoever types straight away types over what is there.
          box.value = first;
          box.select();
          if (problem === undefined) setText(first);
          // A finger sets the caret afterwards. Selecting takes the focus in some browsers: never back from whoever has gone on.
          requestAnimationFrame(() => {
            if (document.activeElement === box && box.value === first) box.select();
          });
        }}
        onBlur={() => {
          setText(undefined);
          store.settle();
        }}
        onChange={(event) => change(event.target.value)}
        onKeyDown={onKeyDown}
        onPointerDown={onPointerDown}
        {...moves(store, onPointerMove)}
        onPointerUp={onPointerUp}
        onPointerCancel={() => (drag.current = undefined)}
      />
    </span>
  );
}

function ChoiceBox({ given }: { given: Given }) {
  const store = useStore();
  const { path, shown, start, label, choices = [], sort, clears } = given;
  return (
    <span className="given choice">
      <select
        value={shown}
        aria-label={start === true ? `${label}, our start value` : label}
        onChange={(event) => {
          const { value } = event.target;
          if (value === '' && clears !== undefined)
            return store.edit({ about: label, puts: [{ path: pathOf(clears) }] });
          store.edit({
            about: label,
            puts: [{ path: pathOf(path), value: sort === 'flag' ? value === 'true' : value }],
          });
        }}
      >
        {choices.map(([value, text]) => (
          <option key={value} value={value}>
            {start === true && value === shown ? `(${text})` : text}
          </option>
        ))}
      </select>
    </span>
  );
}

/** Room for a text in figures of one width; narrow signs take less. */
function boxWidth(text: string): number {
  const narrow = (text.match(/[ .,()'/]/g) ?? []).length;
  const wide = (text.match(/[mwMW%&]/g) ?? []).length;
  return Math.max(2, text.length - narrow * 0.5 + wide * 0.5);
}
