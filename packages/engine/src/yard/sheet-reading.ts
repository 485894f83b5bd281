import type { Dimension } from '../quantity/index.ts';
import type { InstrumentId } from './instruments.data.ts';
import type { ReadingLimit } from './promise-limits.ts';

/** One line of the sheet: what to read, and between what it must be. */
export interface SheetReading {
  readonly id: string;
  readonly instrument: InstrumentId;
  readonly dimension: Dimension;
  readonly duty?: string;
  readonly line?: string;
  readonly hoseOut?: number;
  readonly tankLevel?: number;
  /** What the bucket holds or how much of the tank is drained [m3]. */
  readonly volume?: number;
  readonly tips?: number;
  /** How many times it is read; the middle one counts. */
  readonly repeats?: number;
  readonly needed: boolean;
  /** SI. Nine of ten good rigs read from low to high. */
  readonly expected: number;
  readonly low: number;
  readonly high: number;
  /** Of what counts of one such rig: of its logarithm, or in SI where the instrument reads through nought. */
  readonly deviation: number;
  readonly limits: readonly ReadingLimit[];
  /** What the doubt is made of, largest first; shares add to 1. */
  readonly doubt: readonly { readonly of: string; readonly share: number }[];
}
