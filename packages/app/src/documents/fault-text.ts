import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Rig } from '@spraywright/engine/rig';
import {
  dutyConditions,
  readingTask,
  YARD_CAUTIONS,
  type Diagnosis,
  type NextCheck,
  type Suspect,
  type YardSheet,
} from '@spraywright/engine/yard';

/** Suspects and checks that are listed. */
const LISTED = 5;
const LEAST_LISTED = 0.005;

/** What is likely wrong with a rig in service, for the terminal. */
export function faultText(rig: Rig, sheet: YardSheet, diagnosis: Diagnosis, units: UnitSystem): string {
  const { state, suspects, next } = diagnosis;
  const [first] = suspects;
  const others = suspects.slice(1, LISTED).filter((s) => s.probability >= LEAST_LISTED);
  return [
    `What is wrong: ${sheet.title}, for ${sheet.customer}`,
    ...YARD_CAUTIONS,
    '',
    verdict(diagnosis),
    ...(state === 'found' ? remedy(rig, first!) : []),
    '',
    ...(others.length === 0 ? [] : ['Also possible', ...others.map((s) => `  ${chance(s)}  ${s.name}`), '']),
    ...(next.length === 0 || first!.probability > 0.99
      ? []
      : [
          'Check next, the most telling first',
          ...next.slice(0, LISTED).map((c) => `  ${c.bits.toFixed(2)} bit  ${checkText(c, sheet, units)}`),
          '',
        ]),
    `How often which fault occurs is ${diagnosis.source}. The rest follows from this rig's own network and tolerances.`,
    '',
  ].join('\n');
}

function verdict({ state, suspects }: Diagnosis): string {
  const [first, second] = suspects;
  switch (state) {
    case 'found':
      return `Most likely, ${chance(first!)}: ${first!.name}`;
    case 'nothing-wrong':
      return `Nothing wrong by what was read, ${chance(first!)}: it reads as a sound rig of these parts does`;
    case 'unknown-cause':
      return `No known fault reads so, ${chance(first!)}. Are the readings right, and are the parts those of the list?`;
    case 'cannot-tell':
      return `Cannot tell yet: what was read does not separate ${first!.name} (${chance(first!)}) from ${second!.name} (${chance(second!)})`;
  }
}

function remedy(rig: Rig, { item, send, mend }: Suspect): string[] {
  const part = rig.items.get(item ?? '')?.part;
  return [
    ...(mend === undefined ? [] : [`  Do: ${mend}`]),
    send === undefined || part === undefined
      ? '  Send: nothing'
      : `  Send: ${send}, for ${part.name} (${part.id})`,
  ];
}

function chance({ probability }: Suspect): string {
  if (probability > 0.99) return 'more than 99 in 100';
  return probability < 0.01 ? 'under 1 in 100' : `${Math.floor(100 * probability)} in 100`;
}

function checkText(check: NextCheck, sheet: YardSheet, units: UnitSystem): string {
  if ('look' in check) return `${check.question} [look: ${check.look}]`;
  const row = sheet.readings.find((r) => r.id === check.reading);
  if (row === undefined) return check.reading;
  const at = row.duty === undefined ? '' : ` (${dutyConditions([row], units)})`;
  return `${readingTask(row, units)}${at} [reading: ${row.id}]`;
}
