import { writeFileSync } from 'node:fs';
import { readNetwork, solveNetwork } from '@spraywright/engine/hydraulics';
import { located } from '../documents/json-source.ts';
import { networkTable } from '../documents/network-text.ts';
import { EXIT, JSON_OPTION, UNITS_OPTION, type Command } from './command.ts';
import { printProblems, readSource, type UnitSystem } from './inputs.ts';

/** Solves a general network and prints every node's pressure and every element's flow. */
export const solveCommand: Command = {
  name: 'solve',
  usage: 'network.json',
  summary: "Solve a pipe network: every node's pressure and every element's flow.",
  options: {
    json: JSON_OPTION,
    units: UNITS_OPTION,
    output: { type: 'string', short: 'o', value: 'file', help: 'write to this file instead' },
  },
  least: 1,
  most: 1,
  examples: ['spraywright solve network.json', 'spraywright solve network.json --json --units metric'],
  run(args, terminal) {
    const units = (args.text('units') ?? 'us') as UnitSystem;
    if (units !== 'us' && units !== 'metric') {
      terminal.err(`--units is '${String(units)}'; it must be us or metric`);
      return EXIT.input;
    }
    const source = readSource(args.positionals[0]!, 'network', terminal);
    if (source === undefined) return EXIT.input;
    const network = readNetwork(source.raw);
    if (!network.ok) {
      printProblems(located(source, network.problems), terminal);
      return EXIT.input;
    }
    const result = solveNetwork(network.model);
    const text = args.flag('json') ? JSON.stringify(result, null, 2) : networkTable(result, units);
    const file = args.text('output');
    if (file === undefined) terminal.out(text);
    else writeFileSync(file, `${text}\n`);
    return result.status === 'converged' ? EXIT.ok : EXIT.no;
  },
};
