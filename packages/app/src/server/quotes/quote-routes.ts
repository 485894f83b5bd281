import { createRoute, z } from '@hono/zod-openapi';
import { refusals } from '../problem.ts';
import {
  changesQuery,
  changesShape,
  newQuoteShape,
  newRevisionShape,
  numberShape,
  quoteHeadShape,
  quoteListQuery,
  quoteShape,
  revisionShape,
  wholeRevisionShape,
} from './quote-shapes.ts';

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const SENT = ['not-json', 'foreign-page', 'too-large', 'wrong-type', 'bad-request'] as const;

export const numberParams = z.object({ number: numberShape });
export const revisionParams = z.object({ number: numberShape, revision: revisionShape });

export const quotesRoute = createRoute({
  method: 'get',
  path: '/api/quotes',
  summary: 'Quotes, those that changed their state last first',
  request: { query: quoteListQuery },
  responses: {
    200: {
      description: 'Quotes',
      content: json(z.object({ quotes: z.array(quoteHeadShape), next: z.string().optional() })),
    },
    ...refusals('bad-request'),
  },
});

export const makeQuoteRoute = createRoute({
  method: 'post',
  path: '/api/quotes',
  summary: 'Make a quote of a job, frozen as revision A',
  request: { body: { required: true, content: json(newQuoteShape) } },
  responses: {
    201: { description: 'The quote', content: json(quoteHeadShape) },
    ...refusals(...SENT, 'no-such-job', 'unreadable-rig', 'below-floor'),
  },
});

export const quoteRoute = createRoute({
  method: 'get',
  path: '/api/quotes/{number}',
  summary: 'A quote with its revisions',
  request: { params: numberParams },
  responses: {
    200: { description: 'The quote', content: json(quoteShape) },
    ...refusals('bad-request', 'no-such-quote'),
  },
});

export const reviseRoute = createRoute({
  method: 'post',
  path: '/api/quotes/{number}/revisions',
  summary: 'Draw a quote up anew: the next letter when the newest was sent, else in its place',
  request: { params: numberParams, body: { required: true, content: json(newRevisionShape) } },
  responses: {
    201: { description: 'The quote with its newest revision', content: json(quoteHeadShape) },
    ...refusals(...SENT, 'no-such-quote', 'quote-closed', 'unreadable-rig', 'below-floor'),
  },
});

export const revisionRoute = createRoute({
  method: 'get',
  path: '/api/quotes/{number}/revisions/{revision}',
  summary: 'Everything of one revision',
  request: { params: revisionParams },
  responses: {
    200: { description: 'The revision', content: json(wholeRevisionShape) },
    ...refusals('bad-request', 'no-such-quote'),
  },
});

export const paperRoute = createRoute({
  method: 'get',
  path: '/api/quotes/{number}/revisions/{revision}/quote.pdf',
  summary: 'A revision as a PDF: always the same bytes',
  request: { params: revisionParams },
  responses: {
    200: { description: 'The quote', content: { 'application/pdf': { schema: z.any() } } },
    ...refusals('bad-request', 'no-such-quote'),
  },
});

export const changesRoute = createRoute({
  method: 'get',
  path: '/api/quotes/{number}/changes',
  summary: 'What changed between two revisions, in sentences',
  request: { params: numberParams, query: changesQuery },
  responses: {
    200: { description: 'The changes', content: json(changesShape) },
    ...refusals('bad-request', 'no-such-quote'),
  },
});
