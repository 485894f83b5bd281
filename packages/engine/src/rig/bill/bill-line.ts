/** One line of the bill; money in integer cents, for the whole line. */
export interface BillLine {
  readonly sort: 'part' | 'hose' | 'fitting' | 'hardware' | 'labour' | 'small-stuff';
  /** Item of the rig, where the line is one. */
  readonly item?: string;
  readonly part?: string;
  readonly name: string;
  readonly quantity: number;
  readonly unit: 'each' | 'ft' | 'h';
  readonly costCents: number;
  readonly priceCents: number;
  /** [kg] */
  readonly mass: number;
  /** How many are short of stock, and how long they take to come. */
  readonly short: number;
  readonly leadTimeDays: number;
}
