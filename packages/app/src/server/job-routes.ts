import { createRoute } from '@hono/zod-openapi';
import {
  editsShape,
  historyQuery,
  historyShape,
  jobHeadShape,
  jobParams,
  jobShape,
  listQuery,
  listShape,
  newJobShape,
} from './job-shapes.ts';
import { refusals } from './problem.ts';

const json = <T>(schema: T) => ({ 'application/json': { schema } });

export const listRoute = createRoute({
  method: 'get',
  path: '/api/jobs',
  summary: 'The jobs, the last changed first; found by words',
  request: { query: listQuery },
  responses: {
    200: { description: 'One page of jobs', content: json(listShape) },
    ...refusals('bad-request'),
  },
});

export const makeRoute = createRoute({
  method: 'post',
  path: '/api/jobs',
  summary: 'Make a job of a rig',
  request: { body: { required: true, content: json(newJobShape) } },
  responses: {
    201: { description: 'The job as it was made', content: json(jobShape) },
    ...refusals('not-json', 'foreign-page', 'job-exists', 'too-large', 'wrong-type', 'bad-request'),
  },
});

export const openRoute = createRoute({
  method: 'get',
  path: '/api/jobs/{id}',
  summary: 'A job with its document; its ETag is the version',
  request: { params: jobParams },
  responses: {
    200: { description: 'The job', content: json(jobShape) },
    304: { description: 'The version named in If-None-Match still stands' },
    ...refusals('no-such-job', 'bad-request'),
  },
});

export const editRoute = createRoute({
  method: 'post',
  path: '/api/jobs/{id}/edits',
  summary: 'Change a job: edits on the version they were made on, all or none, each once',
  request: { params: jobParams, body: { required: true, content: json(editsShape) } },
  responses: {
    200: { description: 'The job after the edits; on the disk', content: json(jobHeadShape) },
    ...refusals(
      'not-json',
      'foreign-page',
      'no-such-job',
      'stale-version',
      'too-large',
      'wrong-type',
      'bad-request',
      'bad-change',
    ),
  },
});

export const historyRoute = createRoute({
  method: 'get',
  path: '/api/jobs/{id}/edits',
  summary: 'Every edit of a job in order, each with its inverse',
  request: { params: jobParams, query: historyQuery },
  responses: {
    200: { description: 'Edits after a version', content: json(historyShape) },
    ...refusals('no-such-job', 'bad-request'),
  },
});
