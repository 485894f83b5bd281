import { randomBytes } from 'node:crypto';
import { betterAuth } from 'better-auth';
import type { Records } from '../store/index.ts';
import { LockOut } from './lock-out.ts';
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
  #made: ReturnType<typeof authOver> | undefined;
  readonly #lockOut = new LockOut();
  readonly #clock: () => number;

  constructor(records: Records, clock: () => number) {
    this.#records = records;
    this.#clock = clock;
  }

  /** Made when first needed: it looks at the tables by itself, and where one person works alone nobody needs it. */
  get #auth() {
    return (this.#made ??= authOver(this.#records));
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
    const { internalAdapter, password: hasher } = await this.#auth.$context;
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
    if (!this.#lockOut.begin(name, this.#clock())) return { ok: false, locked: true };
    try {
      const body = { email: name, password };
      const { headers } = await this.#auth.api.signInEmail({ body, returnHeaders: true });
      this.#lockOut.succeeded(name);
      return { ok: true, headers };
    } catch (error) {
      if (!isRefusal(error)) throw error;
      return { ok: false, locked: false };
    }
  }

  async signedIn(headers: Headers): Promise<Person | undefined> {
    const found = await this.#auth.api.getSession({ headers });
    if (found === null) return undefined;
    const { id, name, email, role } = found.user;
    return { id, name, email, role: role as Role };
  }

  async signOut(headers: Headers): Promise<Headers> {
    return (await this.#auth.api.signOut({ headers, returnHeaders: true })).headers;
  }

  /** Everywhere else where the person was signed in is signed out. @throws Error when the new one is too short or long */
  async changePassword(headers: Headers, { email }: Person, from: string, to: string): Promise<SignInAnswer> {
    checkPassword(to);
    if (!this.#lockOut.begin(email, this.#clock())) return { ok: false, locked: true };
    try {
      const body = { currentPassword: from, newPassword: to, revokeOtherSessions: true };
      const changed = await this.#auth.api.changePassword({ body, headers, returnHeaders: true });
      this.#lockOut.succeeded(email);
      return { ok: true, headers: changed.headers };
    } catch (error) {
      if (!isRefusal(error)) throw error;
      return { ok: false, locked: false };
    }
  }
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

function authOver({ db }: Records) {
  return betterAuth({
    // The tables hold moments and flags as SQLite has them, on PostgreSQL too.
    database: { db, type: 'sqlite' },
    baseURL: 'http://localhost',
    // Fresh at each start: no copy of the records holds what a session is signed with.
    secret: randomBytes(32).toString('base64url'),
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
