import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { FONTS } from '@spraywright/engine/drawings';
import { heading, rule } from '../paper/blocks.ts';
import { drawingOnPaper } from '../paper/drawing-on-paper.ts';
import { isPrintableJpeg } from '../paper/jpeg.ts';
import { FRAME_WIDTH, INK, INK2, PAD } from '../paper/sheet.ts';
import { mixed, paragraph } from '../paper/text.ts';
import { originWords } from '../origin-words.ts';
import { ROWS_LAYOUT } from '../quote-parts.ts';
import type { Block, Chapter, StepBlock } from './chapter.ts';

/** Blank inside the frame. */
const INNER = FRAME_WIDTH - 2 * PAD;

/** Chapters one under the other, each under its heading and a line. */
export function chaptersOnPaper(chapters: readonly Chapter[]): Content[] {
  return chapters.flatMap(({ title, blocks, newSheet }, i): Content[] => {
    const top = i === 0 || newSheet === true;
    const [first, ...rest] = together(blocks);
    return [
      ...(top ? [] : [rule(8)]),
      {
        // A heading never stands alone at the foot of a sheet.
        stack: [heading(title, top ? 0 : 8), ...(first ?? []).map(blockOnPaper)],
        unbreakable: first === undefined || first.every(isShort),
        ...(newSheet === true && i > 0 ? { pageBreak: 'before' as const } : {}),
      },
      ...rest.map((group) => ({ stack: group.map(blockOnPaper), unbreakable: group.every(isShort) })),
    ];
  });
}

/** Words stay with what they lead to. */
function together(blocks: readonly Block[]): Block[][] {
  const groups: Block[][] = [];
  let open: Block[] | undefined;
  for (const block of blocks) {
    if (open === undefined || (block.kind === 'head' && open.some((b) => b.kind !== 'head')))
      groups.push((open = []));
    open.push(block);
    if (block.kind !== 'head' && block.kind !== 'note' && block.kind !== 'warning') open = undefined;
  }
  return groups;
}

/** Rows of a table or list that still move to the next sheet as a whole. */
const SHORT = 12;

function isShort(block: Block): boolean {
  switch (block.kind) {
    case 'steps':
      return block.steps.length <= SHORT;
    case 'table':
      return block.rows.length <= SHORT;
    case 'cautions':
    case 'photos':
      return false;
    default:
      return true;
  }
}

function blockOnPaper(block: Block): Content {
  switch (block.kind) {
    case 'note':
      return paragraph(block.text, { size: 9.2, color: INK, margin: [PAD, 0, PAD, 4] });
    case 'head':
      return {
        ...paragraph(block.text, { size: 9.6, bold: true, color: INK, margin: [PAD, 6, PAD, 2] }),
        headlineLevel: 2,
      };
    case 'warning':
      return {
        margin: [PAD, 2, PAD, 6],
        columnGap: 8,
        columns: [
          { svg: CAUTION_SIGN, width: 17 },
          paragraph(block.text, { size: 9.2, bold: true, color: INK, margin: [0, 2, 0, 0] }),
        ],
        unbreakable: true,
      };
    case 'steps':
      return steps(block.steps);
    case 'table':
      return table(block);
    case 'drawing':
      return drawing(block);
    case 'photos':
      return photos(block.photos);
    case 'cautions':
      return {
        margin: [PAD, 0, PAD, 0],
        stack: block.cautions.map(({ caution }) => ({
          ...mixed(
            [
              [`${caution.danger} `, { bold: true, size: 9, color: INK }],
              [`${caution.act} `, { size: 9, color: INK }],
              [`Source: ${originWords(caution.origin)}.`, { size: 7.6, color: INK2 }],
            ],
            { size: 9, color: INK, margin: [0, 0, 0, 4] },
          ),
          unbreakable: true,
        })),
      };
  }
}

function drawing({ svg, width, beside }: Extract<Block, { kind: 'drawing' }>): Content {
  const main = { svg: drawingOnPaper(svg), width: Math.min(width, INNER) };
  if (beside === undefined) return { ...main, margin: [PAD, 2, PAD, 4] };
  const small = { svg: drawingOnPaper(beside.svg), width: beside.width };
  return {
    margin: [PAD, 2, PAD, 6],
    columnGap: 14,
    columns: [
      { ...main, width: main.width },
      {
        width: '*',
        stack: [
          small,
          paragraph(beside.words, { family: 'condensed', size: 8.6, color: INK2, margin: [4, 2, 0, 0] }),
        ],
      },
    ],
  };
}

