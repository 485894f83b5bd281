import type { Proof } from '@spraywright/engine/rig';
import { pdfOf, stripSheets, type Sheets } from './paper/pdf.ts';
import { BLOCK_HEIGHT, type TitleBlock } from './paper/sheet.ts';
import { firstSheet } from './quote-first-sheet.ts';
import { furtherSheets } from './quote-further-sheets.ts';
import type { QuoteOptions } from './quote-options.ts';
import { firstSheetFoot } from './quote-price-block.ts';
import { dateText, parseDay } from './quote-terms.ts';

/**
 * The quote of a rig on Letter sheets: what it will do, what it will not do, what is open, drawings, price and cautions.
 *
 * @throws RangeError when the date is not a day
 */
export async function quotePdf(proof: Proof, options: QuoteOptions): Promise<Uint8Array> {
  const { shop, date } = options;
  const block = titleBlockOf('Quote', proof, options);
  return pdfOf(
    {
      title: `Quote for ${proof.customer}: ${proof.title}`,
      subject: `${proof.id}, ${block.proof}`,
      author: shop.name,
      day: parseDay(date),
    },
    quoteSheets(proof, options, block),
  );
}

/** The sheets of one rig: the first with its price, and the others. */
export function quoteSheets(proof: Proof, options: QuoteOptions, block: TitleBlock): Sheets[] {
  const first = firstSheet(proof, options);
  return [
    {
      content: first.content,
      head: 0,
      foot: firstSheetFoot(proof, options, block),
      footHeight: BLOCK_HEIGHT,
    },
    stripSheets(furtherSheets(proof, options, !first.withParts), block),
  ];
}

/** Title block of a paper about a rig and its proof. */
export function titleBlockOf(document: string, proof: Proof, { shop, date }: QuoteOptions): TitleBlock {
  return {
    shop: shop.name,
    address: shop.address,
    document,
    customer: proof.customer,
    date: dateText(parseDay(date)),
    title: proof.title,
    job: proof.id,
    proof: `catalogue ${proof.catalogue.version}, engine ${proof.engineVersion}`,
  };
}
