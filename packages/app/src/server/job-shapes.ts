import { z } from '@hono/zod-openapi';

export const id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,63}$/, 'a job id has small letters, digits and hyphens, 64 at most')
  .openapi({ example: 'tall-elms' });

export const byShape = z
  .string()
  .trim()
  .max(60)
  .default('')
  .openapi({ description: 'Who does it, as typed once in the browser.', example: 'Dana' });

/** The largest number that the records count to: a column of whole numbers holds no more on either database. */
export const MOST_COUNTED = 2_147_483_647;

export const moment = z
  .string()
  .openapi({ description: 'ISO 8601, UTC', example: '2026-03-03T14:05:00.000Z' });

const documentShape = z
  .object({
    rig: z
      .looseObject({})
      .openapi({ description: 'The rig with its brief; kept as it stands, readable or not.' }),
    notes: z.string().max(20_000),
  })
  .openapi('JobDocument');

export const jobHeadShape = z
  .object({
    id,
    version: z.int().openapi({ description: '1 when made; each edit adds one.' }),
    title: z.string(),
    customer: z.string(),
    madeAt: moment,
    changedAt: moment,
    changedBy: z.string(),
  })
  .openapi('JobHead');

export const jobShape = jobHeadShape.extend({ document: documentShape }).openapi('Job');

export const jobParams = z.object({ id });

export const listQuery = z.object({
  find: z
    .string()
    .max(200)
    .default('')
    .openapi({ description: 'Words of title, customer or id; all must be there.' }),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  after: z.string().max(200).optional().openapi({ description: 'The `next` of the answer before.' }),
});

export const listShape = z
  .object({ jobs: z.array(jobHeadShape), next: z.string().optional() })
  .openapi('JobList');

export const newJobShape = z
  .object({
    id: id.optional().openapi({ description: 'Chosen by the server when absent.' }),
    rig: documentShape.shape.rig,
    notes: documentShape.shape.notes.default(''),
    by: byShape,
  })
  .openapi('NewJob');

const putShape = z.object({
  path: z
    .array(z.union([z.string().max(100), z.int().min(0).max(9999)]))
    .min(1)
    .max(20)
    .readonly()
    .openapi({ description: 'Steps from the document down, such as ["rig", "items", 3, "length"].' }),
  value: z
    .unknown()
    .optional()
    .openapi({ description: 'What stands there afterwards; without it the field goes.' }),
});

const editShape = z.object({
  operation: z
    .string()
    .regex(/^[A-Za-z0-9-]{8,64}$/, 'an operation has 8 to 64 letters, digits and hyphens')
    .openapi({ description: 'A name of its own: the edit is made once, however often it arrives.' }),
  about: z.string().trim().min(1).max(200).openapi({ description: 'What it does, for the history.' }),
  puts: z.array(putShape).min(1).max(500).readonly(),
});

export const editsShape = z
  .object({
    base: z
      .int()
      .min(1)
      .max(MOST_COUNTED)
      .openapi({ description: 'Version of the job that the first edit was made on.' }),
    edits: z.array(editShape).min(1).max(100),
    by: byShape,
  })
  .openapi('Edits');

export const historyQuery = z.object({
  after: z.coerce
    .number()
    .int()
    .min(0)
    .max(MOST_COUNTED)
    .default(0)
    .openapi({ description: 'Only edits after this version.' }),
  limit: z.coerce.number().int().min(1).max(500).default(100),
});

export const historyShape = z
  .object({
    edits: z.array(
      editShape.extend({
        version: z.int(),
        inverse: z.array(putShape).readonly(),
        by: z.string(),
        at: moment,
      }),
    ),
  })
  .openapi('History');
