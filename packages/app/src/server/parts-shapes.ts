import { z } from '@hono/zod-openapi';
import { KINDS } from '@spraywright/engine/catalogue';
import { isDay } from '../documents/is-day.ts';
import { byShape, id, moment } from './job-shapes.ts';

const kindShape = z.enum(KINDS as [(typeof KINDS)[number], ...typeof KINDS]);
const day = z
  .string()
  .regex(/^\d{4}-\d\d-\d\d$/, 'a day such as 2026-04-01 was expected')
  .refine(isDay, 'there is no such day')
  .openapi({ example: '2026-04-01' });
const editionShape = z.int().min(0);
const cents = z.int();

const partHeadShape = z
  .object({
    id,
    kind: kindShape,
    name: z.string(),
    edition: editionShape.openapi({ description: 'Edition of the catalogue in which it was last changed.' }),
    retired: z.boolean().openapi({ description: 'It stays for rigs that have it and goes into no new one.' }),
    changedAt: moment,
    changedBy: z.string(),
  })
  .openapi('PartHead');

const documentShape = z.looseObject({}).openapi({
  description: 'The part as a catalogue file has it, with the price of the day; its cost for those who sell.',
});

export const partShape = partHeadShape
  .extend({
    document: documentShape,
    prices: z
      .array(
        z.object({
          from: z.string().openapi({ description: 'Day from which it holds; 0000-01-01: from the start.' }),
          costCents: cents.optional().openapi({ description: 'Told to those who sell: owner and builder.' }),
          priceCents: cents,
          by: z.string(),
          at: moment,
        }),
      )
      .readonly(),
  })
  .openapi('Part');

export const partParams = z.object({ id });
export const dayQuery = z.object({
  day: day.optional().openapi({ description: 'Day of the price; today when absent.' }),
});

export const partsQuery = z.object({
  find: z
    .string()
    .max(200)
    .default('')
    .openapi({ description: 'Words of name, kind, id, material or any typed figure; all must be there.' }),
  kind: kindShape.optional(),
  standing: z.enum(['kept', 'retired', 'both']).default('kept'),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  after: z.string().max(64).optional().openapi({ description: 'The `next` of the answer before.' }),
});

const listedPartShape = partHeadShape.extend({
  priceCents: cents
    .optional()
    .openapi({ description: 'What it is sold for today; absent where no price is known.' }),
});

export const partsShape = z
  .object({ edition: editionShape, parts: z.array(listedPartShape), next: z.string().optional() })
  .openapi('PartList');

export const newPartShape = z
  .object({ kind: kindShape, part: documentShape, by: byShape })
  .openapi('NewPart');

export const partPutShape = z
  .object({
    madeOn: editionShape.openapi({ description: 'The `edition` of the part as it was opened.' }),
    part: documentShape,
    pricesFrom: day
      .optional()
      .openapi({ description: 'Day from which a new price holds; today when absent.' }),
    by: byShape,
  })
  .openapi('ChangedPart');

export const standingShape = z.object({ retired: z.boolean(), by: byShape }).openapi('PartStanding');

export const usesShape = z
  .object({
    jobs: z.array(z.object({ id: z.string(), title: z.string(), customer: z.string() })).readonly(),
    quotes: z.array(z.object({ number: z.string(), title: z.string(), customer: z.string() })).readonly(),
    machines: z.array(z.object({ serial: z.string(), title: z.string(), customer: z.string() })).readonly(),
  })
  .openapi('PartUses');

export const tableShape = z
  .object({
    csv: z.string().max(1_500_000),
    name: z.string().max(120).default('table').openapi({ description: 'Its name in what is said of it.' }),
    kind: kindShape.optional().openapi({ description: 'Told by the ids when absent.' }),
    pricesFrom: day.optional(),
    write: z.boolean().default(false).openapi({ description: 'Without it nothing is written: a preview.' }),
    edition: editionShape
      .optional()
      .openapi({ description: 'Edition that the preview was of: with another one nothing is written.' }),
    by: byShape,
  })
  .openapi('PartsTable');

export const plannedShape = z
  .object({
    kind: kindShape,
    edition: editionShape.openapi({ description: 'Edition looked at, or made when it was written.' }),
    written: z.boolean(),
    added: z.array(z.string()).readonly(),
    changes: z
      .array(
        z.object({
          part: z.string(),
          line: z.int(),
          field: z.string(),
          before: z.string().optional(),
          after: z.string(),
        }),
      )
      .readonly(),
    unchanged: z.int(),
  })
  .openapi('PlannedTable');

export const csvQuery = z.object({ kind: kindShape, day: day.optional() });
