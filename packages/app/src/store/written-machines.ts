import type { Kysely } from 'kysely';
import { fromJsonText } from './json-text.ts';
import { entryOf } from './machine-entries.ts';
import type { MachineDocument, MachineEntry } from './machine.ts';
import type { Tables } from './schema.ts';

/** A machine of which something was written down, with all that was, in order. */
export interface WrittenMachine {
  readonly serial: string;
  readonly document: MachineDocument;
  readonly entries: readonly MachineEntry[];
}

/**
 * A text that changes whenever an entry of these kinds is added to any machine, without reading the entries: how many
 * each machine has, and the number of its last.
 */
export async function writtenMark(db: Kysely<Tables>, kinds: readonly string[]): Promise<string> {
  const rows = await db
    .selectFrom('machine_entries')
    .select((e) => ['serial', e.fn.countAll<number>().as('count'), e.fn.max('number').as('last')])
    .where('kind', 'in', kinds)
    .groupBy('serial')
    .orderBy('serial')
    .execute();
  return rows.map(({ serial, count, last }) => `${serial} ${count} ${last}`).join('\n');
}

/** Every machine with an entry of one of these kinds, by serial number. */
export async function writtenMachines(
  db: Kysely<Tables>,
  kinds: readonly string[],
): Promise<WrittenMachine[]> {
  const rows = await db
    .selectFrom('machine_entries')
    .selectAll()
    .where('kind', 'in', kinds)
    .orderBy('serial')
    .orderBy('number')
    .execute();
  const entries = new Map<string, MachineEntry[]>();
  for (const row of rows) {
    const of = entries.get(row.serial) ?? [];
    of.push(entryOf(row));
    entries.set(row.serial, of);
  }
  const machines = await db
    .selectFrom('machines')
    .select(['serial', 'document'])
    .where('serial', 'in', (e) => e.selectFrom('machine_entries').select('serial').where('kind', 'in', kinds))
    .orderBy('serial')
    .execute();
  return machines.map(({ serial, document }) => ({
    serial,
    document: fromJsonText<MachineDocument>(document),
    entries: entries.get(serial) ?? [],
  }));
}
