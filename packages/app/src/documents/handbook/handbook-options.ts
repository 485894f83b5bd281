import type { Part } from '@spraywright/engine/catalogue';
import type { BuildRecord } from '@spraywright/engine/rig';
import type { JudgedTest, TakenReadings, YardSheet } from '@spraywright/engine/yard';
import type { QuoteOptions } from '../quote-options.ts';

/** One built machine: what a handbook is for. */
export interface HandbookOptions extends QuoteOptions {
  readonly serial: string;
  /** Where the page of this machine can be found; drawn as a square code. */
  readonly address?: string;
  /** What was read of this machine in the yard. */
  readonly tested?: { readonly sheet: YardSheet; readonly taken: TakenReadings; readonly judged: JudgedTest };
  /** What was written down while it was built. */
  readonly built?: BuildRecord;
  /** Why the record of a yard test is not printed, where there is one. */
  readonly yardNote?: string;
  /** The plumbing diagram as SVG; its places come from a layout that papers do not make. */
  readonly plumbing: string;
  readonly partOf: (id: string) => Part | undefined;
}
