import type { Content } from 'pdfmake/interfaces.js';
import { FRAME_WIDTH, INK, LINE_WIDTH, PAD } from './sheet.ts';
import { paragraph } from './text.ts';

/** Heading of a part of a sheet, in small capitals of the condensed face. */
export function heading(text: string, top = 0, bottom = 4): Content {
  return {
    ...paragraph(text.toUpperCase(), {
      family: 'condensed',
      bold: true,
      size: 8.3,
      color: INK,
      spacing: 0.37,
      margin: [PAD, top, PAD, bottom],
    }),
    headlineLevel: 1,
  };
}

/** A thin line across the sheet. */
export function rule(top = 0): Content {
  return {
    margin: [0, top, 0, 0],
    canvas: [
      { type: 'line', x1: 0, y1: 0, x2: FRAME_WIDTH, y2: 0, lineWidth: LINE_WIDTH.thin, lineColor: INK },
    ],
  };
}
