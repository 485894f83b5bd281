import { platePdf } from '../documents/handbook/handbook-papers.ts';
import { rigPlate } from '../documents/handbook/rig-plate.ts';
import { paperCommand } from './paper-command.ts';
import { SERIAL_OPTION, serialFrom } from './serial-option.ts';

/** Writes the plate of one machine as a small PDF, or as SVG for an engraver. */
export const plateCommand = paperCommand({
  name: 'plate',
  summary: 'Write the plate of one machine: serial, weights, highest pressure, drive, as .pdf or .svg.',
  called: 'The proof',
  endings: ['.pdf', '.svg'],
  options: { serial: SERIAL_OPTION },
  example: '--serial LF-0412-1',
  async write(rig, proof, options, { file, args }) {
    const plate = { ...options, serial: serialFrom(args) };
    if (/\.svg$/i.test(file)) return new TextEncoder().encode(rigPlate(rig, proof, plate));
    return platePdf(rig, proof, plate);
  },
});
