import type { Kysely } from 'kysely';

/**
 * People, their passwords (hashed) and where they are signed in. The columns carry the names that the library for
 * sign-in asks for; moments are ISO text and flags 0 or 1, as everywhere.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('people')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('email', 'text', (c) => c.notNull().unique())
    .addColumn('emailVerified', 'integer', (c) => c.notNull())
    .addColumn('image', 'text')
    .addColumn('role', 'text', (c) => c.notNull())
    .addColumn('createdAt', 'text', (c) => c.notNull())
    .addColumn('updatedAt', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('passwords')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('accountId', 'text', (c) => c.notNull())
    .addColumn('providerId', 'text', (c) => c.notNull())
    .addColumn('userId', 'text', (c) => c.notNull().references('people.id'))
    .addColumn('accessToken', 'text')
    .addColumn('refreshToken', 'text')
    .addColumn('idToken', 'text')
    .addColumn('accessTokenExpiresAt', 'text')
    .addColumn('refreshTokenExpiresAt', 'text')
    .addColumn('scope', 'text')
    .addColumn('password', 'text')
    .addColumn('createdAt', 'text', (c) => c.notNull())
    .addColumn('updatedAt', 'text', (c) => c.notNull())
    .execute();
  await db.schema
    .createTable('sessions')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('expiresAt', 'text', (c) => c.notNull())
    .addColumn('token', 'text', (c) => c.notNull().unique())
    .addColumn('createdAt', 'text', (c) => c.notNull())
    .addColumn('updatedAt', 'text', (c) => c.notNull())
    .addColumn('ipAddress', 'text')
    .addColumn('userAgent', 'text')
    .addColumn('userId', 'text', (c) => c.notNull().references('people.id'))
    .execute();
  await db.schema
    .createTable('verifications')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('identifier', 'text', (c) => c.notNull())
    .addColumn('value', 'text', (c) => c.notNull())
    .addColumn('expiresAt', 'text', (c) => c.notNull())
    .addColumn('createdAt', 'text', (c) => c.notNull())
    .addColumn('updatedAt', 'text', (c) => c.notNull())
    .execute();
}
