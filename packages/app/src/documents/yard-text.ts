import { display, type UnitSystem } from '@spraywright/engine/quantity';
import {
  dutyConditions,
  judgedText,
  readingTask,
  readingText,
  READING_WORDS,
  repeatsTask,
  YARD_CAUTIONS,
  type JudgedReading,
  type JudgedTest,
  type SheetReading,
  type YardSheet,
} from '@spraywright/engine/yard';
import { table } from './text-table.ts';

/** The yard test sheet for the terminal; with a judged test also what was read and what it says. */
export function yardText(sheet: YardSheet, units: UnitSystem, judged?: JudgedTest): string {
  const groups = [
    { title: 'The whole rig', rows: sheet.readings.filter((r) => r.duty === undefined) },
    ...sheet.duties.map(({ id, name }) => ({
      title: name,
      rows: sheet.readings.filter((r) => r.duty === id),
    })),
  ].filter((g) => g.rows.length > 0);
  // Said once: in every row it would make the table wider than a terminal.
  const again = new Map(
    sheet.readings.flatMap((r) => (r.repeats === undefined ? [] : [[r.repeats, repeatsTask(r)] as const])),
  );
  return [
    `Yard test: ${sheet.title}, for ${sheet.customer}`,
    ...YARD_CAUTIONS,
    `A tape is read in wind up to ${display(sheet.windLimit, 'speed', units)} only. * needed: the test is not complete without it.`,
    ...[...again].sort(([a], [b]) => a - b).map(([times, how]) => `×${times}: ${how}.`),
    ...(judged === undefined ? [] : ['', `The test: ${READING_WORDS[judged.state]}`]),
    ...groups.flatMap(({ title, rows }) => [
      '',
      rows[0]!.duty === undefined ? title : `${title}: ${dutyConditions(rows, units)}`,
      ...readingLines(rows, units, judged),
    ]),
    ...sheet.untested.map((name) => `\n${name}: finds no steady state with water; it cannot be tested`),
    '',
  ].join('\n');
}

function readingLines(
  rows: readonly SheetReading[],
  units: UnitSystem,
  judged: JudgedTest | undefined,
): string[] {
  const say = (row: SheetReading, value: number) => readingText(row, value, units);
  const again = ({ repeats }: SheetReading) => (repeats === undefined ? '' : ` ×${repeats}`);
  const task = (row: SheetReading) => `${readingTask(row, units)}${again(row)}${row.needed ? ' *' : ''}`;
  if (judged === undefined)
    return table(
      ['  id', 'read', 'should be', 'from', 'to'],
      rows.map((row) => [
        `  ${row.id}`,
        task(row),
        say(row, row.expected),
        say(row, row.low),
        say(row, row.high),
      ]),
      [2, 3, 4],
    ).split('\n');
  const found = new Map<string, JudgedReading>(judged.readings.map((r) => [r.id, r]));
  return rows.flatMap((row) => {
    const one = found.get(row.id)!;
    const said = judgedText(row, one, units);
    const value = said === '' ? '' : `: ${said}`;
    return [
      `  ${READING_WORDS[one.state].padEnd(8)}${task(row)}${value}`,
      ...(one.state === 'missing' ? [] : one.because.map((why) => `          ${why}`)),
    ];
  });
}
