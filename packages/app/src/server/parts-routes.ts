import { createRoute, z } from '@hono/zod-openapi';
import {
  csvQuery,
  dayQuery,
  newPartShape,
  partParams,
  partPutShape,
  partShape,
  partsQuery,
  partsShape,
  plannedShape,
  standingShape,
  tableShape,
  usesShape,
} from './parts-shapes.ts';
import { refusals } from './problem.ts';

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const body = <T>(schema: T) => ({ required: true, content: json(schema) });
const CHANGE = ['not-json', 'foreign-page', 'too-large', 'wrong-type', 'bad-request'] as const;

export const listPartsRoute = createRoute({
  method: 'get',
  path: '/api/parts',
  summary: 'Parts of the catalogue in the order of their ids; found by words',
  request: { query: partsQuery },
  responses: {
    200: { description: 'One page of parts', content: json(partsShape) },
    ...refusals('bad-request'),
  },
});

export const openPartRoute = createRoute({
  method: 'get',
  path: '/api/parts/{id}',
  summary: 'A part with its price on a day, and all its prices',
  request: { params: partParams, query: dayQuery },
  responses: {
    200: { description: 'The part', content: json(partShape) },
    ...refusals('no-such-part', 'bad-request'),
  },
});

export const partUsesRoute = createRoute({
  method: 'get',
  path: '/api/parts/{id}/uses',
  summary: 'Jobs, open quotes and machines that have a part; 100 of each, the last changed first',
  request: { params: partParams },
  responses: {
    200: { description: 'Where it is', content: json(usesShape) },
    ...refusals('no-such-part', 'bad-request'),
  },
});

export const makePartRoute = createRoute({
  method: 'post',
  path: '/api/parts',
  summary: 'Add a part to the catalogue',
  request: { body: body(newPartShape) },
  responses: {
    201: { description: 'The part as it was added', content: json(partShape) },
    ...refusals(...CHANGE, 'part-exists', 'unreadable-part'),
  },
});

export const putPartRoute = createRoute({
  method: 'put',
  path: '/api/parts/{id}',
  summary: 'Change a part; a new price holds from a day on, and what stood before is kept',
  request: { params: partParams, body: body(partPutShape) },
  responses: {
    200: { description: 'The part as it is now', content: json(partShape) },
    ...refusals(...CHANGE, 'no-such-part', 'stale-part', 'unreadable-part'),
  },
});

export const standingRoute = createRoute({
  method: 'post',
  path: '/api/parts/{id}/standing',
  summary: 'Retire a part or take it back',
  request: { params: partParams, body: body(standingShape) },
  responses: {
    200: { description: 'The part as it is now', content: json(partShape) },
    ...refusals(...CHANGE, 'no-such-part'),
  },
});

export const tableRoute = createRoute({
  method: 'post',
  path: '/api/parts/table',
  summary: 'Read a CSV table of parts or prices; a preview unless it is to be written, all or nothing',
  request: { body: body(tableShape) },
  responses: {
    200: { description: 'What it changes, or changed', content: json(plannedShape) },
    ...refusals(...CHANGE, 'stale-part', 'unreadable-table'),
  },
});

export const csvRoute = createRoute({
  method: 'get',
  path: '/api/parts.csv',
  summary: 'The parts of one kind as a CSV table',
  request: { query: csvQuery },
  responses: {
    200: { description: 'The table', content: { 'text/csv': { schema: z.string() } } },
    ...refusals('bad-request'),
  },
});
