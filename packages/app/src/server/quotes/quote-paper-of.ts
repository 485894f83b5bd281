import type { FrozenQuote } from '../../documents/quote/frozen-quote.ts';
import { quotePaper } from '../../documents/quote/quote-paper.ts';
import type { Revision } from '../../store/index.ts';

/** The paper as it was sent; before that it is printed from what is frozen. */
export async function paperOf({ paper, document }: Revision): Promise<Uint8Array> {
  return paper ?? quotePaper(document as FrozenQuote);
}
