import { closestName } from './closest-name.ts';
import { quoted } from './quoting.ts';
import {
  fieldName,
  missing,
  wrongType,
  type Infer,
  type Path,
  type Problem,
  type Shape,
  type ShapeDescription,
} from './shape.ts';

const LONGEST_LIST = 10_000;
const UNKNOWN_FIELDS_NAMED = 20;

/** A shape that an object's field may leave out. */
export interface OptionalShape<T> extends Shape<T> {
  readonly presence: 'optional';
}

/** A shape whose absent field gets a value. */
export interface DefaultShape<T> extends Shape<T> {
  readonly presence: 'default';
  readonly fallback: T;
}

/** The shape of an object, with its fields, so that others can be made from them. */
export interface ObjectShape<F extends Fields> extends Shape<ObjectOf<F>> {
  readonly fields: F;
}

export type Fields = Readonly<Record<string, Shape<unknown>>>;
type OptionalKey<F extends Fields> = {
  [K in keyof F]: F[K] extends { readonly presence: 'optional' } ? K : never;
}[keyof F];
type Flat<T> = { [K in keyof T]: T[K] } & {};

/** The type an object of these fields reads into; optional fields may be absent, never undefined. */
export type ObjectOf<F extends Fields> = Flat<
  { readonly [K in Exclude<keyof F, OptionalKey<F>>]: Infer<F[K]> } & {
    readonly [K in OptionalKey<F>]?: Infer<F[K]>;
  }
>;

type Cases = Readonly<Record<string, ObjectShape<Fields>>>;
/** The union a tagged shape reads into: the tag's word beside the fields of its case. */
export type TaggedOf<Tag extends string, C extends Cases> = {
  [K in keyof C & string]: Flat<{ readonly [P in Tag]: K } & Infer<C[K]>>;
}[keyof C & string];

/** A field that may be absent. */
export function optional<T>(shape: Shape<T>): OptionalShape<T> {
  return {
    presence: 'optional',
    describe: { ...shape.describe, optional: true },
    read: (raw, path, problems) => (raw === undefined ? undefined : shape.read(raw, path, problems)),
  };
}

/** A field that gets `fallback` (in SI) when it is absent. */
export function withDefault<T>(shape: Shape<T>, fallback: NoInfer<T>): DefaultShape<T> {
  return {
    presence: 'default',
    fallback,
    describe: { ...shape.describe, optional: true, fallback },
    read: (raw, path, problems) => (raw === undefined ? fallback : shape.read(raw, path, problems)),
  };
}

/** A list whose every member has the same shape; a list that is too long is refused unread. */
export function list<T>(
  shape: Shape<T>,
  limits: { readonly min?: number; readonly max?: number } = {},
): Shape<readonly T[]> {
  const { min = 0, max = LONGEST_LIST } = limits;
  const describe: ShapeDescription = {
    type: 'list',
    expected: 'a list',
    limits: { min, max },
    of: shape.describe,
  };
  return {
    describe,
    read(raw, path, problems) {
      if (!Array.isArray(raw)) return void problems.push(wrongType(path, raw, describe));
      const before = problems.length;
      if (raw.length > max) {
        const message = `${fieldName(path)} has ${raw.length} members; at most ${max} are allowed`;
        return void problems.push({ path, code: 'too-long', message });
      }
      if (raw.length < min) {
        const message = `${fieldName(path)} has ${raw.length} members; at least ${min} are needed`;
        problems.push({ path, code: 'too-short', message });
      }
      const values: T[] = [];
      for (let i = 0; i < raw.length; i++) values.push(shape.read(raw[i], [...path, i], problems) as T);
      return problems.length === before ? values : undefined;
    },
  };
}

/**
 * An object whose field names are the document's own and whose values all have one shape.
 * The result has no prototype, so that looking up a name such as "constructor" finds nothing.
 */
export function record<T>(
  shape: Shape<T>,
  limits: { readonly min?: number; readonly max?: number } = {},
): Shape<Readonly<Record<string, T>>> {
  const { min = 0, max = LONGEST_LIST } = limits;
  const expected = 'an object';
  const describe: ShapeDescription = { type: 'record', expected, limits: { min, max }, of: shape.describe };
  return {
    describe,
    read(raw, path, problems) {
      if (!isObject(raw)) return void problems.push(wrongType(path, raw, describe));
      const before = problems.length;
      const names = Object.keys(raw);
      if (names.length > max) {
        const message = `${fieldName(path)} has ${names.length} fields; at most ${max} are allowed`;
        return void problems.push({ path, code: 'too-long', message });
      }
      if (names.length < min) {
        const message = `${fieldName(path)} has ${names.length} fields; at least ${min} are needed`;
        problems.push({ path, code: 'too-short', message });
      }
      const values = Object.create(null) as Record<string, T>;
      for (const name of names) {
        const at = [...path, name];
        if (name === '__proto__' || name === '' || name.length > 64) {
          const message = `${quoted(name)} cannot be the name of a field of ${fieldName(path)}`;
          problems.push({ path: at, code: 'unknown-field', message });
        } else values[name] = shape.read(raw[name], at, problems) as T;
      }
      return problems.length === before ? values : undefined;
    },
  };
}

