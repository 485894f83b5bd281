import { randomBytes } from 'node:crypto';
import { betterAuth } from 'better-auth';
import { addDoing, type Records } from '../store/index.ts';
import { doingAt, type Told } from './doings-book.ts';
import { LockOut, MOST } from './lock-out.ts';
import { ROLES, type Role } from './role-table.ts';

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
}

/** Headers of an answer that signs somebody in or out. */
type SignInAnswer =
  { readonly ok: true; readonly headers: Headers } | { readonly ok: false; locked: boolean };

const SHORTEST_PASSWORD = 12;
const LONGEST_PASSWORD = 128;
/** How long a sign-in lasts without use [s]. */
const SIGNED_IN = 7 * 24 * 3600;

/** The people of a shop: who they are, what they are, and whether they are who they say. */
export class People {
  readonly #records: Records;
  #made: Promise<ReturnType<typeof authOver>> | undefined;
  readonly #lockOut: LockOut;
  readonly #clock: () => number;

  constructor(records: Records, clock: () => number) {
    this.#records = records;
    this.#lockOut = new LockOut(records);
    this.#clock = clock;
  }

  /** Made when first needed: it looks at the tables by itself, and where one person works alone nobody needs it. */
  get #auth() {
    this.#made ??= signingSecret(this.#records)
      .then((secret) => authOver(this.#records, secret))
      .catch((error: unknown) => {
        this.#made = undefined;
        throw error;
      });
    return this.#made;
  }

  /** @throws Error naming the field that is wrong */
  check({ name, email, role }: Omit<Person, 'id'>): void {
    if (!ROLES.includes(role)) throw new Error(`role is '${role}'; it is one of ${ROLES.join(', ')}`);
    if (name.trim() === '' || name.length > 60) throw new Error('name has 1 to 60 letters');
    if (!/^[^\s@]+@[^\s@]+$/.test(email) || email.length > 200)
      throw new Error(`email is '${email}'; an address such as dana@shop.example was expected`);
  }

  /** @throws Error naming the field that is wrong */
  async add({ name, email, role, password }: Omit<Person, 'id'> & { password: string }): Promise<void> {
    this.check({ name, email, role });
    checkPassword(password);
    const { internalAdapter, password: hasher } = await (await this.#auth).$context;
    if ((await internalAdapter.findUserByEmail(email.toLowerCase())) !== null)
      throw new Error(`somebody has the e-mail address '${email}' already`);
    const hash = await hasher.hash(password);
    const person = await internalAdapter.createUser(
      {
        name: name.trim(),
        email: email.toLowerCase(),
        role,
        emailVerified: false,
      },
      { method: 'email-password' },
    );
    await internalAdapter.linkAccount({
      userId: person.id,
      providerId: 'credential',
      accountId: person.id,
      password: hash,
    });
  }

  list(): Promise<Person[]> {
    const { db } = this.#records;
    const columns = ['id', 'name', 'email', 'role'] as const;
    return db.selectFrom('people').select(columns).orderBy('email').execute() as Promise<Person[]>;
  }

  /** Takes somebody out and ends where they are signed in. @throws Error when nobody, or the last owner, is meant */
  remove(email: string): Promise<void> {
    return this.#records.save(async (t) => {
      const people = await t.selectFrom('people').select(['id', 'email', 'role']).execute();
      const person = people.find((p) => p.email === email.toLowerCase());
      if (person === undefined) throw new Error(`nobody has the e-mail address '${email}'`);
      if (person.role === 'owner' && people.filter((p) => p.role === 'owner').length === 1)
        throw new Error(`'${email}' is the only owner; add another first`);
      await t.deleteFrom('sessions').where('userId', '=', person.id).execute();
      await t.deleteFrom('passwords').where('userId', '=', person.id).execute();
      await t.deleteFrom('people').where('id', '=', person.id).execute();
    });
  }

