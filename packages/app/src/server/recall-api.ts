import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { stringify } from 'csv-stringify/sync';
import { guardedCell } from '../documents/spreadsheet-guard.ts';
import { recallOf, type Recalled, type Records } from '../store/index.ts';
import { moment } from './job-shapes.ts';
import { refusals } from './problem.ts';

const query = z.object({
  part: z.string().trim().min(1).max(64).openapi({ example: 'tip-orifice-6' }),
  lot: z
    .string()
    .trim()
    .min(1)
    .max(60)
    .optional()
    .openapi({ description: 'Machines with another lot are told as such; those without a lot as unknown.' }),
});

const recalledShape = z
  .object({
    serial: z.string(),
    title: z.string(),
    customer: z.string(),
    madeAt: moment,
    slots: z.array(z.string()).readonly(),
    replaced: z.boolean(),
    given: z.int(),
    lots: z.array(z.string()).readonly(),
    match: z.enum(['yes', 'no', 'unknown']),
  })
  .openapi('Recalled');

const listRoute = createRoute({
  method: 'get',
  path: '/api/recall',
  summary: 'Every machine that has a part, had it or was given it by the store, with its customer',
  request: { query },
  responses: {
    200: {
      description: 'Machines by serial number',
      content: {
        'application/json': { schema: z.object({ machines: z.array(recalledShape) }).openapi('Recall') },
      },
    },
    ...refusals('bad-request'),
  },
});

const csvRoute = createRoute({
  method: 'get',
  path: '/api/recall.csv',
  summary: 'The same as a table for a spreadsheet',
  request: { query },
  responses: {
    200: {
      description: 'One machine a row (RFC 4180)',
      content: { 'text/csv': { schema: z.string() } },
    },
    ...refusals('bad-request'),
  },
});

const HEAD = ['serial', 'customer', 'title', 'begun', 'part', 'where', 'replaced', 'given', 'lots', 'match'];

/** Which machines a part, or one lot of it, went into. */
export function recallApi(app: OpenAPIHono, { db }: Pick<Records, 'db'>): void {
  app.openapi(listRoute, async (c) => {
    const { part, lot } = c.req.valid('query');
    return c.json({ machines: await recallOf(db, part, lot) }, 200);
  });
  app.openapi(csvRoute, async (c) => {
    const { part, lot } = c.req.valid('query');
    return c.body(recallCsv(part, await recallOf(db, part, lot)), 200, {
      'Content-Type': 'text/csv; charset=utf-8',
      'Content-Disposition': `attachment; filename="recall-${part.replace(/[^a-z0-9-]/gi, '')}.csv"`,
    });
  });
}

function recallCsv(part: string, machines: readonly Recalled[]): string {
  return stringify(
    machines.map((m) => ({
      serial: m.serial,
      customer: guardedCell(m.customer),
      title: guardedCell(m.title),
      begun: m.madeAt.slice(0, 10),
      part,
      where: m.slots.join(' '),
      replaced: m.replaced ? 'yes' : 'no',
      given: m.given,
      lots: guardedCell(m.lots.join(' ')),
      match: m.match,
    })),
    { header: true, columns: HEAD, record_delimiter: 'windows' },
  );
}
