import type { Content, DynamicContent } from 'pdfmake/interfaces.js';
import { fitted, LINE, type Family } from './faces.ts';
import { lineAt, type Placed } from './text.ts';

/** Letter, in points. */
export const PAGE = { width: 612, height: 792 } as const;
export const FRAME = { left: 26, top: 26, right: 586, bottom: 766 } as const;
export const FRAME_WIDTH = FRAME.right - FRAME.left;
/** Blank between the frame and what stands in it. */
export const PAD = 13;
export const INK = '#1c1a17';
export const INK2 = '#575148';
export const RULE = '#b3aa97';
/** Lines on paper: frame 0.5 mm, thin 0.25 mm, extra 0.7 mm. */
export const LINE_WIDTH = { frame: 1.42, thin: 0.71, extra: 1.98 } as const;

/** Height of the large title block of the first sheet, and of the strip on the others. */
export const BLOCK_HEIGHT = 118;
export const STRIP_HEIGHT = 34;
/** Blank over the strip. */
export const STRIP_GAP = 8;
const BLOCK_LEFT = 287;

export interface TitleBlock {
  readonly shop: string;
  readonly address: string;
  readonly document: string;
  readonly customer: string;
  readonly date: string;
  readonly title: string;
  readonly job: string;
  readonly proof: string;
}

const line = (x1: number, y1: number, x2: number, y2: number, width: number = LINE_WIDTH.thin) => ({
  type: 'line' as const,
  x1,
  y1,
  x2,
  y2,
  lineWidth: width,
  lineColor: INK,
});

/** Frame and centring marks of every sheet. */
export function frame(): Content {
  const { left, top, right, bottom } = FRAME;
  const middle = (left + right) / 2;
  const half = (top + bottom) / 2;
  return {
    canvas: [
      {
        type: 'rect',
        x: left,
        y: top,
        w: right - left,
        h: bottom - top,
        lineWidth: LINE_WIDTH.frame,
        lineColor: INK,
      },
      line(middle, top - 9, middle, top, LINE_WIDTH.extra),
      line(middle, bottom, middle, bottom + 9, LINE_WIDTH.extra),
      line(left - 9, half, left, half, LINE_WIDTH.extra),
      line(right, half, right + 9, half, LINE_WIDTH.extra),
    ],
    absolutePosition: { x: 0, y: 0 },
  };
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly caption?: string;
  readonly value: string;
  readonly size: number;
  readonly family?: Family;
  readonly bold?: boolean;
  readonly color?: string;
}

/** One cell of a title block: a small caption and its value, made smaller until it fits. */
function cell({
  x,
  y,
  width,
  height,
  caption,
  value,
  size,
  family = 'condensed',
  bold = true,
  color = INK,
}: Cell) {
  const pad = 6;
  const head = caption === undefined ? 0 : 9.5;
  const room = { width: width - 2 * pad, height: height - head - 4, size };
  const { size: fit, lines } = fitted(value, family, bold, room);
  const first = y + 2 + head + (room.height - lines.length * fit * LINE) / 2;
  return [
    ...(caption === undefined
      ? []
      : [lineAt(x + pad, y + 3, caption, { family: 'condensed', size: 7.5, color: INK2 })]),
    ...lines.map((text, i) =>
      lineAt(x + pad, first + i * fit * LINE, text, { family, bold, size: fit, color, tabular: false }),
    ),
  ];
}

/** The mark of the sheet: a throw and its farthest drops over the ground. */
function mark(x: number, y: number): Placed {
  return {
    svg:
      '<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24">' +
      '<path d="M3 21C6 4 13 -1 17 7" fill="none" stroke="#0b6678" stroke-width="2" stroke-linecap="round"/>' +
      '<path d="M17 7C19 11 20 16 20.6 20" fill="none" stroke="#0b6678" stroke-width="1.6" stroke-dasharray="0.2 3" stroke-linecap="round"/>' +
      `<path d="M1 22.6H23" fill="none" stroke="${INK}" stroke-width="1.8"/></svg>`,
    absolutePosition: { x, y },
    width: 24,
  };
}

