import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { customerPage, customerSheet, type CustomerView } from '../../documents/quote/customer-page.ts';
import type { FrozenQuote } from '../../documents/quote/frozen-quote.ts';
import { dateText } from '../../documents/quote-terms.ts';
import {
  askAboutQuote,
  findQuote,
  findRevision,
  firstOpened,
  openedBy,
  quoteEvents,
  Refusal,
  settleQuote,
  type QuoteEvent,
  type Records,
} from '../../store/index.ts';
import { tellAs } from '../doings-book.ts';
import { paperOf } from './quote-paper-of.ts';
import { RequestLimit } from './request-limit.ts';

interface CustomerPages {
  readonly records: Records;
  /** Records in which requests are counted: that somebody asks is no doing for the book. */
  readonly counts: Pick<Records, 'db' | 'save'>;
  /** The address that a request comes from. */
  readonly askerOf: (c: Context) => string;
  /** The moment as ISO text in UTC. */
  readonly now: () => string;
}

/** Requests and answers that one address may send a minute, and links that open nothing until it is shut out. */
const READS = { of: 'reads of a link', most: 120, within: 60_000 };
const ANSWERS = { of: 'answers by a link', most: 20, within: 60_000 };
const WRONG = { of: 'links that open nothing', most: 60, within: 15 * 60_000 };
const NAME = 60;

interface Link {
  readonly id: string;
  readonly quote: string;
  readonly revision: string;
}

/** What a customer sees of one quote: pages without script and without sign-in, opened by a link alone. */
export function customerPages(app: OpenAPIHono, { records, counts, askerOf, now }: CustomerPages): void {
  const { db, save } = records;
  const reads = new RequestLimit(counts, READS);
  const answers = new RequestLimit(counts, ANSWERS);
  const wrong = new RequestLimit(counts, WRONG);

  /** Opens the link of an address, or answers with the one page for all that open nothing. */
  const opened = async (c: Context, limit: RequestLimit, work: (link: Link) => Promise<Response>) => {
    // The address is the key: nothing on the way may keep the page.
    c.header('Cache-Control', 'no-store');
    c.header('X-Robots-Tag', 'noindex');
    const [asker, at] = [askerOf(c), now()];
    if (!(await limit.admit(asker, at)) || (await wrong.isSpent(asker, at))) return c.html(TOO_OFTEN, 429);
    const link = await openedBy(db, c.req.param('token') ?? '', at);
    if (link !== undefined) return work(link);
    await wrong.admit(asker, at);
    return c.html(NOTHING, 404);
  };
  const shown = async (c: Context, link: Link, more: Pick<CustomerView, 'refused' | 'typed'> = {}) => {
    const { document } = await findRevision(db, link.quote, link.revision);
    const quote = document as FrozenQuote;
    const view = { ...(await viewOf(records, link, quote, now())), ...more, address: addressOf(c) };
    return c.html(customerPage(quote, view), more.refused === undefined ? 200 : 422);
  };
  /** Takes a form; what is wrong with it is told on the page, with what was typed. */
  const taken = (
    c: Context,
    form: 'accept' | 'decline' | 'ask',
    work: (link: Link, fields: Fields, quote: FrozenQuote) => Promise<void>,
  ) =>
    opened(c, answers, async (link) => {
      const fields = await fieldsOf(c);
      const { document } = await findRevision(db, link.quote, link.revision);
      tellAs(c, {
        who: fields.name.slice(0, NAME),
        role: 'customer',
        did: DID[form],
        about_kind: 'quotes',
        about_id: link.quote,
      });
      try {
        if (fields.name === '' || fields.name.length > NAME)
          throw new Refusal('bad-change', `Your name has 1 to ${NAME} letters.`);
        await work(link, fields, document as FrozenQuote);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        const typed = { [`${form}-name`]: fields.name, [`${form}-said`]: fields.said };
        return shown(c, link, { refused: sentence(error.message), typed });
      }
      return c.redirect(addressOf(c), 303);
    });

  app.get('/q/:token', (c) =>
    opened(c, reads, async (link) => {
      if (c.req.method === 'GET') await save((t) => firstOpened(t, link, now()));
      return shown(c, link);
    }),
  );

  app.get('/q/:token/quote.pdf', (c) =>
    opened(c, reads, async (link) => {
      const bytes = await paperOf(await findRevision(db, link.quote, link.revision));
      return c.body(new Uint8Array(bytes), 200, {
        'Content-Type': 'application/pdf',
        'Content-Disposition': `inline; filename="${link.quote}-${link.revision}.pdf"`,
      });
    }),
  );

  app.post('/q/:token/accept', (c) =>
    taken(c, 'accept', async (link, { name, option }, quote) => {
      const chosen = /^[1-9]$/.test(option) ? quote.options[Number(option) - 1] : undefined;
      if (chosen === undefined)
        throw new Refusal('bad-change', `Choose one of the ${quote.options.length} options.`);
      if (quote.validUntil < now().slice(0, 10)) throw new Refusal('quote-closed', PAST);
      const words = { option: chosen.name, link: link.id };
      await save((t) =>
        settleQuote(t, link.quote, link.revision, 'accepted', words, { by: name, at: now() }),
      );
    }),
  );

  app.post('/q/:token/decline', (c) =>
    taken(c, 'decline', async (link, { name, said }) => {
      if (said.length > 600) throw new Refusal('bad-change', 'The reason has at most 600 letters.');
      const words = { ...(said === '' ? {} : { said }), link: link.id };
      await save((t) =>
        settleQuote(t, link.quote, link.revision, 'declined', words, { by: name, at: now() }),
      );
    }),
  );

  app.post('/q/:token/ask', (c) =>
    taken(c, 'ask', async (link, { name, said }) => {
      if (said === '' || said.length > 1000)
        throw new Refusal('bad-change', 'A question has 1 to 1000 letters.');
      const at = { quote: link.quote, revision: link.revision, link: link.id };
      await save((t) => askAboutQuote(t, at, said, { by: name, at: now() }));
    }),
  );
}

