import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { OpenAPIHono } from '@hono/zod-openapi';
import { bodyLimit } from 'hono/body-limit';
import { compress } from 'hono/compress';
import type { Catalogue } from '@spraywright/engine/catalogue';
import { ENGINE_VERSION } from '@spraywright/engine/rig';
import type { Records } from '../store/index.ts';
import { doingsApi } from './doings-api.ts';
import { tellingDoings, tellingRecords } from './doings-book.ts';
import { failed } from './failures.ts';
import { ownPagesOnly, safeHeaders } from './guard.ts';
import { jobsApi } from './jobs-api.ts';
import { learnedApi } from './learning/learned-api.ts';
import { machineApi } from './machine-api.ts';
import { oneTimePages } from './one-time-pages.ts';
import { machinePapersApi } from './machine-papers-api.ts';
import { partsApi } from './parts-api.ts';
import { partsTableApi } from './parts-table-api.ts';
import type { People } from './people.ts';
import { meApi } from './me-api.ts';
import { peopleApi } from './people-api.ts';
import { plainBody } from './plain-body.ts';
import { pageFiles } from './page-files.ts';
import { fieldProblem, problem } from './problem.ts';
import { quoteApi } from './quote-api.ts';
import { askerOf, originOf, type ReachedBy } from './reached-by.ts';
import { recallApi } from './recall-api.ts';
import { customerPages } from './quotes/customer-pages.ts';
import { planningApi } from './quotes/planning-api.ts';
import { quotesApi } from './quotes/quotes-api.ts';
import { sendingApi } from './quotes/sending-api.ts';
import type { Mail } from './mail/mail.ts';
import { byRole } from './role-guard.ts';
import type { Reproofs } from './reproof/reproofs.ts';
import { reproofsApi } from './reproof/reproofs-api.ts';
import type { Shelf } from './shelf.ts';
import { shopSettingsApi } from './shop-settings-api.ts';
import { signInPages } from './sign-in-pages.ts';
import { stockApi } from './stock-api.ts';
import { substitutionApi } from './substitution-api.ts';
import { costsForSellers } from './without-costs.ts';

export interface ServerOptions {
  /** Folder of the built page. */
  readonly webFolder: string;
  /** The catalogue and the shop's settings, from the records. */
  readonly shelf: Shelf;
  /** Proves the open quotes again when the catalogue has changed. */
  readonly reproofs: Reproofs;
  /** Briefs that the page starts with, as raw JSON. */
  readonly briefs: readonly unknown[];
  /** Rig that was chosen for one of them, and the catalogue it was chosen from: the page need not choose it again. */
  readonly designed?: { readonly rig: unknown; readonly with: Catalogue };
  readonly records: Records;
  /** Who may sign in; without it nobody is asked who he is. */
  readonly people?: People;
  /** While there is nobody among the people, one person works here alone; only where none but this machine asks. */
  readonly alone?: boolean;
  /** Names and addresses, beside this machine's own, under which the page is asked for. */
  readonly names?: readonly string[];
  /** How others reach this server, where it is not by its own address. */
  readonly reached?: ReachedBy;
  /** The moment as ISO text in UTC, asked at each save and quote. */
  readonly now: () => string;
  /** Sends letters, or keeps them. */
  readonly mail: Mail;
  /** A job id that no other job has. */
  readonly newId: () => string;
  /** Told what nobody foresaw. */
  readonly report: (error: unknown) => void;
}

const LARGEST_BODY = 2_000_000;
const PROBLEM_PAGE = fileURLToPath(new URL('../../../../docs/problems.md', import.meta.url));

/** The page, what it starts from, the records and the quotes. */
export function serverApp(options: ServerOptions): OpenAPIHono {
  const app = new OpenAPIHono({
    defaultHook: (result, c) =>
      result.success
        ? undefined
        : fieldProblem(
            c,
            'bad-request',
            result.error.issues.map(({ path, code, message }) => {
              const field = path.join('.');
              return { field, code, message: field === '' ? message : `${field}: ${message}` };
            }),
          ),
  });
  app.onError((error, c) => failed(error, c, options.report));
  app.notFound((c) => problem(c, 'no-such-page', 'there is nothing at this address'));
  const reached = options.reached ?? {};
  app.use(safeHeaders(reached), ownPagesOnly(options.names ?? [], reached));
  const limited = bodyLimit({
    maxSize: LARGEST_BODY,
    onError: (c) => problem(c, 'too-large', `the body is larger than ${LARGEST_BODY / 1e6} MB`),
  });
  // What is only read has no body; to ask for one costs as much as a small answer.
  app.use((c, next) => (c.req.method === 'GET' || c.req.method === 'HEAD' ? next() : limited(c, next)));
  app.use(plainBody());
  app.use(tellingDoings(app, options.now));
  if (options.people !== undefined) {
    app.use(byRole(options.people, options.alone === true));
    signInPages(app, options.people);
    oneTimePages(app, options.people);
    peopleApi(app, { ...options, records: tellingRecords(options.records), people: options.people });
  }
  // Before the costs are taken out: it names their fields and tells none.
  app.doc31('/api/openapi.json', {
    openapi: '3.1.0',
    info: {
      title: 'Spraywright',
      version: ENGINE_VERSION,
      description:
        'Jobs, their edits, their quotes, the machines built of them, and the catalogue. Every refusal is a problem of RFC 9457; its codes: /api/problems.',
    },
  });
  // Packed after the costs are taken out, which are looked for in plain text.
  const packed = compress({ encoding: 'gzip' });
  app.use((c, next) => (c.req.path === '/start.json' ? packed(c, next) : next()));
  app.use(costsForSellers());
  meApi(app);
  const telling = { ...options, records: tellingRecords(options.records) };
  jobsApi(app, telling);
  quoteApi(app, telling);
  quotesApi(app, telling);
  sendingApi(app, { ...telling, originOf: (c) => originOf(c, reached) });
  planningApi(app, telling);
  customerPages(app, { ...telling, counts: options.records, askerOf: (c) => askerOf(c, reached) });
  partsApi(app, telling);
  partsTableApi(app, telling);
  shopSettingsApi(app, telling);
  reproofsApi(app, telling);
  stockApi(app, telling);
  machineApi(app, telling);
  substitutionApi(app, telling);
  machinePapersApi(app, { ...telling, originOf: (c) => originOf(c, reached) });
  recallApi(app, telling.records);
  learnedApi(app, telling);
  doingsApi(app, telling.records);
  app.get('/api/problems', (c) =>
    c.body(readFileSync(PROBLEM_PAGE, 'utf8'), 200, { 'Content-Type': 'text/markdown; charset=utf-8' }),
  );
  app.all('/api/*', (c) => problem(c, 'no-such-page', 'there is nothing at this address'));
  app.get('/start.json', async (c) => {
    const { files, catalogue } = await options.shelf.current();
    const { briefs, designed } = options;
    const chosen = designed?.with === catalogue ? { designed: designed.rig } : {};
    return c.json({ ...files, briefs, ...chosen } as never);
  });
  app.get('/*', pageFiles(options.webFolder));
  return app;
}
