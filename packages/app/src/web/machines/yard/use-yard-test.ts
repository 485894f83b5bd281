import type { UnitSystem } from '@spraywright/engine/quantity';
import {
  valuesAsked,
  valuesTaken,
  yardTests,
  type SheetReading,
  type YardTest,
} from '@spraywright/engine/yard';
import { useEffect, useMemo, useRef, useState } from 'react';
import { today } from '../../frame/moment.ts';
import { operationName } from '../../frame/operation-name.ts';
import { useMachine, type MachineState } from '../machine-keeper.ts';
import { keepDrafts, loadDrafts, type Drafts } from './drafts.ts';
import { figureOf, typedReading } from './typed-reading.ts';

/** What is typed or stepped is written down when the hand rests so long [ms], or moves on. */
const RESTS = { typed: 1500, stepped: 700 } as const;

export interface Conditions {
  readonly wind?: string;
  readonly waterTemperature?: string;
  readonly edition?: string;
}

/** The test that is being taken of a machine, and everything that can be done to it. */
export interface TakenTest {
  readonly state: MachineState;
  readonly tests: readonly YardTest[];
  /** Absent before anything was written down. */
  readonly test: YardTest | undefined;
  /** Entries of the yard that cannot be read, each a sentence. */
  readonly problems: readonly string[];
  /** Whether a row has all its readings; one that is read several times needs each. */
  readonly isRead: (row: SheetReading) => boolean;
  /** What stands in the boxes of a row; `more` of them where it is to be read again. */
  readonly textsOf: (row: SheetReading, more?: number) => readonly string[];
  readonly type: (row: SheetReading, texts: readonly string[], by: keyof typeof RESTS) => void;
  /** Writes down what stands in the boxes of a row. */
  readonly done: (row: SheetReading, texts?: readonly string[]) => void;
  readonly cannot: (row: SheetReading, why: string | undefined) => void;
  readonly conditions: (given: Conditions) => void;
  readonly finish: (state: string) => void;
  readonly choose: (test: string | undefined) => void;
}

export function useYardTest(serial: string, units: UnitSystem): TakenTest {
  const { state, keeper } = useMachine(serial);
  const { entries, waiting } = state;
  const { tests, problems } = useMemo(() => yardTests([...entries, ...waiting]), [entries, waiting]);
  const [fresh, setFresh] = useState(testName);
  const [chosen, choose] = useState<string>();
  const test = tests.find((t) => t.id === (chosen ?? tests.at(-1)?.id));
  const id = test?.id ?? fresh;
  const [drafts, setDrafts] = useState<Drafts>(() => loadDrafts(serial));
  const resting = useRef<{ readonly timer: ReturnType<typeof setTimeout>; readonly write: () => void }>(
    undefined,
  );

  const draft = (row: string, texts: readonly string[] | undefined) =>
    setDrafts((before) => {
      const { [row]: _, ...others } = before;
      const next = texts === undefined ? others : { ...others, [row]: texts };
      keepDrafts(serial, next);
      return next;
    });
  const write = (kind: string, document: Readonly<Record<string, unknown>>) =>
    keeper.write(kind, { test: id, taken: new Date().toISOString(), ...document });

  const keptOf = ({ id: row }: SheetReading): readonly string[] => {
    const kept = test?.values.get(row);
    return kept === undefined ? [] : typeof kept === 'string' ? [kept] : kept;
  };
  const textsOf = (row: SheetReading, more = 0): readonly string[] => {
    const list = keptOf(row);
    const boxes = Math.max(valuesAsked(row), list.length + more, drafts[row.id]?.length ?? 0);
    return Array.from(
      { length: Math.min(boxes, valuesTaken(row)) },
      (_, i) => drafts[row.id]?.[i] ?? (list[i] === undefined ? '' : figureOf(list[i], row, units)),
    );
  };
  const done = (row: SheetReading, texts = textsOf(row)) => {
    clearTimeout(resting.current?.timer);
    resting.current = undefined;
    const value = valueOf(row, texts, units);
    if (value === undefined) return;
    const before = test?.values.get(row.id);
    draft(row.id, undefined);
    if (JSON.stringify(value === '' ? undefined : value) !== JSON.stringify(before))
      write('yard-reading', { row: row.id, ...(value === '' ? {} : { value }) });
  };
  const type = (row: SheetReading, texts: readonly string[], by: keyof typeof RESTS) => {
    clearTimeout(resting.current?.timer);
    draft(row.id, texts);
    const write = () => done(row, texts);
    resting.current = { timer: setTimeout(write, RESTS[by]), write };
  };
  // A page that is put away writes down what stands in the boxes.
  useEffect(() => {
    const away = () => resting.current?.write();
    addEventListener('pagehide', away);
    return () => removeEventListener('pagehide', away);
  }, []);

  return {
    state,
    tests,
    test,
    problems: problems.map((p) => p.message),
    isRead: (row) =>
      keptOf(row).length > 0 && (row.repeats === undefined || keptOf(row).length >= row.repeats),
    textsOf,
    type,
    done,
    cannot: (row, why) => {
      draft(row.id, undefined);
      write('yard-reading', { row: row.id, ...(why === undefined ? {} : { cannot: why }) });
    },
    conditions: (given) => write('yard-conditions', { ...given }),
    finish: (said) => write('yard-finished', { state: said }),
    choose: (name) => {
      const next = testName();
      if (name === undefined) setFresh(next);
      choose(name ?? next);
    },
  };
}

/** What the boxes of a row say: one reading or a list of them, '' when they are empty, undefined when one cannot be read. */
function valueOf(
  row: SheetReading,
  texts: readonly string[],
  units: UnitSystem,
): string | readonly string[] | undefined {
  const typed = texts.filter((t) => t.trim() !== '').map((t) => typedReading(t, row, units));
  if (typed.length === 0) return '';
  const values = typed.flatMap((t) => (t.ok ? [t.value] : []));
  if (values.length < typed.length) return undefined;
  return texts.length === 1 ? values[0]! : values;
}

/** Name of a test: its day, and what no other has. */
function testName(): string {
  return `${today()}-${operationName().slice(0, 8)}`;
}