const DID = {
  accept: 'Accept a quote by its link',
  decline: 'Decline a quote by its link',
  ask: 'Ask about a quote by its link',
} as const;

const PAST = 'The day until which this quote held is past. Ask the shop for a new one.';

/** One page for every link that opens nothing, so that it tells nobody whether there ever was one. */
const NOTHING = customerSheet(
  'Nothing here',
  '<main><h1>This link opens nothing</h1><p>It may have been copied in part, be past its day, or have been taken back. Ask the shop that sent it for a new one.</p></main>',
);
const TOO_OFTEN = customerSheet(
  'Too often',
  '<main><h1>Too often at once</h1><p>Wait a minute, then open the link again; after many links that open nothing, a quarter of an hour.</p></main>',
);

interface Fields {
  readonly name: string;
  readonly said: string;
  readonly option: string;
}

async function fieldsOf(c: Context): Promise<Fields> {
  const form: Record<string, unknown> = await c.req.parseBody().catch(() => ({}));
  const text = (name: string) => {
    const value = form[name];
    // A browser sends every line end as two signs; no database keeps the sign of code 0.
    return typeof value === 'string' ? value.replace(/\r\n/g, '\n').replaceAll('\0', '').trim() : '';
  };
  return { name: text('name'), said: text('said'), option: text('option') };
}

/** Address of the page itself, also when one of its forms was sent. */
function addressOf(c: Context): string {
  return `/q/${c.req.path.split('/')[2] ?? ''}`;
}

async function viewOf(
  { db }: Records,
  link: Link,
  quote: FrozenQuote,
  now: string,
): Promise<Omit<CustomerView, 'address'>> {
  const head = await findQuote(db, link.quote);
  const events = await quoteEvents(db, link.quote);
  const talk = events
    .filter((e) => e.link === link.id && (e.kind === 'asked' || e.kind === 'answered'))
    .map((e) => ({
      who: e.kind === 'asked' ? ('customer' as const) : ('shop' as const),
      by: e.by,
      day: dayOf(e.at),
      said: e.said ?? '',
    }));
  const standing = standingOf(head, link.revision, quote.validUntil < now.slice(0, 10));
  const settled = events.findLast((e) => e.revision === link.revision && e.kind === standing);
  return { standing, talk, ...(settled === undefined ? {} : { settled: settledText(settled) }) };
}

function standingOf(
  { revision, state }: { revision: string; state: string },
  own: string,
  past: boolean,
): CustomerView['standing'] {
  if (state === 'withdrawn') return 'withdrawn';
  if (revision !== own || state === 'drawn') return 'replaced';
  if (state === 'accepted' || state === 'declined') return state;
  return past ? 'past' : 'open';
}

function settledText({ kind, by, at, option }: QuoteEvent): string {
  const what = option === undefined ? '' : `: ${option}`;
  if (kind === 'withdrawn') return 'The shop has taken this quote back. It can no longer be accepted.';
  return `${kind === 'accepted' ? 'Accepted' : 'Declined'} by ${by} on ${dayOf(at)}${what}.`;
}

function dayOf(moment: string): string {
  return dateText(new Date(moment));
}

function sentence(text: string): string {
  return /[.?!]$/.test(text) ? text : `${text}.`;
}
