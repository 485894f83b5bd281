import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { belowFloor } from '@spraywright/engine/rig';
import { freezeQuote, type FrozenQuote, type QuoteContents } from '../../documents/quote/frozen-quote.ts';
import { quoteChanges } from '../../documents/quote/quote-changes.ts';
import {
  buildsToDo,
  findQuote,
  findRevision,
  listQuotes,
  listRevisions,
  makeQuote,
  openJob,
  reviseQuote,
  type Freeze,
  type Records,
} from '../../store/index.ts';
import { afterPlace, nextOf, wordsOf } from '../found-list.ts';
import { RefusedFields } from '../problem.ts';
import { signedName } from '../role-guard.ts';
import type { Shelf } from '../shelf.ts';
import { promisedDay } from './build-plan.ts';
import { paperOf } from './quote-paper-of.ts';
import {
  changesRoute,
  makeQuoteRoute,
  paperRoute,
  quoteRoute,
  quotesRoute,
  reviseRoute,
  revisionRoute,
} from './quote-routes.ts';
import type { RevisionContents } from './quote-shapes.ts';

export interface QuotesApi {
  readonly shelf: Shelf;
  readonly records: Records;
  /** The moment as ISO text in UTC. */
  readonly now: () => string;
}

/** Quotes of the records: make, revise, read, print, compare. */
export function quotesApi(app: OpenAPIHono, api: QuotesApi): void {
  const { records, now } = api;
  const { db, save } = records;

  app.openapi(quotesRoute, async (c) => {
    const { find, state, job, limit, after } = c.req.valid('query');
    const quotes = await listQuotes(db, {
      words: wordsOf(find),
      limit,
      ...afterPlace(after),
      ...(state === undefined ? {} : { state }),
      ...(job === undefined ? {} : { job }),
    });
    return c.json(
      { quotes, ...nextOf(quotes, limit, ({ since, number }) => ({ at: since, name: number })) },
      200,
    );
  });

  app.openapi(makeQuoteRoute, async (c) => {
    const { job, ...contents } = c.req.valid('json');
    const freeze = await frozenFrom(c, api, job, contents);
    const by = signedName(c) ?? contents.by;
    const quote = await save((t) => makeQuote(t, job, freeze, { by, at: now() }));
    return c.json(quote, 201, { Location: `/api/quotes/${quote.number}` });
  });

  app.openapi(quoteRoute, async (c) => {
    const { number } = c.req.valid('param');
    const [quote, revisions] = [await findQuote(db, number), await listRevisions(db, number)];
    return c.json({ ...quote, revisions }, 200);
  });

  app.openapi(reviseRoute, async (c) => {
    const { number } = c.req.valid('param');
    const contents = c.req.valid('json');
    const { job } = await findQuote(db, number);
    const freeze = await frozenFrom(c, api, job, contents);
    const by = signedName(c) ?? contents.by;
    return c.json(await save((t) => reviseQuote(t, number, freeze, { by, at: now() })), 201);
  });

  app.openapi(revisionRoute, async (c) => {
    const { number, revision } = c.req.valid('param');
    const { paper: _, document, ...head } = await findRevision(db, number, revision);
    return c.json({ ...head, document: document as Record<string, unknown> }, 200);
  });

  app.openapi(paperRoute, async (c) => {
    const { number, revision } = c.req.valid('param');
    const bytes = await paperOf(await findRevision(db, number, revision));
    return c.body(new Uint8Array(bytes), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="${number}-${revision}.pdf"`,
    });
  });

  app.openapi(changesRoute, async (c) => {
    const { number } = c.req.valid('param');
    const { from, to } = c.req.valid('query');
    const [before, after] = [await findRevision(db, number, from), await findRevision(db, number, to)];
    const changes = quoteChanges(before.document as FrozenQuote, after.document as FrozenQuote);
    return c.json({ from, to, terms: [...changes.terms], options: changes.options.map(listed) }, 200);
  });
}

/** @throws RefusedFields when a rig cannot be read or its price is under what the role may give */
async function frozenFrom(
  c: Context,
  { shelf, records, now }: QuotesApi,
  job: string,
  contents: RevisionContents,
): Promise<Freeze> {
  const { catalogue, shop } = await shelf.current();
  const { units, note, depositPercent, validDays, terms } = contents;
  const options: QuoteContents['options'][number][] = [];
  for (const { name, job: other = job, rig, pricing } of contents.options)
    options.push({
      name,
      ...(rig === undefined ? { job: other, rig: (await openJob(records.db, other)).document.rig } : { rig }),
      ...(pricing === undefined ? {} : { pricing: given(pricing) }),
    });
  const today = now().slice(0, 10);
  const toDo = await buildsToDo(records.db);
  const proven = freezeQuote(
    {
      date: today,
      units,
      note,
      ...given({ depositPercent, validDays, terms }),
      options,
      readyDay: (build) => promisedDay(toDo, shop, today, build),
    },
    catalogue,
    shop,
  );
  if (!proven.ok) throw new RefusedFields('unreadable-rig', proven.problems);
  const role = c.get('person')?.role;
  const refused = proven.proofs.flatMap((proof, index) => {
    const { name, rig, pricing } = options[index]!;
    const price = pricing?.price ?? (rig as { pricing?: { price?: unknown } }).pricing?.price;
    const why = belowFloor(proof.bill, shop, price !== undefined, role);
    if (why === undefined) return [];
    return { field: `options.${index}.pricing`, code: 'below-floor', message: `option '${name}': ${why}` };
  });
  if (refused.length > 0) throw new RefusedFields('below-floor', refused);
  return (name) => {
    const quote = proven.name(name);
    const { title, customer, totalCents } = quote.options[0]!.summary;
    return {
      document: quote,
      facts: { title, customer, priceCents: totalCents, optionCount: quote.options.length },
    };
  };
}

/** The fields that were given. */
function given<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as never;
}

function listed(option: ReturnType<typeof quoteChanges>['options'][number]) {
  const { name, price, parts, promises } = option;
  return { name, price: [...price], parts: [...parts], promises: [...promises] };
}
