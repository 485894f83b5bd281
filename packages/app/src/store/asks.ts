import type { Kysely } from 'kysely';
import type { Tables } from './schema.ts';

/** Counts a request of an asker. @returns how many there were since the count began, with this one */
export async function countAsk(
  db: Kysely<Tables>,
  asker: string,
  now: string,
  until: string,
): Promise<number> {
  const { count } = await db
    .insertInto('asks')
    .values({ asker, count: 1, since: now, until })
    .onConflict((c) =>
      c.column('asker').doUpdateSet((e) => {
        const over = e('asks.until', '<=', now);
        return {
          count: e
            .case()
            .when(over)
            .then(1)
            .else(e('asks.count', '+', 1))
            .end(),
          since: e.case().when(over).then(now).else(e.ref('asks.since')).end(),
          until: e.case().when(over).then(until).else(e.ref('asks.until')).end(),
        };
      }),
    )
    .returning('count')
    .executeTakeFirstOrThrow();
  if (count === 1) await db.deleteFrom('asks').where('until', '<=', now).execute();
  return count;
}

/** How often an asker was counted since its count began; 0 when that is forgotten. */
export async function asksOf(db: Kysely<Tables>, asker: string, now: string): Promise<number> {
  const row = await db
    .selectFrom('asks')
    .select('count')
    .where('asker', '=', asker)
    .where('until', '>', now)
    .executeTakeFirst();
  return row?.count ?? 0;
}
