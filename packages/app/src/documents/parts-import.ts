import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { applyEdits, modify } from 'jsonc-parser';
import { KINDS, readCatalogue, type Kind } from '@spraywright/engine/catalogue';
import { formatPath, type Path } from '@spraywright/engine/quantity';
import { catalogueFiles } from './catalogue-folder.ts';
import type { LocatedProblem } from './json-source.ts';
import { cellsOf, stepsOf, withCell, type RawPart } from './part-cells.ts';
import { readPartsCsv, type PartsColumn, type PartsTable } from './parts-csv.ts';

/** One cell that a table would change in a catalogue. */
interface CellChange {
  readonly part: string;
  readonly line: number;
  readonly field: string;
  /** Absent when the part is new or the field was empty. */
  readonly before?: string;
  readonly after: string;
}

/** What a table would do to a catalogue: nothing is written yet. */
export interface PartsImport {
  readonly kind: Kind;
  readonly added: readonly string[];
  readonly changes: readonly CellChange[];
  readonly unchanged: number;
  /** Writes the file of the kind and raises the version of the catalogue. */
  readonly write: () => { readonly file: string; readonly version: number };
}

type Outcome = { ok: true; plan: PartsImport } | { ok: false; problems: LocatedProblem[] };

/**
 * Reads a table of parts of one kind into a catalogue folder: a known id changes the cells that are filled, a new id is a
 * new part. Everything is checked together with the rest of the catalogue, and one problem anywhere stops all of it.
 */
export function planPartsImport(csvFile: string, folder: string, kindAsked?: string): Outcome {
  let text: string;
  try {
    text = readFileSync(csvFile, 'utf8');
  } catch {
    return one(csvFile, 1, '', 'unreadable', 'there is no such file');
  }
  const read = readPartsCsv(csvFile, text);
  if (!read.ok) return read;
  const files = catalogueFiles(folder);
  if (!files.ok) return files;
  const { table } = read;
  const kind = kindOf(kindAsked, table, files.files);
  if (kind === undefined)
    return one(
      csvFile,
      1,
      'kind',
      'missing',
      kindAsked === undefined
        ? 'the kind of the parts cannot be told from their ids: give it with --kind'
        : `--kind is '${kindAsked}'; it must be one of ${KINDS.join(', ')}`,
    );
  const name = files.files.find((f) => f.kind === kind)?.name ?? `${kind}.json`;
  const old = files.files.find((f) => f.name === name);
  const document = (old?.raw ?? { kind, parts: [] }) as { kind: Kind; parts: RawPart[] };
  const made = merged(csvFile, table, document.parts);
  if (made.problems.length > 0) return { ok: false, problems: made.problems };
  const next = { ...document, parts: made.parts };
  const head = files.head.raw as { version?: number };
  const checked = readCatalogue(
    { file: files.head.name, raw: head },
    [...files.files.filter((f) => f.name !== name), { name, raw: next }].map((f) => ({
      file: f.name,
      raw: f.raw,
    })),
  );
  if (!checked.ok)
    return {
      ok: false,
      problems: checked.problems.map((p) => {
        const at = p.file === name ? placeOf(p.path, made.lines, table) : undefined;
        return {
          file: at === undefined ? join(folder, p.file) : csvFile,
          line: at?.line ?? 1,
          column: at?.column ?? 1,
          field: at?.head ?? formatPath(p.path),
          code: p.code,
          message: p.message,
        };
      }),
    };
  return {
    ok: true,
    plan: {
      kind,
      added: made.added,
      changes: made.changes,
      unchanged: made.unchanged,
      write: () => {
        const version = (head.version ?? 0) + 1;
        const puts = made.parts.flatMap((part, i): Put[] => {
          const was = document.parts[i];
          if (was === undefined) return [{ path: ['parts', i], value: part }];
          const old = cellsOf(was);
          return [...cellsOf(part)]
            .filter(([column, value]) => old.get(column) !== value)
            .map(([column, value]) => ({ path: ['parts', i, ...stepsOf(column)], value }));
        });
        rewrite(
          join(folder, name),
          old === undefined ? JSON.stringify({ kind, parts: [] }) : undefined,
          puts,
        );
        rewrite(join(folder, files.head.name), undefined, [{ path: ['version'], value: version }]);
        return { file: name, version };
      },
    },
  };
}

interface Put {
  readonly path: (string | number)[];
  readonly value: unknown;
}

/** Changes fields of a JSON file and leaves the rest of its text as it is. */
function rewrite(file: string, fresh: string | undefined, puts: readonly Put[]): void {
  const formattingOptions = { insertSpaces: true, tabSize: 2, eol: '\n' };
  const text = puts.reduce(
    (before, { path, value }) => applyEdits(before, modify(before, path, value, { formattingOptions })),
    fresh ?? readFileSync(file, 'utf8'),
  );
  writeFileSync(file, text.endsWith('\n') ? text : `${text}\n`);
}

