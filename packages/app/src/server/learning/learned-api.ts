import { createHash } from 'node:crypto';
import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import {
  drifts,
  driftText,
  readingTask,
  readingText,
  SCALE_SUM,
  testedCopies,
} from '@spraywright/engine/yard';
import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Records } from '../../store/index.ts';
import { refusals } from '../problem.ts';
import type { Shelf } from '../shelf.ts';
import { ShopLearning, type ShopLearned } from './shop-learning.ts';

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
  copyDeviation: z.number().openapi({ description: 'Of one copy around the part; a tolerance.' }),
  machines: z
    .array(z.object({ serial: z.string(), taken: z.string(), mean: z.number(), deviation: z.number() }))
    .readonly()
    .optional()
    .openapi({
      description: 'What each tested machine says, the first tested first, where it was asked for.',
    }),
});

const calibrationShape = z.object({
  bands: z.array(
    z.object({
      from: z.number(),
      to: z.number(),
      tested: z.int(),
      promised: z.number(),
      held: z.int(),
      fair: z.array(z.int()).openapi({
        description: 'Least and most that would hold in nine of ten shops whose odds are right.',
      }),
      told: z.enum(['as promised', 'held less often', 'held more often', 'too few to tell']),
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
    doubted: z
      .array(
        z.object({
          serial: z.string(),
          id: z.string(),
          sound: z.number().openapi({ description: 'How likely it was taken as its instrument takes it.' }),
          task: z.string().openapi({ example: 'Gauge at the pump, spraying' }),
          read: z.string().optional().openapi({ example: '612 psi' }),
          window: z.string().optional().openapi({ example: '480 psi to 530 psi' }),
        }),
      )
      .openapi({
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
  request: {
    query: z.object({
      units: z.enum(['us', 'metric']).default('us'),
      machines: z.literal('yes').optional().openapi({
        description: 'With what each tested machine says of its own parts.',
      }),
    }),
  },
  responses: {
    ...refusals('bad-request'),
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
    const asked = c.req.valid('query');
    const found = await learning.current();
    const tag = `"${createHash('sha256')
      .update(JSON.stringify([found.mark, asked]))
      .digest('hex')
      .slice(0, 24)}"`;
    const head = { ETag: tag, 'Cache-Control': 'no-cache' };
    if (c.req.header('If-None-Match') === tag) return c.body(null, 304, head);
    return c.json(answerOf(found, asked.units, asked.machines === 'yes'), 200, head);
  });
}

function answerOf(
  { learned, document, calibration, doubted, unfinished, unfit }: ShopLearned,
  units: UnitSystem,
  machines: boolean,
): z.infer<typeof learnedShape> {
  const unused = new Map<string, number>();
  for (const { why } of learned.copies.flatMap((c) => c.unused)) unused.set(why, (unused.get(why) ?? 0) + 1);
  const tested = machines ? testedCopies(learned) : undefined;
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
        copyDeviation: f.copyDeviation,
        ...(tested === undefined ? {} : { machines: tested.get(f.key) ?? [] }),
      })),
    calibration: {
      ...calibration,
      bands: calibration.bands.map((b) => ({ ...b, fair: [...b.fair] })),
    },
    doubted: doubted.map(({ row, read, ...d }) => ({
      ...d,
      task:
        row === undefined
          ? d.id === SCALE_SUM
            ? 'Weights under all supports, added up'
            : d.id
          : readingTask(row, units),
      ...(row === undefined || read === undefined
        ? {}
        : {
            read: read.map((v) => readingText(row, v, units)).join(', '),
            window: `${readingText(row, row.low, units)} to ${readingText(row, row.high, units)}`,
          }),
    })),
    unused: [...unused].map(([why, readings]) => ({ why, readings })),
    unfinished: [...unfinished],
    unfit: [...unfit],
  };
}
