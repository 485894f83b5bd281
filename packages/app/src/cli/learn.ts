import { readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { proveRig, readRig, type Proof, type Rig } from '@spraywright/engine/rig';
import {
  calibrationOf,
  learnedDocument,
  learnFrom,
  matchReadings,
  readReadings,
  yardSheet,
  type BuiltRig,
  type SheetTest,
  type TakenReadings,
  type YardSheet,
} from '@spraywright/engine/yard';
import { located, type JsonSource, type LocatedProblem } from '../documents/json-source.ts';
import { learnedText } from '../documents/learned-text.ts';
import { CATALOGUE_OPTION, EXIT, JSON_OPTION, SHOP_OPTION, UNITS_OPTION, type Command } from './command.ts';
import { printProblems, readInputs, readSource, type Inputs } from './inputs.ts';

/** What the tests of built rigs say of their parts. */
export const learnCommand: Command = {
  name: 'learn',
  usage: 'folder',
  summary:
    'Learn from the yard tests of built rigs how far each part is off its leaflet: a folder of rigs and readings in.',
  options: {
    output: {
      type: 'string',
      short: 'o',
      value: 'file',
      help: 'keep what is learned, for prove --odds --learned',
    },
    json: JSON_OPTION,
    catalogue: CATALOGUE_OPTION,
    shop: SHOP_OPTION,
    units: UNITS_OPTION,
  },
  least: 1,
  most: 1,
  examples: [
    'spraywright learn tests',
    'spraywright learn tests -o learned.json',
    'spraywright prove rig.json --odds --learned learned.json',
  ],
  run(args, terminal) {
    const inputs = readInputs(args, terminal);
    if (inputs === undefined) return EXIT.input;
    const folder = args.positionals[0]!;
    if (!(statSync(folder, { throwIfNoEntry: false })?.isDirectory() ?? false)) {
      terminal.err(`'${folder}' is no folder; learn takes a folder of rigs and readings`);
      return EXIT.input;
    }
    const sources: JsonSource[] = [];
    for (const file of readdirSync(folder).sort()) {
      if (!file.endsWith('.json')) continue;
      const source = readSource(join(folder, file), 'any', terminal);
      if (source === undefined) return EXIT.input;
      sources.push(source);
    }
    const sorted = sortSources(sources, inputs);
    printProblems(sorted.problems, terminal);
    if (sorted.problems.length > 0) return EXIT.input;
    if (sorted.tests.length === 0) {
      terminal.err(`'${folder}' has no readings in it: files with "format": "spraywright-readings"`);
      return EXIT.input;
    }
    const learned = learnFrom(machinesOf(sorted.tests), { units: inputs.units });
    const document = learnedDocument(learned);
    const calibration = calibrationOf(sorted.tests);
    const output = args.text('output');
    if (output !== undefined) writeFileSync(output, `${JSON.stringify(document, null, 2)}\n`);
    terminal.out(
      args.flag('json')
        ? JSON.stringify({ ...learned, calibration }, null, 2)
        : learnedText(learned, document, calibration),
    );
    return EXIT.ok;
  },
};

interface FolderTest extends SheetTest {
  readonly rig: Rig;
  readonly proof: Proof;
}

/** Rigs and readings of a folder, joined; readings whose rig is not there are a problem. */
function sortSources(
  sources: readonly JsonSource[],
  { catalogue, shop, units }: Inputs,
): { tests: FolderTest[]; problems: LocatedProblem[] } {
  const problems: LocatedProblem[] = [];
  const rigs = new Map<
    string,
    { rig: Rig; proof: Proof; sheet: (temperature: number | undefined) => YardSheet }
  >();
  const formatOf = ({ raw }: JsonSource) => (raw as { format?: unknown } | null)?.format;
  const say = (source: JsonSource, path: string[], message: string) =>
    problems.push(...located(source, [{ path, code: 'contradiction', message }]));
  for (const source of sources) {
    const format = formatOf(source);
    if (format === 'spraywright-readings' || format === 'spraywright-learned') continue;
    if (format !== 'spraywright-rig') {
      say(source, ['format'], `format is '${String(format)}'; this folder takes rigs and readings`);
      continue;
    }
    const read = readRig(source.raw, catalogue);
    if (!read.ok) {
      problems.push(...located(source, read.problems));
      continue;
    }
    const { rig } = read;
    if (rigs.has(rig.document.id)) say(source, ['id'], `rig '${rig.document.id}' is in this folder twice`);
    const proof = proveRig(rig, catalogue, shop, { units });
    const sheets = new Map<number | undefined, YardSheet>();
    rigs.set(rig.document.id, {
      rig,
      proof,
      sheet: (waterTemperature) => {
        const sheet =
          sheets.get(waterTemperature) ??
          yardSheet(rig, proof, { units, ...(waterTemperature === undefined ? {} : { waterTemperature }) });
        sheets.set(waterTemperature, sheet);
        return sheet;
      },
    });
  }
  const tests = sources.flatMap((source): FolderTest[] => {
    if (formatOf(source) !== 'spraywright-readings') return [];
    const head = readReadings(source.raw);
    if (!head.ok) {
      problems.push(...located(source, head.problems));
      return [];
    }
    const found = rigs.get(head.document.rig);
    if (found === undefined) {
      say(source, ['rig'], `rig is '${head.document.rig}'; no rig of that id is in this folder`);
      return [];
    }
    const sheet = found.sheet(head.document.waterTemperature);
    const matched = matchReadings(head.document, sheet.rig, sheet.readings);
    if (matched.ok) return [{ rig: found.rig, proof: found.proof, sheet, taken: matched.taken }];
    problems.push(...located(source, matched.problems));
    return [];
  });
  return { tests, problems };
}

/** Tests of one serial number are of one machine; a test without one is of a machine of its own. */
function machinesOf(tests: readonly FolderTest[]): BuiltRig[] {
  const machines = new Map<string, { rig: Rig; proof: Proof; serial?: string; tests: TakenReadings[] }>();
  tests.forEach(({ rig, proof, taken }, i) => {
    const { serial } = taken.document;
    const key = JSON.stringify([rig.document.id, serial ?? i]);
    const machine = machines.get(key) ?? {
      rig,
      proof,
      ...(serial === undefined ? {} : { serial }),
      tests: [],
    };
    machine.tests.push(taken);
    machines.set(key, machine);
  });
  return [...machines.values()];
}
