import type { Kysely } from 'kysely';
import { isBehind, type Place } from './found-by.ts';
import type { Doing, JobHead } from './job.ts';
import { jobHead, listJobs, type JobQuery } from './jobs.ts';
import { Refusal } from './refusal.ts';
import type { QuoteState } from './quote-tables.ts';
import type { Tables } from './schema.ts';

/** How far a job has come. */
export const JOB_STATES = [
  'asked',
  'being-designed',
  'quoted',
  'accepted',
  'being-built',
  'tested',
  'handed-over',
  'declined',
  'stopped',
] as const;
type JobState = (typeof JOB_STATES)[number];

/** What is said of a job because nothing else tells it. */
export const JOB_MARKS = ['stopped', 'taken-up', 'handed-over'] as const;
export type JobMark = (typeof JOB_MARKS)[number];

/** A job with how far it has come, who is to act next, and since when. */
export interface JobStanding {
  readonly id: string;
  readonly title: string;
  readonly customer: string;
  readonly state: JobState;
  readonly since: string;
  /** Who is to act; nobody when the job is at its end. */
  readonly waitsFor: 'builder' | 'customer' | 'shop hand' | 'nobody';
  /** What they are to do. */
  readonly to: string;
  /** Its newest quote that is accepted or open; when it was refused, that one. */
  readonly quote?: string;
  /** Its newest machine. */
  readonly serial?: string;
}

/** What happened to a job, as far as its state follows from it. */
export interface JobFacts {
  readonly job: Pick<JobHead, 'id' | 'version' | 'title' | 'customer' | 'madeAt' | 'changedAt'>;
  readonly quotes: readonly {
    readonly number: string;
    readonly revision: string;
    readonly state: QuoteState;
    readonly since: string;
    readonly question: boolean;
  }[];
  readonly machines: readonly {
    readonly serial: string;
    readonly madeAt: string;
    readonly testedAt?: string;
  }[];
  readonly mark?: { readonly kind: JobMark; readonly at: string };
}

type Stands = Pick<JobStanding, 'state' | 'since' | 'waitsFor' | 'to' | 'quote'>;

/** How far a job has come, from what happened to it; the latest thing that is past taking back decides. */
export function standingFrom(facts: JobFacts): JobStanding {
  const { id, title, customer } = facts.job;
  const stands = marked(facts) ?? built(facts) ?? quoted(facts) ?? designed(facts);
  return { id, title, customer, ...papersOf(facts), ...stands };
}

/** What belongs to a job however far it has come: its newest live quote and its newest machine. */
function papersOf({ quotes, machines }: JobFacts): Pick<JobStanding, 'quote' | 'serial'> {
  const live = (states: readonly QuoteState[]) =>
    newest(
      quotes.filter((q) => states.includes(q.state)),
      (q) => q.since,
    )?.number;
  // One that was accepted goes before one that was drawn up later and is still open.
  const quote = live(['accepted']) ?? live(['sent', 'drawn']);
  const serial = newest(machines, (m) => m.madeAt)?.serial;
  return { ...(quote === undefined ? {} : { quote }), ...(serial === undefined ? {} : { serial }) };
}

function marked({ mark }: JobFacts): Stands | undefined {
  if (mark === undefined || mark.kind === 'taken-up') return undefined;
  return { state: mark.kind, since: mark.at, waitsFor: 'nobody', to: '' };
}

function built({ machines }: JobFacts): Stands | undefined {
  const last = newest(machines, (m) => m.madeAt);
  if (last === undefined) return undefined;
  const { serial, madeAt, testedAt } = last;
  return testedAt === undefined
    ? { state: 'being-built', since: madeAt, waitsFor: 'shop hand', to: `build and test ${serial}` }
    : { state: 'tested', since: testedAt, waitsFor: 'builder', to: `hand over ${serial}` };
}

function quoted({ quotes, job }: JobFacts): Stands | undefined {
  const of = (state: QuoteState) =>
    newest(
      quotes.filter((q) => q.state === state),
      (q) => q.since,
    );
  const taken = of('accepted');
  if (taken !== undefined)
    return {
      state: 'accepted',
      since: taken.since,
      waitsFor: 'shop hand',
      to: 'begin the machine',
    };
  const sent = of('sent');
  if (sent !== undefined) {
    const { number: quote, since, question } = sent;
    return question
      ? { state: 'quoted', since, waitsFor: 'builder', to: `answer a question about ${quote}` }
      : { state: 'quoted', since, waitsFor: 'customer', to: `answer ${quote}` };
  }
  const drawn = of('drawn');
  if (drawn !== undefined)
    return {
      state: 'being-designed',
      since: drawn.since,
      waitsFor: 'builder',
      to: `send ${drawn.number} ${drawn.revision}`,
    };
  const refused = of('declined');
  // Whoever changes the job after a refusal is at it again.
  if (refused === undefined || refused.since < job.changedAt) return undefined;
  return { state: 'declined', since: refused.since, waitsFor: 'nobody', to: '', quote: refused.number };
}

function designed({ job }: JobFacts): Stands {
  return job.version === 1
    ? { state: 'asked', since: job.madeAt, waitsFor: 'builder', to: 'design it' }
    : { state: 'being-designed', since: job.changedAt, waitsFor: 'builder', to: 'make a quote' };
}

function newest<T>(list: readonly T[], at: (entry: T) => string): T | undefined {
  return list.reduce<T | undefined>(
    (best, e) => (best === undefined || at(e) >= at(best) ? e : best),
    undefined,
  );
}

/** Where a page of standings ends among the jobs, and among those with a quote at work while there are more. */
export interface StandingsEnd {
  readonly job: Place;
  readonly quote?: Place;
}

