import type { Part } from '@spraywright/engine/catalogue';
import type { BuildRecord } from '@spraywright/engine/rig';
import type { QuoteOptions } from '../quote-options.ts';

/** What a shop needs to build one machine. */
export interface BuildPackOptions extends QuoteOptions {
  readonly serial: string;
  /** Day on which building begins. */
  readonly buildDate: string;
  /** Whether the list to buy tells what parts cost; it does when nothing is said. */
  readonly costs?: boolean;
  readonly partOf: (id: string) => Part | undefined;
  /** Pieces or feet of a part that the store gave this machine already; none when nothing is said. */
  readonly givenOf?: (part: string) => number;
  /** What was written down while it was built. */
  readonly built?: BuildRecord;
  /** The plumbing diagram as SVG; its places come from a layout that papers do not make. */
  readonly plumbing: string;
}