/** An object of declared fields; any other field is refused, with the name it was probably meant to be. */
export function object<const F extends Fields>(fields: F): ObjectShape<F> {
  const describe: ShapeDescription = {
    type: 'object',
    expected: 'an object',
    fields: Object.entries(fields).map(([name, shape]) => ({ name, shape: shape.describe })),
  };
  return {
    fields,
    describe,
    read(raw, path, problems) {
      if (!isObject(raw)) return void problems.push(wrongType(path, raw, describe));
      return readFields(fields, {}, raw, path, problems) as ObjectOf<F> | undefined;
    },
  };
}

/** One of several objects, chosen by the word in the field `tag`. */
export function tagged<const Tag extends string, const C extends Cases>(
  tag: Tag,
  cases: C,
): Shape<TaggedOf<Tag, C>> {
  const choices = Object.keys(cases);
  const describe: ShapeDescription = {
    type: 'tagged',
    expected: `an object with '${tag}'`,
    tag,
    choices,
    cases: Object.fromEntries(choices.map((name) => [name, (cases[name] as ObjectShape<Fields>).describe])),
  };
  return {
    describe,
    read(raw, path, problems) {
      if (!isObject(raw)) return void problems.push(wrongType(path, raw, describe));
      const at = [...path, tag];
      const word = Object.hasOwn(raw, tag) ? raw[tag] : undefined;
      const expected = `one of ${choices.join(', ')}`;
      if (typeof word !== 'string')
        return void problems.push(wrongType(at, word, { type: 'choice', expected }));
      const chosen = Object.hasOwn(cases, word) ? cases[word] : undefined;
      if (chosen === undefined) {
        const near = closestName(word, choices);
        const hint = near === undefined ? '' : `; did you mean '${near}'?`;
        const message = `${fieldName(at)} is ${quoted(word)}; it must be ${expected}${hint}`;
        return void problems.push({ path: at, code: 'not-a-choice', message });
      }
      return readFields(chosen.fields, { [tag]: word }, raw, path, problems) as TaggedOf<Tag, C> | undefined;
    },
  };
}

function isObject(raw: unknown): raw is Record<string, unknown> {
  return typeof raw === 'object' && raw !== null && !Array.isArray(raw);
}

/** Reads declared fields beside the `known` ones, which are copied as they are. */
function readFields(
  fields: Fields,
  known: Readonly<Record<string, unknown>>,
  raw: Record<string, unknown>,
  path: Path,
  problems: Problem[],
): Record<string, unknown> | undefined {
  const before = problems.length;
  const value: Record<string, unknown> = { ...known };
  for (const [name, shape] of Object.entries(fields)) {
    const given = Object.hasOwn(raw, name) ? raw[name] : undefined;
    if (given !== undefined) value[name] = shape.read(given, [...path, name], problems);
    else if (!isOmissible(shape)) problems.push(missing([...path, name], shape.describe));
    else if (shape.presence === 'default') value[name] = shape.fallback;
  }
  refuseUnknown(new Set([...Object.keys(known), ...Object.keys(fields)]), raw, path, problems);
  return problems.length === before ? value : undefined;
}

function isOmissible(shape: Shape<unknown>): shape is OptionalShape<unknown> | DefaultShape<unknown> {
  return 'presence' in shape;
}

function refuseUnknown(
  known: ReadonlySet<string>,
  raw: Record<string, unknown>,
  path: Path,
  problems: Problem[],
): void {
  const unknown = Object.keys(raw).filter((name) => !known.has(name));
  const owner = fieldName(path);
  for (const name of unknown.slice(0, UNKNOWN_FIELDS_NAMED)) {
    const near = closestName(name, known);
    const hint = near === undefined ? `its fields are ${[...known].join(', ')}` : `did you mean '${near}'?`;
    const message = `${quoted(name)} is not a field of ${owner}; ${hint}`;
    problems.push({ path: [...path, name], code: 'unknown-field', message });
  }
  const more = unknown.length - UNKNOWN_FIELDS_NAMED;
  if (more > 0)
    problems.push({ path, code: 'unknown-field', message: `${owner} has ${more} more unknown fields` });
}
