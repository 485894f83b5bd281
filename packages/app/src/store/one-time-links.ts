import { createHash, randomBytes } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { Tables } from './schema.ts';

/** How long an address opens [ms]. */
const OPEN = 24 * 3600_000;
/** Whose link makes the first owner. */
export const FIRST_OWNER = '';

export interface OneTimeLink {
  readonly token: string;
  readonly expiresAt: string;
}

/** A link that opens once; what the same person had before opens no more. */
export async function makeLink(db: Kysely<Tables>, personId: string, now: number): Promise<OneTimeLink> {
  const token = randomBytes(32).toString('base64url');
  const expiresAt = new Date(now + OPEN).toISOString();
  await db.deleteFrom('one_time_links').where('person_id', '=', personId).execute();
  await db
    .insertInto('one_time_links')
    .values({ token: digest(token), person_id: personId, expires_at: expiresAt })
    .execute();
  return { token, expiresAt };
}

/** Whose link it is, while it opens. */
export async function linkOf(db: Kysely<Tables>, token: string, now: number): Promise<string | undefined> {
  const row = await db
    .selectFrom('one_time_links')
    .select('person_id')
    .where('token', '=', digest(token))
    .where('expires_at', '>', new Date(now).toISOString())
    .executeTakeFirst();
  return row?.person_id;
}

/** Uses a link up; of two who use it at once one gets it. */
export async function useLink(db: Kysely<Tables>, token: string, now: number): Promise<string | undefined> {
  const personId = await linkOf(db, token, now);
  const { numDeletedRows } = await db
    .deleteFrom('one_time_links')
    .where('token', '=', digest(token))
    .executeTakeFirst();
  return numDeletedRows === 1n ? personId : undefined;
}

function digest(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
