import type { Catalogue } from '@spraywright/engine/catalogue';
import { formatPath } from '@spraywright/engine/quantity';
import { asBuilt, type AsBuilt, type PutInstead } from '@spraywright/engine/rig';
import { entriesOfKinds, openMachine, Refusal, type Machine, type Records } from '../store/index.ts';

/** A machine of the records as it stands, with how many parts were put in since it was begun. */
export interface MachineAsBuilt extends AsBuilt {
  readonly machine: Machine;
  readonly instead: number;
}

/**
 * Reads a machine with every part that was put in since it was begun.
 *
 * @throws Refusal `no-such-machine`; `unreadable-rig` when this program cannot read what was kept
 */
export async function machineAsBuilt(
  db: Records['db'],
  serial: string,
  catalogue: Catalogue,
): Promise<MachineAsBuilt> {
  const machine = await openMachine(db, serial);
  const entries = await entriesOfKinds(db, serial, ['substitution']);
  const instead = entries.map(({ document }) => document as unknown as PutInstead);
  const built = asBuilt(machine.document, instead, catalogue);
  if (built.ok) return { ...built, machine, instead: instead.length };
  const problems = built.problems.map(({ path, code, message }) => ({
    field: formatPath(path),
    code,
    message,
  }));
  throw new Refusal('unreadable-rig', problems[0]!.message, { problems });
}
