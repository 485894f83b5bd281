import type { ReactNode } from 'react';
import { dayText } from '../frame/moment.ts';
import { KeepingNote } from './keeping-note.tsx';
import type { MachineKeeping, MachineState } from './machine-keeper.ts';
import type { StoredMachine } from './kept-machine.ts';
import { soldText } from './sold-text.ts';
import type { Told } from './worker/machine-link.ts';

/** A section of one machine: its head, then what it shows; or why nothing can be shown yet. */
export function MachineSheet<T>(given: {
  readonly name: string;
  readonly serial: string;
  readonly state: MachineState;
  readonly told: Told<T> | undefined;
  readonly children: (value: T) => ReactNode;
}) {
  const { name, serial, state, told, children } = given;
  const { machine, keeping } = state;
  const why =
    machine === undefined
      ? whyNot(serial, keeping)
      : told === undefined
        ? 'Reading the machine.'
        : told.ok
          ? undefined
          : `This cannot be worked out: ${told.why}.`;
  return (
    <section className="machine-sheet" aria-label={name}>
      <header className="machine-head">
        <h1>
          {serial}: {machine?.title ?? ''}
        </h1>
        {machine !== undefined && <p>{fromWhat(machine)}</p>}
      </header>
      {why !== undefined && <p role="status">{why}</p>}
      {machine !== undefined && <KeepingNote state={state} />}
      {machine !== undefined && told?.ok === true && children(told.value)}
    </section>
  );
}

/** For whom it is, and what its rig was taken from. */
function fromWhat({ customer, madeAt, jobId, jobVersion, document: { quote } }: StoredMachine): string {
  const from =
    quote === undefined
      ? `from job ${jobId} as it stood at version ${jobVersion}, not from an accepted quote`
      : `as sold: ${soldText(quote)}, job ${jobId}`;
  return `${customer === '' ? '' : `For ${customer}. `}Begun ${dayText(madeAt)} ${from}.`;
}

function whyNot(serial: string, keeping: MachineKeeping): string {
  switch (keeping.is) {
    case 'absent':
      return `There is no machine ${serial} in the records.`;
    case 'away':
      return 'This machine is not on this device yet. Open it once with a network; then it works without.';
    case 'refused':
      return `The records refuse: ${keeping.why}.`;
    default:
      return 'Fetching the machine.';
  }
}
