import { createRoute, z } from '@hono/zod-openapi';
import { refusals } from '../problem.ts';
import { numberParams, revisionParams } from './quote-routes.ts';
import {
  answeredShape,
  answerShape,
  quoteHeadShape,
  revokeShape,
  sendShape,
  sentShape,
  storyShape,
  withdrawShape,
} from './quote-shapes.ts';

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const SENT = ['not-json', 'foreign-page', 'too-large', 'wrong-type', 'bad-request', 'no-such-quote'] as const;

export const sendRoute = createRoute({
  method: 'post',
  path: '/api/quotes/{number}/revisions/{revision}/links',
  summary: 'Send a quote by a link for the customer',
  request: { params: revisionParams, body: { required: true, content: json(sendShape) } },
  responses: {
    201: { description: 'The link, and what became of the letter', content: json(sentShape) },
    ...refusals(...SENT, 'quote-closed'),
  },
});

export const storyRoute = createRoute({
  method: 'get',
  path: '/api/quotes/{number}/story',
  summary: 'Links of a quote and what happened to it, in order',
  request: { params: numberParams },
  responses: {
    200: { description: 'Links and events', content: json(storyShape) },
    ...refusals('bad-request', 'no-such-quote'),
  },
});

export const revokeRoute = createRoute({
  method: 'post',
  path: '/api/quotes/{number}/links/{link}/revoke',
  summary: "Take a customer's link back: it opens nothing any more",
  request: {
    params: numberParams.extend({ link: z.string().regex(/^[0-9a-f]{12}$/, 'a link is named by 12 signs') }),
    body: { required: true, content: json(revokeShape) },
  },
  responses: {
    200: { description: 'Links and events', content: json(storyShape) },
    ...refusals(...SENT),
  },
});

export const answerRoute = createRoute({
  method: 'post',
  path: '/api/quotes/{number}/answers',
  summary:
    "Answer a customer's question, on the page behind the link and by e-mail where an address is known",
  request: { params: numberParams, body: { required: true, content: json(answerShape) } },
  responses: {
    200: { description: 'Links and events, and what became of the letter', content: json(answeredShape) },
    ...refusals(...SENT),
  },
});

export const withdrawRoute = createRoute({
  method: 'post',
  path: '/api/quotes/{number}/withdraw',
  summary: 'Take a quote back, as long as it was not accepted',
  request: { params: numberParams, body: { required: true, content: json(withdrawShape) } },
  responses: {
    200: { description: 'The quote', content: json(quoteHeadShape) },
    ...refusals(...SENT, 'quote-closed'),
  },
});
