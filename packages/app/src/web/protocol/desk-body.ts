import type { PromiseScale } from '@spraywright/engine/drawings';
import type { PromiseKind, PromiseState } from '@spraywright/engine/rig';
import type { Given, Prose } from './given.ts';

export interface DutyTab {
  readonly id: string;
  readonly name: string;
  readonly state: PromiseState;
}

export interface PromiseRow {
  readonly id: string;
  readonly kind: PromiseKind;
  readonly state: PromiseState;
  readonly sentence: string;
  /** Letter of the duty it belongs to; absent when it holds for the whole rig. */
  readonly letter?: string;
  readonly duty?: string;
  readonly has?: string;
  readonly asked?: string;
  readonly cause: string;
  /** The small scale; absent where there is nothing to show on it. */
  readonly scale?: PromiseScale;
  readonly items: readonly { readonly item: string; readonly number: number; readonly name: string }[];
  readonly decisions: readonly string[];
  readonly method: string;
  readonly source: string;
  /** Only for promises whose working is open. */
  readonly working?: readonly { readonly text: string; readonly figure?: string }[];
}

export interface PartRow {
  readonly item: string;
  readonly number: number;
  readonly slot: string;
  readonly part: string;
  readonly name: string;
  readonly count: number;
  readonly note?: string;
  readonly stock: string;
  readonly mass: string;
  readonly price: string;
  readonly givens: readonly { readonly before: string; readonly given: Given; readonly after: string }[];
  readonly optional: boolean;
  /** It is in no catalogue: somebody laid it in. */
  readonly own: boolean;
  /** What a part of its kind is for, in words that it is found by. */
  readonly does: string;
  /** Where the document says that it stays, and whether it does. */
  readonly pin: { readonly path: string; readonly held: boolean };
  readonly state?: string;
}

interface BillRow {
  readonly name: string;
  readonly quantity: string;
  readonly price: string;
  readonly late?: string;
}

export interface BillGroup {
  readonly name: string;
  readonly rows: readonly BillRow[];
  readonly price: string;
}

/** How the rig is priced, and what comes of it. */
export interface PricingTold {
  /** The rig's own rule, or the shop's. */
  readonly mode: 'shop' | PriceMode;
  readonly shopMode: PriceMode;
  /** Markup and margin that would leave the lines as they stand [%]. */
  readonly markup: number;
  readonly margin: number;
  readonly percent?: Given;
  readonly discount: Given;
  readonly freight: Given;
  /** Absent where the shop reckons none. */
  readonly tax?: { readonly percent: number; readonly on: 'everything' | 'goods'; readonly free: boolean };
  /** From the lines on; none while nothing is taken off or added. */
  readonly rows: readonly { readonly name: string; readonly figure: string }[];
  /** What the shop keeps of the price. */
  readonly kept: string;
  /** Why it may not be quoted, by the role of whoever would quote it; '' for a role without floors of its own. */
  readonly refusals: Readonly<Record<string, string>>;
}

type PriceMode = 'list' | 'cost-plus' | 'target-margin';

export interface CautionNote {
  readonly id: string;
  readonly place: 'brief' | 'scene' | 'line' | 'parts';
  readonly danger: string;
  readonly act: string;
  readonly source: string;
}

export interface DeskBody {
  readonly id: string;
  readonly title: string;
  readonly customer: string;
  readonly layout: string;
  readonly counts: Readonly<Record<PromiseState, number>>;
  readonly price: string;
  readonly dry: string;
  readonly full: string;
  readonly ready: string;
  readonly catalogue: string;
  readonly engine: string;
  readonly massUnit: string;
  readonly duties: readonly DutyTab[];
  readonly duty: string;
  /** Outlets that a duty opens and the rig does not have, and lines that no duty opens, in words. */
  readonly outletsAmiss: readonly string[];
  readonly prose: readonly Prose[];
  /** The duty in one line: flow and pressure at pump and tip. */
  readonly headline: string;
  readonly promises: readonly PromiseRow[];
  readonly parts: readonly PartRow[];
  readonly notFitted: readonly { readonly slot: string; readonly name: string; readonly does: string }[];
  readonly bill: readonly BillGroup[];
  /** What is to be paid. */
  readonly toPay: string;
  /** Absent for those who do not sell: they are told list prices alone. */
  readonly pricing?: PricingTold;
  readonly cautions: readonly CautionNote[];
}
