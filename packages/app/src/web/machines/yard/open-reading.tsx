import type { UnitSystem } from '@spraywright/engine/quantity';
import {
  judgedText,
  readingTask,
  READING_WORDS,
  repeatName,
  repeatsTask,
  type JudgedReading,
  type SheetReading,
} from '@spraywright/engine/yard';
import { useEffect, useRef } from 'react';
import { Dial } from './dial.tsx';
import { ReadingMark } from './reading-mark.tsx';
import { stepped, typedReading, unitOfRow } from './typed-reading.ts';
import { WindowScale } from './window-scale.tsx';
import { shortName, readAgain, windowText } from './yard-words.ts';

interface OpenGiven {
  readonly row: SheetReading;
  readonly judged: JudgedReading | undefined;
  readonly cannot: string | undefined;
  /** What stands in the boxes, one for each tip or time. */
  readonly texts: readonly string[];
  readonly units: UnitSystem;
  readonly onType: (texts: readonly string[], by: 'typed' | 'stepped') => void;
  /** What stands in the boxes is meant. */
  readonly onDone: () => void;
  readonly onCannot: () => void;
}

/** The one reading that is being taken. */
export function OpenReading(given: OpenGiven) {
  const { row, judged, cannot, texts, units, onType, onDone, onCannot } = given;
  const unit = unitOfRow(row, units);
  const reading = useRef<HTMLLIElement>(null);
  useEffect(() => {
    // Newer browsers answer with a promise, which is no way to end an effect.
    void reading.current?.scrollIntoView({ block: 'nearest' });
  }, [row.id]);
  const gauge = row.dimension === 'pressure' && row.instrument !== 'suction-gauge';
  const put = (i: number, text: string) => texts.map((t, k) => (k === i ? text : t));
  const many = texts.length > 1;
  const step = (i: number, by: number) => onType(put(i, stepped(texts[i]!, by, row, units)), 'stepped');
  return (
    <li ref={reading} className="reading open" data-row={row.id} data-state={judged?.state ?? 'missing'}>
      <div className="head">
        <h3>{shortName(row)}</h3>
        <p>{readingTask(row, units)}</p>
        {row.repeats !== undefined && (
          <p>
            <b>{repeatsTask(row)}.</b>
          </p>
        )}
      </div>
      <p className="must">
        must read <b>{windowText(row, units)}</b>
      </p>
      <div className="seen">
        {gauge ? (
          <Dial row={row} value={judged?.value} units={units} />
        ) : (
          <WindowScale row={row} value={judged?.value} />
        )}
      </div>
      <div className={many ? 'hand many' : 'hand'}>
        {texts.map((text, i) => (
          <TypedFigure
            key={i}
            label={boxName(row, i, unit)}
            told={row.repeats !== undefined}
            unit={unit}
            text={text}
            why={wrong(text, row, units)}
            onType={(next) => onType(put(i, next), 'typed')}
            onDone={onDone}
          />
        ))}
        {!many && (
          <div className="steps-of-hand">
            <button type="button" aria-label={`Less, ${shortName(row)}`} onClick={() => step(0, -1)}>
              −
            </button>
            <button type="button" aria-label={`More, ${shortName(row)}`} onClick={() => step(0, 1)}>
              +
            </button>
          </div>
        )}
        <button type="button" className="cannot" aria-pressed={cannot !== undefined} onClick={onCannot}>
          Cannot read it
        </button>
      </div>
      <div className="verdict" role="status">
        <Verdict row={row} judged={judged} cannot={cannot} units={units} />
      </div>
    </li>
  );
}

function boxName(row: SheetReading, i: number, unit: string): string {
  const each = row.repeats !== undefined ? repeatName(row) : (row.tips ?? 1) > 1 ? 'tip' : undefined;
  const which = each === undefined ? 'Reading' : `${each[0]!.toUpperCase()}${each.slice(1)} ${i + 1}`;
  return `${which}, ${unit}`;
}

function Verdict({ row, judged, cannot, units }: Pick<OpenGiven, 'row' | 'judged' | 'cannot' | 'units'>) {
  if (judged === undefined || judged.state === 'missing')
    return (
      <p>{cannot === undefined ? 'Nothing read yet.' : 'Nobody can read it; the test goes on without it.'}</p>
    );
  return (
    <>
      <p className="word">
        <ReadingMark state={judged.state} size={34} />{' '}
        <b>{judged.state === 'more' ? readAgain(row, judged) : READING_WORDS[judged.state]}</b>
      </p>
      {judged.repeated !== undefined && (
        <p>
          {judged.state === 'refused' || judged.value === undefined ? 'Read' : 'Counts'}:{' '}
          {judgedText(row, judged, units)}
        </p>
      )}
      <ul>
        {judged.because.map((why) => (
          <li key={why}>{/[.?!]$/.test(why) ? why : `${why}.`}</li>
        ))}
      </ul>
    </>
  );
}

function wrong(text: string, row: SheetReading, units: UnitSystem): string | undefined {
  if (text.trim() === '') return undefined;
  const typed = typedReading(text, row, units);
  return typed.ok ? undefined : typed.why;
}

function TypedFigure(given: {
  readonly label: string;
  /** Whether the label is for the eye too. */
  readonly told: boolean;
  readonly unit: string;
  readonly text: string;
  readonly why: string | undefined;
  readonly onType: (text: string) => void;
  readonly onDone: () => void;
}) {
  const { label, told, unit, text, why, onType, onDone } = given;
  return (
    <label className="typed">
      <span className={told ? 'which' : 'for-readers'}>{label}</span>
      <input
        value={text}
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={why !== undefined}
        onChange={(e) => onType(e.target.value)}
        onBlur={onDone}
        onKeyDown={(e) => {
          if (e.key !== 'Enter') return;
          // Leaving a box is meaning it too.
          const boxes = e.currentTarget.closest('.hand')?.querySelectorAll('input') ?? [];
          const empty = [...boxes].find((box) => box.value === '');
          if (empty === undefined || empty === e.currentTarget) onDone();
          else empty.focus();
        }}
      />
      <span aria-hidden="true">{unit}</span>
      {why !== undefined && <span className="problem">{why}</span>}
    </label>
  );
}
