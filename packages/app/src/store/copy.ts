import { sql, type Kysely } from 'kysely';
import { stepsDone } from './migrate.ts';
import type { Records } from './records.ts';
import { KEYS, type Tables } from './schema.ts';

/** First line of a copy: the state of the tables it was taken from, and how many rows follow of each. */
interface CopyHead {
  readonly spraywright: 'records';
  readonly steps: readonly string[];
  readonly rows: Readonly<Record<string, number>>;
}

/** Rows that are read and written at a time. */
const PAGE = 500;

type TableName = keyof typeof KEYS;
type Row = Readonly<Record<string, unknown>>;

/**
 * All records as lines of JSON, as they stood at one moment: the same for SQLite and PostgreSQL, so that a copy of one
 * can be laid into the other. Saves go on on PostgreSQL while the copy is read, and wait on SQLite.
 */
export async function* copyLines({ db }: Pick<Records, 'db'>): AsyncGenerator<string> {
  const transaction = await db.startTransaction().setIsolationLevel('repeatable read').execute();
  try {
    const rows: Record<string, number> = {};
    for (const table of tableNames()) rows[table] = await countOf(transaction, table);
    const head: CopyHead = { spraywright: 'records', steps: await stepsDone(transaction), rows };
    yield `${JSON.stringify(head)}\n`;
    for (const table of tableNames())
      for await (const row of rowsOf(transaction, table)) yield `${JSON.stringify([table, row])}\n`;
  } finally {
    await transaction.rollback().execute();
  }
}

/**
 * Lays a copy into records that hold nothing yet; all rows or none.
 *
 * @returns rows of each table, counted again after they were written
 * @throws Error when the records hold something, the copy is of another state of the tables, is cut short or damaged
 */
export async function layCopy(
  { db }: Pick<Records, 'db'>,
  lines: AsyncIterable<string>,
): Promise<Readonly<Record<string, number>>> {
  const transaction = await db.startTransaction().execute();
  try {
    for (const table of tableNames())
      if ((await countOf(transaction, table)) > 0)
        throw new Error(`the records hold something already (${table}); a copy goes into empty ones`);
    let head: CopyHead | undefined;
    let waiting: { table: TableName; rows: Row[] } | undefined;
    const write = async () => {
      if (waiting !== undefined) await transaction.insertInto(waiting.table).values(waiting.rows).execute();
      waiting = undefined;
    };
    let number = 0;
    for await (const line of lines) {
      number++;
      const read = parsed(line, number);
      if (head === undefined) {
        head = headFrom(read);
        const here = (await stepsDone(transaction)).join(', ');
        if (head.steps.join(', ') !== here)
          throw new Error(
            `the copy was taken after step ${head.steps.at(-1) ?? 'none'}, these records are at another (${here}); use the same Spraywright for both`,
          );
        continue;
      }
      const { table, row } = rowFrom(read, number);
      if (waiting?.table !== table || waiting.rows.length === PAGE) await write();
      waiting ??= { table, rows: [] };
      waiting.rows.push(row);
    }
    await write();
    if (head === undefined) throw new Error('the copy is empty');
    const counts: Record<string, number> = {};
    for (const table of tableNames()) {
      counts[table] = await countOf(transaction, table);
      const told = head.rows[table] ?? 0;
      if (counts[table] !== told)
        throw new Error(
          `the copy tells of ${told} rows of ${table} and has ${counts[table]}: it is cut short`,
        );
    }
    await transaction.commit().execute();
    return counts;
  } catch (error) {
    await transaction
      .rollback()
      .execute()
      .catch(() => undefined);
    throw error;
  }
}

function tableNames(): TableName[] {
  return Object.keys(KEYS) as TableName[];
}

async function countOf(db: Kysely<Tables>, table: TableName): Promise<number> {
  const { count } = await db
    .selectFrom(table)
    .select((e) => e.fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow();
  return Number(count);
}

/** Rows of a table in the order of its key, a page at a time. */
async function* rowsOf(db: Kysely<Tables>, table: TableName): AsyncGenerator<Row> {
  const keys = KEYS[table];
  const columns = sql.join(keys.map((k) => sql.ref(k)));
  let after: Row | undefined;
  for (;;) {
    const beyond =
      after === undefined
        ? sql``
        : sql`where (${columns}) > (${sql.join(keys.map((k) => sql.val(after![k])))})`;
    const { rows } =
      await sql<Row>`select * from ${sql.table(table)} ${beyond} order by ${columns} limit ${sql.lit(PAGE)}`.execute(
        db,
      );
    yield* rows;
    if (rows.length < PAGE) return;
    after = rows.at(-1);
  }
}

function parsed(line: string, number: number): unknown {
  try {
    return JSON.parse(line) as unknown;
  } catch {
    throw new Error(`line ${number} of the copy is not JSON: it is damaged or cut short`);
  }
}

function headFrom(read: unknown): CopyHead {
  const head = read as Partial<CopyHead> | null;
  if (head?.spraywright !== 'records' || !Array.isArray(head.steps) || typeof head.rows !== 'object')
    throw new Error('line 1 does not begin a copy of the records');
  return head as CopyHead;
}

function rowFrom(read: unknown, number: number): { table: TableName; row: Row } {
  const [table, row] = Array.isArray(read) ? (read as [TableName, Row]) : [];
  if (table === undefined || !(table in KEYS) || typeof row !== 'object')
    throw new Error(`line ${number} of the copy is no row of a known table`);
  return { table, row: row };
}
