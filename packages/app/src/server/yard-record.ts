import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Proof, Rig } from '@spraywright/engine/rig';
import {
  judgeReadings,
  matchReadings,
  readingsOfTest,
  readReadings,
  yardSheet,
  yardTests,
} from '@spraywright/engine/yard';
import type { HandbookOptions } from '../documents/handbook/handbook-options.ts';
import type { MachineEntry } from '../store/index.ts';

/** Kinds of entries that a yard test is put together from. */
export const YARD_KINDS: readonly string[] = ['yard-conditions', 'yard-reading', 'yard-finished'];

/**
 * The yard test that stands in a machine's handbook: the last that was finished, else the last that was begun. Readings
 * that no longer fit the machine, as after another gun, are not printed, and that is said.
 */
export function yardRecord(
  rig: Rig,
  proof: Proof,
  entries: readonly MachineEntry[],
  serial: string,
  units: UnitSystem,
): Pick<HandbookOptions, 'tested' | 'yardNote'> {
  const read = yardTests(entries).tests.filter((t) => t.values.size > 0);
  const test = read.findLast((t) => t.finished !== undefined) ?? read.at(-1);
  if (test === undefined) return {};
  const day = test.begun.slice(0, 10);
  const head = readReadings(readingsOfTest({ ...test, begun: day }, serial, rig.document.id));
  if (!head.ok) return { yardNote: unfit(day, head.problems[0]!.message) };
  const { waterTemperature } = head.document;
  const sheet = yardSheet(rig, proof, {
    units,
    ...(waterTemperature === undefined ? {} : { waterTemperature }),
  });
  const matched = matchReadings(head.document, sheet.rig, sheet.readings);
  if (!matched.ok) return { yardNote: unfit(day, matched.problems[0]!.message) };
  const { edition } = test;
  const judged = judgeReadings(rig, sheet, matched.taken, {
    units,
    ...(edition === undefined ? {} : { edition }),
  });
  return { tested: { sheet, taken: matched.taken, judged } };
}

function unfit(day: string, why: string): string {
  return `A yard test of ${day} is recorded and does not fit this machine as it stands now (${why}): test it again. Figures here are worked out, not measured.`;
}
