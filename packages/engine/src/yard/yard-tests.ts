import {
  list,
  object,
  oneOf,
  optional,
  read,
  text,
  type Infer,
  type Problem,
  type Shape,
} from '../quantity/index.ts';

/** Anything that is written down of a machine, as it arrives: kind and document as typed, who and when. */
export interface YardEntry {
  readonly kind: string;
  readonly document: unknown;
  readonly by: string;
  readonly at: string;
}

const testName = text({ min: 4, max: 40 });
const moment = text({ min: 10, max: 40 });

/** A value is read with its unit once its row is known. */
const figures: Shape<string | readonly string[]> = {
  read: (raw, path, problems) =>
    Array.isArray(raw)
      ? list(text({ min: 1, max: 40 }), { min: 1, max: 400 }).read(raw, path, problems)
      : text({ min: 1, max: 40 }).read(raw, path, problems),
  describe: {
    type: 'value',
    expected: 'a reading with its unit, or a list of them, one for each tip or throw',
  },
};

const ENTRY_SHAPES = {
  /** What holds for the whole test; a field that is left out stays as it was, an empty one is taken back. */
  'yard-conditions': object({
    test: testName,
    taken: moment,
    wind: optional(text({ min: 0, max: 40 })),
    waterTemperature: optional(text({ min: 0, max: 40 })),
    edition: optional(text({ min: 0, max: 60 })),
  }),
  /** One row of the sheet: what it shows, or why nobody can read it. */
  'yard-reading': object({
    test: testName,
    taken: moment,
    row: text({ min: 1, max: 200 }),
    value: optional(figures),
    cannot: optional(text({ min: 2, max: 300 })),
  }),
  /** The end of the test, with what it said then. */
  'yard-finished': object({
    test: testName,
    taken: moment,
    state: oneOf('pass', 'look', 'fail', 'refused', 'missing'),
  }),
} as const;

type EntryKind = keyof typeof ENTRY_SHAPES;
type Conditions = Infer<(typeof ENTRY_SHAPES)['yard-conditions']>;
type Reading = Infer<(typeof ENTRY_SHAPES)['yard-reading']>;
type Finished = Infer<(typeof ENTRY_SHAPES)['yard-finished']>;

/** One test of one machine, put together from what was written down of it. */
export interface YardTest {
  readonly id: string;
  /** When its first entry was made, on the device that made it. */
  readonly begun: string;
  /** Everybody who wrote something down, in the order of their first entry. */
  readonly by: readonly string[];
  /** As typed; absent where nobody said. */
  readonly wind?: string;
  readonly waterTemperature?: string;
  readonly edition?: string;
  readonly values: ReadonlyMap<string, string | readonly string[]>;
  /** Rows that nobody could read, and why. */
  readonly cannot: ReadonlyMap<string, string>;
  /** Absent while something was written down after it was finished. */
  readonly finished?: { readonly state: Finished['state']; readonly at: string; readonly by: string };
}

/**
 * The yard tests of one machine, from its entries in their order; a later entry of a row takes the place of an earlier
 * one. Entries of other kinds are passed over.
 *
 * @returns the tests, the first begun first, and a problem for each entry that cannot be read
 */
export function yardTests(entries: readonly YardEntry[]): { tests: YardTest[]; problems: Problem[] } {
  const tests = new Map<string, YardTest>();
  const problems: Problem[] = [];
  entries.forEach((entry, i) => {
    if (!(entry.kind in ENTRY_SHAPES)) return;
    const kind = entry.kind as EntryKind;
    const found = read(ENTRY_SHAPES[kind] as Shape<Conditions | Reading | Finished>, entry.document);
    if (!found.ok) {
      problems.push(...found.problems.map((p) => ({ ...p, path: ['entries', i, ...p.path] })));
      return;
    }
    const { test, taken } = found.value;
    const before = tests.get(test) ?? {
      id: test,
      begun: taken,
      by: [],
      values: new Map<string, string>(),
      cannot: new Map<string, string>(),
    };
    const by = entry.by === '' || before.by.includes(entry.by) ? before.by : [...before.by, entry.by];
    tests.set(test, { ...withEntry(before, kind, found.value, entry), by });
  });
  return { tests: [...tests.values()], problems };
}

function withEntry(
  { finished: _, ...test }: YardTest,
  kind: EntryKind,
  document: Conditions | Reading | Finished,
  { by }: YardEntry,
): YardTest {
  switch (kind) {
    case 'yard-conditions': {
      const next: Record<string, unknown> = { ...test };
      for (const field of ['wind', 'waterTemperature', 'edition'] as const) {
        const value = (document as Conditions)[field];
        if (value === '') delete next[field];
        else if (value !== undefined) next[field] = value;
      }
      return next as unknown as YardTest;
    }
    case 'yard-reading': {
      const { row, value, cannot } = document as Reading;
      const [values, unread] = [new Map(test.values), new Map(test.cannot)];
      values.delete(row);
      unread.delete(row);
      if (value !== undefined) values.set(row, value);
      else if (cannot !== undefined) unread.set(row, cannot);
      return { ...test, values, cannot: unread };
    }
    case 'yard-finished': {
      const { state, taken } = document as Finished;
      return { ...test, finished: { state, at: taken, by } };
    }
  }
}

/** A test in the form in which readings are read, judged and learned from. */
export function readingsOfTest(
  { begun, by, wind, waterTemperature, values }: YardTest,
  serial: string,
  rig: string,
): unknown {
  return {
    format: 'spraywright-readings',
    rig,
    serial,
    taken: begun,
    ...(by.length === 0 ? {} : { by: by.join(', ').slice(0, 60) }),
    ...(wind === undefined ? {} : { wind }),
    ...(waterTemperature === undefined ? {} : { waterTemperature }),
    readings: [...values].map(([id, value]) => ({ id, value })),
  };
}