/** Photos stand two in a row. */
const PHOTO = { width: (INNER - 14) / 2, height: 200 } as const;

function photos(list: Extract<Block, { kind: 'photos' }>['photos']): Content {
  const rows = list.flatMap((_, i) => (i % 2 === 0 ? [list.slice(i, i + 2)] : []));
  return {
    margin: [PAD, 2, PAD, 4],
    stack: rows.map((row) => ({
      columnGap: 14,
      margin: [0, 0, 0, 8],
      unbreakable: true,
      columns: row.map(({ image, words }) => ({
        width: PHOTO.width,
        stack: [
          isPrintableJpeg(image)
            ? { image, fit: [PHOTO.width, PHOTO.height] as [number, number] }
            : paragraph('This photo cannot be printed.', { size: 9.2, color: INK, margin: [0, 2, 0, 0] }),
          paragraph(words, { family: 'condensed', size: 8.6, color: INK2, margin: [0, 2, 0, 0] }),
        ],
      })),
    })),
  };
}

/** The sign for danger after ISO 7010 W001: a triangle with a stroke and a dot. */
export const CAUTION_SIGN =
  '<svg xmlns="http://www.w3.org/2000/svg" width="24" height="22" viewBox="0 0 24 22">' +
  `<path d="M12 1.5L23 20.5H1Z" fill="none" stroke="${INK}" stroke-width="1.8" stroke-linejoin="round"/>` +
  `<path d="M12 8V14" fill="none" stroke="${INK}" stroke-width="2.2"/><circle cx="12" cy="17" r="1.3" fill="${INK}"/></svg>`;

/** Squares are steps, circles are parts. */
function steps(list: readonly StepBlock[]): Content {
  return {
    margin: [PAD, 0, PAD, 0],
    table: {
      widths: [15, '*', 'auto'],
      dontBreakRows: true,
      body: list.map(({ text, parts, source }, i): TableCell[] => [
        { svg: stepSquare(i + 1), width: 14 },
        mixed(
          [
            [text, { size: 9.4, color: INK }],
            [source === '' ? '' : `  ${source}`, { size: 7.2, color: INK2 }],
          ],
          { size: 9.4, color: INK },
        ),
        parts.length === 0
          ? { text: '', fontSize: 4 }
          : { svg: partCircles(parts), width: 13 * Math.min(parts.length, 6), alignment: 'right' },
      ]),
    },
    layout: { ...ROWS_LAYOUT, hLineWidth: () => 0, paddingTop: () => 2.2, paddingBottom: () => 2.2 },
  };
}

const FIGURE = `font-family="${FONTS.condensed}" font-weight="bold" text-anchor="middle"`;

export function stepSquare(count: number): string {
  return (
    '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="20" viewBox="0 0 20 20">' +
    `<rect x="1" y="1" width="18" height="18" fill="${INK}"/>` +
    `<text x="10" y="14.4" ${FIGURE} font-size="12.5" fill="#ffffff">${count}</text></svg>`
  );
}

/** Rings with part numbers, six in a row. */
export function partCircles(parts: readonly number[]): string {
  const across = Math.min(parts.length, 6);
  const [width, height] = [across * 20, Math.ceil(parts.length / 6) * 20];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">` +
    parts
      .map((count, i) => {
        const [x, y] = [10 + 20 * (i % 6), 10 + 20 * Math.floor(i / 6)];
        return (
          `<circle cx="${x}" cy="${y}" r="8.6" fill="none" stroke="${INK}" stroke-width="1.1"/>` +
          `<text x="${x}" y="${y + 3.9}" ${FIGURE} font-size="11" fill="${INK}">${count}</text>`
        );
      })
      .join('') +
    '</svg>'
  );
}

/** A table with its captions repeated on each sheet. */
function table({ captions, rows, widths, words, strong }: Extract<Block, { kind: 'table' }>): Content {
  const cell = (text: string, i: number, size: number, color: string, bold = false): TableCell =>
    paragraph(text, { family: 'condensed', size, color, bold, align: i < words ? 'left' : 'right' });
  return {
    margin: [PAD, 0, PAD, 6],
    table: {
      widths: [...widths],
      headerRows: 1,
      dontBreakRows: true,
      keepWithHeaderRows: 1,
      body: [
        captions.map((text, i) => cell(text, i, 8, INK2)),
        ...rows.map((row) => row.map((text, i) => cell(text, i, 9.4, INK, i === strong))),
      ],
    },
    layout: ROWS_LAYOUT,
  };
}
