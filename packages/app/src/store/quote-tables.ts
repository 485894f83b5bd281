import type { JsonText } from './json-text.ts';

/**
 * How a quote stands: drawn up and not yet sent, waiting for the customer, taken, refused, or taken back by the shop.
 */
export const QUOTE_STATES = ['drawn', 'sent', 'accepted', 'declined', 'withdrawn'] as const;
export type QuoteState = (typeof QUOTE_STATES)[number];

/** What lists show of a quote; it follows its newest revision. */
export interface QuoteRow {
  /** Such as Q-0412. */
  readonly number: string;
  /** The figure of the number, so that the next one is found. */
  readonly count: number;
  readonly job_id: string;
  /** Letter of the newest revision. */
  revision: string;
  state: string;
  /** Moment at which it came into its state. */
  since: string;
  /** 1 while a question of the customer waits for an answer. */
  question: number;
  title: string;
  customer: string;
  price_cents: number;
  option_count: number;
  found_by: string;
  readonly made_at: string;
  readonly made_by: string;
}

export interface QuoteRevisionRow {
  readonly quote: string;
  readonly revision: string;
  document: JsonText;
  made_at: string;
  made_by: string;
  sent_at: string | null;
  /** The PDF as it was sent, base64; until then it is printed when asked for. */
  paper: string | null;
}

export interface QuoteLinkRow {
  readonly id: string;
  readonly quote: string;
  readonly revision: string;
  /** SHA-256 of the token: whoever reads the records cannot open a quote with it. */
  readonly token_hash: string;
  readonly sent_to: string;
  readonly expires_at: string;
  revoked_at: string | null;
  readonly made_at: string;
  readonly made_by: string;
}

export interface QuoteEventRow {
  readonly quote: string;
  readonly number: number;
  readonly revision: string;
  readonly kind: string;
  readonly link: string | null;
  readonly document: JsonText;
  readonly made_by: string;
  readonly made_at: string;
}

/** What somebody said of a job; the last one holds. */
export interface JobMarkRow {
  readonly job_id: string;
  readonly number: number;
  readonly kind: string;
  readonly said: string;
  readonly made_by: string;
  readonly made_at: string;
}
