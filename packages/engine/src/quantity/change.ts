import type { Path } from './shape.ts';

/** Pure edits of a JSON document, each with its inverse, and the edit that leads from one document to another. */

interface Put {
  readonly path: Path;
  /** `undefined` takes the field away. */
  readonly value?: unknown;
}

export interface Change {
  /** What it does, as Undo and the history say it. */
  readonly about: string;
  readonly puts: readonly Put[];
}

/**
 * The document with a change made, and the change that takes it back exactly.
 *
 * @throws RangeError when a path leads through a value that has no fields, or past the end of a list
 */
export function changed<T>(document: T, change: Change): { document: T; inverse: Change } {
  let next: unknown = document;
  const back: Put[] = [];
  for (const { path, value } of change.puts) {
    back.unshift(inverseOf(next, path, value));
    next = withValue(next, path, value, path);
  }
  return { document: next as T, inverse: { about: change.about, puts: back } };
}

/**
 * The change that makes the second document of the first. Lists of one length are compared place by place, others are
 * put whole.
 */
export function changeBetween(before: unknown, after: unknown, about: string): Change {
  const puts: Put[] = [];
  // One way for all, copied where something differs: the desk compares its whole body at every step of a drag.
  const way: (string | number)[] = [];
  const inside = (step: string | number, a: unknown, b: unknown): void => {
    if (a === b) return;
    way.push(step);
    compare(a, b);
    way.pop();
  };
  const compare = (a: unknown, b: unknown): void => {
    if (a === b) return;
    if (Array.isArray(a) && Array.isArray(b) && a.length === b.length)
      for (let i = 0; i < a.length; i++) inside(i, a[i], b[i]);
    else if (isRecord(a) && isRecord(b)) {
      for (const key of Object.keys(a)) inside(key, a[key], ownValue(b, key));
      for (const key of Object.keys(b)) if (!Object.hasOwn(a, key)) inside(key, undefined, b[key]);
    } else if (JSON.stringify(a) !== JSON.stringify(b)) puts.push({ path: [...way], value: b });
  };
  compare(before, after);
  return { about, puts };
}

export function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const step of path) value = ownValue(value, step);
  return value;
}

/** `brief.duties.0.target` as steps; whole numbers are places in a list. */
export function pathOf(text: string): (string | number)[] {
  return text.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

/** Takes a put back: where it makes fields on its way, the first of them goes again. */
function inverseOf(document: unknown, path: Path, value: unknown): Put {
  if (value === undefined) {
    const parent = valueAt(document, path.slice(0, -1));
    // The last of a list has gone: it is put behind those that stay.
    return { path, value: parent === undefined ? undefined : valueAt(document, path) };
  }
  let there = 0;
  while (there < path.length - 1 && hasFields(valueAt(document, path.slice(0, there + 1)))) there++;
  const touched = path.slice(0, there + 1);
  return { path: touched, value: valueAt(document, touched) };
}

function withValue(document: unknown, path: Path, value: unknown, whole: Path): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(document)) return withPlace(document as unknown[], step, rest, value, whole);
  if (step === '__proto__' || (document !== undefined && document !== null && !isRecord(document)))
    throw new RangeError(`path '${whole.join('.')}' leads through '${step}', where there is no field`);
  if (value === undefined && !isRecord(document)) return document;
  const record: Record<string, unknown> = { ...document };
  const inner = withValue(ownValue(record, step), rest, value, whole);
  if (inner === undefined) delete record[step];
  else record[step] = inner;
  return record;
}

function withPlace(list: readonly unknown[], step: string | number, rest: Path, value: unknown, whole: Path) {
  const place = Number(step);
  if (!Number.isInteger(place) || place < 0 || place > list.length)
    throw new RangeError(`path '${whole.join('.')}' names place ${step} of a list of ${list.length}`);
  const inner = withValue(list[place], rest, value, whole);
  if (inner !== undefined) return [...list.slice(0, place), inner, ...list.slice(place + 1)];
  if (place < list.length - 1)
    throw new RangeError(
      `path '${whole.join('.')}' takes place ${place} out of a list of ${list.length}; only the last can be taken`,
    );
  return list.slice(0, place);
}

const hasFields = (value: unknown): boolean => typeof value === 'object' && value !== null;

function isRecord(value: unknown): value is Record<string, unknown> {
  return hasFields(value) && !Array.isArray(value);
}

function ownValue(value: unknown, step: string | number): unknown {
  return hasFields(value) && Object.hasOwn(value as object, step)
    ? (value as Record<string | number, unknown>)[step]
    : undefined;
}
