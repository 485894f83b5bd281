import type { Shop } from '@spraywright/engine/catalogue';
import { display, type UnitSystem } from '@spraywright/engine/quantity';
import {
  type BillLine,
  type Discount,
  type PromiseState,
  type Proof,
  type Tax,
} from '@spraywright/engine/rig';
import { promiseFigures } from '../promise-words.ts';
import { quoteWords, type QuoteWords } from '../quote-words.ts';

/** A promise as a quote tells it: figures as people read them. */
export interface QuotedPromise {
  readonly id: string;
  readonly kind: string;
  readonly state: PromiseState;
  readonly sentence: string;
  readonly has?: string;
  readonly asked?: string;
  readonly cause: string;
}

/** What one option says and costs, without the proof behind it; money in integer cents. */
export interface OptionSummary {
  readonly title: string;
  readonly customer: string;
  readonly job: string;
  readonly words: QuoteWords;
  readonly counts: Readonly<Record<PromiseState, number>>;
  readonly promises: readonly QuotedPromise[];
  readonly parts: readonly {
    readonly item: string;
    readonly part: string;
    readonly kind: string;
    readonly name: string;
    readonly count: number;
    readonly length?: string;
  }[];
  readonly lines: readonly BillLine[];
  readonly missing: readonly string[];
  readonly costCents: number;
  readonly linesCents: number;
  readonly discount?: Discount;
  readonly priceCents: number;
  readonly tax?: Tax;
  readonly freightCents?: number;
  readonly totalCents: number;
  readonly depositCents: number;
  readonly readyInDays: number;
  /** Day on which it is ready when it is ordered on the day of the quote, YYYY-MM-DD. */
  readonly readyDay: string;
  /** Hours of work in the bill [h]. */
  readonly labourHours: number;
  /** Longest time until a part that is short of stock is there, in working days. */
  readonly partsInDays: number;
  readonly dryMass: string;
}

/** What a quote keeps of a proof. */
export function summaryOf(
  proof: Proof,
  shop: Shop,
  units: UnitSystem,
  readyDay: (build: { labourHours: number; partsInDays: number }) => string,
): OptionSummary {
  const { bill } = proof;
  const { totalCents } = bill;
  const hours = bill.lines.reduce((sum, l) => sum + (l.sort === 'labour' ? l.quantity : 0), 0);
  const labourHours = Math.round(hours * 100) / 100;
  const partsInDays = Math.max(0, ...bill.lines.filter((l) => l.short > 0).map((l) => l.leadTimeDays));
  return {
    title: proof.title,
    customer: proof.customer,
    job: proof.id,
    words: quoteWords(proof, units),
    counts: proof.counts,
    promises: proof.promises.map((p) => ({
      id: p.id,
      kind: p.kind,
      state: p.state,
      sentence: p.sentence,
      ...promiseFigures(p, units),
      cause: p.cause,
    })),
    parts: proof.parts.map(({ item, part, kind, name, count, length }) => ({
      item,
      part,
      kind,
      name,
      count,
      ...(length === undefined ? {} : { length: display(length, 'length', units) }),
    })),
    lines: bill.lines,
    missing: bill.missing,
    costCents: bill.costCents,
    linesCents: bill.linesCents,
    ...(bill.discount === undefined ? {} : { discount: bill.discount }),
    priceCents: bill.priceCents,
    ...(bill.tax === undefined ? {} : { tax: bill.tax }),
    ...(bill.freightCents === undefined ? {} : { freightCents: bill.freightCents }),
    totalCents,
    depositCents: Math.round((totalCents * shop.depositPercent) / 100),
    readyInDays: bill.readyInDays,
    readyDay: readyDay({ labourHours, partsInDays }),
    labourHours,
    partsInDays,
    dryMass: display(bill.dryMass, 'mass', units),
  };
}
