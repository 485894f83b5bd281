import type { Kysely } from 'kysely';
import type { Doing } from './job.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import type { MachineEntryRow } from './machine-tables.ts';
import type { MachineEntry, NewEntry } from './machine.ts';
import { noSuchMachine } from './machines.ts';
import type { Tables } from './schema.ts';

/**
 * Writes down what was sent of a machine, in its order. What is known by its name already is passed over.
 *
 * @returns how many were new, and the number of the last entry of the machine
 * @throws Refusal `no-such-machine`
 */
export async function addEntries(
  db: Kysely<Tables>,
  serial: string,
  sent: readonly NewEntry[],
  { by, at }: Doing,
): Promise<{ added: number; last: number }> {
  // The machine's row goes first: of two programs one waits here, and then counts on from the other's entries.
  const { numUpdatedRows } = await db
    .updateTable('machines')
    .set((e) => ({ made_by: e.ref('made_by') }))
    .where('serial', '=', serial)
    .executeTakeFirst();
  if (numUpdatedRows !== 1n) throw noSuchMachine(serial);
  const { highest } = await db
    .selectFrom('machine_entries')
    .select((e) => e.fn.max('number').as('highest'))
    .where('serial', '=', serial)
    .executeTakeFirstOrThrow();
  const before = Number(highest ?? 0);
  const known = await knownOperations(db, serial, sent);
  let last = before;
  for (const { operation, kind, document } of sent) {
    if (known.has(operation)) continue;
    known.add(operation);
    await db
      .insertInto('machine_entries')
      .values({
        serial,
        number: ++last,
        operation,
        kind,
        document: toJsonText(document),
        made_by: by,
        made_at: at,
      })
      .execute();
  }
  return { added: last - before, last };
}

/** Entries of one machine after a number, in order. */
export async function entriesAfter(
  db: Kysely<Tables>,
  serial: string,
  number: number,
  limit: number,
): Promise<MachineEntry[]> {
  const rows = await db
    .selectFrom('machine_entries')
    .selectAll()
    .where('serial', '=', serial)
    .where('number', '>', number)
    .orderBy('number')
    .limit(limit)
    .execute();
  return rows.map(entryOf);
}

/** Every entry of some kinds of one machine, in order. */
export async function entriesOfKinds(
  db: Kysely<Tables>,
  serial: string,
  kinds: readonly string[],
): Promise<MachineEntry[]> {
  const rows = await db
    .selectFrom('machine_entries')
    .selectAll()
    .where('serial', '=', serial)
    .where('kind', 'in', kinds)
    .orderBy('number')
    .execute();
  return rows.map(entryOf);
}

async function knownOperations(
  db: Kysely<Tables>,
  serial: string,
  sent: readonly NewEntry[],
): Promise<Set<string>> {
  const rows = await db
    .selectFrom('machine_entries')
    .select('operation')
    .where('serial', '=', serial)
    .where(
      'operation',
      'in',
      sent.map((entry) => entry.operation),
    )
    .execute();
  return new Set(rows.map((row) => row.operation));
}

export function entryOf(row: MachineEntryRow): MachineEntry {
  return {
    serial: row.serial,
    number: row.number,
    operation: row.operation,
    kind: row.kind,
    document: fromJsonText<MachineEntry['document']>(row.document),
    by: row.made_by,
    at: row.made_at,
  };
}
