import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { PALETTES, stateMark, throwScene } from '@spraywright/engine/drawings';
import type { DutyProof, Proof } from '@spraywright/engine/rig';
import { heading, rule } from './paper/blocks.ts';
import { drawingOnPaper } from './paper/drawing-on-paper.ts';
import { fitted, LINE, wrap } from './paper/faces.ts';
import { BLOCK_HEIGHT, FRAME, FRAME_WIDTH, INK, INK2, LINE_WIDTH, PAD } from './paper/sheet.ts';
import { paragraph } from './paper/text.ts';
import type { QuoteOptions } from './quote-options.ts';
import { partsList } from './quote-parts.ts';
import { quoteWords, type QuoteRow, type QuoteWords } from './quote-words.ts';

/** A drawing of this many px fills the frame: 0.75 points a px, so that lines have their true weights on paper. */
const PX = 0.75;
const HALF = FRAME_WIDTH / 2;
const TEXT = 9.6;
const NOTE = 8.2;
const MARK = 15;
const FIGURES = 62;
const LEAST_SCENE = 205;
const MOST_SCENE = 330;

/** The first sheet: statement, the throw to scale, the two columns, and the parts where there is room for them. */
export function firstSheet(proof: Proof, options: QuoteOptions): { content: Content[]; withParts: boolean } {
  const said = quoteWords(proof, options.units);
  const duty = shownDuty(proof);
  const head = fitted(said.statement, 'semi', true, { width: FRAME_WIDTH - 2 * PAD, height: 48, size: 20 });
  const headHeight = 13 + head.lines.length * head.size * LINE + 30;
  const under = FRAME.bottom - BLOCK_HEIGHT - FRAME.top - headHeight - 30;
  // Reasons of open points move to the list of all promises where the sheet has no room for them.
  const words = fittingWords(said, under - LEAST_SCENE);
  const columns = columnsHeight(words);
  const room = under - columns;
  const scene = throwScene(proof, duty, {
    width: FRAME_WIDTH / PX,
    height: Math.max(LEAST_SCENE, Math.min(MOST_SCENE, room)) / PX,
    units: options.units,
    palette: PALETTES.print,
  });
  const left = under - heightOf(scene) * PX;
  const madeOf = partsList(proof, options);
  const withParts = left - columns > madeOf.height + 10;
  const columnsRow = withParts ? columns : Math.max(0, left - 2);
  const content: Content[] = [
    ...head.lines.map((text, i) =>
      paragraph(text, {
        bold: true,
        size: head.size,
        color: INK,
        tabular: false,
        margin: [PAD, i === 0 ? 11 : 0, PAD, 0],
      }),
    ),
    paragraph(subtitle(proof, duty), { size: 10, color: INK2, margin: [PAD, 4, PAD, 8] }),
    rule(),
    {
      svg: drawingOnPaper(scene),
      width: FRAME_WIDTH,
    },
    {
      table: {
        widths: [HALF, HALF],
        // The line between the columns goes down to the foot.
        heights: [columnsRow],
        body: [
          [
            { stack: [heading('What it will do', 0, 3), list(words.will, HALF)] },
            {
              stack: [
                heading('What it will not do', 0, 3),
                list(words.willNot, HALF),
                ...(words.open.length === 0
                  ? []
                  : [heading(openHeading(words), 8, 3), list(words.open, HALF)]),
              ],
            },
          ],
        ],
      },
      layout: {
        hLineWidth: (i) => (i === 0 ? LINE_WIDTH.thin : 0),
        vLineWidth: (i) => (i === 1 ? LINE_WIDTH.thin : 0),
        hLineColor: () => INK,
        vLineColor: () => INK,
        paddingLeft: () => 0,
        paddingRight: () => 0,
        paddingTop: () => 7,
        paddingBottom: () => 4,
      },
    },
    ...(withParts ? [rule(), heading('What it is made of', 8, 3), madeOf.content] : []),
  ];
  return { content, withParts };
}

/** Longest reason that stays on a crowded sheet [characters]. */
const SHORT = 120;

/**
 * The words as far as the sheet has room: long reasons of open points give way first, then all of them, then the last
 * open points, which are counted. What is broken always stays, and all of it is in the list of all promises.
 */
function fittingWords(words: QuoteWords, room: number): QuoteWords {
  const { open } = words;
  const brief = open.map(({ note, ...row }) =>
    note === undefined || note.length > SHORT ? row : { ...row, note },
  );
  const bare = open.map(withoutNote);
  const tries = [open, brief, bare, ...bare.map((_, i) => shortened(bare, bare.length - 1 - i))];
  const kept = tries.find((rows) => columnsHeight({ ...words, open: rows }) <= room) ?? shortened(bare, 1);
  return { ...words, open: kept };
}

