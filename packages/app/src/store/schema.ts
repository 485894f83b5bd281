import type {
  CatalogueRow,
  PartEditionRow,
  PartKindRow,
  PartPriceRow,
  PartRow,
  ShopEditionRow,
} from './catalogue-tables.ts';
import type { JsonText } from './json-text.ts';
import type { ReproofFindingRow, ReproofRow } from './reproof-tables.ts';
import type { StockMovementRow } from './stock-tables.ts';
import type { MachineEntryRow, MachineRow } from './machine-tables.ts';
import type {
  AskRow,
  DoingRow,
  OneTimeLinkRow,
  PasswordRow,
  PersonRow,
  SecretRow,
  SessionRow,
  TriesRow,
} from './people-tables.ts';
import type { JobMarkRow, QuoteEventRow, QuoteLinkRow, QuoteRevisionRow, QuoteRow } from './quote-tables.ts';

/**
 * The tables, one for SQLite and PostgreSQL alike: moments as ISO text in UTC, documents as JSON text, flags 0 or 1,
 * money in integer cents.
 */
export interface Tables {
  readonly jobs: JobRow;
  readonly job_documents: { job_id: string; document: JsonText };
  readonly job_edits: EditRow;
  readonly people: PersonRow;
  readonly passwords: PasswordRow;
  readonly sessions: SessionRow;
  /** Asked for by the library for sign-in; nothing is kept in it yet. */
  readonly verifications: { readonly id: string };
  readonly stock_movements: StockMovementRow;
  readonly doings: DoingRow;
  readonly sign_in_secrets: SecretRow;
  readonly sign_in_tries: TriesRow;
  readonly asks: AskRow;
  readonly one_time_links: OneTimeLinkRow;
  readonly machines: MachineRow;
  readonly machine_entries: MachineEntryRow;
  readonly job_marks: JobMarkRow;
  readonly quotes: QuoteRow;
  readonly quote_revisions: QuoteRevisionRow;
  readonly quote_links: QuoteLinkRow;
  readonly quote_events: QuoteEventRow;
  readonly reproofs: ReproofRow;
  readonly reproof_findings: ReproofFindingRow;
  readonly catalogues: CatalogueRow;
  readonly shop_editions: ShopEditionRow;
  readonly part_kinds: PartKindRow;
  readonly parts: PartRow;
  readonly part_editions: PartEditionRow;
  readonly part_prices: PartPriceRow;
}

/** Tables of what lets somebody in for a while: no copy takes them, so that whoever has one can sign in by it nowhere. */
export const NEVER_COPIED = [
  'sessions',
  'sign_in_secrets',
  'sign_in_tries',
  'one_time_links',
  'asks',
] as const;
type Copied = Exclude<keyof Tables, (typeof NEVER_COPIED)[number]>;

/** Every other table with its key, those that others refer to first: the order in which a copy is laid in. */
export const KEYS = {
  jobs: ['id'],
  job_documents: ['job_id'],
  job_edits: ['job_id', 'version'],
  people: ['id'],
  passwords: ['id'],
  verifications: ['id'],
  reproofs: ['id'],
  reproof_findings: ['reproof_id', 'quote'],
  catalogues: ['id'],
  shop_editions: ['edition'],
  part_kinds: ['kind'],
  parts: ['id'],
  part_editions: ['part_id', 'edition'],
  part_prices: ['part_id', 'valid_from', 'edition'],
  stock_movements: ['operation'],
  doings: ['id'],
  machines: ['serial'],
  machine_entries: ['serial', 'number'],
  job_marks: ['job_id', 'number'],
  quotes: ['number'],
  quote_revisions: ['quote', 'revision'],
  quote_links: ['id'],
  quote_events: ['quote', 'number'],
} as const satisfies { readonly [T in Copied]: readonly (keyof Tables[T])[] };

/** What a list of jobs shows; the document stands apart, so that lists stay quick. */
export interface JobRow {
  readonly id: string;
  /** Counts the edits: 1 when it is made. */
  version: number;
  title: string;
  customer: string;
  /** Title, customer and id in small letters: what a search looks through. */
  found_by: string;
  readonly made_at: string;
  changed_at: string;
  changed_by: string;
}

interface EditRow {
  readonly job_id: string;
  /** Version of the job after the edit. */
  readonly version: number;
  /** Name that the sender gave the edit, so that it is made once however often it arrives. */
  readonly operation: string;
  readonly about: string;
  readonly puts: JsonText;
  /** The puts that take it back. */
  readonly inverse: JsonText;
  readonly made_by: string;
  readonly made_at: string;
}
