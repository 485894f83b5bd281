import { randomBytes } from 'node:crypto';
import {
  addDoing,
  addPerson,
  FIRST_OWNER,
  hasOwner,
  linkOf,
  listPeople,
  makeLink,
  Refusal,
  removePerson,
  setPassword,
  signedInBy,
  useLink,
  type OneTimeLink,
  type Records,
} from '../store/index.ts';
import { doingAt, type Told } from './doings-book.ts';
import { LockOut, MOST } from './lock-out.ts';
import { ROLES, type Role } from './role-table.ts';
import { LONGEST_PASSWORD, RENEWED_AFTER, SHORTEST_PASSWORD, SIGNED_IN, signInOver } from './sign-in.ts';

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
}

type NewPerson = Omit<Person, 'id'>;

/** Cookies that are remembered at most. */
const MOST_TOKENS = 1000;

/** Headers of an answer that signs somebody in or out. */
type SignInAnswer =
  { readonly ok: true; readonly headers: Headers } | { readonly ok: false; locked: boolean };

/** The people of a shop: who they are, what they are, and whether they are who they say. */
export class People {
  readonly #records: Records;
  #made: ReturnType<typeof signInOver> | undefined;
  readonly #secure: boolean;
  readonly #lockOut: LockOut;
  readonly #clock: () => number;
  #anybody = false;
  /** What each cookie carries that the library found to be signed by us. */
  readonly #tokens = new Map<string, string>();

  /** @param secure where every page comes through TLS */
  constructor(records: Records, clock: () => number, secure = false) {
    this.#records = records;
    this.#secure = secure;
    this.#lockOut = new LockOut(records);
    this.#clock = clock;
  }