/**
 * How the jobs of one page stand, the last changed first; where no words are asked a page tells as many jobs that have a
 * quote at work too, those whose quote moved last first, so that they stand in front however long ago they were changed.
 *
 * @param query its `after` where the page before ended; no more jobs at work are told after one that ended without a quote
 */
export async function jobStandings(
  db: Kysely<Tables>,
  query: Omit<JobQuery, 'after'> & { readonly after?: StandingsEnd },
): Promise<{ readonly standings: readonly JobStanding[]; readonly end?: StandingsEnd }> {
  const { words, limit, after } = query;
  const page = await listJobs(db, { words, limit, ...(after === undefined ? {} : { after: after.job }) });
  const asked = words.length === 0 && (after === undefined || after.quote !== undefined);
  const atWork = asked ? await jobsAtWork(db, limit, after?.quote) : [];
  const jobs = new Map([...page, ...atWork.map(({ job }) => job)].map((job) => [job.id, job]));
  if (jobs.size === 0) return { standings: [] };
  const facts = await factsOf(db, [...jobs.keys()]);
  const standings = [...jobs.values()].map((job) => standingFrom({ job, ...facts(job.id) }));
  // Behind the last job there is none at work that was not told.
  if (page.length < limit) return { standings };
  const last = page.at(-1)!;
  const job = { at: last.changedAt, name: last.id };
  const quote = atWork.length < limit ? undefined : atWork.at(-1)!.quote;
  return { standings, end: { job, ...(quote === undefined ? {} : { quote }) } };
}

/** Jobs of which a quote is drawn up, sent or accepted, with the place of that quote, the last come into its state first. */
async function jobsAtWork(
  db: Kysely<Tables>,
  limit: number,
  after: Place | undefined,
): Promise<{ readonly job: JobHead; readonly quote: Place }[]> {
  const rows = await db
    .selectFrom((tables) => {
      let quotes = tables
        .selectFrom('quotes')
        .select(['job_id', 'since', 'number'])
        // Said the other way round, so that both databases go through the quotes in their order instead of sorting them.
        .where('state', 'not in', ['declined', 'withdrawn']);
      if (after !== undefined) quotes = quotes.where(isBehind(after, { at: 'since', name: 'number' }));
      return quotes.orderBy('since', 'desc').orderBy('number', 'desc').limit(limit).as('at_work');
    })
    .innerJoin('jobs', 'jobs.id', 'at_work.job_id')
    .selectAll('jobs')
    .select(['at_work.since', 'at_work.number'])
    .orderBy('at_work.since', 'desc')
    .orderBy('at_work.number', 'desc')
    .execute();
  return rows.map((row) => ({ job: jobHead(row), quote: { at: row.since, name: row.number } }));
}

async function factsOf(db: Kysely<Tables>, ids: readonly string[]) {
  const quotes = await db
    .selectFrom('quotes')
    .select(['number', 'revision', 'job_id', 'state', 'since', 'question'])
    .where('job_id', 'in', ids)
    .execute();
  const machines = await db
    .selectFrom('machines')
    .select(['serial', 'job_id', 'made_at'])
    .where('job_id', 'in', ids)
    .execute();
  const tests =
    machines.length === 0
      ? []
      : await db
          .selectFrom('machine_entries')
          .select(['serial', 'made_at'])
          .where('kind', '=', 'yard-finished')
          .where(
            'serial',
            'in',
            machines.map((m) => m.serial),
          )
          .orderBy('number')
          .execute();
  const marks = await db
    .selectFrom('job_marks')
    .select(['job_id', 'kind', 'made_at'])
    .where('job_id', 'in', ids)
    .orderBy('number')
    .execute();
  const testedAt = new Map(tests.map((t) => [t.serial, t.made_at]));
  const markOf = new Map(marks.map((m) => [m.job_id, { kind: m.kind as JobMark, at: m.made_at }]));
  const quotesOf = byJob(quotes);
  const machinesOf = byJob(machines);
  return (id: string): Omit<JobFacts, 'job'> => {
    const mark = markOf.get(id);
    return {
      quotes: (quotesOf.get(id) ?? []).map((q) => ({
        ...q,
        state: q.state as QuoteState,
        question: q.question === 1,
      })),
      machines: (machinesOf.get(id) ?? []).map(({ serial, made_at: madeAt }) => {
        const tested = testedAt.get(serial);
        return { serial, madeAt, ...(tested === undefined ? {} : { testedAt: tested }) };
      }),
      ...(mark === undefined ? {} : { mark }),
    };
  };
}

function byJob<T extends { readonly job_id: string }>(rows: readonly T[]): ReadonlyMap<string, readonly T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const of = found.get(row.job_id);
    if (of === undefined) found.set(row.job_id, [row]);
    else of.push(row);
  }
  return found;
}

/** Says of a job that it stopped, goes on, or was handed over. @throws Refusal `no-such-job` */
export async function markJob(
  db: Kysely<Tables>,
  id: string,
  kind: JobMark,
  said: string,
  { by, at }: Doing,
): Promise<void> {
  const known = await db.selectFrom('jobs').select('id').where('id', '=', id).executeTakeFirst();
  if (known === undefined) throw new Refusal('no-such-job', `there is no job '${id}'`, { id });
  const { last } = await db
    .selectFrom('job_marks')
    .select((e) => e.fn.max('number').as('last'))
    .where('job_id', '=', id)
    .executeTakeFirstOrThrow();
  await db
    .insertInto('job_marks')
    .values({ job_id: id, number: Number(last ?? 0) + 1, kind, said, made_by: by, made_at: at })
    .execute();
}
