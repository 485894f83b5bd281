import { sql, type Kysely } from 'kysely';
import { hasWord, isBehind, type Place } from './found-by.ts';
import type { Doing } from './job.ts';
import { fromJsonText, toJsonText } from './json-text.ts';
import type { MachineRow } from './machine-tables.ts';
import type { Machine, MachineDocument, MachineHead } from './machine.ts';
import { Refusal } from './refusal.ts';
import type { Tables } from './schema.ts';

/** Machines that have all the words, the last begun first. */
export interface MachineQuery {
  readonly words: readonly string[];
  readonly limit: number;
  /** Where the last machine of the page before stands: `madeAt` and `serial`. */
  readonly after?: Place;
}

/** What a machine is begun from; `serial` where the shop gives the number, `prefix` where the next free one is taken. */
export interface NewMachine {
  readonly number: { readonly serial: string } | { readonly prefix: string };
  readonly jobId: string;
  readonly jobVersion: number;
  readonly document: MachineDocument;
}

const HEAD = [
  'serial',
  'job_id',
  'job_version',
  'title',
  'customer',
  'made_at',
  'made_by',
] as const satisfies readonly (keyof MachineRow)[];

export async function listMachines(
  db: Kysely<Tables>,
  { words, limit, after }: MachineQuery,
): Promise<MachineHead[]> {
  let query = db.selectFrom('machines').select(HEAD);
  for (const word of words) query = query.where(hasWord(word));
  if (after !== undefined) query = query.where(isBehind(after, { at: 'made_at', name: 'serial' }));
  const rows = await query.orderBy('made_at', 'desc').orderBy('serial', 'desc').limit(limit).execute();
  return rows.map(machineHead);
}

/**
 * Begins a machine under a serial number that no other has.
 *
 * @throws Refusal `machine-exists` when the number that was given is taken
 */
export async function makeMachine(
  db: Kysely<Tables>,
  { number, jobId, jobVersion, document }: NewMachine,
  { by, at }: Doing,
): Promise<Machine> {
  const { title, customer } = namesOf(document);
  const rowOf = (serial: string): MachineRow => ({
    serial,
    job_id: jobId,
    job_version: jobVersion,
    title,
    customer,
    found_by: `${serial} ${title} ${customer} ${jobId}`.toLowerCase(),
    document: toJsonText(document),
    made_at: at,
    made_by: by,
  });
  if ('serial' in number) {
    const row = rowOf(number.serial);
    if (!(await taken(db, row))) return { ...machineHead(row), entries: 0, document };
    const { serial } = number;
    throw new Refusal('machine-exists', `there is already a machine '${serial}'`, { serial });
  }
  // Two programs on one database may be after the same number: whoever is second takes the next.
  for (let n = await lastNumber(db, number.prefix); ;) {
    const row = rowOf(`${number.prefix}${++n}`);
    if (!(await taken(db, row))) return { ...machineHead(row), entries: 0, document };
  }
}

/** @throws Refusal `no-such-machine` */
export async function openMachine(db: Kysely<Tables>, serial: string): Promise<Machine> {
  const row = await db.selectFrom('machines').selectAll().where('serial', '=', serial).executeTakeFirst();
  if (row === undefined) throw noSuchMachine(serial);
  const { count } = await db
    .selectFrom('machine_entries')
    .select((e) => e.fn.countAll<number>().as('count'))
    .where('serial', '=', serial)
    .executeTakeFirstOrThrow();
  return {
    ...machineHead(row),
    entries: Number(count),
    document: fromJsonText<MachineDocument>(row.document),
  };
}

export function noSuchMachine(serial: string): Refusal {
  return new Refusal('no-such-machine', `there is no machine '${serial}'`, { serial });
}

/** Puts the row in; true when its number is taken. */
async function taken(db: Kysely<Tables>, row: MachineRow): Promise<boolean> {
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('machines')
    .values(row)
    .onConflict((c) => c.column('serial').doNothing())
    .executeTakeFirst();
  return numInsertedOrUpdatedRows !== 1n;
}

/** The highest running number behind a prefix; 0 when there is none. */
async function lastNumber(db: Kysely<Tables>, prefix: string): Promise<number> {
  const rows = await db
    .selectFrom('machines')
    .select('serial')
    .where(sql<boolean>`substr(serial, 1, ${sql.lit(prefix.length)}) = ${prefix}`)
    .execute();
  return Math.max(0, ...rows.map(({ serial }) => Number(/^\d{1,6}$/.exec(serial.slice(prefix.length)) ?? 0)));
}

function namesOf({ rig }: MachineDocument): { title: string; customer: string } {
  const text = (value: unknown) => (typeof value === 'string' ? value.slice(0, 200) : '');
  const brief = rig.brief as { customer?: unknown } | undefined;
  return { title: text(rig.title), customer: text(brief?.customer) };
}

function machineHead(row: Pick<MachineRow, (typeof HEAD)[number]>): MachineHead {
  return {
    serial: row.serial,
    jobId: row.job_id,
    jobVersion: row.job_version,
    title: row.title,
    customer: row.customer,
    madeAt: row.made_at,
    madeBy: row.made_by,
  };
}