  /** Made when first needed: it looks at the tables by itself, and where one person works alone nobody needs it. */
  get #auth() {
    this.#made ??= signInOver(this.#records, this.#secure).catch((error: unknown) => {
      this.#made = undefined;
      throw error;
    });
    return this.#made;
  }

  /** Whether there is anybody: until then one person works here alone. */
  async anybody(): Promise<boolean> {
    // Once there is an owner there always is one; only the answer no can change.
    return (this.#anybody ||= (await this.list()).length > 0);
  }

  /** @throws Error naming the field that is wrong */
  check({ name, email, role }: NewPerson): void {
    if (!ROLES.includes(role)) throw new Error(`role is '${role}'; it is one of ${ROLES.join(', ')}`);
    if (name.trim() === '' || name.length > 60) throw new Error('name has 1 to 60 letters');
    if (!/^[^\s@]+@[^\s@]+$/.test(email) || email.length > 200)
      throw new Error(`email is '${email}'; an address such as dana@shop.example was expected`);
  }

  /** @throws Error naming the field that is wrong; Refusal `person-exists` */
  async add(person: NewPerson & { password: string }): Promise<void> {
    const { made, hash, at } = await this.#prepared(person);
    await this.#records.save(async (t) => {
      await addPerson(t, made, at);
      await setPassword(t, made.id, hash, at);
    });
  }

  list(): Promise<Person[]> {
    return listPeople(this.#records.db) as Promise<Person[]>;
  }

  /** Takes somebody out and ends where they are signed in. @throws Error when nobody, or the last owner, is meant */
  remove(email: string): Promise<void> {
    return this.#records.save(async (t) => {
      await removePerson(t, await idOf(t, email));
    });
  }

  /** A link at which somebody chooses a new password. @throws Error when nobody has the address */
  passwordLink(email: string): Promise<OneTimeLink> {
    return this.#records.save(async (t) => makeLink(t, await idOf(t, email), this.#clock()));
  }

  /** An address at which the first owner makes the account; undefined when there is an owner. */
  setUpLink(): Promise<OneTimeLink | undefined> {
    return this.#records.save(async (t) =>
      (await hasOwner(t)) ? undefined : makeLink(t, FIRST_OWNER, this.#clock()),
    );
  }

  /** Whom a link lets in while it opens; FIRST_OWNER for the first owner. */
  linkOf(token: string): Promise<string | undefined> {
    return linkOf(this.#records.db, token, this.#clock());
  }

  /** Makes the first owner. @throws Error naming the field that is wrong; Refusal `link-used` */
  async setUp(token: string, person: Omit<NewPerson, 'role'> & { password: string }): Promise<void> {
    // Looked at first, so that a stranger without a link is told nothing and costs no hash.
    if ((await this.linkOf(token)) !== FIRST_OWNER) throw linkUsed();
    const { made, hash, at } = await this.#prepared({ ...person, role: 'owner' });
    await this.#records.save(async (t) => {
      if ((await useLink(t, token, this.#clock())) !== FIRST_OWNER || (await hasOwner(t))) throw linkUsed();
      await addPerson(t, made, at);
      await setPassword(t, made.id, hash, at);
      await addDoing(t, doingAt(at, { ...whoIs(made), did: 'Become the first owner' }));
    });
  }

  /** Sets the password that the owner of a link chose; signs them out everywhere. @throws Refusal `link-used` */
  async choosePassword(token: string, password: string): Promise<Person> {
    if (!(await this.linkOf(token))) throw linkUsed();
    checkPassword(password);
    const [hash, at] = [await this.#hash(password), this.#now()];
    const person = await this.#records.save(async (t) => {
      const id = await useLink(t, token, this.#clock());
      if (id === undefined || id === FIRST_OWNER) throw linkUsed();
      const found = (await setPassword(t, id, hash, at)) as Person;
      await addDoing(t, doingAt(at, { ...whoIs(found), did: 'Choose a password by a link' }));
      return found;
    });
    await this.#lockOut.succeeded(person.email, this.#clock());
    return person;
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

  /**
   * The library reads a signed cookie; what it carries is remembered, so that the next request asks the records alone,
   * where a session that was ended is gone at once. One that is to be renewed goes to the library again.
   */
  async signedIn(headers: Headers): Promise<Person | undefined> {
    const cookie = headers.get('Cookie');
    if (cookie === null) return undefined;
    const token = this.#tokens.get(cookie);
    if (token !== undefined) {
      // The library goes by the machine's own clock.
      const fresh = new Date(Date.now() + (SIGNED_IN - RENEWED_AFTER) * 1000).toISOString();
      const known = await signedInBy(this.#records.db, token, fresh);
      if (known !== undefined) return known as Person;
      this.#tokens.delete(cookie);
    }
    const found = await (await this.#auth).api.getSession({ headers });
    if (found === null) return undefined;
    if (this.#tokens.size === MOST_TOKENS) this.#tokens.clear();
    this.#tokens.set(cookie, found.session.token);
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
    await this.#records.save((t) => addDoing(t, doingAt(this.#now(), told)));
  }

  #now(): string {
    return new Date(this.#clock()).toISOString();
  }

  async #hash(password: string): Promise<string> {
    const { password: hasher } = await (await this.#auth).$context;
    return hasher.hash(password);
  }

  async #prepared({ name, email, role, password }: NewPerson & { password: string }) {
    this.check({ name, email, role });
    checkPassword(password);
    const made = { id: newPersonId(), name: name.trim(), email: email.toLowerCase(), role };
    return { made, hash: await this.#hash(password), at: this.#now() };
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

async function idOf(db: Records['db'], email: string): Promise<string> {
  const person = (await listPeople(db)).find((p) => p.email === email.toLowerCase());
  if (person === undefined) throw new Error(`nobody has the e-mail address '${email}'`);
  return person.id;
}

export function newPersonId(): string {
  return randomBytes(12).toString('hex');
}

function linkUsed(): Refusal {
  return new Refusal('link-used', 'this address was used, was replaced by a newer one, or has expired');
}

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
