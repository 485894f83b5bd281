import { writeFileSync } from 'node:fs';
import { KINDS } from '@spraywright/engine/catalogue';
import { catalogueFiles } from '../documents/catalogue-folder.ts';
import { planPartsImport, type PartsImport } from '../documents/parts-import.ts';
import type { RawPart } from '../documents/part-cells.ts';
import { partsCsv } from '../documents/parts-csv.ts';
import { CATALOGUE_OPTION, EXIT, JSON_OPTION, type Command, type Option } from './command.ts';
import { DEMO, printProblems } from './inputs.ts';

const KIND_OPTION: Option = {
  type: 'string',
  short: 'k',
  value: 'kind',
  help: `kind of part: ${KINDS.join(', ')}`,
};
/** Changes shown before the rest is only counted. */
const SHOWN = 40;

/** Writes the parts of one kind as a table for a spreadsheet. */
export const partsOutCommand: Command = {
  name: 'parts-out',
  usage: '',
  summary: 'Write the parts of one kind as a CSV table for a spreadsheet.',
  options: {
    kind: KIND_OPTION,
    catalogue: CATALOGUE_OPTION,
    output: { type: 'string', short: 'o', value: 'file.csv', help: 'file to write (default: print it)' },
  },
  least: 0,
  most: 0,
  examples: ['spraywright parts-out --kind hose -o hoses.csv'],
  run(args, terminal) {
    const kind = args.text('kind');
    const files = catalogueFiles(args.text('catalogue') ?? `${DEMO}catalogue`);
    if (!files.ok) {
      printProblems(files.problems, terminal);
      return EXIT.input;
    }
    const file = files.files.find((f) => f.kind === kind);
    if (file === undefined) {
      terminal.err(
        `--kind is ${kind === undefined ? 'missing' : `'${kind}'`}; the catalogue has ${files.files.map((f) => f.kind).join(', ')}`,
      );
      return EXIT.input;
    }
    const { parts } = file.raw as { parts: RawPart[] };
    const csv = partsCsv(parts);
    const output = args.text('output');
    if (output === undefined) terminal.out(csv);
    else {
      writeFileSync(output, csv);
      terminal.out(`Written: ${output}, ${count(parts.length, 'part')}`);
    }
    return EXIT.ok;
  },
};

/** Reads a table into a catalogue: shows what would change, and writes it only when asked to. */
export const partsInCommand: Command = {
  name: 'parts-in',
  usage: 'parts.csv',
  summary:
    'Read a CSV table of parts into a catalogue: shows every change, writes with --write, all or nothing.',
  options: {
    kind: { ...KIND_OPTION, help: `${KIND_OPTION.help} (default: told by the ids)` },
    catalogue: CATALOGUE_OPTION,
    write: { type: 'boolean', short: 'w', help: 'change the catalogue; without it nothing is written' },
    json: JSON_OPTION,
  },
  least: 1,
  most: 1,
  examples: [
    'spraywright parts-in hoses.csv --catalogue my-catalogue',
    'spraywright parts-in hoses.csv --catalogue my-catalogue --write',
  ],
  run(args, terminal) {
    const csv = args.positionals[0]!;
    const result = planPartsImport(csv, args.text('catalogue') ?? `${DEMO}catalogue`, args.text('kind'));
    if (!result.ok) {
      if (args.flag('json')) terminal.out(JSON.stringify(result, null, 2));
      else {
        printProblems(result.problems, terminal);
        const { problems, more = 0 } = result;
        const all = problems.length + more;
        terminal.err(
          `Nothing was changed: ${all === 1 ? 'one problem' : `${all} problems`}${more > 0 ? `, the first ${problems.length} above` : ''}.`,
        );
      }
      return EXIT.input;
    }
    const { plan } = result;
    const empty = plan.changes.length === 0;
    const written = args.flag('write') && !empty ? plan.write() : undefined;
    if (args.flag('json')) {
      const { kind, added, changes, unchanged } = plan;
      terminal.out(
        JSON.stringify({ ok: true, kind, added, changes, unchanged, written: written ?? null }, null, 2),
      );
      return EXIT.ok;
    }
    terminal.out(planText(plan));
    if (written !== undefined)
      terminal.out(`Written: ${written.file}; the catalogue is now version ${written.version}.`);
    else if (!empty) terminal.out('Nothing is written yet; --write does it.');
    return EXIT.ok;
  },
};

function planText({ kind, added, changes, unchanged }: PartsImport): string {
  const fresh = new Set(added);
  const changed = new Set(changes.map((c) => c.part).filter((id) => !fresh.has(id)));
  const lines = changes
    .filter((c) => !fresh.has(c.part))
    .slice(0, SHOWN)
    .map(
      (c) =>
        `  ${c.part}: ${c.field} ${c.before === undefined ? 'is now' : `${c.before} becomes`} ${c.after}`,
    );
  const rest = changes.filter((c) => !fresh.has(c.part)).length - lines.length;
  return [
    `${kind}: ${count(changed.size, 'part')} changed, ${added.length} new, ${unchanged} as before`,
    ...lines,
    ...(rest > 0 ? [`  and ${count(rest, 'change')} more (--json lists all)`] : []),
    ...added.map((id) => `  ${id} is new`),
  ].join('\n');
}

function count(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}
