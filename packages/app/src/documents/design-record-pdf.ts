import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { PALETTES, pressureLine, throwScene } from '@spraywright/engine/drawings';
import { display } from '@spraywright/engine/quantity';
import {
  confidenceOf,
  figureText,
  oddsOf,
  oddsSentences,
  stepText,
  type DutyProof,
  type Proof,
  type Rig,
  type RigPromise,
} from '@spraywright/engine/rig';
import { cautionParagraphs } from './cautions-on-paper.ts';
import { heading, rule } from './paper/blocks.ts';
import { drawingOnPaper } from './paper/drawing-on-paper.ts';
import { pdfOf, stripSheets } from './paper/pdf.ts';
import { FRAME_WIDTH, INK, INK2, PAD } from './paper/sheet.ts';
import { stateOnPaper } from './paper/state.ts';
import { paragraph } from './paper/text.ts';
import { figureCells, sentencesOf } from './promise-words.ts';
import { titleBlockOf } from './quote-pdf.ts';
import type { QuoteOptions } from './quote-options.ts';
import { partsList, ROWS_LAYOUT } from './quote-parts.ts';
import { parseDay } from './quote-terms.ts';
import { sentenceOf } from './quote-words.ts';

const PX = 0.75;
const INNER = FRAME_WIDTH - 2 * PAD;

/**
 * The design record of a rig: every promise with its figures, working, method and source, the state of every duty, and
 * the versions that it was worked out with. It is the shop's own paper; the customer gets the quote.
 *
 * @throws RangeError when the date is not a day
 */
export async function designRecordPdf(rig: Rig, proof: Proof, options: QuoteOptions): Promise<Uint8Array> {
  const block = titleBlockOf('Design record', proof, options);
  return pdfOf(
    {
      title: `Design record: ${proof.title}`,
      subject: `${proof.id}, ${block.proof}`,
      author: options.shop.name,
      day: parseDay(options.date),
    },
    [stripSheets(content(rig, proof, options), block)],
  );
}

function content(rig: Rig, proof: Proof, options: QuoteOptions): Content[] {
  const { counts } = proof;
  const confidence = confidenceOf(rig, proof);
  const sentence = sentencesOf(proof);
  return [
    paragraph(proof.title, { bold: true, size: 17, color: INK, margin: [PAD, 2, PAD, 2] }),
    paragraph(
      `${proof.promises.length} promises: ${counts.broken} broken, ${counts.thin} thin, ${counts.unknown} unknown, ${counts.kept} kept. Worked out with engine ${proof.engineVersion} and catalogue ${proof.catalogue.name} ${proof.catalogue.version}.`,
      { size: 9.4, color: INK2, margin: [PAD, 0, PAD, 6] },
    ),
    rule(),
    heading('Liquids', 8),
    ...liquids(rig),
    ...proof.duties.flatMap((duty) => dutySheet(proof, duty, options)),
    rule(6),
    heading('Parts', 8),
    partsList(proof, options).content,
    rule(6),
    heading('Every promise, with its odds and working', 8),
    note(
      `Odds from ${confidence.draws} draws of ${confidence.inputs.length} tolerances. Most tolerances are judgement: a water test of the built rig says more.`,
    ),
    ...proof.promises.map((p) =>
      promiseBlock(p, sentence(p), options, oddsSentences(oddsOf(confidence, p, options.units))),
    ),
    ...decisions(rig),
    rule(6),
    heading('Cautions', 8),
    ...cautionParagraphs(proof),
    paragraph(
      'This record does not say that a use is lawful: the product label, local codes and licensed practice come first. A qualified person must approve the frame.',
      { size: 9, color: INK, margin: [PAD, 6, PAD, 0] },
    ),
  ];
}

const note = (text: string): Content => paragraph(text, { size: 9, color: INK, margin: [PAD, 0, PAD, 2] });

const USES = { spray: 'to spray', flush: 'to flush with', winterise: 'for the winter' } as const;

