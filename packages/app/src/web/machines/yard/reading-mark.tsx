import { PALETTES, stateMark, type Palette } from '@spraywright/engine/drawings';
import type { ReadingState } from '@spraywright/engine/yard';

/** Colours of whichever sheet is laid out. */
const SHEET: Palette = {
  ...PALETTES.day,
  paper: 'var(--paper)',
  ink: 'var(--ink)',
  ink2: 'var(--ink2)',
  broken: 'var(--broken)',
  brokenTint: 'var(--broken-tint)',
  thin: 'var(--thin)',
  thinTint: 'var(--thin-tint)',
};

/** A reading is told by the marks of promises: passed, to be looked at, failed, not known. */
const AS_PROMISE = {
  pass: 'kept',
  look: 'thin',
  fail: 'broken',
  refused: 'unknown',
  more: 'unknown',
  missing: 'unknown',
} as const;

/** The mark of a reading; hidden from readers, its word stands beside it. */
export function ReadingMark({ state, size = 28 }: { state: ReadingState; size?: number }) {
  return (
    <svg
      className="mark"
      width={size}
      height={size}
      viewBox="0 0 16 16"
      aria-hidden="true"
      dangerouslySetInnerHTML={{ __html: stateMark(AS_PROMISE[state], 8, 8, SHEET) }}
    />
  );
}
