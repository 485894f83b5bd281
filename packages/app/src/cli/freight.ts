import { freightSheetPdf } from '../documents/freight-sheet-pdf.ts';
import { paperCommand } from './paper-command.ts';
import { SERIAL_OPTION, serialFrom } from './serial-option.ts';

/** Writes what a carrier asks: from whom, to whom, how large and heavy, how it is tied down. */
export const freightCommand = paperCommand({
  name: 'freight',
  summary: 'Write what a carrier asks: size, weight, density, class by density, tiedowns and cautions.',
  called: 'The proof',
  options: { serial: { ...SERIAL_OPTION, help: 'serial number of the machine, once it has one' } },
  write: (_rig, proof, options, { args }) =>
    freightSheetPdf(proof, {
      ...options,
      ...(args.text('serial') === undefined ? {} : { serial: serialFrom(args) }),
    }),
});
