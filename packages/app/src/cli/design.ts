import { writeFileSync } from 'node:fs';
import { designRig } from '@spraywright/engine/rig';
import { located } from '../documents/json-source.ts';
import { proofText } from '../documents/proof-text.ts';
import { CATALOGUE_OPTION, EXIT, JSON_OPTION, SHOP_OPTION, UNITS_OPTION, type Command } from './command.ts';
import { printAlternatives, printWaysOut } from './rig-advice.ts';
import { printChoices, printWhyNot } from './rig-choices.ts';
import { printProblems, readInputs, readSource } from './inputs.ts';

/** Chooses a rig for a brief and proves it. */
export const designCommand: Command = {
  name: 'design',
  usage:
    'brief.json | --choices brief.json | --why-not brief.json | --ways-out rig.json | --alternatives rig.json slot',
  summary: 'Choose a rig from the catalogue for a brief and prove it.',
  options: {
    json: JSON_OPTION,
    catalogue: CATALOGUE_OPTION,
    shop: SHOP_OPTION,
    units: UNITS_OPTION,
    output: { type: 'string', short: 'o', value: 'rig.json', help: 'write the rig to this file' },
    choices: {
      type: 'boolean',
      help: 'the rigs that no other beats in price, dry mass, least margin and days, about a dozen kinds',
    },
    proofs: { type: 'string', value: 'number', help: 'whole rigs that --choices may prove (default: 2000)' },
    within: {
      type: 'string',
      value: 'percent',
      help: 'end --choices as soon as no rig can be better by more than this share (default: 0)',
    },
    'why-not': {
      type: 'boolean',
      help: 'take a brief that no rig keeps: what breaks, which parts are refused, and the least that could be asked less',
    },
    'ways-out': {
      type: 'boolean',
      help: 'take a rig: for each broken or thin promise the cheapest changes of one or two things that keep it',
    },
    alternatives: {
      type: 'boolean',
      help: 'take a rig and a slot: what every other part in the slot would do to the rig',
    },
    working: { type: 'boolean', short: 'w', help: 'show the working under each promise' },
  },
  least: 1,
  most: 2,
  examples: [
    'spraywright design demo/briefs/tall-elms.json -o rig.json',
    'spraywright design brief.json --json',
    'spraywright design brief.json --choices',
    'spraywright design brief.json --why-not',
    'spraywright design --ways-out rig.json',
    'spraywright design --alternatives rig.json pump',
  ],
  run(args, terminal) {
    if (args.flag('alternatives')) return printAlternatives(args, terminal);
    if (args.positionals.length > 1) {
      terminal.err(`design takes one file; '${args.positionals[1]}' is one too many`);
      return EXIT.input;
    }
    if (args.flag('choices')) return printChoices(args, terminal);
    if (args.flag('why-not')) return printWhyNot(args, terminal);
    if (args.flag('ways-out')) return printWaysOut(args, terminal);
    const inputs = readInputs(args, terminal);
    const source = readSource(args.positionals[0]!, 'brief', terminal);
    if (inputs === undefined || source === undefined) return EXIT.input;
    const design = designRig(source.raw, inputs.catalogue, inputs.shop, { units: inputs.units });
    if (!design.ok) {
      printProblems(located(source, design.problems), terminal);
      return EXIT.input;
    }
    const file = args.text('output');
    if (file !== undefined) writeFileSync(file, `${JSON.stringify(design.rig, null, 2)}\n`);
    if (args.flag('json'))
      terminal.out(JSON.stringify({ rig: design.rig, proof: design.proof, looked: design.looked }, null, 2));
    else {
      terminal.out(proofText(design.proof, { units: inputs.units, working: args.flag('working') }));
      const broken = design.proof.counts.broken;
      terminal.out(
        broken === 0
          ? `Looked at ${design.looked} rigs; this is the cheapest that keeps every promise computed.`
          : `Looked at ${design.looked} rigs; no rig in the catalogue keeps every promise. This one breaks ${broken === 1 ? 'one' : String(broken)}.`,
      );
      if (file !== undefined) terminal.out(`Written: ${file}`);
    }
    return design.proof.counts.broken > 0 ? EXIT.no : EXIT.ok;
  },
};
