import type { Correction, Rig } from '@spraywright/engine/rig';
import { correctionsOf, readLearned } from '@spraywright/engine/yard';
import { located } from '../documents/json-source.ts';
import type { Terminal } from './command.ts';
import { printProblems, readSource } from './inputs.ts';

/** What readings of built rigs have taught of a rig's parts, or of one machine by its serial number; none without a file, undefined when it is wrong, which has been said. */
export function learnedCorrections(
  rig: Rig,
  file: string | undefined,
  serial: string | undefined,
  terminal: Terminal,
): Correction[] | undefined {
  if (file === undefined) return [];
  const source = readSource(file, 'learned', terminal);
  if (source === undefined) return undefined;
  const learned = readLearned(source.raw);
  if (!learned.ok) {
    printProblems(located(source, learned.problems), terminal);
    return undefined;
  }
  const corrections = correctionsOf(rig, learned.document, serial);
  if (corrections === undefined)
    terminal.err(
      `serial is '${serial}'; ${file} knows no tested machine of rig '${rig.document.id}' with it`,
    );
  return corrections;
}
