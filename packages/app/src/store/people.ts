import type { Kysely } from 'kysely';
import { Refusal } from './refusal.ts';
import type { Tables } from './schema.ts';

interface Person {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
}

/** A person as the office sees them. */
interface PersonKept extends Person {
  /** Browsers where they are signed in. */
  readonly signedIn: number;
  readonly hasPassword: boolean;
}

const COLUMNS = ['id', 'name', 'email', 'role'] as const;
const OWNER = 'owner';

export function listPeople(db: Kysely<Tables>): Promise<Person[]> {
  return db.selectFrom('people').select(COLUMNS).orderBy('email').execute();
}

/** People with where they are signed in. @param now moment as ISO text in UTC */
export async function keptPeople(db: Kysely<Tables>, now: string): Promise<PersonKept[]> {
  const people = await listPeople(db);
  const sessions = await db.selectFrom('sessions').select('userId').where('expiresAt', '>', now).execute();
  const passwords = await db.selectFrom('passwords').select('userId').execute();
  const having = new Set(passwords.map((p) => p.userId));
  return people.map((person) => ({
    ...person,
    signedIn: sessions.filter((s) => s.userId === person.id).length,
    hasPassword: having.has(person.id),
  }));
}

/** Whoever is signed in by a session that lasts beyond a moment. @param beyond ISO text in UTC */
export function signedInBy(db: Kysely<Tables>, token: string, beyond: string): Promise<Person | undefined> {
  return db
    .selectFrom('sessions')
    .innerJoin('people', 'people.id', 'sessions.userId')
    .select(['people.id', 'people.name', 'people.email', 'people.role'])
    .where('sessions.token', '=', token)
    .where('sessions.expiresAt', '>', beyond)
    .executeTakeFirst();
}

export async function hasOwner(db: Kysely<Tables>): Promise<boolean> {
  const row = await db
    .selectFrom('people')
    .select('id')
    .where('role', '=', OWNER)
    .limit(1)
    .executeTakeFirst();
  return row !== undefined;
}

/** @throws Refusal `person-exists` when somebody has the address */
export async function addPerson(db: Kysely<Tables>, person: Person, at: string): Promise<Person> {
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('people')
    .values({ ...person, emailVerified: 0, createdAt: at, updatedAt: at })
    .onConflict((c) => c.column('email').doNothing())
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows !== 1n)
    throw new Refusal('person-exists', `somebody has the e-mail address '${person.email}' already`);
  return person;
}

/** @throws Refusal `no-such-person`; `last-owner` when nobody would be left to let others in */
export async function setRole(db: Kysely<Tables>, id: string, role: string, at: string): Promise<Person> {
  const person = await personOf(db, id);
  if (role !== OWNER) await checkOwnerLeft(db, person);
  await db.updateTable('people').set({ role, updatedAt: at }).where('id', '=', id).execute();
  return { ...person, role };
}

/** Takes somebody out and ends where they are signed in. @throws Refusal `no-such-person`, `last-owner` */
export async function removePerson(db: Kysely<Tables>, id: string): Promise<Person> {
  const person = await personOf(db, id);
  await checkOwnerLeft(db, person);
  await endSessions(db, id);
  await db.deleteFrom('one_time_links').where('person_id', '=', id).execute();
  await db.deleteFrom('passwords').where('userId', '=', id).execute();
  await db.deleteFrom('people').where('id', '=', id).execute();
  return person;
}

/** Signs somebody out everywhere. @throws Refusal `no-such-person` */
export async function endSessions(db: Kysely<Tables>, id: string): Promise<Person> {
  const person = await personOf(db, id);
  await db.deleteFrom('sessions').where('userId', '=', id).execute();
  return person;
}

/** A new password, as a hash; everywhere where the person was signed in is signed out. */
export async function setPassword(
  db: Kysely<Tables>,
  id: string,
  password: string,
  at: string,
): Promise<Person> {
  const person = await endSessions(db, id);
  await db.deleteFrom('passwords').where('userId', '=', id).execute();
  await db
    .insertInto('passwords')
    .values({
      id,
      accountId: id,
      providerId: 'credential',
      userId: id,
      password,
      createdAt: at,
      updatedAt: at,
    })
    .execute();
  return person;
}

/** @throws Refusal `no-such-person` */
export async function personOf(db: Kysely<Tables>, id: string): Promise<Person> {
  const person = await db.selectFrom('people').select(COLUMNS).where('id', '=', id).executeTakeFirst();
  if (person === undefined) throw new Refusal('no-such-person', `there is nobody with the id '${id}'`);
  return person;
}

async function checkOwnerLeft(db: Kysely<Tables>, { email, role }: Person): Promise<void> {
  if (role !== OWNER) return;
  const owners = await db.selectFrom('people').select('id').where('role', '=', OWNER).execute();
  if (owners.length === 1) throw new Refusal('last-owner', `'${email}' is the only owner; add another first`);
}
