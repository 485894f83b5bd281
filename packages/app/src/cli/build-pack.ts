import { buildPackPdf, buildPackXlsx } from '../documents/build-pack/build-pack-papers.ts';
import { parseDay } from '../documents/quote-terms.ts';
import { paperCommand } from './paper-command.ts';
import { plumbingOnPaper } from '../documents/plumbing-on-paper.ts';
import { SERIAL_OPTION, serialFrom } from './serial-option.ts';

/** Writes what a shop needs to build one machine: lists, drawings, steps with checks, labels, freight. */
export const buildPackCommand = paperCommand({
  name: 'build-pack',
  summary: 'Write what the shop needs to build one machine, as .pdf; its lists as .xlsx.',
  called: 'The proof',
  endings: ['.pdf', '.xlsx'],
  options: {
    serial: SERIAL_OPTION,
    'build-date': {
      type: 'string',
      value: 'YYYY-MM-DD',
      help: 'day on which building begins (default: the date of the paper)',
    },
  },
  example: '--serial LF-0412-1',
  async write(rig, proof, options, { file, args, catalogue }) {
    const serial = serialFrom(args);
    const buildDate = args.text('build-date') ?? options.date;
    parseDay(buildDate);
    const all = {
      ...options,
      serial,
      buildDate,
      partOf: (id: string) => catalogue.parts.get(id) ?? rig.ownParts.get(id)?.part,
      plumbing: await plumbingOnPaper(rig, proof, options.units, 'right'),
    };
    return /\.xlsx$/i.test(file) ? buildPackXlsx(rig, proof, all) : buildPackPdf(rig, proof, all);
  },
});
