import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { partNumbers } from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import type { Proof } from '@spraywright/engine/rig';
import { INK, INK2, PAD, RULE } from './paper/sheet.ts';
import { paragraph } from './paper/text.ts';
import type { QuoteOptions } from './quote-options.ts';

const SIZE = 9.4;
/** Height of a row and of the heading over them, in points. */
const ROW = 14.6;
const HEADING = 26;

/** The parts in words, in the order of their numbers, which are those of the pressure line; two columns. */
export function partsList(
  proof: Proof,
  { units }: QuoteOptions,
): { readonly content: Content; readonly height: number } {
  const numbers = partNumbers(proof);
  const rows = [...proof.parts]
    .sort((a, b) => (numbers.get(a.item) ?? 0) - (numbers.get(b.item) ?? 0))
    .map((p): TableCell[] => [
      paragraph(String(numbers.get(p.item) ?? ''), {
        family: 'condensed',
        bold: true,
        size: SIZE,
        color: INK,
        align: 'right',
      }),
      paragraph(
        `${p.count > 1 ? `${p.count} × ` : ''}${p.name}${p.length === undefined ? '' : `, ${display(p.length, 'length', units)} of it`}${p.figuresFrom === undefined ? '' : `; its figures are from ${p.figuresFrom}`}`,
        { family: 'condensed', size: SIZE, color: INK },
      ),
    ]);
  const pieces = proof.bill.lines.filter((l) => l.sort === 'fitting').reduce((n, l) => n + l.quantity, 0);
  rows.push([
    { text: '' },
    paragraph(
      `${pieces} fittings and adapters. Dry, the rig weighs ${display(proof.bill.dryMass, 'mass', units)}.`,
      { family: 'condensed', size: SIZE, color: INK2 },
    ),
  ]);
  const half = Math.ceil(rows.length / 2);
  const content: Content = {
    margin: [PAD, 0, PAD, 0],
    columnGap: 16,
    columns: [rows.slice(0, half), rows.slice(half)]
      .filter((r) => r.length > 0)
      .map((body) => ({
        width: '*',
        table: { widths: [14, '*'], body },
        layout: ROWS_LAYOUT,
      })),
  };
  return { content, height: HEADING + half * ROW };
}

/** Rows parted by hairlines. */
export const ROWS_LAYOUT = {
  hLineWidth: (i: number) => (i === 0 ? 0 : 0.5),
  vLineWidth: () => 0,
  hLineColor: () => RULE,
  paddingLeft: (i: number) => (i === 0 ? 0 : 6),
  paddingRight: () => 0,
  paddingTop: () => 1.4,
  paddingBottom: () => 1.4,
};
