import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Shop } from '@spraywright/engine/catalogue';
import { formatPath } from '@spraywright/engine/quantity';
import type { FrozenQuote } from '../documents/quote/frozen-quote.ts';
import {
  addEntries,
  entriesAfter,
  listMachines,
  makeMachine,
  openMachine,
  soldRigOf,
  type Records,
} from '../store/index.ts';
import { begunFromJob, begunFromQuote, soldOption } from './begin-from.ts';
import { checkEntries } from './entry-check.ts';
import { afterPlace, nextOf, wordsOf } from './found-list.ts';
import {
  addEntriesRoute,
  entriesRoute,
  listMachinesRoute,
  makeMachineRoute,
  openMachineRoute,
  soldOfJobRoute,
} from './machine-routes.ts';
import { fieldProblem } from './problem.ts';
import { signedName } from './role-guard.ts';
import type { Shelf } from './shelf.ts';

interface MachineApi {
  readonly shelf: Shelf;
  readonly records: Records;
  /** The moment as ISO text in UTC. */
  readonly now: () => string;
}

/** Begin machines, list and open them, and write down what is done to them. */
export function machineApi(app: OpenAPIHono, { shelf, records, now }: MachineApi): void {
  const { db, save } = records;

  app.openapi(listMachinesRoute, async (c) => {
    const { find, limit, after } = c.req.valid('query');
    const machines = await listMachines(db, { words: wordsOf(find), limit, ...afterPlace(after) });
    const next = nextOf(machines, limit, ({ madeAt, serial }) => ({ at: madeAt, name: serial }));
    return c.json({ machines, ...next }, 200);
  });

  app.openapi(makeMachineRoute, async (c) => {
    const { job: jobId, version, from, serial, by } = c.req.valid('json');
    const sold = from === 'quote' ? await begunFromQuote(db, jobId) : undefined;
    const begun = sold ?? (await begunFromJob(db, shelf, jobId, version));
    if (!begun.ok)
      return fieldProblem(
        c,
        'unreadable-rig',
        begun.problems.map(({ path, code, message }) => ({ field: formatPath(path), code, message })),
      ) as never;
    const { document } = begun;
    const { shop } = await shelf.current();
    const at = now();
    const number = serial === undefined ? { prefix: prefixOf(shop, at) } : { serial };
    const made = { number, jobId, jobVersion: version, document };
    const machine = await save((t) => makeMachine(t, made, { by: signedName(c) ?? by, at }));
    return c.json(machine, 201, { Location: `/api/machines/${machine.serial}` });
  });

  app.openapi(soldOfJobRoute, async (c) => {
    const sold = await soldRigOf(db, c.req.valid('param').id);
    if (sold === undefined) return c.json({}, 200);
    const { quote, revision, acceptedAt, document } = sold;
    const { name, summary } = soldOption(sold);
    const { length } = (document as FrozenQuote).options;
    const told = { number: quote, revision, option: name, acceptedAt, title: summary.title, options: length };
    return c.json({ sold: told }, 200);
  });

  app.openapi(openMachineRoute, async (c) => c.json(await openMachine(db, c.req.valid('param').serial), 200));

  app.openapi(addEntriesRoute, async (c) => {
    const { serial } = c.req.valid('param');
    const { entries, by } = c.req.valid('json');
    checkEntries(entries);
    const doing = { by: signedName(c) ?? by, at: now() };
    return c.json(await save((t) => addEntries(t, serial, entries, doing)), 200);
  });

  app.openapi(entriesRoute, async (c) => {
    const { serial } = c.req.valid('param');
    const { after, limit } = c.req.valid('query');
    await openMachine(db, serial);
    return c.json({ entries: await entriesAfter(db, serial, after, limit) }, 200);
  });
}

/** Longest run of initials in a serial number. */
const MOST_LETTERS = 4;

/** "LFR-0326-" for a shop called Larkspur Ford Rigworks in March 2026. */
function prefixOf({ name, initials: own }: Shop, at: string): string {
  const initials =
    own ??
    name
      .toUpperCase()
      .split(/[^A-Z0-9]+/)
      .map((word) => word.charAt(0))
      .join('')
      .slice(0, MOST_LETTERS);
  return `${initials === '' ? 'M' : initials}-${at.slice(5, 7)}${at.slice(2, 4)}-`;
}
