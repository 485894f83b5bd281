import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Rig } from '@spraywright/engine/rig';
import {
  chanceText,
  dutyConditions,
  readingTask,
  remedyOf,
  toldChecks,
  toldSuspects,
  verdictText,
  YARD_CAUTIONS,
  type Diagnosis,
  type NextCheck,
  type YardSheet,
} from '@spraywright/engine/yard';

/** Suspects and checks that are listed. */
const LISTED = 5;

/** What is likely wrong with a rig in service, for the terminal. */
export function faultText(rig: Rig, sheet: YardSheet, diagnosis: Diagnosis, units: UnitSystem): string {
  const remedy = remedyOf(rig, diagnosis);
  const others = toldSuspects(diagnosis, LISTED).slice(1);
  const next = toldChecks(diagnosis, LISTED);
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
    ...(next.length === 0
      ? []
      : [
          'Check next, the most telling first',
          ...next.map((c) => `  ${c.bits.toFixed(2)} bit  ${checkText(c, sheet, units)}`),
          '',
        ]),
    `How often which fault occurs is ${diagnosis.source}. The rest follows from this rig's own network and tolerances.`,
    '',
  ].join('\n');
}

function checkText(check: NextCheck, sheet: YardSheet, units: UnitSystem): string {
  if ('look' in check) return `${check.question} [look: ${check.look}]`;
  const row = sheet.readings.find((r) => r.id === check.reading);
  if (row === undefined) return check.reading;
  const at = row.duty === undefined ? '' : ` (${dutyConditions([row], units)})`;
  return `${readingTask(row, units)}${at} [reading: ${row.id}]`;
}
