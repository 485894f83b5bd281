import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { deckPlan, deckPlanOf, PALETTES, type DeckPlan } from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import type { Proof } from '@spraywright/engine/rig';
import { heading, rule } from './paper/blocks.ts';
import { drawingOnPaper } from './paper/drawing-on-paper.ts';
import { pdfOf, stripSheets } from './paper/pdf.ts';
import { FRAME_WIDTH, INK, INK2, PAD } from './paper/sheet.ts';
import { stateOnPaper } from './paper/state.ts';
import { paragraph } from './paper/text.ts';
import { figureCells } from './promise-words.ts';
import { titleBlockOf } from './quote-pdf.ts';
import type { QuoteOptions } from './quote-options.ts';
import { ROWS_LAYOUT } from './quote-parts.ts';
import { parseDay } from './quote-terms.ts';
import { deckNotes } from './deck-notes.ts';

const PX = 0.75;
const INNER = FRAME_WIDTH - 2 * PAD;

/**
 * The frame sheet: the deck from above to scale, where each part stands and what it weighs, what rests on each support
 * full, half full and empty against its rating, and what the frame must hold.
 *
 * @throws RangeError when the rig has no carrier or the date is not a day
 */
export async function frameSheetPdf(proof: Proof, options: QuoteOptions): Promise<Uint8Array> {
  const plan = deckPlanOf(proof);
  if (plan === undefined) throw new RangeError('the rig has no carrier: there is no frame to draw');
  const block = titleBlockOf('Frame', proof, options);
  return pdfOf(
    {
      title: `Frame: ${proof.title}`,
      subject: `${proof.id}, ${block.proof}`,
      author: options.shop.name,
      day: parseDay(options.date),
    },
    [stripSheets(content(proof, plan, options), block)],
  );
}

function content(proof: Proof, plan: DeckPlan, { units }: QuoteOptions): Content[] {
  const { placement } = proof;
  const length = (v: number) => display(v, 'length', units);
  const mass = (v: number) => display(v, 'mass', units);
  const svg = deckPlan(proof, { width: INNER / PX, units, palette: PALETTES.print })!;
  return [
    heading('Deck from above, front at the left', 0),
    { svg: drawingOnPaper(svg), width: INNER, margin: [PAD, 0, PAD, 4] },
    rule(),
    heading(
      'Where each part stands: its middle behind the front of the deck and to the left of the middle line, its underside above the deck',
      8,
    ),
    table(
      ['no.', 'part', 'mass as it works', 'behind front', 'to the left', 'above deck'],
      plan.standing.map(({ number, part, load, up }) => [
        String(number),
        `${part.name}${part.given ? '' : ' (placed by rule)'}`,
        mass(load),
        length(part.x),
        length(part.y),
        length(up),
      ]),
      [22, '*', 82, 66, 66, 66],
    ),
    ...deckNotes(plan).map(note),
    rule(6),
    heading(`What rests where, with ${placement!.liquid.name} in the tank`, 8),
    table(
      ['support', 'full', 'half', 'empty', 'rating'],
      placement!.supports.map((s) => [
        `${s.name}, ${length(Math.abs(s.x))} ${s.x < 0 ? 'ahead of' : 'behind'} the front`,
        mass(s.full),
        mass(s.half),
        mass(s.empty),
        s.rating === undefined ? 'not told' : mass(s.rating),
      ]),
      ['*', 68, 68, 68, 68],
    ),
    ...(placement!.supports.length === 0
      ? [note('What carries the rig is not told: ask for the vehicle and its axles.')]
      : []),
    rule(6),
    heading('What the frame must hold', 8),
    ...frameRows(proof, units),
    note('All of this is an estimate: a qualified person must approve the frame.'),
  ];
}

const note = (text: string): Content => paragraph(text, { size: 9, color: INK, margin: [PAD, 4, PAD, 0] });

function frameRows(proof: Proof, units: QuoteOptions['units']): Content[] {
  const rows = proof.promises.filter((p) => p.kind === 'structure');
  if (rows.length === 0) return [];
  const figure = (text: string): TableCell =>
    paragraph(text, { family: 'condensed', size: 9.4, color: INK, align: 'right' });
  return [
    {
      margin: [PAD, 0, PAD, 0],
      table: {
        widths: [54, '*', 74, 80],
        dontBreakRows: true,
        body: rows.map((p) => {
          const { has, asked } = figureCells(p, units);
          return [
            stateOnPaper(p.state),
            paragraph(p.sentence, { size: 9.2, color: INK }),
            figure(has),
            figure(asked),
          ];
        }),
      },
      layout: ROWS_LAYOUT,
    },
  ];
}

/** A table with its captions repeated on each sheet: words at the left, figures at the right. */
function table(
  captions: readonly string[],
  rows: readonly (readonly string[])[],
  widths: (number | '*')[],
): Content {
  const first = widths[0] === '*' ? 1 : 2;
  const cell = (text: string, i: number, size: number, color: string): TableCell =>
    paragraph(text, { family: 'condensed', size, color, align: i < first ? 'left' : 'right' });
  return {
    margin: [PAD, 0, PAD, 0],
    table: {
      widths,
      headerRows: 1,
      dontBreakRows: true,
      body: [
        captions.map((text, i) => cell(text, i, 8, INK2)),
        ...rows.map((row) => row.map((text, i) => cell(text, i, 9.4, INK))),
      ],
    },
    layout: ROWS_LAYOUT,
  };
}
