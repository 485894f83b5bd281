import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { listDoings, type Records } from '../store/index.ts';
import { refusals } from './problem.ts';

const text = z.string().max(200).optional();

const moment = z
  .string()
  .regex(
    /^\d{4}-\d{2}-\d{2}(T[\d:.]{5,12}Z)?$/,
    'a day or a moment such as 2026-03-03T14:05:00Z was expected',
  )
  .optional();

const doingShape = z
  .object({
    id: z.string(),
    at: z.string().openapi({ description: 'ISO 8601, UTC' }),
    who: z.string().openapi({ description: 'Empty where one person works alone, or nobody is known.' }),
    email: z.string(),
    role: z.string(),
    did: z.string().openapi({ description: 'What the request was for.' }),
    aboutKind: z.string().openapi({ example: 'jobs' }),
    aboutId: z.string().openapi({ example: 'tall-elms' }),
    what: z.string().openapi({ description: 'What changed, in words, where it is known.' }),
  })
  .openapi('Doing');

const doingsRoute = createRoute({
  method: 'get',
  path: '/api/doings',
  summary: 'Who did what, the last first; by person, by what it was about, by time',
  request: {
    query: z.object({
      email: text,
      about: text.openapi({ description: 'Id of a job, quote, machine or part.' }),
      from: moment.openapi({ description: 'A day or a moment of UTC; the first that counts.' }),
      until: moment.openapi({ description: 'A day or a moment of UTC; the first that counts no more.' }),
      after: text.openapi({ description: 'The `next` of the answer before.' }),
      limit: z.coerce.number().int().min(1).max(200).default(50),
    }),
  },
  responses: {
    200: {
      description: 'One page of the book',
      content: {
        'application/json': {
          schema: z.object({ doings: z.array(doingShape), next: z.string().optional() }).openapi('Doings'),
        },
      },
    },
    ...refusals('bad-request'),
  },
});

/** The book of who did what. */
export function doingsApi(app: OpenAPIHono, { db }: Pick<Records, 'db'>): void {
  app.openapi(doingsRoute, async (c) => {
    const { limit, ...asked } = c.req.valid('query');
    const lines = await listDoings(db, { ...asked, limit });
    const doings = lines.map(({ about_kind, about_id, ...line }) => ({
      ...line,
      aboutKind: about_kind,
      aboutId: about_id,
    }));
    const last = lines.at(-1);
    return c.json(lines.length < limit || last === undefined ? { doings } : { doings, next: last.id }, 200);
  });
}
