import { partNumbers } from '@spraywright/engine/drawings';
import { assemblySteps, ordersToFetch, type Fetch, type Proof, type Rig } from '@spraywright/engine/rig';
import { cutSheet, orderSheet, type BillSheet } from '../bill-table.ts';
import { billXlsx } from '../bill-xlsx.ts';
import { chaptersOnPaper } from '../chapters/on-paper.ts';
import { pdfOf, stripSheets } from '../paper/pdf.ts';
import { INK, INK2, PAD } from '../paper/sheet.ts';
import { paragraph } from '../paper/text.ts';
import { titleBlockOf } from '../quote-pdf.ts';
import { dateText, parseDay } from '../quote-terms.ts';
import type { BuildPackOptions } from './build-pack-options.ts';
import { buildPackOf } from './build-pack.ts';
import { fetched } from './fetch-chapters.ts';

/**
 * The build pack of one machine on Letter sheets.
 *
 * @throws RangeError when a date is not a day
 */
export async function buildPackPdf(rig: Rig, proof: Proof, options: BuildPackOptions): Promise<Uint8Array> {
  const block = titleBlockOf('Build pack', proof, options);
  const day = parseDay(options.date);
  const under = `For ${proof.customer}. ${dateText(day)}. Engine ${proof.engineVersion}, catalogue ${proof.catalogue.version}.`;
  return pdfOf(
    {
      title: `Build pack: ${proof.title}, serial ${options.serial}`,
      subject: `${proof.id}, ${block.proof}`,
      author: options.shop.name,
      day,
    },
    [
      stripSheets(
        [
          paragraph(proof.title, { bold: true, size: 17, color: INK, margin: [PAD, 2, PAD, 2] }),
          paragraph(under, { size: 9.4, color: INK2, margin: [PAD, 0, PAD, 8] }),
          ...chaptersOnPaper(buildPackOf(rig, proof, options)),
        ],
        { ...block, document: `Build ${options.serial}` },
      ),
    ],
  );
}

/** The lists of the build pack as a workbook. */
export async function buildPackXlsx(rig: Rig, proof: Proof, options: BuildPackOptions): Promise<Uint8Array> {
  const { partOf, buildDate } = options;
  const list = fetched(proof, options);
  return billXlsx([
    pickSheet(proof, list),
    orderSheet(ordersToFetch(list, partOf, buildDate)),
    cutSheet(proof),
    stepSheet(rig, proof, options),
  ]);
}

function pickSheet(proof: Proof, list: readonly Fetch[]): BillSheet {
  const numbers = partNumbers(proof);
  return {
    name: 'Fetch',
    head: ['group', 'no.', 'part', 'name', 'need', 'unit', 'has', 'in store', 'fetch', 'short'],
    rows: list.map((p) => [
      p.group,
      p.items.map((i) => numbers.get(i)).join(', '),
      p.part,
      p.name,
      p.need,
      p.unit,
      p.taken,
      p.onHand,
      p.take,
      p.short,
    ]),
    money: [],
  };
}

function stepSheet(rig: Rig, proof: Proof, { units }: BuildPackOptions): BillSheet {
  return {
    name: 'Assembly',
    head: ['step', 'what', 'items', 'check', 'torque or reading', 'who'],
    rows: assemblySteps(rig, proof, units).map((s, i) => [
      i + 1,
      s.text,
      s.items.join(', '),
      s.check,
      s.figure,
      s.by,
    ]),
    money: [],
  };
}