/** Places on the sheet as seen from the upper edge of a foot of this height, from which the PDF counts them. */
export function inFoot(nodes: readonly Placed[], height: number): Content[] {
  const top = FRAME.bottom - height;
  return nodes.map((node) => {
    const { x, y } = node.absolutePosition;
    return Object.assign({}, node, { absolutePosition: { x, y: y - top } });
  });
}

/** The large title block at the foot of the first sheet, right of the price. */
export function titleBlock(block: TitleBlock, sheet: number, sheets: number): Placed[] {
  const left = BLOCK_LEFT;
  const { right, bottom } = FRAME;
  const top = bottom - BLOCK_HEIGHT;
  const rows = [top, top + 31, top + 58, top + 90, bottom] as const;
  const width = right - left;
  const second = [left, left + 62, left + 222, right] as const;
  const fourth = [left, left + 82, left + 236, right] as const;
  return [
    {
      canvas: [
        line(left, top, right, top, LINE_WIDTH.frame),
        line(left, top, left, bottom, LINE_WIDTH.frame),
        ...[rows[1], rows[2], rows[3]].map((y) => line(left, y, right, y)),
        ...[second[1], second[2]].map((x) => line(x, rows[1], x, rows[2])),
        ...[fourth[1], fourth[2]].map((x) => line(x, rows[3], x, bottom)),
      ],
      absolutePosition: { x: 0, y: 0 },
    },
    mark(left + 6, top + 3.5),
    ...cell({
      x: left + 31,
      y: top,
      width: width - 31,
      height: 18,
      value: block.shop,
      size: 11.5,
      family: 'semi',
    }),
    ...cell({
      x: left + 31,
      y: top + 15.5,
      width: width - 31,
      height: 15,
      value: block.address,
      size: 8.5,
      bold: false,
      color: INK2,
    }),
    ...[block.document, block.customer, block.date].flatMap((value, i) =>
      cell({
        x: second[i]!,
        y: rows[1],
        width: second[i + 1]! - second[i]!,
        height: rows[2] - rows[1],
        caption: ['Document', 'Customer', 'Date'][i]!,
        value,
        size: 10.5,
      }),
    ),
    ...cell({
      x: left,
      y: rows[2],
      width,
      height: rows[3] - rows[2],
      caption: 'Title',
      value: block.title,
      size: 14,
      family: 'semi',
    }),
    ...[block.job, block.proof, `${sheet} of ${sheets}`].flatMap((value, i) =>
      cell({
        x: fourth[i]!,
        y: rows[3],
        width: fourth[i + 1]! - fourth[i]!,
        height: bottom - rows[3],
        caption: ['Job', 'Proof', 'Sheet'][i]!,
        value,
        size: 10.5,
      }),
    ),
  ];
}

/** The strip at the foot of the other sheets. */
export function titleStrip(block: TitleBlock): DynamicContent {
  return (sheet, sheets) => {
    const { left, right, bottom } = FRAME;
    const top = bottom - STRIP_HEIGHT;
    const edges = [left, left + 34, left + 150, left + 290, left + 385, left + 440, left + 508, right];
    const cells: readonly (readonly [string, string])[] = [
      ['Shop', block.shop],
      ['Title', block.title],
      ['Customer', block.customer],
      ['Document', block.document],
      ['Date', block.date],
      ['Sheet', `${sheet} of ${sheets}`],
    ];
    const strip: Placed[] = [
      {
        canvas: [
          line(left, top, right, top, LINE_WIDTH.frame),
          ...edges.slice(1, -1).map((x) => line(x, top, x, bottom)),
        ],
        absolutePosition: { x: 0, y: 0 },
      },
      mark(left + 5, top + 5),
      ...cells.flatMap(([caption, value], i) =>
        cell({
          x: edges[i + 1]!,
          y: top,
          width: edges[i + 2]! - edges[i + 1]!,
          height: STRIP_HEIGHT,
          caption,
          value,
          size: 10,
        }),
      ),
    ];
    return inFoot(strip, STRIP_HEIGHT + STRIP_GAP);
  };
}
