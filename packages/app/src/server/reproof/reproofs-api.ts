import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { findingsOf, listReproofs, type Records } from '../../store/index.ts';
import { byShape, moment } from '../job-shapes.ts';
import { refusals } from '../problem.ts';
import { signedName } from '../role-guard.ts';
import type { Reproofs } from './reproofs.ts';

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const id = z.string().regex(/^[0-9a-f-]{1,40}$/, 'an id of a round was expected');

const roundShape = z
  .object({
    id,
    edition: z.int().openapi({ description: 'Edition of the catalogue that the quotes are proven with.' }),
    state: z.enum(['waiting', 'running', 'done', 'failed']),
    total: z.int(),
    done: z.int(),
    changed: z.int().openapi({ description: 'Quotes that say something else now.' }),
    trouble: z.string(),
    askedAt: moment,
    askedBy: z.string(),
  })
  .openapi('QuotesAgain');

const findingShape = z
  .object({
    quote: z.string(),
    revision: z.string(),
    title: z.string(),
    customer: z.string(),
    beforeCents: z.int(),
    afterCents: z.int().optional().openapi({ description: 'Absent when it can no longer be proven.' }),
    brokenBefore: z.int(),
    brokenAfter: z.int().optional(),
    said: z.array(z.string()).readonly(),
  })
  .openapi('QuoteAgain');

const listRoute = createRoute({
  method: 'get',
  path: '/api/quotes-again',
  summary: 'Rounds in which the open quotes were proven again, the last first, with how far each is',
  request: { query: z.object({ limit: z.coerce.number().int().min(1).max(100).default(10) }) },
  responses: {
    200: { description: 'Rounds', content: json(z.object({ rounds: z.array(roundShape) })) },
    ...refusals('bad-request'),
  },
});

/** Who asks must be said, so that an empty body starts nothing. */
const whoAsks = z.object({ by: byShape.removeDefault() }).openapi('AskQuotesAgain');

const askRoute = createRoute({
  method: 'post',
  path: '/api/quotes-again',
  summary: 'Prove the open quotes again with the catalogue as it stands',
  request: { body: { required: true, content: json(whoAsks) } },
  responses: {
    202: { description: 'It is under way', content: json(z.object({ id })) },
    ...refusals('not-json', 'foreign-page', 'too-large', 'wrong-type', 'bad-request'),
  },
});

const findingsRoute = createRoute({
  method: 'get',
  path: '/api/quotes-again/{id}',
  summary: 'What a round found: quotes that say something else now, in the order of their numbers',
  request: {
    params: z.object({ id }),
    query: z.object({
      limit: z.coerce.number().int().min(1).max(500).default(100),
      after: z.string().max(40).default('').openapi({ description: 'The last quote of the answer before.' }),
    }),
  },
  responses: {
    200: { description: 'Findings', content: json(z.object({ findings: z.array(findingShape) })) },
    ...refusals('bad-request'),
  },
});

/** The open quotes proven again: asked for, watched, read. */
export function reproofsApi(
  app: OpenAPIHono,
  { records, reproofs }: { readonly records: Records; readonly reproofs: Reproofs },
): void {
  app.openapi(listRoute, async (c) =>
    c.json({ rounds: await listReproofs(records.db, c.req.valid('query').limit) }, 200),
  );
  app.openapi(askRoute, async (c) =>
    c.json({ id: await reproofs.ask(signedName(c) ?? c.req.valid('json').by, records) }, 202),
  );
  app.openapi(findingsRoute, async (c) => {
    const { limit, after } = c.req.valid('query');
    return c.json({ findings: await findingsOf(records.db, c.req.valid('param').id, limit, after) }, 200);
  });
}
