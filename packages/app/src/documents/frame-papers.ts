import { deckPlan, PALETTES } from '@spraywright/engine/drawings';
import type { Proof } from '@spraywright/engine/rig';
import { deckDxf } from './deck-dxf.ts';
import { frameSheetPdf } from './frame-sheet-pdf.ts';
import type { QuoteOptions } from './quote-options.ts';

const SVG_WIDTH = 1200;

export type FrameForm = 'pdf' | 'dxf' | 'svg';

/**
 * The deck with its parts and loads: a sheet as PDF, or the drawing alone as DXF or SVG.
 *
 * @throws RangeError when the rig has no carrier
 */
export async function framePaper(proof: Proof, form: FrameForm, options: QuoteOptions): Promise<Uint8Array> {
  if (form === 'pdf') return frameSheetPdf(proof, options);
  const text =
    form === 'dxf'
      ? await deckDxf(proof)
      : deckPlan(proof, { width: SVG_WIDTH, units: options.units, palette: PALETTES.print });
  if (text === undefined) throw new RangeError('the rig has no carrier: there is no frame to draw');
  return new TextEncoder().encode(text);
}
