/** One movement of a part in the store. */
export interface StockMovementRow {
  /** Name that the sender gave it, so that it counts once however often it arrives. */
  readonly operation: string;
  readonly part: string;
  /** Pieces, or feet of hose and wire: more than nought into the store, less out of it. */
  readonly quantity: number;
  readonly why: string;
  /** Machine that it was for; empty when it was for none. */
  readonly serial: string;
  readonly note: string;
  readonly made_by: string;
  readonly made_at: string;
}
