import { z } from '@hono/zod-openapi';
import { MOST_COUNTED, byShape, id, moment } from './job-shapes.ts';

const serial = z
  .string()
  .regex(
    /^[A-Z0-9][A-Z0-9-]{0,39}$/,
    'a serial number has capital letters, figures and hyphens, 40 at most, and begins with a letter or figure',
  )
  .openapi({ example: 'LFR-0326-1' });

export const machineParams = z.object({ serial });

const machineHeadShape = z
  .object({
    serial,
    jobId: id,
    jobVersion: z.int().openapi({ description: 'Version of the job when it was begun.' }),
    title: z.string(),
    customer: z.string(),
    madeAt: moment,
    madeBy: z.string(),
  })
  .openapi('MachineHead');

const soldShape = z
  .object({ number: z.string(), revision: z.string(), option: z.string(), acceptedAt: moment })
  .openapi('SoldRig');

export const soldOfJobShape = z.object({
  sold: soldShape.extend({ title: z.string(), options: z.int() }).optional(),
});

export const machineShape = machineHeadShape
  .extend({
    entries: z.int().openapi({ description: 'How many entries there are of it.' }),
    document: z
      .object({
        rig: z.looseObject({}).openapi({ description: 'The rig with its brief, as it was sold.' }),
        parts: z
          .array(z.object({ kind: z.string(), part: z.unknown() }))
          .readonly()
          .openapi({ description: 'The catalogue parts it is built of, as they were typed then.' }),
        engine: z.string().openapi({ description: 'Version of the engine that proved it.' }),
        quote: soldShape.optional().openapi({
          description:
            'The accepted quote whose rig it is; absent where it was begun from the job as that stood.',
        }),
      })
      .openapi('MachineDocument'),
  })
  .openapi('Machine');

export const newMachineShape = z
  .object({
    job: id,
    version: z.int().min(1).max(MOST_COUNTED).openapi({
      description:
        'Version of the job at which it is begun; its rig is that of this version where no quote was accepted.',
    }),
    from: z.enum(['quote', 'job']).default('quote').openapi({
      description:
        'quote: the rig of the accepted quote where there is one, as it was sold; job: the job as it stands, whatever was sold.',
    }),
    serial: serial.optional().openapi({
      description:
        'Chosen by the server when absent: the initials of the shop, month and year, and the next free number, such as LFR-0326-1.',
    }),
    by: byShape,
  })
  .openapi('NewMachine');

export const machinesQuery = z.object({
  find: z
    .string()
    .max(200)
    .default('')
    .openapi({ description: 'Words of serial number, title, customer or job; all must be there.' }),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  after: z.string().max(200).optional().openapi({ description: 'The `next` of the answer before.' }),
});

export const machinesShape = z
  .object({ machines: z.array(machineHeadShape), next: z.string().optional() })
  .openapi('Machines');

const newEntryShape = z.object({
  operation: z
    .string()
    .regex(/^[A-Za-z0-9-]{8,64}$/, 'an operation has 8 to 64 letters, digits and hyphens')
    .openapi({ description: 'A name of its own: the entry is kept once, however often it arrives.' }),
  kind: z
    .string()
    .regex(/^[a-z][a-z-]{2,39}$/, 'a kind of entry has small letters and hyphens, 3 to 40')
    .openapi({ example: 'yard-reading' }),
  document: z.looseObject({}),
});

export const newEntriesShape = z
  .object({ entries: z.array(newEntryShape).min(1).max(200), by: byShape })
  .openapi('NewEntries');

export const addedShape = z
  .object({
    added: z.int().openapi({ description: 'How many were new; the rest had arrived before.' }),
    last: z.int().openapi({ description: 'Number of the last entry of the machine.' }),
  })
  .openapi('Added');

export const entriesQuery = z.object({
  after: z.coerce
    .number()
    .int()
    .min(0)
    .max(MOST_COUNTED)
    .default(0)
    .openapi({ description: 'Only entries after this number.' }),
  limit: z.coerce.number().int().min(1).max(1000).default(500),
});

export const entriesShape = z
  .object({
    entries: z.array(newEntryShape.extend({ serial, number: z.int(), by: z.string(), at: moment })),
  })
  .openapi('Entries');
