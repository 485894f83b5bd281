import { statSync } from 'node:fs';
import { KINDS } from '@spraywright/engine/catalogue';
import { read } from '@spraywright/engine/quantity';
import { readNetwork } from '@spraywright/engine/hydraulics';
import { readBrief, rigShape } from '@spraywright/engine/rig';
import { readCatalogueFolder, readJsonFile } from '../documents/catalogue-folder.ts';
import { located, problemText, type LocatedProblem } from '../documents/json-source.ts';
import { EXIT, JSON_OPTION, type Command } from './command.ts';

/** Checks a catalogue folder, or a single brief, rig or network file, and lists every problem with its line. */
export const checkCommand: Command = {
  name: 'check',
  usage: 'catalogue-folder',
  summary: 'Check a catalogue folder (or a brief, rig or network file) and list every problem with its line.',
  options: { json: JSON_OPTION },
  least: 1,
  most: 1,
  examples: ['spraywright check demo/catalogue', 'spraywright check my-brief.json'],
  run(args, terminal) {
    const path = args.positionals[0]!;
    const isFile = statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
    const result = isFile ? checkFile(path) : checkFolder(path);
    if (args.flag('json')) terminal.out(JSON.stringify(result, null, 2));
    else {
      result.problems.forEach((p) => terminal.err(problemText(p)));
      if (result.ok) terminal.out(result.summary);
      else
        terminal.err(
          `${result.problems.length} ${result.problems.length === 1 ? 'problem' : 'problems'} in ${path}`,
        );
    }
    return result.ok ? EXIT.ok : EXIT.input;
  },
};

interface Checked {
  readonly ok: boolean;
  readonly summary: string;
  readonly problems: readonly LocatedProblem[];
}

function checkFolder(path: string): Checked {
  const result = readCatalogueFolder(path);
  if (!result.ok) return { ok: false, summary: '', problems: result.problems };
  const { catalogue } = result;
  const counts = KINDS.map((k) => [k, catalogue.byKind[k].length] as const).filter(([, n]) => n > 0);
  return {
    ok: true,
    summary: [
      `${catalogue.name}, version ${catalogue.version}: ${catalogue.parts.size} parts, no problem`,
      ...counts.map(([kind, n]) => `${String(n).padStart(5)}  ${kind}`),
    ].join('\n'),
    problems: [],
  };
}

function checkFile(path: string): Checked {
  const file = readJsonFile(path);
  if (!file.ok) return { ok: false, summary: '', problems: file.problems };
  const format = (file.source.raw as { format?: unknown } | null)?.format;
  const result =
    format === 'spraywright-rig'
      ? read(rigShape, file.source.raw)
      : format === 'spraywright-brief'
        ? readBrief(file.source.raw)
        : readNetwork(file.source.raw);
  const what = format === 'spraywright-rig' ? 'rig' : format === 'spraywright-brief' ? 'brief' : 'network';
  return result.ok
    ? { ok: true, summary: `${path}: a ${what}, no problem`, problems: [] }
    : { ok: false, summary: '', problems: located(file.source, result.problems) };
}
