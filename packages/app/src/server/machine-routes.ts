import { createRoute, z } from '@hono/zod-openapi';
import {
  addedShape,
  entriesQuery,
  entriesShape,
  machineParams,
  machineShape,
  machinesQuery,
  machinesShape,
  newEntriesShape,
  newMachineShape,
  soldOfJobShape,
} from './machine-shapes.ts';
import { id } from './job-shapes.ts';
import { refusals } from './problem.ts';

const json = <T>(schema: T) => ({ 'application/json': { schema } });

export const listMachinesRoute = createRoute({
  method: 'get',
  path: '/api/machines',
  summary: 'The built machines, the last begun first; found by words',
  request: { query: machinesQuery },
  responses: {
    200: { description: 'One page of machines', content: json(machinesShape) },
    ...refusals('bad-request'),
  },
});

export const makeMachineRoute = createRoute({
  method: 'post',
  path: '/api/machines',
  summary:
    'Begin a machine: from the accepted quote of a job, or from the job itself, under a serial number of its own',
  request: { body: { required: true, content: json(newMachineShape) } },
  responses: {
    201: { description: 'The machine as it was begun', content: json(machineShape) },
    ...refusals(
      'not-json',
      'foreign-page',
      'no-such-job',
      'no-such-version',
      'machine-exists',
      'too-large',
      'wrong-type',
      'bad-request',
      'unreadable-rig',
    ),
  },
});

export const soldOfJobRoute = createRoute({
  method: 'get',
  path: '/api/jobs/{id}/sold',
  summary: 'The accepted quote of a job, from which its machine is begun',
  request: { params: z.object({ id }) },
  responses: {
    200: { description: 'Without `sold` where no quote was accepted', content: json(soldOfJobShape) },
    ...refusals('bad-request'),
  },
});

export const openMachineRoute = createRoute({
  method: 'get',
  path: '/api/machines/{serial}',
  summary: 'A machine with its rig and parts as they were when it was begun',
  request: { params: machineParams },
  responses: {
    200: { description: 'The machine', content: json(machineShape) },
    ...refusals('no-such-machine', 'bad-request'),
  },
});

export const addEntriesRoute = createRoute({
  method: 'post',
  path: '/api/machines/{serial}/entries',
  summary: 'Write down what was done to a machine, each entry once',
  request: { params: machineParams, body: { required: true, content: json(newEntriesShape) } },
  responses: {
    200: { description: 'What was new; on the disk', content: json(addedShape) },
    ...refusals(
      'not-json',
      'foreign-page',
      'no-such-machine',
      'too-large',
      'wrong-type',
      'bad-request',
      'bad-entry',
    ),
  },
});

export const entriesRoute = createRoute({
  method: 'get',
  path: '/api/machines/{serial}/entries',
  summary: 'What was written down of a machine, in order',
  request: { params: machineParams, query: entriesQuery },
  responses: {
    200: { description: 'Entries after a number', content: json(entriesShape) },
    ...refusals('no-such-machine', 'bad-request'),
  },
});
