import { proveRig } from '@spraywright/engine/rig';
import { diagnose, matchReadings, readReadings, yardSheet } from '@spraywright/engine/yard';
import { faultText } from '../documents/fault-text.ts';
import { located } from '../documents/json-source.ts';
import { CATALOGUE_OPTION, EXIT, JSON_OPTION, SHOP_OPTION, UNITS_OPTION, type Command } from './command.ts';
import { printProblems, readRigInputs, readSource } from './inputs.ts';
import { learnedCorrections } from './learned-corrections.ts';

/** What is wrong with a rig in service. */
export const faultCommand: Command = {
  name: 'fault',
  usage: 'rig.json',
  summary:
    'Find what is wrong with a rig in service by what it reads: likeliest cause, next check, part to send.',
  options: {
    readings: {
      type: 'string',
      short: 'r',
      value: 'file',
      help: 'what was read and looked at, with water in the tank; needed',
    },
    learned: { type: 'string', value: 'file', help: 'what learn has found of the parts' },
    tested: {
      type: 'boolean',
      help: 'with --learned: the serial of the readings is of a machine that was tested when new',
    },
    json: JSON_OPTION,
    catalogue: CATALOGUE_OPTION,
    shop: SHOP_OPTION,
    units: UNITS_OPTION,
  },
  least: 1,
  most: 1,
  examples: [
    'spraywright fault rig.json --readings call.json',
    'spraywright fault rig.json --readings call.json --learned learned.json --tested',
  ],
  run(args, terminal) {
    const file = args.text('readings');
    if (file === undefined) {
      terminal.err(
        '--readings is missing: a fault is found by what was read. spraywright yard rig.json lists what can be',
      );
      return EXIT.input;
    }
    const inputs = readRigInputs(args, terminal);
    const readings = readSource(file, 'readings', terminal);
    if (inputs === undefined || readings === undefined) return EXIT.input;
    const { rig, catalogue, shop, units } = inputs;
    const head = readReadings(readings.raw);
    if (!head.ok) {
      printProblems(located(readings, head.problems), terminal);
      return EXIT.input;
    }
    if (args.flag('tested') && (head.document.serial === undefined || args.text('learned') === undefined)) {
      terminal.err('--tested needs a serial in the readings and --learned');
      return EXIT.input;
    }
    // A machine that was never tested is like any other of its parts.
    const serial = args.flag('tested') ? head.document.serial : undefined;
    const corrections = learnedCorrections(rig, args.text('learned'), serial, terminal);
    if (corrections === undefined) return EXIT.input;
    const sheet = yardSheet(rig, proveRig(rig, catalogue, shop, { units }), { units });
    const matched = matchReadings(head.document, sheet.rig, sheet.readings);
    if (!matched.ok) {
      printProblems(located(readings, matched.problems), terminal);
      return EXIT.input;
    }
    const diagnosis = diagnose(rig, matched.taken, { units, corrections });
    terminal.out(
      args.flag('json') ? JSON.stringify(diagnosis, null, 2) : faultText(rig, sheet, diagnosis, units),
    );
    return diagnosis.state === 'found' || diagnosis.state === 'nothing-wrong' ? EXIT.ok : EXIT.no;
  },
};
