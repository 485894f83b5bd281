import type { UnitSystem } from '@spraywright/engine/quantity';
import {
  dutyConditions,
  READING_WORDS,
  readingsOfTest,
  YARD_CAUTIONS,
  type JudgedTest,
  type SheetReading,
  type YardSheet,
} from '@spraywright/engine/yard';
import { useEffect, type ReactNode } from 'react';
import { momentText } from '../../frame/moment.ts';
import { hashOf } from '../../frame/hash.ts';
import { KeepingNote } from '../keeping-note.tsx';
import { askedOf, useTold } from '../worker/machine-link.ts';
import type { CautionRow, YardTold } from '../worker/protocol.ts';
import { YardConditions } from './conditions.tsx';
import { OpenReading } from './open-reading.tsx';
import { ReadingMark } from './reading-mark.tsx';
import { ReadingRow } from './reading-row.tsx';
import { TestsBefore } from './tests-before.tsx';
import { useYardTest, type TakenTest } from './use-yard-test.ts';
import { shortName } from './yard-words.ts';
import '../../style/machines-yard.css';

interface YardGiven {
  readonly serial: string;
  readonly at: readonly string[];
  readonly units: UnitSystem;
}

/** The yard test of one machine: on a tablet, in the sun, with wet hands and no network. */
export function YardSection({ serial, at, units }: YardGiven) {
  useSunlight();
  const taken = useYardTest(serial, units);
  const { machine, keeping } = taken.state;
  const { test } = taken;
  const rig = String(machine?.document.rig.id);
  const answer = useTold('yard', askedOf(taken.state, units), {
    // Before the first entry nothing is read, and the sheet is shown.
    readings:
      test === undefined
        ? { format: 'spraywright-readings', rig, readings: [] }
        : readingsOfTest(test, serial, rig),
    ...(test?.edition === undefined ? {} : { edition: test.edition }),
  });
  if (machine === undefined)
    return (
      <Page serial={serial} count="">
        <p>
          {keeping.is === 'absent'
            ? `There is no machine ${serial} in the records.`
            : keeping.is === 'away'
              ? 'This machine is not on this device yet. Open it once with a network; then it works without.'
              : keeping.is === 'refused'
                ? `The records refuse: ${keeping.why}.`
                : 'Fetching the machine.'}
        </p>
      </Page>
    );
  if (answer === undefined)
    return (
      <Page serial={serial} count="">
        <p>Working out the windows of this rig.</p>
      </Page>
    );
  if (!answer.ok)
    return (
      <Page serial={serial} count="">
        <p>No windows for this machine: {answer.why}.</p>
        <KeepingNote state={taken.state} />
      </Page>
    );
  return (
    <TestSheet
      serial={serial}
      open={at[0]}
      taken={taken}
      told={answer.value}
      current={answer.current && keeping.is !== 'asking'}
      units={units}
    />
  );
}

function Page(given: { readonly serial: string; readonly count: string; readonly children: ReactNode }) {
  return (
    <section className="yard" aria-label="Yard test">
      <header className="yard-head">
        <h1>Yard test</h1>
        <p>{given.serial}. Clean water only.</p>
        <p className="count">{given.count}</p>
      </header>
      {given.children}
    </section>
  );
}

interface SheetGiven {
  readonly serial: string;
  /** The row that is open. */
  readonly open: string | undefined;
  readonly taken: TakenTest;
  readonly told: YardTold;
  /** Whether it tells of everything that was read, and of the machine as it now is. */
  readonly current: boolean;
  readonly units: UnitSystem;
}

function TestSheet({ serial, open, taken, told, current, units }: SheetGiven) {
  const { sheet, judged, cautions, problems } = told;
  const { test, state, tests } = taken;
  const rows = sheet.readings;
  // One that is far from the others is to be taken again, though its box is filled.
  const again = new Set(judged.readings.flatMap((r) => ((r.repeatsLeft ?? 0) > 0 ? [r.id] : [])));
  const isRead = (row: SheetReading) => taken.isRead(row) && !again.has(row.id);
  const read = rows.filter(isRead).length;
  return (
    <Page serial={serial} count={`${read} of ${rows.length} read`}>
      <Cautions cautions={cautions} />
      <YardConditions test={test} windLimit={sheet.windLimit} units={units} onGive={taken.conditions} />
      {[...taken.problems, ...problems].map((p) => (
        <p key={p} className="problem" role="alert">
          {p}
        </p>
      ))}
      {groupsOf(sheet, units).map(({ title, rows: group }) => (
        <div key={title} className="duty-rows">
          <h2>{title}</h2>
          <ol>
            {group.map((row) => (
              <Reading key={row.id} {...{ serial, row, judged, taken, units }} open={row.id === open} />
            ))}
          </ol>
        </div>
      ))}
      {sheet.untested.map((name) => (
        <p key={name}>{name}: finds no steady state with water; it cannot be tested.</p>
      ))}
      <Result judged={judged} current={current} taken={taken} />
      <KeepingNote state={state} />
      <Bar serial={serial} rows={rows} open={open} taken={taken} isRead={isRead} />
      <TestsBefore tests={tests} shown={test?.id} onChoose={taken.choose} />
    </Page>
  );
}

