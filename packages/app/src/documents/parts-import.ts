import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { applyEdits, modify } from 'jsonc-parser';
import { KINDS, readCatalogue, type Kind } from '@spraywright/engine/catalogue';
import { formatPath, type Path } from '@spraywright/engine/quantity';
import { catalogueFiles } from './catalogue-folder.ts';
import type { LocatedProblem } from './json-source.ts';
import { cellsOf, stepsOf, withCell, type RawPart } from './part-cells.ts';
import { MONEY, readPartsCsv, type PartsColumn, type PartsTable } from './parts-csv.ts';

/** One cell that a table would change in a catalogue. */
interface CellChange {
  readonly part: string;
  readonly line: number;
  readonly field: string;
  /** Absent when the part is new or the field was empty. */
  readonly before?: string;
  readonly after: string;
}

/** What a table would do to the parts of one kind: nothing is written yet. */
export interface PartsPlan {
  readonly kind: Kind;
  readonly added: readonly string[];
  readonly changes: readonly CellChange[];
  readonly unchanged: number;
  /** Every part of the kind as it would be, those that were there first and in their order. */
  readonly parts: readonly RawPart[];
}

/** A plan for a folder. */
export interface PartsImport extends PartsPlan {
  /** Writes the file of the kind and raises the version of the catalogue. */
  readonly write: () => { readonly file: string; readonly version: number };
}

/** A catalogue as it stands, parsed. */
interface StandingFiles {
  readonly head: { readonly name: string; readonly raw: unknown };
  readonly files: readonly { readonly name: string; readonly kind: string; readonly raw: unknown }[];
}

interface Refused {
  readonly ok: false;
  readonly problems: LocatedProblem[];
  /** How many more there are than are named. */
  readonly more?: number;
}
type Outcome = { ok: true; plan: PartsImport } | Refused;

/** Cells that are named when a table is refused; the others are counted. */
export const MOST_NAMED = 200;

/**
 * Reads a table of parts of one kind into a catalogue: a known id changes the cells that are filled, a new id is a new
 * part. Everything is checked together with the rest of the catalogue, and one problem anywhere stops all of it; every
 * cell that is at fault is named then, in the order of the table.
 *
 * @param csvFile name of the table in what is said of it
 * @param kindAsked the kind of the parts; told by the ids when absent
 */
export function planPartsTable(
  csvFile: string,
  text: string,
  { head, files }: StandingFiles,
  kindAsked?: string,
): { ok: true; plan: PartsPlan } | Refused {
  const read = readPartsCsv(csvFile, text);
  if (!read.ok) return read;
  const { table } = read;
  const kind = kindOf(kindAsked, table, files);
  if (kind === undefined)
    return one(
      csvFile,
      1,
      'kind',
      'missing',
      kindAsked === undefined
        ? 'the kind of the parts cannot be told from their ids: it must be given (--kind)'
        : `the kind is '${kindAsked}'; it must be one of ${KINDS.join(', ')}`,
    );
  const old = files.find((f) => f.kind === kind);
  const name = old?.name ?? `${kind}.json`;
  const document = (old?.raw ?? { kind, parts: [] }) as { kind: Kind; parts: RawPart[] };
  const made = merged(csvFile, table, document.parts);
  const next = { ...document, parts: made.parts };
  const checked = readCatalogue({ file: head.name, raw: head.raw }, [
    ...files.filter((f) => f.name !== name).map((f) => ({ file: f.name, raw: f.raw })),
    { file: name, raw: next },
  ]);
  const found = checked.ok
    ? []
    : checked.problems.map((p): LocatedProblem => {
        const at = p.file === name ? placeOf(p.path, made.lines, table) : undefined;
        return {
          file: at === undefined ? p.file : csvFile,
          line: at?.line ?? 1,
          column: at?.column ?? 1,
          field: at?.head ?? formatPath(p.path),
          code: p.code,
          message: p.message,
        };
      });
  const ofCells = [...table.problems, ...made.problems];
  // A field that is missing because its own cell could not be read is not told a second time.
  const inLine = new Map<number, LocatedProblem[]>();
  for (const p of ofCells) inLine.set(p.line, [...(inLine.get(p.line) ?? []), p]);
  const others = found.filter((p) => !inLine.get(p.line)?.some((cell) => isOfSameCell(cell, p)));
  const problems = [...ofCells, ...others].sort((a, b) => a.line - b.line || a.column - b.column);
  if (problems.length > 0)
    return {
      ok: false,
      problems: problems.slice(0, MOST_NAMED),
      ...(problems.length > MOST_NAMED ? { more: problems.length - MOST_NAMED } : {}),
    };
  const { added, changes, unchanged, parts } = made;
  return { ok: true, plan: { kind, added, changes, unchanged, parts } };
}

