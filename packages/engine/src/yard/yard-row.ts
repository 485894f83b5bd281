import type { Duty, Rig } from '../rig/index.ts';
import type { InstrumentId } from './instruments.data.ts';
import type { WaterRun } from './water-run.ts';

/** A rig with water in it: what every reading is taken from. */
export interface WateredRig {
  readonly rig: Rig;
  /** By duty; a duty without a steady state is absent. */
  readonly runs: ReadonlyMap<string, WaterRun>;
  /** Factor on an uncertain input, by its id; 1 where nothing is known of it. */
  readonly factor: (input: string) => number;
}

/** One reading of the yard test: where it is taken, and what the rig shows there. */
export interface YardRow {
  /** `instrument:duty:line`, as far as it has them. */
  readonly id: string;
  readonly instrument: InstrumentId;
  readonly duty?: Duty;
  readonly line?: string;
  /** What a bucket holds or how much of the tank is drained [m3]. */
  readonly volume?: number;
  /** Tips that are caught one by one. */
  readonly tips?: number;
  /** Whether the test is complete without it. */
  readonly needed: boolean;
  /** Doubt of its value besides instrument and inputs, of its logarithm [-]. */
  readonly besides?: { readonly of: string; readonly deviation: number };
  /** Rows that nobody reads, and whose values this one adds up. */
  readonly sumOf?: readonly string[];
  /** SI value; NaN where the rig shows none. */
  readonly read: (watered: WateredRig) => number;
}
