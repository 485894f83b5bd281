import { deckPlan, PALETTES } from '@spraywright/engine/drawings';
import { deckDxf } from '../documents/deck-dxf.ts';
import { frameSheetPdf } from '../documents/frame-sheet-pdf.ts';
import { paperCommand } from './paper-command.ts';

const SVG_WIDTH = 1200;

/** Writes the deck with its parts and loads: a sheet as PDF, or the drawing alone as DXF or SVG. */
export const frameCommand = paperCommand({
  name: 'frame',
  summary: 'Write the deck of a rig with its parts and loads, as .pdf, or the drawing alone as .dxf or .svg.',
  called: 'The proof',
  async write(_rig, proof, options, { file }) {
    if (proof.placement === undefined)
      throw new RangeError('the rig has no carrier: there is no frame to draw');
    if (/\.dxf$/i.test(file)) return new TextEncoder().encode(await deckDxf(proof));
    if (/\.svg$/i.test(file))
      return new TextEncoder().encode(
        deckPlan(proof, { width: SVG_WIDTH, units: options.units, palette: PALETTES.print }),
      );
    return frameSheetPdf(proof, options);
  },
});
