import type { Shop } from '@spraywright/engine/catalogue';
import type { Confidence } from '@spraywright/engine/rig';
import type { UnitSystem } from '@spraywright/engine/quantity';

export interface QuoteOptions {
  readonly shop: Shop;
  readonly units: UnitSystem;
  /** Day of the quote, YYYY-MM-DD: it is the only date in the file, so the same quote is the same bytes. */
  readonly date: string;
  /** Day on which it is ready when it is ordered on that day, YYYY-MM-DD, where the shop's calendar tells it. */
  readonly readyDay?: string;
  /** How sure the promises are; what is kept less than nine times in ten then says how often. */
  readonly confidence?: Confidence;
  /** A word to the customer, told before the terms. */
  readonly note?: string;
}
