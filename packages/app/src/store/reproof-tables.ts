import type { JsonText } from './json-text.ts';

/** A round in which every open quote is proven again with the catalogue as it stands. */
export interface ReproofRow {
  readonly id: string;
  /** Edition of the catalogue that the quotes are proven with. */
  edition: number;
  /** waiting, running, done or failed */
  state: string;
  total: number;
  done: number;
  /** Quotes that say something else now. */
  changed: number;
  /** Why it failed; empty otherwise. */
  trouble: string;
  readonly asked_at: string;
  readonly asked_by: string;
  /** Moment of the last step forward. */
  moved_at: string;
}

export interface ReproofFindingRow {
  readonly reproof_id: string;
  readonly quote: string;
  readonly document: JsonText;
}