function withoutNote({ mark, text }: QuoteRow): QuoteRow {
  return { mark, text };
}

function shortened(rows: readonly QuoteRow[], count: number): QuoteRow[] {
  const rest = rows.length - count;
  return [
    ...rows.slice(0, count),
    { mark: 'unknown', text: `${rest} more open ${rest === 1 ? 'point' : 'points'}` },
  ];
}

/** Heading over the open points; it says where the reasons are when they are not below it. */
function openHeading({ open }: QuoteWords): string {
  return open.every((row) => row.note !== undefined)
    ? 'Still open'
    : 'Still open. Why, and whom to ask: from sheet 2';
}

function columnsHeight(words: QuoteWords): number {
  const right =
    listHeight(words.willNot, HALF) + (words.open.length === 0 ? 0 : listHeight(words.open, HALF) + 4);
  return Math.max(listHeight(words.will, HALF), right);
}

/** The duty that the drawings show: the first whose reach is broken, else the first with a reach, else the first. */
export function shownDuty(proof: Proof): DutyProof {
  const [first] = proof.duties;
  if (first === undefined) throw new RangeError('the proof has no duty; a quote shows at least one');
  const broken = proof.promises.find((p) => p.kind === 'reach' && p.state === 'broken');
  return (
    proof.duties.find((d) => d.id === broken?.duty) ??
    proof.duties.find((d) => d.reach !== undefined) ??
    first
  );
}

function subtitle(proof: Proof, duty: DutyProof): string {
  return `Quote for ${proof.customer}. Every figure here is worked out from the parts named. Drawn: ${duty.name}.`;
}

/** Rows of one column: mark, sentence with its note, and figures at the right edge. */
function list(rows: readonly QuoteRow[], width: number): Content {
  return {
    margin: [PAD, 0, PAD, 0],
    table: {
      widths: [MARK, width - 2 * PAD - MARK - FIGURES, FIGURES],
      dontBreakRows: true,
      body: rows.map((row): TableCell[] => {
        const words: Content = {
          stack: [
            paragraph(row.text, { size: TEXT, color: INK, bold: row.mark === 'broken', tabular: false }),
            ...(row.note === undefined || row.note === ''
              ? []
              : [paragraph(row.note, { size: NOTE, color: INK2, tabular: false })]),
          ],
        };
        return row.has === undefined && row.asked === undefined
          ? [markOf(row), { ...words, colSpan: 2 }, {}]
          : [markOf(row), words, figuresOf(row)];
      }),
    },
    layout: {
      hLineWidth: () => 0,
      vLineWidth: () => 0,
      paddingLeft: () => 0,
      paddingRight: () => 0,
      paddingTop: () => 1.6,
      paddingBottom: () => 1.6,
    },
  };
}

function markOf(row: QuoteRow): Content {
  const shape =
    row.mark === 'line'
      ? `<path d="M1 8H11" fill="none" stroke="${INK}" stroke-width="1.8"/>`
      : stateMark(row.mark, 8, 8, PALETTES.print);
  return {
    svg: `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16" viewBox="0 0 16 16">${shape}</svg>`,
    width: 11,
    margin: [0, 0.6, 0, 0],
  };
}

function figuresOf(row: QuoteRow): Content {
  return {
    stack: [
      paragraph(row.has ?? 'no figure', {
        family: 'condensed',
        bold: true,
        size: 10.6,
        color: row.mark === 'broken' ? PALETTES.print.broken : INK,
        align: 'right',
      }),
      ...(row.asked === undefined
        ? []
        : [paragraph(row.asked, { family: 'condensed', size: NOTE, color: INK2, align: 'right' as const })]),
    ],
  };
}

/** Height that a drawing says of itself [px]. */
function heightOf(svg: string): number {
  return Number(/ height="([\d.]+)"/.exec(svg)![1]);
}

/** Height that a list will take, so that the drawing gets what is left. */
function listHeight(rows: readonly QuoteRow[], width: number): number {
  const inner = width - 2 * PAD - MARK;
  return (
    22 +
    rows.reduce((sum, row) => {
      const figures = row.has !== undefined || row.asked !== undefined;
      const room = inner - (figures ? FIGURES : 0);
      const text = wrap(row.text, 'semi', row.mark === 'broken', TEXT, room).length * TEXT * 1.21;
      const note =
        row.note === undefined ? 0 : wrap(row.note, 'semi', false, NOTE, room).length * NOTE * 1.21;
      return sum + 3.2 + Math.max(text + note, row.asked !== undefined ? 22.8 : figures ? 12.9 : 0);
    }, 0)
  );
}
