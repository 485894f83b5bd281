import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { moneyText } from '@spraywright/engine/quantity';
import { heading, rule } from '../paper/blocks.ts';
import { FRAME_WIDTH, INK, INK2, PAD } from '../paper/sheet.ts';
import { paragraph } from '../paper/text.ts';
import { ROWS_LAYOUT } from '../quote-parts.ts';
import { dateText, parseDay } from '../quote-terms.ts';
import { choiceRows, type ChoiceRow } from './choices.ts';
import type { FrozenQuote } from './frozen-quote.ts';

const FIRST_COLUMN = 118;

/** The sheet that sets the options of a quote side by side: price first, then what differs. */
export function choiceSheet(quote: FrozenQuote): Content[] {
  const { options, note } = quote;
  const [first] = options;
  const rows = choiceRows(quote);
  const width = (FRAME_WIDTH - 2 * PAD - FIRST_COLUMN) / options.length;
  const head = [
    '',
    ...options.map(({ name, summary }, i) =>
      paragraph(`${i + 1}. ${name}, ${moneyText(summary.totalCents)}`, {
        size: 11.5,
        bold: true,
        color: INK,
        tabular: false,
      }),
    ),
  ];
  return [
    paragraph(`${first!.summary.title}: ${options.length} options`, {
      size: 19,
      bold: true,
      color: INK,
      tabular: false,
      margin: [PAD, 6, PAD, 2],
    }),
    paragraph(
      `Quote for ${first!.summary.customer}. Choose one; the sheets after this one show each by itself. Holds until ${dateText(parseDay(quote.validUntil))}.`,
      { size: 10, color: INK2, margin: [PAD, 4, PAD, 8] },
    ),
    ...(note === '' ? [] : [paragraph(note, { size: 10, color: INK, margin: [PAD, 0, PAD, 8] })]),
    rule(),
    heading('Side by side', 8, 3),
    {
      margin: [PAD, 0, PAD, 0],
      table: {
        widths: [FIRST_COLUMN, ...options.map(() => width)],
        headerRows: 1,
        dontBreakRows: true,
        body: [head, ...rows.map(cells)],
      },
      layout: {
        ...ROWS_LAYOUT,
        hLineWidth: (i) => (i === 0 ? 0 : i === 1 ? 1.2 : 0.5),
        paddingTop: () => 3,
        paddingBottom: () => 3,
      },
    },
  ];
}

function cells({ name, values, differs }: ChoiceRow): TableCell[] {
  return [
    paragraph(name, { family: 'condensed', size: 9.2, color: INK2 }),
    ...values.map((value) =>
      paragraph(value, { family: 'condensed', size: 9.6, color: INK, bold: differs, tabular: false }),
    ),
  ];
}
