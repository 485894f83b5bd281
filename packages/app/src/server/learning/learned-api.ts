import { createHash } from 'node:crypto';
import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import { drifts, driftText } from '@spraywright/engine/yard';
import type { Records } from '../../store/index.ts';
import type { Shelf } from '../shelf.ts';
import { ShopLearning, type ShopLearned } from './shop-learning.ts';

/** A reading less likely sound than this is told of. */
const DOUBTED = 0.5;

const factorShape = z.object({
  key: z.string(),
  name: z.string().openapi({ example: 'Plunger pump: flow' }),
  mean: z.number().openapi({ description: 'Logarithm of the factor on what the catalogue says.' }),
  deviation: z.number(),
  before: z
    .object({ mean: z.number(), deviation: z.number() })
    .openapi({ description: 'What the tolerance says before any reading.' }),
  rigs: z.int().openapi({ description: 'Built machines whose readings depend on it.' }),
  drifts: z.boolean().openapi({ description: 'Nine in ten of what is learned lies on one side.' }),
  told: z.string().openapi({ example: '3.0 % below its leaflet (2.1 % to 3.9 %), from 7 rigs' }),
});

const calibrationShape = z.object({
  bands: z.array(
    z.object({
      from: z.number(),
      to: z.number(),
      tested: z.int(),
      promised: z.number(),
      held: z.int(),
    }),
  ),
  readings: z.int(),
  inside: z.int(),
  windows: z.enum(['as promised', 'too narrow', 'too wide', 'too few to tell']),
});

const learnedShape = z
  .object({
    document: z
      .looseObject({ format: z.literal('spraywright-learned'), machines: z.int(), readings: z.int() })
      .openapi({ description: 'As the command `learn` keeps it, for `prove --odds --learned`.' }),
    factors: z.array(factorShape),
    calibration: calibrationShape,
    doubted: z.array(z.object({ serial: z.string(), id: z.string() })).openapi({
      description: 'Readings that do not fit what all others say; they count for next to nothing.',
    }),
    unused: z.array(z.object({ why: z.string(), readings: z.int() })),
    unfinished: z
      .array(z.string())
      .openapi({ description: 'Machines with a test that is not finished; it teaches nothing yet.' }),
    unfit: z
      .array(z.object({ serial: z.string(), day: z.string(), why: z.string() }))
      .openapi({ description: 'Finished tests that cannot be read.' }),
  })
  .openapi('Learned');

const route = createRoute({
  method: 'get',
  path: '/api/learned',
  summary: 'What the yard tests of all built machines say of their parts, and how promises came out',
  responses: {
    200: {
      description: 'Worked out from the entries; the same whatever their order. Its ETag changes with them.',
      content: { 'application/json': { schema: learnedShape } },
    },
    304: { description: 'As it was when it was asked before' },
  },
});

/** What the shop has learned from its tested machines. */
export function learnedApi(
  app: OpenAPIHono,
  { records, shelf }: { readonly records: Records; readonly shelf: Shelf },
): void {
  const learning = new ShopLearning(records, shelf);
  app.openapi(route, async (c) => {
    const found = await learning.current();
    const tag = `"${createHash('sha256').update(found.mark).digest('hex').slice(0, 24)}"`;
    const head = { ETag: tag, 'Cache-Control': 'no-cache' };
    if (c.req.header('If-None-Match') === tag) return c.body(null, 304, head);
    return c.json(answerOf(found), 200, head);
  });
}

function answerOf({
  learned,
  document,
  calibration,
  unfinished,
  unfit,
}: ShopLearned): z.infer<typeof learnedShape> {
  const unused = new Map<string, number>();
  for (const { why } of learned.copies.flatMap((c) => c.unused)) unused.set(why, (unused.get(why) ?? 0) + 1);
  return {
    document,
    factors: learned.factors
      .filter((f) => f.rigs > 0)
      .map((f) => ({
        key: f.key,
        name: f.key.includes('#') ? `${f.name}, by its data of then` : f.name,
        mean: f.mean,
        deviation: f.deviation,
        before: f.before,
        rigs: f.rigs,
        drifts: drifts(f),
        told: driftText(f),
      })),
    calibration: { ...calibration, bands: [...calibration.bands] },
    doubted: learned.copies.flatMap((c) =>
      c.readings.filter((r) => r.sound < DOUBTED).map((r) => ({ serial: c.serial ?? '', id: r.id })),
    ),
    unused: [...unused].map(([why, readings]) => ({ why, readings })),
    unfinished: [...unfinished],
    unfit: [...unfit],
  };
}
