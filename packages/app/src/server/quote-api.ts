import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { formatPath } from '@spraywright/engine/quantity';
import { belowFloor, confidenceOf, proveRig, readRig } from '@spraywright/engine/rig';
import { quotePdf } from '../documents/quote-pdf.ts';
import { openJob, type Records } from '../store/index.ts';
import { jobParams } from './job-shapes.ts';
import { fieldProblem, refusals } from './problem.ts';
import type { Shelf } from './shelf.ts';

interface QuoteApi {
  readonly shelf: Shelf;
  readonly records: Records;
  readonly now: () => string;
}

const unitsShape = z.enum(['us', 'metric']).default('us');
const pdf = { description: 'The quote', content: { 'application/pdf': { schema: z.any() } } };

const rigQuoteRoute = createRoute({
  method: 'post',
  path: '/api/quote.pdf',
  summary: 'The quote of a rig as it stands, kept or not',
  request: {
    body: {
      required: true,
      content: {
        'application/json': {
          schema: z.object({ rig: z.looseObject({}), units: unitsShape }).openapi('QuoteOf'),
        },
      },
    },
  },
  responses: {
    200: pdf,
    ...refusals(
      'not-json',
      'foreign-page',
      'too-large',
      'wrong-type',
      'bad-request',
      'unreadable-rig',
      'below-floor',
    ),
  },
});

const jobQuoteRoute = createRoute({
  method: 'get',
  path: '/api/jobs/{id}/quote.pdf',
  summary: 'The quote of a job as it stands',
  request: { params: jobParams, query: z.object({ units: unitsShape }) },
  responses: { 200: pdf, ...refusals('no-such-job', 'bad-request', 'unreadable-rig', 'below-floor') },
});

/** The quote as a PDF, proven at the moment it is asked for. */
export function quoteApi(app: OpenAPIHono, { shelf, records, now }: QuoteApi): void {
  const answer = async (c: Context, raw: unknown, units: 'us' | 'metric') => {
    const { catalogue, shop } = await shelf.current();
    const rig = readRig(raw, catalogue);
    if (!rig.ok)
      return fieldProblem(
        c,
        'unreadable-rig',
        rig.problems.map(({ path, code, message }) => ({ field: formatPath(path), code, message })),
      );
    const proof = proveRig(rig.rig, catalogue, shop, { units });
    const ownPrice = rig.rig.document.pricing?.price !== undefined;
    const why = belowFloor(proof.bill, shop, ownPrice, c.get('person')?.role);
    if (why !== undefined)
      return fieldProblem(c, 'below-floor', [{ field: 'pricing', code: 'below-floor', message: why }]);
    const file = await quotePdf(proof, {
      shop,
      units,
      date: now().slice(0, 10),
      confidence: confidenceOf(rig.rig, proof),
    });
    return c.body(new Uint8Array(file), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="quote-${proof.id}.pdf"`,
    });
  };
  app.openapi(rigQuoteRoute, (c) => {
    const { rig, units } = c.req.valid('json');
    return answer(c, rig, units);
  });
  app.openapi(jobQuoteRoute, async (c) => {
    const { document } = await openJob(records.db, c.req.valid('param').id);
    return answer(c, document.rig, c.req.valid('query').units);
  });
}
