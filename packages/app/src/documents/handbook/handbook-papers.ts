import type { Proof, Rig } from '@spraywright/engine/rig';
import { chaptersOnPage } from '../chapters/on-page.ts';
import { chaptersOnPaper } from '../chapters/on-paper.ts';
import { drawingOnPaper } from '../paper/drawing-on-paper.ts';
import { drawingPdf, pdfOf, stripSheets } from '../paper/pdf.ts';
import { INK, INK2, PAD } from '../paper/sheet.ts';
import { paragraph } from '../paper/text.ts';
import { titleBlockOf } from '../quote-pdf.ts';
import { dateText, parseDay } from '../quote-terms.ts';
import type { HandbookOptions } from './handbook-options.ts';
import { handbookOf, handbookTitle } from './handbook.ts';
import { PLATE, rigPlate, type PlateOptions } from './rig-plate.ts';

/**
 * The handbook of one machine on Letter sheets.
 *
 * @throws RangeError when the date is not a day
 */
export async function handbookPdf(rig: Rig, proof: Proof, options: HandbookOptions): Promise<Uint8Array> {
  const block = titleBlockOf('Handbook', proof, options);
  const day = parseDay(options.date);
  return pdfOf(
    {
      title: `Handbook: ${handbookTitle(proof, options.serial)}`,
      subject: `${proof.id}, ${block.proof}`,
      author: options.shop.name,
      day,
    },
    [
      stripSheets(
        [
          paragraph(proof.title, { bold: true, size: 17, color: INK, margin: [PAD, 2, PAD, 2] }),
          paragraph(underTitle(proof, options), { size: 9.4, color: INK2, margin: [PAD, 0, PAD, 8] }),
          ...chaptersOnPaper(handbookOf(rig, proof, options)),
        ],
        { ...block, document: `Handbook ${options.serial}` },
      ),
    ],
  );
}

/** The same handbook as one page that a telephone keeps. */
export function handbookPage(rig: Rig, proof: Proof, options: HandbookOptions): string {
  return chaptersOnPage(
    {
      title: handbookTitle(proof, options.serial),
      under: underTitle(proof, options),
      foot: 'The label of the product, local codes and licensed practice come first. This page works without a network once it is saved.',
    },
    handbookOf(rig, proof, options),
  );
}

/** The plate of one machine alone, as a small PDF. */
export async function platePdf(rig: Rig, proof: Proof, options: PlateOptions): Promise<Uint8Array> {
  return drawingPdf(
    {
      title: `Plate: ${handbookTitle(proof, options.serial)}`,
      subject: proof.id,
      author: options.shop.name,
      day: parseDay(options.date),
    },
    drawingOnPaper(rigPlate(rig, proof, options)),
    PLATE,
  );
}

function underTitle(proof: Proof, { shop, date }: HandbookOptions): string {
  return `For ${proof.customer}. ${shop.name}, ${dateText(parseDay(date))}. Engine ${proof.engineVersion}, catalogue ${proof.catalogue.version}.`;
}
