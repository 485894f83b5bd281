import type { Proof, Rig } from '@spraywright/engine/rig';
import type { UnitSystem } from '@spraywright/engine/quantity';
import { judgeReadings, matchReadings, readReadings, yardSheet } from '@spraywright/engine/yard';
import { handbookPage, handbookPdf } from '../documents/handbook/handbook-papers.ts';
import type { HandbookOptions } from '../documents/handbook/handbook-options.ts';
import { located } from '../documents/json-source.ts';
import type { Terminal } from './command.ts';
import { printProblems, readSource } from './inputs.ts';
import { paperCommand } from './paper-command.ts';
import { plumbingOnPaper } from '../documents/plumbing-on-paper.ts';
import { SERIAL_OPTION, serialFrom } from './serial-option.ts';

/** Longest address that a code on paper still shows to a telephone. */
const LONGEST_ADDRESS = 300;

/** Writes the handbook of one machine, as a PDF or as one page for a telephone. */
export const handbookCommand = paperCommand({
  name: 'handbook',
  summary: 'Write the handbook of one machine, as .pdf, or as one .html page that works without a network.',
  called: 'The proof',
  endings: ['.pdf', '.html', '.htm'],
  options: {
    serial: SERIAL_OPTION,
    readings: {
      type: 'string',
      short: 'r',
      value: 'file',
      help: 'what was read of this machine in the yard: printed as its record',
    },
    address: {
      type: 'string',
      value: 'https://...',
      help: 'address of its page, printed as a square code',
    },
  },
  example: '--serial LF-0412-1',
  async write(rig, proof, options, { file, args, catalogue, terminal }) {
    const serial = serialFrom(args);
    const address = args.text('address');
    if (address !== undefined && (!/^https?:\/\/\S+$/.test(address) || address.length > LONGEST_ADDRESS))
      throw new RangeError(
        `--address is '${address}'; an http or https address of at most ${LONGEST_ADDRESS} letters was expected`,
      );
    const readings = args.text('readings');
    const tested =
      readings === undefined ? undefined : testedOf(rig, proof, options.units, serial, readings, terminal);
    if (readings !== undefined && tested === undefined) return undefined;
    const page = /\.html?$/i.test(file);
    const all: HandbookOptions = {
      ...options,
      serial,
      plumbing: await plumbingOnPaper(rig, proof, options.units, page ? 'down' : 'right'),
      ...(address === undefined ? {} : { address }),
      ...(tested === undefined ? {} : { tested }),
      partOf: (id) => catalogue.parts.get(id) ?? rig.ownParts.get(id)?.part,
    };
    return page ? new TextEncoder().encode(handbookPage(rig, proof, all)) : handbookPdf(rig, proof, all);
  },
});

/** Readings judged against the sheet of this machine; problems are printed. */
function testedOf(
  rig: Rig,
  proof: Proof,
  units: UnitSystem,
  serial: string,
  file: string,
  terminal: Terminal,
): HandbookOptions['tested'] {
  const source = readSource(file, 'readings', terminal);
  if (source === undefined) return undefined;
  const read = readReadings(source.raw);
  if (!read.ok) {
    printProblems(located(source, read.problems), terminal);
    return undefined;
  }
  const { waterTemperature, serial: of } = read.document;
  if (of !== undefined && of !== serial)
    throw new RangeError(`the readings are of serial '${of}'; the handbook is of '${serial}'`);
  const sheet = yardSheet(rig, proof, {
    units,
    ...(waterTemperature === undefined ? {} : { waterTemperature }),
  });
  const matched = matchReadings(read.document, sheet.rig, sheet.readings);
  if (!matched.ok) {
    printProblems(located(source, matched.problems), terminal);
    return undefined;
  }
  const judged = judgeReadings(rig, sheet, matched.taken, { units });
  return { sheet, taken: matched.taken, judged };
}
