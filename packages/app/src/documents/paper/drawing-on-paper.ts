import { FONTS } from '@spraywright/engine/drawings';
import { runsOf } from './faces.ts';

/** Weights from here on are set in the bold face, of which papers have one. */
const BOLD_FROM = 560;

/**
 * A drawing made ready for the PDF: weights named as the two faces that papers have, and letters that the family lacks
 * set in the face that has them. Nothing else is touched.
 */
export function drawingOnPaper(svg: string): string {
  return svg
    .replace(/ font-weight="(\d+)"/g, (_, weight: string) =>
      Number(weight) >= BOLD_FROM ? ' font-weight="bold"' : ' font-weight="normal"',
    )
    .replace(/>([^<]*[\u0370-\u03ff][^<]*)</g, (_, text: string) => `>${withFaces(text)}<`);
}

function withFaces(text: string): string {
  return runsOf(text, 'condensed')
    .map((run) =>
      run.font === FONTS.condensed ? run.text : `<tspan font-family="${run.font}">${run.text}</tspan>`,
    )
    .join('');
}