function Reading(given: {
  readonly serial: string;
  readonly row: SheetReading;
  readonly judged: JudgedTest;
  readonly taken: TakenTest;
  readonly units: UnitSystem;
  readonly open: boolean;
}) {
  const { serial, row, judged, taken, units, open } = given;
  const one = judged.readings.find((r) => r.id === row.id);
  const cannot = taken.test?.cannot.get(row.id);
  if (!open)
    return (
      <ReadingRow
        row={row}
        judged={one}
        cannot={cannot}
        href={hashOf(serial, 'yard', row.id)}
        units={units}
      />
    );
  return (
    <OpenReading
      row={row}
      judged={one}
      cannot={cannot}
      texts={taken.textsOf(row, one?.repeatsLeft)}
      units={units}
      onType={(texts, by) => taken.type(row, texts, by)}
      onDone={() => taken.done(row)}
      onCannot={() => taken.cannot(row, cannot === undefined ? 'cannot be read' : undefined)}
    />
  );
}

function Cautions({ cautions }: { cautions: readonly CautionRow[] }) {
  return (
    <div className="yard-cautions" role="note">
      <svg width="46" height="42" viewBox="0 0 46 42" aria-hidden="true">
        <path d="M23 3L43 39H3z" fill="none" stroke="currentColor" strokeWidth="3" strokeLinejoin="round" />
        <path d="M23 15v12M23 31v4" stroke="currentColor" strokeWidth="4" />
      </svg>
      <div>
        {YARD_CAUTIONS.map((c) => (
          <p key={c}>
            <b>{c}</b>
          </p>
        ))}
        {cautions.length > 0 && (
          <details>
            <summary>What else is dangerous on this rig ({cautions.length})</summary>
            <ul>
              {cautions.map((c) => (
                <li key={c.id}>
                  <b>{c.danger}</b> {c.act} <span className="note">{c.source}</span>
                </li>
              ))}
            </ul>
          </details>
        )}
      </div>
    </div>
  );
}

/** A test is finished by the word for everything that was read, never by the one before the last reading. */
function Result(given: { judged: JudgedTest; current: boolean; taken: TakenTest }) {
  const { judged, current, taken } = given;
  const { test } = taken;
  if (test === undefined || test.values.size === 0) return null;
  const { finished } = test;
  const word = judged.state === 'missing' ? 'Not complete' : READING_WORDS[judged.state];
  return (
    <div className="result">
      <p>
        <ReadingMark state={judged.state} size={34} /> The test: <b>{word}</b>
      </p>
      {finished === undefined ? (
        <button type="button" disabled={!current} onClick={() => taken.finish(judged.state)}>
          {judged.state === 'missing'
            ? 'Finish as it is, not complete'
            : `Finish the test: ${word.toLowerCase()}`}
        </button>
      ) : (
        <p>
          Finished {momentText(finished.at)}
          {finished.by === '' ? '' : ` by ${finished.by}`}. A further reading opens it again.
        </p>
      )}
    </div>
  );
}

function Bar(given: {
  readonly serial: string;
  readonly rows: readonly SheetReading[];
  readonly open: string | undefined;
  readonly taken: TakenTest;
  readonly isRead: (row: SheetReading) => boolean;
}) {
  const { serial, rows, open, taken, isRead } = given;
  const at = rows.findIndex((r) => r.id === open);
  const unread = (r: SheetReading) => !isRead(r) && !(taken.test?.cannot.has(r.id) ?? false);
  const next = rows.slice(at + 1).find(unread) ?? rows.slice(0, Math.max(0, at)).find(unread);
  const back = rows[at - 1];
  const leave = () => {
    const row = rows[at];
    if (row !== undefined) taken.done(row);
  };
  return (
    <nav className="yard-bar" aria-label="Readings">
      {back !== undefined && (
        <a href={hashOf(serial, 'yard', back.id)} onClick={leave}>
          Back
        </a>
      )}
      {next !== undefined ? (
        <a className="next" href={hashOf(serial, 'yard', next.id)} onClick={leave}>
          {at === -1 ? 'Begin' : 'Next'}: {shortName(next).toLowerCase()}
        </a>
      ) : (
        <a className="next" href={hashOf(serial, 'yard')} onClick={leave}>
          Everything is read
        </a>
      )}
    </nav>
  );
}

function groupsOf(sheet: YardSheet, units: UnitSystem) {
  const whole = sheet.readings.filter((r) => r.duty === undefined);
  const ofDuty = (id: string) => sheet.readings.filter((r) => r.duty === id);
  return [
    // Speed is set first; a scale comes last, with the tank empty.
    { title: 'The whole rig', rows: whole.filter((r) => r.instrument !== 'scale') },
    ...sheet.duties.map(({ id, name }) => ({
      title: `${name}: ${dutyConditions(ofDuty(id), units)}`,
      rows: ofDuty(id),
    })),
    { title: 'On the scale, tank empty', rows: whole.filter((r) => r.instrument === 'scale') },
  ].filter((g) => g.rows.length > 0);
}

/** In the yard the day's sheet is white and its lines are heavier. */
function useSunlight(): void {
  useEffect(() => {
    const { dataset } = document.documentElement;
    const before = dataset.sheet;
    if (before === 'day') dataset.sheet = 'sun';
    return () => {
      if (before !== undefined) dataset.sheet = before;
    };
  }, []);
}