  async signIn(email: string, password: string): Promise<SignInAnswer> {
    const name = email.toLowerCase();
    const auth = await this.#auth;
    const tries = await this.#lockOut.begin(name, this.#clock());
    if (tries === 0) return { ok: false, locked: true };
    const person = (await this.list()).find((p) => p.email === name);
    try {
      const body = { email: name, password };
      const { headers } = await auth.api.signInEmail({ body, returnHeaders: true });
      await this.#lockOut.succeeded(name, this.#clock());
      await this.tell({ ...whoIs(person), did: 'Sign in' });
      return { ok: true, headers };
    } catch (error) {
      if (!isRefusal(error)) throw error;
      await this.#tellWrong(person, tries, 'Sign in');
      return { ok: false, locked: false };
    }
  }

  async signedIn(headers: Headers): Promise<Person | undefined> {
    const found = await (await this.#auth).api.getSession({ headers });
    if (found === null) return undefined;
    const { id, name, email, role } = found.user;
    return { id, name, email, role: role as Role };
  }

  async signOut(headers: Headers, person: Person): Promise<Headers> {
    const out = await (await this.#auth).api.signOut({ headers, returnHeaders: true });
    await this.tell({ ...whoIs(person), did: 'Sign out' });
    return out.headers;
  }

  /** Everywhere else where the person was signed in is signed out. @throws Error when the new one is too short or long */
  async changePassword(headers: Headers, person: Person, from: string, to: string): Promise<SignInAnswer> {
    checkPassword(to);
    const auth = await this.#auth;
    const tries = await this.#lockOut.begin(person.email, this.#clock());
    if (tries === 0) return { ok: false, locked: true };
    const did = 'Change the password';
    try {
      const body = { currentPassword: from, newPassword: to, revokeOtherSessions: true };
      const changed = await auth.api.changePassword({ body, headers, returnHeaders: true });
      await this.#lockOut.succeeded(person.email, this.#clock());
      await this.tell({ ...whoIs(person), did });
      return { ok: true, headers: changed.headers };
    } catch (error) {
      if (!isRefusal(error)) throw error;
      await this.#tellWrong(person, tries, did);
      return { ok: false, locked: false };
    }
  }

  /** Writes a line into the book of who did what. */
  async tell(told: Told): Promise<void> {
    await this.#records.save((t) => addDoing(t, doingAt(new Date(this.#clock()).toISOString(), told)));
  }

  /**
   * A wrong password goes into the book under the person's name. Of addresses that nobody has only a few are written, and
   * never the address: no stranger fills the book, and no password typed in the wrong field stands in it.
   */
  async #tellWrong(person: Person | undefined, tries: number, did: string): Promise<void> {
    const closed = tries === MOST ? '; closed for a quarter of an hour' : '';
    if (person !== undefined) await this.tell({ ...whoIs(person), did, what: `Wrong password${closed}` });
    else if ((await this.#lockOut.begin(NOBODY, this.#clock())) > 0)
      await this.tell({ did, what: 'An address that nobody has' });
  }
}

/** Counts tries under addresses that nobody has; no address begins with a space. */
const NOBODY = ' nobody';

function whoIs(person: Person | undefined): Told {
  return { who: person?.name ?? '', email: person?.email ?? '', role: person?.role ?? '' };
}

function checkPassword(password: string): void {
  const { length } = password;
  if (length < SHORTEST_PASSWORD || length > LONGEST_PASSWORD)
    throw new Error(
      `the password has ${length} letters; ${SHORTEST_PASSWORD} to ${LONGEST_PASSWORD} are needed`,
    );
}

/** A refusal of the library for what was sent, not a failure of it. */
function isRefusal(error: unknown): boolean {
  const { statusCode } = error as { statusCode?: unknown };
  return typeof statusCode === 'number' && statusCode >= 400 && statusCode < 500;
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

function authOver({ db }: Records, secret: string) {
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
    session: { modelName: 'sessions', expiresIn: SIGNED_IN },
    advanced: {
      cookiePrefix: 'spraywright',
      defaultCookieAttributes: { httpOnly: true, sameSite: 'strict' },
    },
  });
}
