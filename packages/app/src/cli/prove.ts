import { confidenceOf, proveRig } from '@spraywright/engine/rig';
import { proofText } from '../documents/proof-text.ts';
import { CATALOGUE_OPTION, EXIT, JSON_OPTION, SHOP_OPTION, UNITS_OPTION, type Command } from './command.ts';
import { readRigInputs } from './inputs.ts';
import { learnedCorrections } from './learned-corrections.ts';

/** Proves a rig: every promise over all its duties. */
export const proveCommand: Command = {
  name: 'prove',
  usage: 'rig.json',
  summary: 'Prove a rig: every promise over all its duties, with figures and causes.',
  options: {
    json: JSON_OPTION,
    catalogue: CATALOGUE_OPTION,
    shop: SHOP_OPTION,
    units: UNITS_OPTION,
    odds: {
      type: 'boolean',
      help: 'how often each promise is kept when parts and settings are off by their tolerances, and what decides it',
    },
    learned: {
      type: 'string',
      value: 'file',
      help: 'with --odds: what learn has found of the parts, in place of their tolerances',
    },
    serial: {
      type: 'string',
      value: 'number',
      help: 'with --learned: the machine of this number, by its own test',
    },
    working: { type: 'boolean', short: 'w', help: 'show the working under each promise' },
  },
  least: 1,
  most: 1,
  examples: [
    'spraywright prove rig.json',
    'spraywright prove rig.json --working --units metric',
    'spraywright prove rig.json --odds',
    'spraywright prove rig.json --odds --learned learned.json',
    'spraywright prove rig.json --json',
  ],
  run(args, terminal) {
    const inputs = readRigInputs(args, terminal);
    if (inputs === undefined) return EXIT.input;
    const { rig } = inputs;
    if (args.text('learned') !== undefined && !args.flag('odds')) {
      terminal.err('--learned changes the odds only: add --odds');
      return EXIT.input;
    }
    const serial = args.text('serial');
    if (serial !== undefined && args.text('learned') === undefined) {
      terminal.err('--serial says which tested machine of the learned file it is: add --learned');
      return EXIT.input;
    }
    const corrections = learnedCorrections(rig, args.text('learned'), serial, terminal);
    if (corrections === undefined) return EXIT.input;
    const proof = proveRig(rig, inputs.catalogue, inputs.shop, { units: inputs.units });
    const confidence = args.flag('odds') ? confidenceOf(rig, proof, { corrections }) : undefined;
    terminal.out(
      args.flag('json')
        ? JSON.stringify(confidence === undefined ? proof : { ...proof, confidence }, null, 2)
        : proofText(proof, {
            units: inputs.units,
            working: args.flag('working'),
            confidence,
            learned: args.text('learned') !== undefined,
          }),
    );
    return proof.counts.broken > 0 ? EXIT.no : EXIT.ok;
  },
};
