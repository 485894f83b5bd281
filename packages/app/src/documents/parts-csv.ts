import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { cellsOf, columnsOf, type RawPart } from './part-cells.ts';
import type { LocatedProblem } from './json-source.ts';

/** A column of a table of parts: the field it fills, and the unit its bare numbers have. */
export interface PartsColumn {
  readonly field: string;
  readonly unit: string | undefined;
  /** As its head is written. */
  readonly head: string;
}

interface PartsRow {
  /** Line of the file on which the row begins, from 1. */
  readonly line: number;
  /** Text of each column; empty when nothing is said. */
  readonly cells: readonly string[];
}

export interface PartsTable {
  readonly delimiter: string;
  readonly columns: readonly PartsColumn[];
  readonly rows: readonly PartsRow[];
  /** Rows with more cells than there are columns. */
  readonly problems: readonly LocatedProblem[];
}

const DELIMITERS = [',', ';', '\t', '|'] as const;
/** A spreadsheet takes a text that begins like this for a formula unless an apostrophe stands before it. */
const GUARDED = /^'(?=[=+\-@\t])/;

/** The parts as a table that a spreadsheet opens without running anything in it. */
export function partsCsv(parts: readonly RawPart[]): string {
  const columns = columnsOf(parts);
  return stringify(
    parts.map((part) => {
      const cells = cellsOf(part);
      return columns.map((column) => String(cells.get(column) ?? ''));
    }),
    { header: true, columns, escape_formulas: true },
  );
}

/** Reads a table of parts: delimiter found from its head, units in the head (`bore [in]`) or in the cells. */
export function readPartsCsv(
  file: string,
  text: string,
): { ok: true; table: PartsTable } | { ok: false; problems: LocatedProblem[] } {
  const bare = text.replace(/^\uFEFF/, '');
  const delimiter = delimiterOf(bare);
  const fail = (line: number, field: string, code: string, message: string) => ({
    ok: false as const,
    problems: [{ file, line, column: 1, field, code, message }],
  });
  let records: { record: string[]; info: { lines: number } }[];
  try {
    records = parse(bare, {
      delimiter,
      info: true,
      trim: true,
      skip_empty_lines: true,
      relax_column_count: true,
    }) as unknown as typeof records;
  } catch (error) {
    if (error instanceof CsvError)
      return fail(Number(error.lines ?? 1), '', 'not-csv', `this is not a table: ${error.message}`);
    throw error;
  }
  const [head, ...body] = records;
  if (head === undefined) return fail(1, '', 'not-csv', 'the file is empty; a table of parts was expected');
  const columns = head.record.map(columnOf);
  const names = columns.map((c) => c.field);
  if (!names.includes('id'))
    return fail(1, 'id', 'missing', `no column is headed id; the columns are ${names.join(', ')}`);
  const twice = names.find((name, i) => name !== '' && names.indexOf(name) !== i);
  if (twice !== undefined) return fail(1, twice, 'duplicate', `two columns are headed ${twice}`);
  const problems: LocatedProblem[] = [];
  const rows = body.map(({ record, info }): PartsRow => {
    // The parser tells the line on which a record ends; a quoted line break makes it begin earlier.
    const line = info.lines - record.reduce((n, cell) => n + (cell.match(/\n/g)?.length ?? 0), 0);
    if (record.length > columns.length)
      problems.push({
        file,
        line,
        column: columns.length + 1,
        field: '',
        code: 'too-many',
        message: `the row has ${record.length} cells; the head has ${columns.length} columns`,
      });
    return { line, cells: columns.map((_, i) => (record[i] ?? '').replace(GUARDED, '')) };
  });
  return { ok: true, table: { delimiter, columns, rows, problems } };
}

/** The sign that parts most cells of the head, outside quotes. */
function delimiterOf(text: string): string {
  const head = (/^[^\r\n]*/.exec(text)?.[0] ?? '').replace(/"[^"]*"/g, '');
  const counted = DELIMITERS.map((sign) => ({ sign, count: head.split(sign).length - 1 }));
  return counted.reduce((most, next) => (next.count > most.count ? next : most)).sign;
}

/** The unit of a column of money in whole dollars, beside those that hold cents. */
export const MONEY = 'USD';
const MONEY_COLUMNS: Readonly<Record<string, string>> = { cost: 'costCents', price: 'priceCents' };

/** `bore [in]` or `bore (in)`: the field, and the unit of its bare numbers. */
function columnOf(head: string): PartsColumn {
  const found = /^(.*?)\s*[[(]([^\])]+)[\])]$/.exec(head);
  // A price list has dollars; the catalogue keeps cents.
  const money = MONEY_COLUMNS[(found?.[1] ?? head).toLowerCase()];
  if (money !== undefined) return { field: money, unit: MONEY, head };
  return found === null
    ? { field: head, unit: undefined, head }
    : { field: found[1]!, unit: found[2]!, head };
}
