import type { TableCell } from 'pdfmake/interfaces.js';
import { PALETTES, stateMark, STATE_WORDS } from '@spraywright/engine/drawings';
import type { PromiseState } from '@spraywright/engine/rig';
import { INK } from './sheet.ts';
import { paragraph } from './text.ts';

/** How a promise stands: its mark and its word. */
export function stateOnPaper(state: PromiseState): TableCell {
  return {
    columnGap: 4,
    columns: [
      {
        svg: `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16" viewBox="0 0 16 16">${stateMark(state, 8, 8, PALETTES.print)}</svg>`,
        width: 10,
      },
      paragraph(STATE_WORDS[state], {
        family: 'condensed',
        size: 9.2,
        color: INK,
        bold: state === 'broken',
      }),
    ],
  };
}
