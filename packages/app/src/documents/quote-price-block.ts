import type { DynamicContent } from 'pdfmake/interfaces.js';
import type { Proof } from '@spraywright/engine/rig';
import { moneyText } from '@spraywright/engine/quantity';
import { fitted, widthOf } from './paper/faces.ts';
import {
  BLOCK_HEIGHT,
  FRAME,
  INK,
  INK2,
  LINE_WIDTH,
  PAD,
  RULE,
  inFoot,
  titleBlock,
  type TitleBlock,
} from './paper/sheet.ts';
import { lineAt, type Placed } from './paper/text.ts';
import type { QuoteOptions } from './quote-options.ts';
import { dateText, parseDay, quoteTerms, type QuoteTerms } from './quote-terms.ts';

/** Foot of the first sheet: price and acceptance at the left, the title block at the right. */
export function firstSheetFoot(proof: Proof, options: QuoteOptions, block: TitleBlock): DynamicContent {
  const terms = quoteTerms(proof, options.shop, options.date);
  let first: number | undefined;
  // Of several options each has a first sheet of its own; the foot is asked for its own sheets only.
  return (sheet, sheets) => {
    first ??= sheet;
    return inFoot(
      [...(sheet === first ? priceBlock(terms, options.readyDay) : []), ...titleBlock(block, sheet, sheets)],
      BLOCK_HEIGHT,
    );
  };
}

/** Height of a row and of the row of the total, in points. */
const ROW = 15.5;
const TOTAL = 22;
/** Where the line for the name stands, seen from the top. */
const SIGN = 103;

function priceBlock(terms: QuoteTerms, readyDay: string | undefined): Placed[] {
  const left = FRAME.left + PAD;
  const right = 287 - PAD;
  const top = FRAME.bottom - BLOCK_HEIGHT;
  const before = [
    ['Rig as drawn, labour and water test included', moneyText(terms.linesCents)],
    ...(terms.discountCents === 0 ? [] : [['Discount', `−${moneyText(terms.discountCents)}`]]),
    ...(terms.tax === undefined
      ? []
      : [[`Sales tax, ${terms.tax.percent} % on ${TAXED[terms.tax.on]}`, moneyText(terms.tax.cents)]]),
    ...(terms.freightCents === undefined
      ? []
      : [['Freight, no sales tax reckoned on it', moneyText(terms.freightCents)]]),
  ] as [string, string][];
  // Discount, tax and freight take their rows from the blank over the name.
  const height = before.length > 3 ? 12 : before.length > 2 ? 13.5 : ROW;
  const first = before.length === 1 ? 20 : 3 + before.length * height;
  const after = first + TOTAL;
  const ready = fitted(
    readyDay === undefined
      ? `Ready ${terms.readyInDays} working days after order. Holds until ${terms.validUntil}.`
      : `Ordered today, ready by ${dateText(parseDay(readyDay))}. Holds until ${terms.validUntil}.`,
    'semi',
    false,
    { width: right - left, height: 12, size: 9.6 },
  );
  const row = (y: number, text: string, figure: string, big = false): Placed[] => [
    lineAt(left, y + (big ? 3 : 0), text, { size: big ? 10.6 : 9.6, bold: big, color: INK }),
    atRight(right, y - (big ? 1.5 : 0.6), figure, big ? 16.5 : 10.8),
  ];
  const hair = (y: number, width: number = LINE_WIDTH.thin, color = RULE) => ({
    type: 'line' as const,
    x1: left,
    y1: top + y,
    x2: right,
    y2: top + y,
    lineWidth: width,
    lineColor: color,
  });
  return [
    {
      absolutePosition: { x: 0, y: 0 },
      canvas: [
        {
          type: 'line',
          x1: FRAME.left,
          y1: top,
          x2: FRAME.right,
          y2: top,
          lineWidth: LINE_WIDTH.thin,
          lineColor: INK,
        },
        ...before.slice(1).map((_, i) => hair(first - (i + 1) * height)),
        hair(first, LINE_WIDTH.frame, INK),
        hair(after, LINE_WIDTH.thin, INK),
        hair(after + height),
        ...(before.length > 2 ? [] : [hair(after + 2 * height)]),
        hair(SIGN, LINE_WIDTH.thin, INK),
      ],
    },
    ...before.flatMap(([text, figure], i) =>
      row(top + first - 14 - (before.length - 1 - i) * height, text, figure),
    ),
    ...row(
      top + first + 2.5,
      terms.tax === undefined ? 'Total, sales tax not included' : 'Total, sales tax included',
      moneyText(terms.totalCents),
      true,
    ),
    ...row(
      top + after + height - 13,
      `On order ${terms.depositPercent} %, balance after the water test`,
      moneyText(terms.depositCents),
    ),
    ...ready.lines.map((text) =>
      lineAt(left, top + after + 2 * height - 13, text, { size: ready.size, color: INK, tabular: false }),
    ),
    lineAt(left, top + SIGN + 1.5, 'Accepted, name and date', { size: 8.2, color: INK2 }),
  ];
}

const TAXED = { everything: 'everything', goods: 'parts and hose' } as const;

function atRight(right: number, y: number, figure: string, size: number): Placed {
  const width = widthOf(figure, 'condensed', true, size);
  return lineAt(right - width, y, figure, {
    family: 'condensed',
    bold: true,
    size,
    color: INK,
    tabular: false,
  });
}
