import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';
import type { People } from '../server/people.ts';
import type { Role } from '../server/role-table.ts';
import { EXIT, type Arguments, type Command, type Terminal } from './command.ts';
import { recordsAt, recordsPlace, RECORDS_OPTION } from './records-place.ts';

/** Adds, lists and takes out the people who may sign in. */
export const peopleCommand: Command = {
  name: 'people',
  usage: 'add NAME|list|link EMAIL|remove EMAIL',
  summary: 'Say who may sign in to the records, and in which role.',
  options: {
    email: { type: 'string', value: 'address', help: 'e-mail address that the person signs in with' },
    role: { type: 'string', value: 'role', help: 'owner, builder, shop-hand or support' },
    records: RECORDS_OPTION,
  },
  least: 1,
  most: 2,
  examples: [
    "spraywright people add 'Dana Field' --email dana@shop.example --role owner",
    'spraywright people list',
    'spraywright people link dana@shop.example',
    'spraywright people remove dana@shop.example',
  ],
  async run(args, terminal) {
    const [work, who = ''] = args.positionals as [string, string?];
    if (!['add', 'list', 'link', 'remove'].includes(work)) {
      terminal.err(`people can add, list, link or remove, not '${work}'`);
      return EXIT.input;
    }
    const records = await recordsAt(recordsPlace(args), terminal);
    if (records === undefined) return EXIT.input;
    try {
      const { People } = await import('../server/people.ts');
      terminal.out(await done(new People(records, Date.now), work, who, args, terminal));
      return EXIT.ok;
    } catch (error) {
      terminal.err(`Nothing was changed: ${error instanceof Error ? error.message : String(error)}`);
      return EXIT.input;
    } finally {
      await records.close();
    }
  },
};

/** How the book names whoever works at the terminal, where nobody signs in. */
const TERMINAL = { who: 'at the terminal', about_kind: 'people' };

async function done(
  people: People,
  work: string,
  who: string,
  args: Arguments,
  terminal: Terminal,
): Promise<string> {
  if (work === 'list') {
    const rows = (await people.list()).map(({ role, email, name }) => `${role.padEnd(10)}${email}  ${name}`);
    return rows.length === 0 ? 'Nobody: one person works here without signing in.' : rows.join('\n');
  }
  if (work === 'link') {
    const { token } = await people.passwordLink(who);
    await people.tell({ ...TERMINAL, did: 'Make a link for a new password', about_id: who });
    return `A new password is chosen, once and within a day, at the server's address and then /new-password/${token}`;
  }
  if (work === 'remove') {
    await people.remove(who);
    await people.tell({ ...TERMINAL, did: 'Take somebody out', about_id: who });
    return `Taken out: ${who}`;
  }
  const [email, role] = [args.text('email') ?? '', (args.text('role') ?? '') as Role];
  people.check({ name: who, email, role });
  const password = await askedPassword(terminal);
  await people.add({ name: who, email, role, password });
  await people.tell({ ...TERMINAL, did: 'Add somebody', about_id: email, what: `${who}, ${role}` });
  return `Added: ${who}, ${role}. From now on everybody signs in.`;
}

/** One line from the terminal that is not shown; from a pipe where no person types. */
function askedPassword(terminal: Terminal): Promise<string> {
  const terminalInput = process.stdin.isTTY;
  if (terminalInput) terminal.err('Password, 12 letters at least (not shown):');
  const unseen = new Writable({ write: (_, __, next) => next() });
  const lines = createInterface({ input: process.stdin, output: unseen, terminal: terminalInput });
  return new Promise((resolve) => {
    lines.once('line', (line) => {
      resolve(line);
      lines.close();
    });
    lines.once('close', () => resolve(''));
  });
}
