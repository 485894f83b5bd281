/** Pure edits of a JSON document, each with its inverse. */
interface Put {
  readonly path: readonly (string | number)[];
  /** `undefined` takes the field away. */
  readonly value: unknown;
}

export interface Change {
  /** What it does, as Undo says it. */
  readonly about: string;
  readonly puts: readonly Put[];
}

/** The document with a change made, and the change that takes it back. */
export function changed<T>(document: T, change: Change): { document: T; inverse: Change } {
  let next: unknown = document;
  const back: Put[] = [];
  for (const { path, value } of change.puts) {
    back.unshift({ path, value: valueAt(next, path) });
    next = withValue(next, path, value);
  }
  return { document: next as T, inverse: { about: change.about, puts: back } };
}

export function valueAt(document: unknown, path: readonly (string | number)[]): unknown {
  let value = document;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** `brief.duties.0.target` as steps; whole numbers are places in a list. */
export function pathOf(text: string): (string | number)[] {
  return text.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

function withValue(document: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(document)) {
    const list = document.slice() as unknown[];
    list[Number(step)] = withValue(list[Number(step)], rest, value);
    return list;
  }
  const record = { ...(document as Record<string, unknown> | undefined) };
  const inner = withValue(record[step], rest, value);
  if (inner === undefined) delete record[step];
  else record[step] = inner;
  return record;
}
