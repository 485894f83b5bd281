import { statSync } from 'node:fs';
import { KINDS, LAYOUTS, readLayout } from '@spraywright/engine/catalogue';
import { read, type Problem } from '@spraywright/engine/quantity';
import { readNetwork } from '@spraywright/engine/hydraulics';
import { readBrief, rigShape } from '@spraywright/engine/rig';
import { readCatalogueFolder, readJsonFile } from '../documents/catalogue-folder.ts';
import { located, problemText, type LocatedProblem } from '../documents/json-source.ts';
import { EXIT, JSON_OPTION, type Command } from './command.ts';

/** Checks a catalogue folder, or a single brief, rig, layout or network file, and lists every problem with its line. */
export const checkCommand: Command = {
  name: 'check',
  usage: 'catalogue-folder',
  summary:
    'Check a catalogue folder (or a brief, rig, layout or network file) and list every problem with its line.',
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

interface Refused {
  readonly ok: false;
  readonly problems: Problem[];
}

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
      ...catalogue.layouts
        .filter((l) => !LAYOUTS.includes(l))
        .map((l) => `    own  layout '${l.id}': ${l.name}`),
    ].join('\n'),
    problems: [],
  };
}

/** What a file is by its format, and how it is read; one without a format is a network. */
const READERS = new Map<unknown, readonly [string, (raw: unknown) => { ok: true } | Refused]>([
  ['spraywright-rig', ['rig', (raw) => read(rigShape, raw)]],
  ['spraywright-brief', ['brief', readBrief]],
  ['spraywright-layout', ['layout', readLayout]],
]);

function checkFile(path: string): Checked {
  const file = readJsonFile(path);
  if (!file.ok) return { ok: false, summary: '', problems: file.problems };
  const format = (file.source.raw as { format?: unknown } | null)?.format;
  const [what, reader] = READERS.get(format) ?? (['network', readNetwork] as const);
  const result = reader(file.source.raw);
  return result.ok
    ? { ok: true, summary: `${path}: a ${what}, no problem`, problems: [] }
    : { ok: false, summary: '', problems: located(file.source, result.problems) };
}
