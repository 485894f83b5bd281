import type { Kysely } from 'kysely';
import type { Doing, JobHead } from './job.ts';
import { listJobs } from './jobs.ts';
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

/** Jobs changed last, and quotes at work, that are looked at. */
const MOST = 500;

/** How the jobs stand that changed last, with every job that has a quote at work. */
export async function jobStandings(db: Kysely<Tables>, words: readonly string[]): Promise<JobStanding[]> {
  const jobs = await listJobs(db, { words, limit: MOST });
  const known = new Set(jobs.map((j) => j.id));
  if (words.length === 0) {
    const open = await db
      .selectFrom('quotes')
      .innerJoin('jobs', 'jobs.id', 'quotes.job_id')
      .selectAll('jobs')
      .where('quotes.state', 'in', ['drawn', 'sent', 'accepted'])
      .orderBy('quotes.since', 'desc')
      .limit(MOST)
      .execute();
    for (const row of open) {
      if (known.has(row.id)) continue;
      known.add(row.id);
      const { id, version, title, customer } = row;
      const [madeAt, changedAt, changedBy] = [row.made_at, row.changed_at, row.changed_by];
      jobs.push({ id, version, title, customer, madeAt, changedAt, changedBy });
    }
  }
  if (jobs.length === 0) return [];
  const facts = await factsOf(db, [...known]);
  return jobs.map((job) => standingFrom({ job, ...facts(job.id) }));
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
  return (id: string): Omit<JobFacts, 'job'> => {
    const mark = markOf.get(id);
    return {
      quotes: quotes
        .filter((q) => q.job_id === id)
        .map((q) => ({ ...q, state: q.state as QuoteState, question: q.question === 1 })),
      machines: machines
        .filter((m) => m.job_id === id)
        .map((m) => {
          const tested = testedAt.get(m.serial);
          return {
            serial: m.serial,
            madeAt: m.made_at,
            ...(tested === undefined ? {} : { testedAt: tested }),
          };
        }),
      ...(mark === undefined ? {} : { mark }),
    };
  };
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
