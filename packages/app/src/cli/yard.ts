import { ACCEPTANCE_EDITIONS } from '@spraywright/engine/physics';
import { proveRig } from '@spraywright/engine/rig';
import { judgeReadings, matchReadings, readReadings, yardSheet } from '@spraywright/engine/yard';
import { located } from '../documents/json-source.ts';
import { yardText } from '../documents/yard-text.ts';
import { CATALOGUE_OPTION, EXIT, JSON_OPTION, SHOP_OPTION, UNITS_OPTION, type Command } from './command.ts';
import { printProblems, readRigInputs, readSource } from './inputs.ts';

/** The yard test of a rig: the sheet, or what the readings say. */
export const yardCommand: Command = {
  name: 'yard',
  usage: 'rig.json',
  summary:
    'Print the yard test of a rig: what each gauge, bucket, tape and clock must show; or judge readings.',
  options: {
    readings: { type: 'string', short: 'r', value: 'file', help: 'readings to judge against the sheet' },
    edition: {
      type: 'string',
      value: 'id',
      help: `acceptance limits to hold the tips against: ${ACCEPTANCE_EDITIONS.map((e) => e.id).join(', ')}`,
    },
    json: JSON_OPTION,
    catalogue: CATALOGUE_OPTION,
    shop: SHOP_OPTION,
    units: UNITS_OPTION,
  },
  least: 1,
  most: 1,
  examples: [
    'spraywright yard rig.json',
    'spraywright yard rig.json --readings monday.json --edition france-2008',
  ],
  run(args, terminal) {
    const edition = args.text('edition');
    if (edition !== undefined && !ACCEPTANCE_EDITIONS.some((e) => e.id === edition)) {
      terminal.err(
        `--edition is '${edition}'; it must be one of ${ACCEPTANCE_EDITIONS.map((e) => e.id).join(', ')}`,
      );
      return EXIT.input;
    }
    const inputs = readRigInputs(args, terminal);
    if (inputs === undefined) return EXIT.input;
    const { catalogue, shop, units, rig } = inputs;
    const proof = proveRig(rig, catalogue, shop, { units });
    const file = args.text('readings');
    if (file === undefined) {
      const sheet = yardSheet(rig, proof, { units });
      terminal.out(args.flag('json') ? JSON.stringify(sheet, null, 2) : yardText(sheet, units));
      return EXIT.ok;
    }
    const readings = readSource(file, 'readings', terminal);
    if (readings === undefined) return EXIT.input;
    const head = readReadings(readings.raw);
    if (!head.ok) {
      printProblems(located(readings, head.problems), terminal);
      return EXIT.input;
    }
    const { waterTemperature } = head.document;
    const sheet = yardSheet(rig, proof, {
      units,
      ...(waterTemperature === undefined ? {} : { waterTemperature }),
    });
    const matched = matchReadings(head.document, sheet.rig, sheet.readings);
    if (!matched.ok) {
      printProblems(located(readings, matched.problems), terminal);
      return EXIT.input;
    }
    const judged = judgeReadings(rig, sheet, matched.taken, {
      units,
      ...(edition === undefined ? {} : { edition }),
    });
    terminal.out(args.flag('json') ? JSON.stringify(judged, null, 2) : yardText(sheet, units, judged));
    return judged.state === 'fail' ? EXIT.no : EXIT.ok;
  },
};
