import { quotePdf } from '../documents/quote-pdf.ts';
import { paperCommand } from './paper-command.ts';

/** Writes the quote of a rig as a PDF. */
export const quoteCommand = paperCommand({
  name: 'quote',
  summary: 'Write the quote of a rig as a PDF.',
  called: 'The quote',
  write: (_rig, proof, options) => quotePdf(proof, options),
});
