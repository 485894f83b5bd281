import type { TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { FONTS } from '@spraywright/engine/drawings';
import type { Proof } from '@spraywright/engine/rig';
import { FONT_FILES, PAPER_FONTS } from './paper/faces.ts';
import {
  BLOCK_HEIGHT,
  frame,
  FRAME,
  INK,
  PAGE,
  STRIP_GAP,
  STRIP_HEIGHT,
  titleStrip,
  type TitleBlock,
} from './paper/sheet.ts';
import { firstSheet, firstSheetFoot } from './quote-first-sheet.ts';
import { furtherSheets } from './quote-further-sheets.ts';
import type { QuoteOptions } from './quote-options.ts';
import { dateText, parseDay } from './quote-terms.ts';

/**
 * The quote of a rig on Letter sheets: what it will do, what it will not do, what is open, drawings, price and cautions.
 *
 * @throws RangeError when the date is not a day
 */
export async function quotePdf(proof: Proof, options: QuoteOptions): Promise<Uint8Array> {
  const { shop, date } = options;
  const block: TitleBlock = {
    shop: shop.name,
    address: shop.address,
    document: 'Quote',
    customer: proof.customer,
    date: dateText(parseDay(date)),
    title: proof.title,
    job: proof.id,
    proof: `catalogue ${proof.catalogue.version}, engine ${proof.engineVersion}`,
  };
  const first = firstSheet(proof, options);
  const margins = (head: number, foot: number): [number, number, number, number] => [
    FRAME.left,
    FRAME.top + head,
    PAGE.width - FRAME.right,
    PAGE.height - FRAME.bottom + foot,
  ];
  const definition: TDocumentDefinitions = {
    pageSize: 'LETTER',
    compress: true,
    info: {
      title: `Quote for ${proof.customer}: ${proof.title}`,
      author: shop.name,
      subject: `${proof.id}, ${block.proof}`,
      creator: 'Spraywright',
      producer: 'Spraywright',
      creationDate: parseDay(date),
      modDate: parseDay(date),
    },
    defaultStyle: { font: FONTS.semi, fontSize: 10, color: INK },
    background: frame,
    content: [
      {
        section: first.content,
        pageMargins: margins(0, BLOCK_HEIGHT),
        footer: firstSheetFoot(proof, options, block),
      },
      {
        section: furtherSheets(proof, options, !first.withParts),
        pageMargins: margins(10, STRIP_HEIGHT + STRIP_GAP),
        footer: titleStrip(block),
      },
    ],
  };
  // Loaded when a quote is asked for: it is a fifth of the time it takes to start.
  const { default: pdfmake } = await import('pdfmake');
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => FONT_FILES.has(path));
  pdfmake.setFonts(PAPER_FONTS);
  const buffer = await pdfmake.createPdf(definition).getBuffer();
  return new Uint8Array(buffer);
}
