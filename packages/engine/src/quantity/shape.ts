import type { Dimension } from './dimension.ts';
import { quoted, shortened } from './quoting.ts';

/** The way from the root of a document to a field: `['parts', 3, 'mass']`. */
export type Path = readonly (string | number)[];

/** Stable codes of problems; a reader of its own may add others. */
export type ProblemCode =
  | 'missing'
  | 'unknown-field'
  | 'wrong-type'
  | 'bad-text'
  | 'bad-quantity'
  | 'out-of-range'
  | 'not-a-choice'
  | 'too-long'
  | 'too-short'
  | 'duplicate'
  | 'unknown-reference'
  | (string & {});

/** Something wrong in a document; the message names the field, its value and the limit it breaks. */
export interface Problem {
  readonly path: Path;
  readonly code: ProblemCode;
  readonly message: string;
}

/**
 * What a document, or a part of one, must look like, and how it is read.
 *
 * `read` puts every problem it finds into `problems` and then returns undefined; it never throws.
 */
export interface Shape<T> {
  read(raw: unknown, path: Path, problems: Problem[]): T | undefined;
  readonly describe: ShapeDescription;
}

/** The type a shape reads into. */
export type Infer<S> = S extends Shape<infer T> ? T : never;

/** Limits as they were declared: numbers of numbers and counts, typed text of quantities. */
export interface Limits {
  readonly min?: number | string;
  readonly max?: number | string;
  readonly above?: number | string;
  readonly below?: number | string;
}

/** A field of an object, for a printed table of fields. */
export interface FieldDescription {
  readonly name: string;
  readonly shape: ShapeDescription;
}

/** Enough of a shape to print its table of fields. */
export interface ShapeDescription {
  readonly type:
    | 'text'
    | 'identifier'
    | 'integer'
    | 'number'
    | 'quantity'
    | 'choice'
    | 'flag'
    | 'list'
    | 'record'
    | 'object'
    | 'tagged'
    | (string & {});
  /** What a person should put here, in words: "a mass such as '12 lb'". */
  readonly expected?: string;
  readonly limits?: Limits;
  readonly dimension?: Dimension;
  readonly choices?: readonly string[];
  /** The shape of each member of a list or record. */
  readonly of?: ShapeDescription;
  /** The fields of an object, in declared order. */
  readonly fields?: readonly FieldDescription[];
  /** The field that chooses among `cases`. */
  readonly tag?: string;
  readonly cases?: Readonly<Record<string, ShapeDescription>>;
  readonly optional?: boolean;
  /** The value an absent field gets, in SI. */
  readonly fallback?: unknown;
}

/** Reads a whole document: its value, or every problem found in it. */
export function read<T>(
  shape: Shape<T>,
  raw: unknown,
): { ok: true; value: T } | { ok: false; problems: Problem[] } {
  const problems: Problem[] = [];
  const value = shape.read(raw, [], problems);
  if (value === undefined && problems.length === 0 && shape.describe.optional !== true)
    problems.push(missing([], shape.describe));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: value as T };
}

/** A path as people read it: `parts[3].mass`; the root is the empty text. */
export function formatPath(path: Path): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (!/^[A-Za-z_$][\w$-]*$/.test(step)) text += `[${JSON.stringify(step)}]`;
    else text += text === '' ? step : `.${step}`;
  }
  return text;
}

/** The name a message gives to a field: its own name, with its place in a list. */
export function fieldName(path: Path): string {
  const from = path.findLastIndex((step) => typeof step === 'string');
  const name = formatPath(path.slice(Math.max(from, 0)));
  return name === '' ? 'the document' : shortened(name);
}

/** The problem of a field that must be there and is not. */
export function missing(path: Path, describe: ShapeDescription): Problem {
  const expected = describe.expected === undefined ? '' : `; ${describe.expected} was expected`;
  return { path, code: 'missing', message: `${fieldName(path)} is missing${expected}` };
}

/** The problem of a field that holds another type of value. */
export function wrongType(path: Path, raw: unknown, describe: ShapeDescription): Problem {
  if (raw === undefined) return missing(path, describe);
  const expected = describe.expected ?? describe.type;
  return {
    path,
    code: 'wrong-type',
    message: `${fieldName(path)} is ${quoted(raw)}; ${expected} was expected`,
  };
}