/** Reads a table of parts of one kind into a catalogue folder. */
export function planPartsImport(csvFile: string, folder: string, kindAsked?: string): Outcome {
  let text: string;
  try {
    text = readFileSync(csvFile, 'utf8');
  } catch {
    return one(csvFile, 1, '', 'unreadable', 'there is no such file');
  }
  const found = catalogueFiles(folder);
  if (!found.ok) return found;
  const { head, files } = found;
  const planned = planPartsTable(csvFile, text, { head, files }, kindAsked);
  if (!planned.ok) {
    const here = (file: string) => (file === csvFile ? file : join(folder, file));
    return { ...planned, problems: planned.problems.map((p) => ({ ...p, file: here(p.file) })) };
  }
  const { plan } = planned;
  const old = files.find((f) => f.kind === plan.kind);
  return {
    ok: true,
    plan: {
      ...plan,
      write: () => {
        const name = old?.name ?? `${plan.kind}.json`;
        const before = (old?.raw as { parts: RawPart[] } | undefined)?.parts ?? [];
        const version = ((head.raw as { version?: number }).version ?? 0) + 1;
        const fresh = old === undefined ? JSON.stringify({ kind: plan.kind, parts: [] }) : undefined;
        rewrite(join(folder, name), fresh, putsOf(before, plan.parts));
        rewrite(join(folder, head.name), undefined, [{ path: ['version'], value: version }]);
        return { file: name, version };
      },
    },
  };
}

/** Only what differs, so that the rest of the file keeps its text. */
function putsOf(before: readonly RawPart[], after: readonly RawPart[]): Put[] {
  return after.flatMap((part, i): Put[] => {
    const was = before[i];
    if (was === undefined) return [{ path: ['parts', i], value: part }];
    const old = cellsOf(was);
    return [...cellsOf(part)]
      .filter(([column, value]) => old.get(column) !== value)
      .map(([column, value]) => ({ path: ['parts', i, ...stepsOf(column)], value }));
  });
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

function one(file: string, line: number, field: string, code: string, message: string): Refused {
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
  if (unit === MONEY) return centsOf(cell);
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

/** "1,234.50", "$1234.5" or "1234" as cents. */
function centsOf(cell: string): number | { readonly message: string } {
  const figure = cell.replace(/^\$\s*/, '').replace(/,(?=\d{3}(\D|$))/g, '');
  return /^\d+(\.\d{1,2})?$/.test(figure)
    ? Math.round(Number(figure) * 100)
    : { message: `'${cell}'; an amount of money such as 1234.50 was expected` };
}

function isOfSameCell(cell: LocatedProblem, { file, column, field }: LocatedProblem): boolean {
  return cell.file === file && (cell.column === column || cell.field.startsWith(`${field}.`));
}

/** The cell in which a field of a part stands, or the row when the table has no such column. */
function placeOf(path: Path, lines: ReadonlyMap<number, number>, { columns }: PartsTable) {
  const line = path[0] === 'parts' ? lines.get(Number(path[1])) : undefined;
  if (line === undefined) return undefined;
  const field = path.slice(2).join('.');
  const column = columns.findIndex((c) => c.field === field);
  return { line, column: Math.max(0, column) + 1, head: column < 0 ? field : columns[column]!.head };
}
