import type { Proof } from '@spraywright/engine/rig';
import { freightChapter } from './build-pack/freight-chapter.ts';
import { note, warning, type Chapter } from './chapters/chapter.ts';
import { chaptersOnPaper } from './chapters/on-paper.ts';
import { pdfOf, stripSheets } from './paper/pdf.ts';
import { INK, PAD } from './paper/sheet.ts';
import { paragraph } from './paper/text.ts';
import type { QuoteOptions } from './quote-options.ts';
import { titleBlockOf } from './quote-pdf.ts';
import { parseDay } from './quote-terms.ts';

/** Where what a carrier must know is said: by what it can hurt. */
const ON_THE_WAY: readonly string[] = ['towing', 'lifting'];

/**
 * The freight sheet: from whom, to whom, how large and heavy the rig is, how it is tied down, and what hurts people
 * when it is lifted or towed. For whoever asks a carrier for a price, and for the driver.
 *
 * @throws RangeError when the date is not a day
 */
export async function freightSheetPdf(
  proof: Proof,
  options: QuoteOptions & { readonly serial?: string },
): Promise<Uint8Array> {
  const block = titleBlockOf('Freight', proof, options);
  return pdfOf(
    {
      title: `Freight: ${proof.title}`,
      subject: `${proof.id}, ${block.proof}`,
      author: options.shop.name,
      day: parseDay(options.date),
    },
    [
      stripSheets(
        [
          paragraph(proof.title, { bold: true, size: 17, color: INK, margin: [PAD, 2, PAD, 6] }),
          ...chaptersOnPaper([way(proof, options), freightChapter(proof, options), cautions(proof)]),
        ],
        block,
      ),
    ],
  );
}

function way(proof: Proof, { shop, serial }: QuoteOptions & { readonly serial?: string }): Chapter {
  return {
    id: 'way',
    title: 'From and to',
    blocks: [
      {
        kind: 'table',
        captions: ['', ''],
        rows: [
          ['from', `${shop.name}, ${shop.address}`],
          ['to', `${proof.customer}: ask for the address of delivery`],
          ['serial number', serial ?? 'given when it is built'],
          ['liquid in tank and hose', 'none: rinsed and drained before it is handed over'],
        ],
        widths: [130, '*'],
        words: 2,
      },
    ],
  };
}

function cautions(proof: Proof): Chapter {
  const met = proof.cautions.filter(({ caution }) => ON_THE_WAY.includes(caution.place));
  return {
    id: 'cautions',
    title: 'Lifting and towing',
    blocks:
      met.length === 0
        ? [note('Nothing that the proof knows of: lift it only where the maker of the frame allows it.')]
        : met.map(({ caution }) => warning(`${caution.danger} ${caution.act}`)),
  };
}
