import { confidenceOf } from '@spraywright/engine/rig';
import { quotePdf } from '../documents/quote-pdf.ts';
import { paperCommand } from './paper-command.ts';

/** Writes the quote of a rig as a PDF. */
export const quoteCommand = paperCommand({
  name: 'quote',
  summary: 'Write the quote of a rig as a PDF.',
  called: 'The quote',
  write: (rig, proof, options) => quotePdf(proof, { ...options, confidence: confidenceOf(rig, proof) }),
});
