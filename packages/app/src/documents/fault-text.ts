import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Rig } from '@spraywright/engine/rig';
import {
  chanceText,
  dutyConditions,
  readingTask,
  remedyOf,
  toldChecks,
  toldFirst,
  toldSuspects,
  verdictText,
  worthText,
  YARD_CAUTIONS,
  type Check,
  type Diagnosis,
  type YardSheet,
} from '@spraywright/engine/yard';

/** Suspects and checks that are listed. */
const LISTED = 5;

/** What is likely wrong with a rig in service, for the terminal. */
export function faultText(rig: Rig, sheet: YardSheet, diagnosis: Diagnosis, units: UnitSystem): string {
  const remedy = remedyOf(rig, diagnosis);
  const others = toldSuspects(diagnosis, LISTED).slice(1);
  const first = toldFirst(diagnosis);
  const asked = new Set(first.map(idOf));
  const next = toldChecks(diagnosis, LISTED).filter((c) => !asked.has(idOf(c)));
  return [
    `What is wrong: ${sheet.title}, for ${sheet.customer}`,
    ...YARD_CAUTIONS,
    '',
    verdictText(diagnosis),
    ...(remedy?.mend === undefined ? [] : [`  Do: ${remedy.mend}`]),
    ...(remedy === undefined
      ? []
      : [`  Send: ${remedy.send}${remedy.part === undefined ? '' : ` (${remedy.part})`}`]),
    '',
    ...(others.length === 0
      ? []
      : ['Also possible', ...others.map((s) => `  ${chanceText(s)}  ${s.name}`), '']),
    ...(first.length === 0
      ? []
      : ['Ask these first, whatever it is', ...first.map((c) => `  ${checkText(c, sheet, units)}`), '']),
    ...(next.length === 0
      ? []
      : [
          'Then check, the most telling first: how much of the doubt it is likely to settle',
          ...next.map((c) => `  ${worthText(c).padEnd(8)}${checkText(c, sheet, units)}`),
          '',
        ]),
    `How often which fault occurs is ${diagnosis.source}. The rest follows from this rig's own network and tolerances.`,
    '',
  ].join('\n');
}

const idOf = (check: Check) => ('look' in check ? check.look : check.reading);

function checkText(check: Check, sheet: YardSheet, units: UnitSystem): string {
  if ('look' in check) return `${check.question} [look: ${check.look}]`;
  const row = sheet.readings.find((r) => r.id === check.reading);
  if (row === undefined) return check.reading;
  const at = row.duty === undefined ? '' : ` (${dutyConditions([row], units)})`;
  return `${readingTask(row, units)}${at} [reading: ${row.id}]`;
}
