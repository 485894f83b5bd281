import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { PALETTES, pressureLine } from '@spraywright/engine/drawings';
import { NINE_IN_TEN, oddsOf, type Proof, type RigPromise } from '@spraywright/engine/rig';
import { cautionParagraphs } from './cautions-on-paper.ts';
import { heading, rule } from './paper/blocks.ts';
import { drawingOnPaper } from './paper/drawing-on-paper.ts';
import { FRAME_WIDTH, INK, INK2, PAD } from './paper/sheet.ts';
import { stateOnPaper } from './paper/state.ts';
import { paragraph } from './paper/text.ts';
import { figureCells, sentencesOf } from './promise-words.ts';
import { partsList, ROWS_LAYOUT } from './quote-parts.ts';
import { shownDuty } from './quote-first-sheet.ts';
import type { QuoteOptions } from './quote-options.ts';
import { sentenceOf } from './quote-words.ts';

const PX = 0.75;
const INNER = FRAME_WIDTH - 2 * PAD;

/** The other sheets: the pressure line, the parts in words, every promise with its figures, cautions and terms. */
export function furtherSheets(proof: Proof, options: QuoteOptions, withParts: boolean): Content[] {
  const duty = shownDuty(proof);
  return [
    heading(`Pressure, tank to tip. ${duty.name}`, 0),
    {
      svg: drawingOnPaper(
        pressureLine(proof, duty, { width: INNER / PX, units: options.units, palette: PALETTES.print }),
      ),
      width: INNER,
      margin: [PAD, 0, PAD, 4],
    },
    rule(),
    ...(withParts ? [heading('What it is made of', 8), partsList(proof, options).content, rule(6)] : []),
    heading('Every promise, with its figures', 8),
    promises(proof, options),
    rule(6),
    heading('Cautions', 8),
    ...cautionParagraphs(proof),
    ...(options.note === undefined
      ? []
      : [
          heading('A word to you', 8),
          paragraph(options.note, { size: 9, color: INK, margin: [PAD, 0, PAD, 2] }),
        ]),
    heading('Terms', 8),
    ...options.shop.terms.map((text) => paragraph(text, { size: 9, color: INK, margin: [PAD, 0, PAD, 2] })),
    paragraph(
      'This quote does not say that a use is lawful: the product label, local codes and licensed practice come first.',
      { size: 9, color: INK, margin: [PAD, 4, PAD, 0] },
    ),
  ];
}

function promises(proof: Proof, options: QuoteOptions): Content {
  const caption = (text: string, align: 'left' | 'right' = 'left') =>
    paragraph(text, { family: 'condensed', size: 8, color: INK2, align });
  const body: TableCell[][] = [
    [caption('state'), caption('promise, and why'), caption('has', 'right'), caption('asked', 'right')],
  ];
  // Open points are rows of their own, so that a long list may run on to the next sheet; no hairline parts them.
  const running = new Set<number>();
  const sentence = sentencesOf(proof);
  for (const p of proof.promises) {
    body.push(promiseRow(p, sentence(p), options));
    for (const text of openPoints(p)) {
      running.add(body.length);
      body.push([
        '',
        { ...paragraph(text, { size: 8, color: INK2, margin: [8, 0, 0, 0] }), colSpan: 3 },
        '',
        '',
      ]);
    }
  }
  return {
    margin: [PAD, 0, PAD, 0],
    table: { widths: [54, '*', 70, 76], headerRows: 1, dontBreakRows: true, keepWithHeaderRows: 1, body },
    layout: { ...ROWS_LAYOUT, hLineWidth: (i) => (running.has(i) ? 0 : ROWS_LAYOUT.hLineWidth(i)) },
  };
}

function promiseRow(p: RigPromise, sentence: string, { units, confidence }: QuoteOptions): TableCell[] {
  const odds = confidence === undefined ? undefined : oddsOf(confidence, p, units);
  const { has, asked } = figureCells(p, units);
  const figure = (text: string, bold: boolean) =>
    paragraph(text, { family: 'condensed', bold, size: 9.4, color: INK, align: 'right' });
  return [
    stateOnPaper(p.state),
    {
      stack: [
        paragraph(sentence, { size: 9.2, color: INK, bold: p.state === 'broken' }),
        ...(p.cause === '' || openPoints(p).length > 0
          ? []
          : [paragraph(sentenceOf(p.cause), { size: 8, color: INK2 })]),
        ...(odds !== undefined && 'share' in odds && odds.share < NINE_IN_TEN
          ? [
              paragraph(
                `${sentenceOf(odds.kept).slice(0, -1)} when parts and settings are off by their tolerances; ${odds.band}.`,
                { size: 8, color: INK2 },
              ),
            ]
          : []),
      ],
    },
    figure(has, true),
    figure(asked, false),
  ];
}

/** Open points that are printed of one promise; the others are counted. */
const MOST_POINTS = 8;

/** What has to be settled, each point, under a promise that waits for a person or is broken. */
function openPoints(p: RigPromise): string[] {
  if (p.state !== 'unknown' && p.state !== 'broken') return [];
  const points = p.working.filter((step) => step.figure === undefined).map((step) => step.text);
  const rest = points.length - MOST_POINTS;
  return rest <= 0
    ? points
    : [
        ...points.slice(0, MOST_POINTS),
        `And ${rest} more of the same kind: ask us for the proof, which lists each.`,
      ];
}