function one(file: string, line: number, field: string, code: string, message: string): Outcome {
  return { ok: false, problems: [{ file, line, column: 1, field, code, message }] };
}

function kindOf(
  asked: string | undefined,
  { columns, rows }: PartsTable,
  files: readonly { kind: string; raw: unknown }[],
): Kind | undefined {
  if (asked !== undefined) return KINDS.find((k) => k === asked);
  const at = columns.findIndex((c) => c.field === 'id');
  const ids = new Set(rows.map((r) => r.cells[at]));
  const found = files.filter((f) =>
    (f.raw as { parts: RawPart[] }).parts.some((p) => ids.has(p.id as string)),
  );
  return found.length === 1 ? KINDS.find((k) => k === found[0]!.kind) : undefined;
}

function merged(file: string, { columns, rows }: PartsTable, before: readonly RawPart[]) {
  const parts = [...before];
  const kinds = kindsOfCells(before);
  const idAt = columns.findIndex((c) => c.field === 'id');
  const lines = new Map<number, number>();
  const changes: CellChange[] = [];
  const added: string[] = [];
  const problems: LocatedProblem[] = [];
  const seen = new Map<string, number>();
  let unchanged = 0;
  for (const { line, cells } of rows) {
    const bad = (column: PartsColumn, i: number, code: string, message: string) =>
      problems.push({ file, line, column: i + 1, field: column.head, code, message });
    const id = cells[idAt]!;
    if (id === '') {
      bad(columns[idAt]!, idAt, 'missing', 'the row has no id');
      continue;
    }
    const first = seen.get(id);
    if (first !== undefined) {
      bad(columns[idAt]!, idAt, 'duplicate', `id '${id}' stands in line ${first} already`);
      continue;
    }
    seen.set(id, line);
    const known = before.findIndex((p) => p.id === id);
    let part: RawPart = known < 0 ? {} : before[known]!;
    const old = cellsOf(part);
    const count = changes.length;
    columns.forEach((column, i) => {
      const cell = cells[i]!;
      if (cell === '' || column.field === '') return;
      const value = valueOf(cell, column, kinds.get(column.field));
      if (typeof value === 'object') {
        bad(column, i, 'wrong-type', value.message);
        return;
      }
      const was = old.get(column.field);
      if (was === value) return;
      part = withCell(part, column.field, value);
      changes.push({
        part: id,
        line,
        field: column.field,
        ...(was === undefined ? {} : { before: String(was) }),
        after: String(value),
      });
    });
    if (known < 0) added.push(id);
    else if (changes.length === count) unchanged++;
    const at = known < 0 ? parts.length : known;
    parts[at] = part;
    lines.set(at, line);
  }
  return { parts, lines, changes, added, unchanged, problems };
}

/** Whether a column holds numbers, yes and no, or text: as the parts that are there have it. */
function kindsOfCells(parts: readonly RawPart[]): ReadonlyMap<string, string> {
  const kinds = new Map<string, string>();
  for (const part of parts)
    for (const [column, value] of cellsOf(part)) {
      const kind = typeof value;
      // A number that is also written as text, such as a ratio, stays what was typed.
      kinds.set(column, kinds.has(column) && kinds.get(column) !== kind ? 'string' : kind);
    }
  return kinds;
}

const NUMBER = /^-?\d+(?:[.,]\d+)?$/;
const THOUSANDS = /^-?\d{1,3},\d{3}$/;

function valueOf(
  cell: string,
  { unit }: PartsColumn,
  kind: string | undefined,
): string | number | boolean | { readonly message: string } {
  if (unit !== undefined) return NUMBER.test(cell) ? `${cell} ${unit}` : cell;
  if (kind === 'boolean') {
    if (/^(true|yes)$/i.test(cell)) return true;
    if (/^(false|no)$/i.test(cell)) return false;
    return { message: `'${cell}'; yes or no was expected` };
  }
  if (kind === 'string' || (kind === undefined && !NUMBER.test(cell))) return cell;
  if (THOUSANDS.test(cell))
    return { message: `'${cell}' may be a thousand or a decimal comma: write it without the comma` };
  if (!NUMBER.test(cell)) return { message: `'${cell}'; a number was expected` };
  return Number(cell.replace(',', '.'));
}

/** The cell in which a field of a part stands, or the row when the table has no such column. */
function placeOf(path: Path, lines: ReadonlyMap<number, number>, { columns }: PartsTable) {
  const line = path[0] === 'parts' ? lines.get(Number(path[1])) : undefined;
  if (line === undefined) return undefined;
  const field = path.slice(2).join('.');
  const column = columns.findIndex((c) => c.field === field);
  return { line, column: Math.max(0, column) + 1, head: column < 0 ? field : columns[column]!.head };
}
