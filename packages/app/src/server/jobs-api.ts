import type { OpenAPIHono } from '@hono/zod-openapi';
import {
  editJob,
  editsAfter,
  listJobs,
  makeJob,
  openJob,
  type Job,
  type JobHead,
  type Records,
} from '../store/index.ts';
import { tell } from './doings-book.ts';
import { afterPlace, nextOf, wordsOf } from './found-list.ts';
import { signedName } from './role-guard.ts';
import { editRoute, historyRoute, listRoute, makeRoute, openRoute } from './job-routes.ts';

interface JobsApi {
  readonly records: Records;
  /** The moment as ISO text in UTC. */
  readonly now: () => string;
  readonly newId: () => string;
}

/** List, make, open and edit jobs. */
export function jobsApi(app: OpenAPIHono, { records, now, newId }: JobsApi): void {
  const { db, save } = records;

  app.openapi(listRoute, async (c) => {
    const { find, limit, after } = c.req.valid('query');
    const jobs = await listJobs(db, { words: wordsOf(find), limit, ...afterPlace(after) });
    return c.json(
      { jobs, ...nextOf(jobs, limit, ({ changedAt, id }) => ({ at: changedAt, name: id })) },
      200,
    );
  });

  app.openapi(makeRoute, async (c) => {
    const { id = newId(), rig, notes, by } = c.req.valid('json');
    const job = await save((t) => makeJob(t, id, { rig, notes }, { by: signedName(c) ?? by, at: now() }));
    return c.json(job, 201, { Location: `/api/jobs/${id}`, ETag: versionTag(job) });
  });

  app.openapi(openRoute, async (c) => {
    const job = await openJob(db, c.req.valid('param').id);
    const tag = versionTag(job);
    if (c.req.header('If-None-Match') === tag) return c.body(null, 304, { ETag: tag });
    return c.json(job, 200, { ETag: tag });
  });

  app.openapi(editRoute, async (c) => {
    const { id } = c.req.valid('param');
    const { base, edits, by } = c.req.valid('json');
    tell(c, edits.map(({ about }) => about).join('; '));
    const job = await save((t) => editJob(t, id, base, edits, { by: signedName(c) ?? by, at: now() }));
    return c.json(headOnly(job), 200, { ETag: versionTag(job) });
  });

  app.openapi(historyRoute, async (c) => {
    const { id } = c.req.valid('param');
    const { after, limit } = c.req.valid('query');
    await openJob(db, id);
    return c.json({ edits: await editsAfter(db, id, after, limit) }, 200);
  });
}

const versionTag = ({ version }: JobHead): string => `"${version}"`;

function headOnly({ document: _, ...head }: Job): JobHead {
  return head;
}