function liquids({ brief }: Rig): Content[] {
  return brief.liquids.map(({ name, liquid, strength, strengthUnit, use }) =>
    note(
      strength === undefined
        ? `${name} (${liquid}), ${USES[use]}`
        : `${name} (${liquid}, ${strength} ${strengthUnit ?? ''}), ${USES[use]}`,
    ),
  );
}

/** One duty: what is open, what flows, and its pressure line and throw. */
function dutySheet(proof: Proof, duty: DutyProof, { units }: QuoteOptions): Content[] {
  const { open } = duty;
  const drawing = (svg: string): Content => ({
    svg: drawingOnPaper(svg),
    width: INNER,
    margin: [PAD, 0, PAD, 4],
  });
  const look = { width: INNER / PX, units, palette: PALETTES.print };
  const outlets = open.outlets.map(
    (o) =>
      `${display(o.flow, 'flow', units)} at ${display(o.tipPressure, 'pressure', units)} through the ${o.line}`,
  );
  const head = heading(`Duty: ${duty.name}`, 8);
  if (open.status === 'failed')
    return [rule(6), head, note(`No steady state: ${open.reason ?? 'no reason is known'}.`)];
  return [
    rule(6),
    {
      unbreakable: true,
      stack: [
        head,
        note(`${outlets.length === 0 ? 'No outlet is open' : outlets.join(', ')}. Liquid: ${duty.liquid}.`),
        drawing(pressureLine(proof, duty, look)),
      ],
    },
    ...(duty.reach === undefined ? [] : [drawing(throwScene(proof, duty, { ...look, height: 260 }))]),
  ];
}

/** A cell without a line of its own height. */
const EMPTY: TableCell = { text: '', fontSize: 4 };

/** One promise: how it stands and why, how sure it is, then its working step by step, its method and its source. */
function promiseBlock(p: RigPromise, sentence: string, { units }: QuoteOptions, odds: string): Content {
  const small = (text: string, right = false): TableCell =>
    paragraph(text, {
      family: right ? 'condensed' : 'semi',
      size: 8,
      color: INK2,
      ...(right ? { align: 'right' as const } : {}),
    });
  const figure = (text: string): TableCell =>
    paragraph(text, { family: 'condensed', bold: true, size: 9.4, color: INK, align: 'right' });
  const { has, asked } = figureCells(p, units);
  const rows: TableCell[][] = [
    [
      stateOnPaper(p.state),
      paragraph(sentence, { size: 9.2, color: INK, bold: true }),
      figure(has),
      figure(asked),
    ],
    [EMPTY, small(sentenceOf(p.cause)), small(marginText(p), true), EMPTY],
    [EMPTY, { ...paragraph(odds, { size: 8, color: INK2 }), colSpan: 3 }, '', ''],
    ...p.working.map((step): TableCell[] => [
      EMPTY,
      small(stepText(step, units)),
      small(step.figure === undefined ? '' : figureText(step.figure, units), true),
      EMPTY,
    ]),
    [
      '',
      { ...paragraph(`Method: ${p.method}. Source: ${p.source}.`, { size: 7.6, color: INK2 }), colSpan: 3 },
      '',
      '',
    ],
  ];
  return {
    margin: [PAD, 0, PAD, 0],
    table: {
      widths: [54, '*', 76, 76],
      dontBreakRows: true,
      keepWithHeaderRows: 1,
      headerRows: 1,
      body: rows,
    },
    layout: { ...ROWS_LAYOUT, hLineWidth: (i) => (i === rows.length ? 0.5 : 0) },
  };
}

function marginText({ margin, asked }: RigPromise): string {
  if (margin === undefined || asked === undefined || !Number.isFinite(margin)) return '';
  return margin < 0 ? `${Math.round(-margin * 100)} % short` : `${Math.round(margin * 100)} % to spare`;
}

/** What a person has decided where data did not settle it. */
function decisions({ brief }: Rig): Content[] {
  if (brief.decisions.length === 0) return [];
  return [
    rule(6),
    heading('Decided by a person', 8),
    ...brief.decisions.map((d) => note(`${d.about}: ${d.why} (${d.who}, ${d.when})`)),
  ];
}
