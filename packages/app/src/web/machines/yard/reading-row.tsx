import type { UnitSystem } from '@spraywright/engine/quantity';
import {
  readingTask,
  readingText,
  READING_WORDS,
  type JudgedReading,
  type SheetReading,
} from '@spraywright/engine/yard';
import { ReadingMark } from './reading-mark.tsx';
import { WindowScale } from './window-scale.tsx';
import { shortName, readAgain, windowText } from './yard-words.ts';

interface RowGiven {
  readonly row: SheetReading;
  readonly judged: JudgedReading | undefined;
  /** Why nobody could read it. */
  readonly cannot: string | undefined;
  readonly href: string;
  readonly units: UnitSystem;
}

/** One reading that is not open: window, mark, value. */
export function ReadingRow({ row, judged, cannot, href, units }: RowGiven) {
  const state = judged?.state ?? 'missing';
  const value = judged?.value;
  const again = judged === undefined ? '' : readAgain(row, judged);
  return (
    <li className="reading" data-row={row.id} data-state={state}>
      <a href={href}>
        <span className="what">
          <b>{shortName(row)}</b>
          <span>{readingTask(row, units)}</span>
        </span>
        <span className="between">{windowText(row, units)}</span>
        <WindowScale row={row} value={value} />
        <span className="read">
          {value === undefined && again === '' ? (
            <span className="not-yet">
              {cannot === undefined
                ? row.needed
                  ? 'not yet'
                  : 'not yet, may be left out'
                : 'cannot be read'}
            </span>
          ) : (
            <>
              <ReadingMark state={state} />
              <span>
                <span className="for-readers">{READING_WORDS[state]}: </span>
                {value !== undefined && readingText(row, value, units)}
                {again !== '' && <b className="again">{again}</b>}
              </span>
            </>
          )}
        </span>
      </a>
    </li>
  );
}
