import { designRecordPdf } from '../documents/design-record-pdf.ts';
import { paperCommand } from './paper-command.ts';

/** Writes every promise of a rig with its working, method, source and versions as a PDF. */
export const recordCommand = paperCommand({
  name: 'record',
  summary: 'Write the design record of a rig as a PDF: every promise with its working, method and source.',
  called: 'The record',
  write: designRecordPdf,
});
