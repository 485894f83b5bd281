import { randomBytes } from 'node:crypto';
import { betterAuth } from 'better-auth';
import type { Records } from '../store/index.ts';

export const SHORTEST_PASSWORD = 12;
export const LONGEST_PASSWORD = 128;
/** How long a sign-in lasts without use [s]. */
export const SIGNED_IN = 7 * 24 * 3600;
/** After how long a sign-in that is used is made to last anew [s]. */
export const RENEWED_AFTER = 24 * 3600;

/**
 * The library for sign-in, over the people of the records. Only here does the program know it.
 *
 * @param secure where every page comes through TLS: a browser then never sends the sign-in in clear
 */
export async function signInOver(records: Records, secure: boolean) {
  return authOver(records, await signingSecret(records), secure);
}

/** Made once for the records, whichever process is first: a new start, and a second process, know the sessions there are. */
async function signingSecret({ db, save }: Records): Promise<string> {
  const name = 'sessions';
  await save((t) =>
    t
      .insertInto('sign_in_secrets')
      .values({ name, secret: randomBytes(32).toString('base64url') })
      .onConflict((c) => c.column('name').doNothing())
      .execute(),
  );
  const row = await db
    .selectFrom('sign_in_secrets')
    .select('secret')
    .where('name', '=', name)
    .executeTakeFirstOrThrow();
  return row.secret;
}

function authOver({ db }: Records, secret: string, secure: boolean) {
  return betterAuth({
    // The tables hold moments and flags as SQLite has them, on PostgreSQL too.
    database: { db, type: 'sqlite' },
    baseURL: 'http://localhost',
    secret,
    telemetry: { enabled: false },
    logger: { disabled: true },
    rateLimit: { enabled: false },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: SHORTEST_PASSWORD,
      maxPasswordLength: LONGEST_PASSWORD,
    },
    user: {
      modelName: 'people',
      additionalFields: { role: { type: 'string', required: true, input: false } },
    },
    account: { modelName: 'passwords' },
    verification: { modelName: 'verifications' },
    session: { modelName: 'sessions', expiresIn: SIGNED_IN, updateAge: RENEWED_AFTER },
    advanced: {
      cookiePrefix: 'spraywright',
      useSecureCookies: secure,
      defaultCookieAttributes: { httpOnly: true, sameSite: 'strict' },
    },
  });
}
