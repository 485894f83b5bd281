import { createHash } from 'node:crypto';
import { People } from '../src/server/people.ts';
import { ROLES, type Role } from '../src/server/role-table.ts';
import { copyLines } from '../src/store/index.ts';
import { demoCatalogue, demoRig, demoShop } from './demo.ts';
import { testServer, type TestServer } from './desk-server.ts';

export const PASSWORD = 'forty green barrels';
const NOW = Date.parse('2026-03-03T09:00:00Z');
export const emailOf = (role: Role) => `${role}@shop.example`;

/** A shop that is attacked: people of every role, signed in, a job and a machine. */
export interface AttackedShop {
  readonly server: TestServer;
  readonly people: People;
  readonly cookies: ReadonlyMap<Role, string>;
  readonly send: (method: string, path: string, given?: Sent) => Promise<Response>;
  /** All that the records hold, as one figure, without who signed in and who typed a wrong password. */
  readonly state: () => Promise<string>;
  /** A minute passes, so that nobody is slowed for asking often. */
  readonly later: () => void;
  /** What stands in the records and must never leave them. */
  readonly secrets: () => Promise<string[]>;
}

interface Sent {
  readonly role?: Role | undefined;
  readonly headers?: Readonly<Record<string, string>>;
  /** Text as it stands; anything else as JSON. */
  readonly body?: unknown;
}

export async function attackedShop(place?: string): Promise<AttackedShop> {
  let people!: People;
  let clock = NOW;
  const server = await testServer(
    () => new Date(clock).toISOString(),
    (records) => (people = new People(records, () => clock)),
    false,
    place,
  );
  const cookies = new Map<Role, string>();
  const send: AttackedShop['send'] = async (method, path, { role, headers, body } = {}) =>
    server.app.request(path, {
      method,
      headers: {
        ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
        ...(role === undefined ? {} : { Cookie: cookies.get(role)! }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
  for (const role of ROLES) {
    await people.add({ name: `The ${role}`, email: emailOf(role), role, password: PASSWORD });
    const answer = await people.signIn(emailOf(role), PASSWORD);
    cookies.set(role, answer.ok ? answer.headers.getSetCookie()[0]!.split(';')[0]! : '');
  }
  const { raw } = demoRig('light-cart', demoCatalogue(), demoShop());
  await must(send('POST', '/api/jobs', { role: 'owner', body: { id: 'cart', rig: raw } }));
  await must(
    send('POST', '/api/machines', { role: 'owner', body: { job: 'cart', version: 1, serial: 'CART-1' } }),
  );
  const state = async () => {
    const hash = createHash('sha256');
    for await (const line of copyLines(server.records))
      if (!/"did":"(Sign in|Sign out|Change the password)"/.test(line) && !line.startsWith('{'))
        hash.update(asked(line));
    return hash.digest('hex');
  };
  const secrets = async () => {
    const { db } = server.records;
    const hashes = await db.selectFrom('passwords').select('password').execute();
    const secret = await db.selectFrom('sign_in_secrets').select('secret').execute();
    return [...hashes.map((row) => row.password ?? ''), ...secret.map((row) => row.secret)];
  };
  const later = () => void (clock += 61_000);
  return { server, people, cookies, send, state, later, secrets };
}

/** A row without what work beside the server does to it on its own: how far a round of proofs that was asked for has come. */
function asked(line: string): string {
  if (line.startsWith('["reproof_findings"')) return '';
  return line.startsWith('["reproofs"') ? line.slice(0, line.indexOf(',"state"')) : line;
}

async function must(answer: Promise<Response>): Promise<void> {
  const { ok, status } = await answer;
  if (!ok) throw new Error(`the shop could not be set up: ${status}`);
}

/** What no answer may show: where the program stands, how it asks its records, what it keeps secret. */
const LEAK = /node_modules|\.tsx?:\d+|\n\s+at |SQLITE_|select "|insert into "|violates|syntax error at/i;

/** What is wrong with an answer, whatever was asked; undefined when nothing is. */
export async function leakOf(answer: Response, secrets: readonly string[]): Promise<string | undefined> {
  if (answer.status >= 500) return `answered ${answer.status}: ${await answer.text()}`;
  if (answer.headers.get('X-Content-Type-Options') !== 'nosniff') return 'may be sniffed';
  if (!answer.headers.get('Content-Security-Policy')?.includes("default-src 'self'"))
    return 'allows foreign scripts';
  const type = answer.headers.get('Content-Type') ?? '';
  if (!/json|html|text/.test(type)) return undefined;
  const text = await answer.text();
  const found = LEAK.exec(text)?.[0] ?? secrets.find((secret) => text.includes(secret));
  return found === undefined ? undefined : `shows ${found}`;
}
