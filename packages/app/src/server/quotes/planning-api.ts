import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi';
import {
  buildsToDo,
  JOB_MARKS,
  JOB_STATES,
  jobStandings,
  markJob,
  type Records,
  type StandingsEnd,
} from '../../store/index.ts';
import { wordsOf } from '../found-list.ts';
import { jobParams } from '../job-shapes.ts';
import { refusals } from '../problem.ts';
import { signedName } from '../role-guard.ts';
import type { Shelf } from '../shelf.ts';
import { shopPlan } from './build-plan.ts';

interface PlanningApi {
  readonly shelf: Shelf;
  readonly records: Records;
  /** The moment as ISO text in UTC. */
  readonly now: () => string;
}

const json = <T>(schema: T) => ({ 'application/json': { schema } });
const day = z.string().openapi({ example: '2026-03-03' });
const moment = z.string().openapi({ description: 'ISO 8601, UTC' });

const standingShape = z
  .object({
    id: z.string(),
    title: z.string(),
    customer: z.string(),
    state: z.enum(JOB_STATES),
    since: moment,
    waitsFor: z.enum(['builder', 'customer', 'shop hand', 'nobody']),
    to: z.string().openapi({ description: 'What they are to do.' }),
    quote: z.string().optional(),
    serial: z.string().optional(),
  })
  .openapi('JobStanding');

const standingRoute = createRoute({
  method: 'get',
  path: '/api/standing',
  summary: 'How far the jobs have come, who is to act next and since when',
  request: {
    query: z.object({
      find: z.string().max(200).default('').openapi({ description: 'Words of title, customer or id.' }),
      limit: z.coerce.number().int().min(1).max(200).default(50),
      after: z.string().max(200).optional().openapi({ description: 'The `next` of the answer before.' }),
    }),
  },
  responses: {
    200: {
      description:
        'One page of jobs, the last changed first; where no words are asked as many with a quote at work stand on it too, those whose quote moved last first',
      content: json(
        z
          .object({ jobs: z.array(standingShape).readonly(), next: z.string().optional() })
          .openapi('Standing'),
      ),
    },
    ...refusals('bad-request'),
  },
});

const markRoute = createRoute({
  method: 'post',
  path: '/api/jobs/{id}/marks',
  summary: 'Say of a job that it stopped, is taken up again, or was handed over',
  request: {
    params: jobParams,
    body: {
      required: true,
      content: json(
        z
          .object({
            kind: z.enum(JOB_MARKS),
            said: z.string().trim().max(300).default(''),
            by: z.string().trim().max(60).default(''),
          })
          .openapi('JobMark'),
      ),
    },
  },
  responses: {
    200: { description: 'Said', content: json(z.object({ id: z.string() })) },
    ...refusals('not-json', 'foreign-page', 'no-such-job', 'too-large', 'wrong-type', 'bad-request'),
  },
});

const weekShape = z.object({ monday: day, hours: z.number(), capacity: z.number() });
const calendarRoute = createRoute({
  method: 'get',
  path: '/api/calendar',
  summary: 'What is to be built, week by week against the hours of the shop',
  responses: {
    200: {
      description: 'Accepted quotes in their order, with the day on which each is ready',
      content: json(
        z
          .object({
            today: day,
            hoursPerWeek: z.number().optional().openapi({ description: 'Absent when the shop sets none.' }),
            weeks: z.array(weekShape),
            builds: z.array(
              z.object({
                quote: z.string(),
                job: z.string(),
                title: z.string(),
                customer: z.string(),
                serials: z.array(z.string()),
                acceptedOn: day,
                hours: z.number(),
                partsOn: day,
                ready: day,
                weeks: z.array(z.object({ monday: day, hours: z.number() })),
              }),
            ),
          })
          .openapi('BuildCalendar'),
      ),
    },
    ...refusals('records-away'),
  },
});

/** The places where a page ended, as one word: those of the last job and, while there are more at work, of a quote. */
function nextText({ job, quote }: StandingsEnd): string {
  return [job, ...(quote === undefined ? [] : [quote])].map(({ at, name }) => `${at} ${name}`).join(' ');
}

function afterEnd(next: string | undefined): { readonly after?: StandingsEnd } {
  if (next === undefined) return {};
  const [at = '', name = '', since, number] = next.split(' ');
  const quote = since === undefined || number === undefined ? {} : { quote: { at: since, name: number } };
  return { after: { job: { at, name }, ...quote } };
}

/** Where the jobs stand, and when what was accepted is built. */
export function planningApi(app: OpenAPIHono, { shelf, records, now }: PlanningApi): void {
  const { db, save } = records;

  app.openapi(standingRoute, async (c) => {
    const { find, limit, after } = c.req.valid('query');
    const { standings, end } = await jobStandings(db, { words: wordsOf(find), limit, ...afterEnd(after) });
    return c.json({ jobs: standings, ...(end === undefined ? {} : { next: nextText(end) }) }, 200);
  });

  app.openapi(markRoute, async (c) => {
    const { id } = c.req.valid('param');
    const { kind, said, by } = c.req.valid('json');
    await save((t) => markJob(t, id, kind, said, { by: signedName(c) ?? by, at: now() }));
    return c.json({ id }, 200);
  });

  app.openapi(calendarRoute, async (c) => {
    const { shop } = await shelf.current();
    const today = now().slice(0, 10);
    const { builds, weeks, hoursPerWeek } = shopPlan(await buildsToDo(db), shop, today);
    return c.json(
      {
        today,
        ...(hoursPerWeek === undefined ? {} : { hoursPerWeek }),
        weeks: [...weeks],
        builds: builds.map((b) => ({ ...b, serials: [...b.serials], weeks: [...b.weeks] })),
      },
      200,
    );
  });
}
