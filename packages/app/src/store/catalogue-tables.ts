import type { JsonText } from './json-text.ts';

/** The one catalogue of the shop, with what the shop says of itself. */
export interface CatalogueRow {
  readonly id: string;
  name: string;
  /** Counts the changes of the catalogue, its prices and the shop's settings. */
  edition: number;
  /** Rates, operations, terms: as the shop file has them. */
  shop: JsonText;
  /** Rig families of the shop's own, as a list. */
  layouts: JsonText;
  changed_at: string;
  changed_by: string;
}

/** The shop's settings and rig families from an edition of the catalogue on. */
export interface ShopEditionRow {
  readonly edition: number;
  readonly shop: JsonText;
  readonly layouts: JsonText;
  readonly made_at: string;
  readonly made_by: string;
}

/** What is said of all parts of a kind, such as where their figures come from. */
export interface PartKindRow {
  readonly kind: string;
  about: string;
}

/** What a list of parts shows; the document stands in `part_editions`. */
export interface PartRow {
  readonly id: string;
  readonly kind: string;
  name: string;
  /** Every text of the part in small letters: what a search looks through. */
  found_by: string;
  /** Edition of the catalogue in which the part was last changed. */
  edition: number;
  retired: number;
  changed_at: string;
  changed_by: string;
}

/** A part as it stands from an edition of the catalogue on: nothing is ever overwritten, so that an old proof can be made again. */
export interface PartEditionRow {
  readonly part_id: string;
  readonly edition: number;
  readonly document: JsonText;
  readonly retired: number;
  readonly made_at: string;
  readonly made_by: string;
}

/** What a part costs from a day on, as it was said in an edition of the catalogue. */
export interface PartPriceRow {
  readonly part_id: string;
  /** The day, as 2026-03-03. */
  readonly valid_from: string;
  readonly edition: number;
  readonly cost_cents: number;
  readonly price_cents: number;
  readonly made_at: string;
  readonly made_by: string;
}
