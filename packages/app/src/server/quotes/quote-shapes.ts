import { z } from '@hono/zod-openapi';
import { jobHeadShape } from '../job-shapes.ts';
import { QUOTE_STATES } from '../../store/index.ts';

export const numberShape = z
  .string()
  .regex(/^Q-\d{4,9}$/, 'a quote number is such as Q-0412')
  .openapi({ example: 'Q-0412' });
export const revisionShape = z
  .string()
  .regex(/^[A-Z]{1,3}$/, 'a revision is a capital letter')
  .openapi({ example: 'B' });

const moment = z.string().openapi({ description: 'ISO 8601, UTC', example: '2026-03-03T14:05:00.000Z' });
const money = z.int().openapi({ description: 'Cents' });

export const quoteHeadShape = z
  .object({
    number: numberShape,
    job: z.string(),
    revision: revisionShape.openapi({ description: 'The newest.' }),
    state: z.enum(QUOTE_STATES),
    since: moment,
    question: z.boolean().openapi({ description: 'A question of the customer waits for an answer.' }),
    title: z.string(),
    customer: z.string(),
    priceCents: money,
    optionCount: z.int(),
    madeAt: moment,
    madeBy: z.string(),
  })
  .openapi('QuoteHead');

const pricingShape = z
  .object({
    price: z
      .discriminatedUnion('mode', [
        z.object({ mode: z.literal('list') }),
        z.object({ mode: z.literal('cost-plus'), markupPercent: z.number().min(0).max(900) }),
        z.object({ mode: z.literal('target-margin'), marginPercent: z.number().min(0).max(90) }),
      ])
      .optional(),
    discountPercent: z.number().min(0).max(100).optional(),
    freightCents: z.int().min(0).max(10_000_000).optional(),
    taxFree: z.boolean().optional(),
  })
  .openapi({
    description: "Each goes before the rig's own pricing; the floors of the shop and of the role hold.",
  });

/** What a revision is made of. */
const contents = {
  options: z
    .array(
      z.object({
        name: z.string().trim().min(1).max(60),
        job: jobHeadShape.shape.id.optional().openapi({
          description: "Another job whose rig it is, as it stands; the quote's own when absent.",
        }),
        rig: z
          .looseObject({})
          .optional()
          .openapi({ description: 'A rig that is sent along, before any job.' }),
        pricing: pricingShape.optional(),
      }),
    )
    .min(1)
    .max(4)
    .default([{ name: 'As drawn' }])
    .refine(
      (list) => new Set(list.map((o) => o.name)).size === list.length,
      'two options have the same name',
    ),
  units: z.enum(['us', 'metric']).default('us'),
  note: z.string().trim().max(600).default('').openapi({ description: 'A word to the customer.' }),
  depositPercent: z.number().min(0).max(100).optional(),
  validDays: z.int().min(1).max(365).optional(),
  terms: z.array(z.string().trim().min(1).max(200)).max(20).optional(),
  by: z.string().trim().max(60).default(''),
};

export const newQuoteShape = z.object({ job: jobHeadShape.shape.id, ...contents }).openapi('NewQuote');
export const newRevisionShape = z.object(contents).openapi('NewRevision');
export type RevisionContents = z.infer<typeof newRevisionShape>;

const revisionHeadShape = z.object({
  revision: revisionShape,
  madeAt: moment,
  madeBy: z.string(),
  sentAt: moment.optional(),
});

export const quoteShape = quoteHeadShape.extend({ revisions: z.array(revisionHeadShape) }).openapi('Quote');

export const wholeRevisionShape = revisionHeadShape
  .extend({
    quote: numberShape,
    document: z.looseObject({}).openapi({
      description:
        'Everything of the revision, frozen: rigs with their briefs, own copies of parts and shop, versions of engine and catalogue, promises, bills, prices, terms.',
    }),
  })
  .openapi('QuoteRevision');

export const quoteListQuery = z.object({
  find: z.string().max(200).default('').openapi({ description: 'Words of number, title, customer or job.' }),
  state: z.enum(QUOTE_STATES).optional(),
  job: jobHeadShape.shape.id.optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  after: z.string().max(200).optional().openapi({ description: 'The `next` of the answer before.' }),
});

const sentences = z.array(z.string());

export const changesShape = z
  .object({
    from: revisionShape,
    to: revisionShape,
    terms: sentences,
    options: z.array(z.object({ name: z.string(), price: sentences, parts: sentences, promises: sentences })),
  })
  .openapi('QuoteChanges');

export const changesQuery = z.object({ from: revisionShape, to: revisionShape });

const linkShape = z
  .object({
    id: z.string(),
    revision: revisionShape,
    sentTo: z.string(),
    expiresAt: moment,
    revokedAt: moment.optional(),
    madeAt: moment,
    madeBy: z.string(),
  })
  .openapi('QuoteLink');

const eventShape = z
  .object({
    number: z.int(),
    revision: revisionShape,
    kind: z.enum([
      'sent',
      'opened',
      'accepted',
      'declined',
      'asked',
      'answered',
      'withdrawn',
      'link-revoked',
    ]),
    option: z.string().optional(),
    said: z.string().optional(),
    link: z.string().optional(),
    by: z.string(),
    at: moment,
  })
  .openapi('QuoteEvent');

const by = contents.by;
const email = z
  .string()
  .trim()
  .max(200)
  .regex(/^([^\s@<>,;"]+@[^\s@<>,;"]+)?$/, 'an e-mail address such as dana@parks.example was expected');

export const sendShape = z
  .object({
    to: email
      .default('')
      .openapi({ description: 'Where the link is sent; empty: nobody, the shop hands it over.' }),
    message: z
      .string()
      .trim()
      .max(1000)
      .default('')
      .openapi({ description: 'Stands over the link in the letter.' }),
    days: z
      .int()
      .min(1)
      .max(365)
      .optional()
      .openapi({ description: 'How long the link opens; until the quote no longer holds when absent.' }),
    by,
  })
  .openapi('SendQuote');

const postedShape = z
  .object({
    is: z.enum(['sent', 'kept', 'failed', 'nobody']),
    file: z
      .string()
      .optional()
      .openapi({ description: 'The letter in the outbox, where no mail server is set.' }),
    why: z.string().optional(),
  })
  .openapi('Posted', { description: 'What became of a letter.' });

export const sentShape = z
  .object({
    link: linkShape,
    address: z
      .string()
      .openapi({ description: 'What the customer opens; told once, only its hash is kept.' }),
    posted: postedShape,
  })
  .openapi('SentQuote');

export const answerShape = z.object({ said: z.string().trim().min(1).max(1000), by }).openapi('QuoteAnswer');
export const withdrawShape = z
  .object({ said: z.string().trim().max(600).default(''), by })
  .openapi('Withdraw');
export const revokeShape = z.object({ by }).openapi('Revoke');
export const storyShape = z
  .object({ links: z.array(linkShape), events: z.array(eventShape) })
  .openapi('QuoteStory');

export const answeredShape = storyShape
  .extend({
    posted: postedShape,
    to: z.string().openapi({ description: 'The address that the letter is for; empty: nobody.' }),
  })
  .openapi('QuoteAnswered');
