import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { moneyText } from '@spraywright/engine/quantity';
import type { FrozenQuote } from '../../documents/quote/frozen-quote.ts';
import { dateText, parseDay } from '../../documents/quote-terms.ts';
import {
  answerQuestion,
  findQuote,
  findRevision,
  linksOf,
  makeQuoteLink,
  markSent,
  newToken,
  quoteEvents,
  revokeLink,
  withdrawQuote,
  type Records,
} from '../../store/index.ts';
import { tell } from '../doings-book.ts';
import type { Letter, Mail } from '../mail/mail.ts';
import { signedName } from '../role-guard.ts';
import type { Shelf } from '../shelf.ts';
import { paperOf } from './quote-paper-of.ts';
import { answerRoute, revokeRoute, sendRoute, storyRoute, withdrawRoute } from './sending-routes.ts';

interface SendingApi {
  readonly shelf: Shelf;
  readonly records: Records;
  readonly mail: Mail;
  /** Origin of the pages as the customer reaches them. */
  readonly originOf: (c: Context) => string;
  /** The moment as ISO text in UTC. */
  readonly now: () => string;
}

const DAY = 86_400_000;

/** What is done with a quote once it is drawn up: send, take links back, answer, withdraw. */
export function sendingApi(app: OpenAPIHono, { shelf, records, mail, originOf, now }: SendingApi): void {
  const { db, save } = records;
  const story = async (number: string) => {
    await findQuote(db, number);
    return { links: await linksOf(db, number), events: await quoteEvents(db, number) };
  };

  app.openapi(sendRoute, async (c) => {
    const { number, revision } = c.req.valid('param');
    const { to, message, days, by: typed } = c.req.valid('json');
    const kept = await findRevision(db, number, revision);
    const quote = kept.document as FrozenQuote;
    const paper = await paperOf(kept);
    const at = now();
    const doing = { by: signedName(c) ?? typed, at };
    // The link opens on the last day of the quote too, wherever the customer is.
    const until =
      days === undefined
        ? Date.parse(`${quote.validUntil}T00:00:00Z`) + 2 * DAY
        : Date.parse(at) + days * DAY;
    const expiresAt = new Date(Math.max(until, Date.parse(at) + DAY)).toISOString();
    const token = newToken();
    tell(c, `${number} ${revision}${to === '' ? '' : ` to ${to}`}`);
    const link = await save(async (t) => {
      await markSent(t, number, revision, paper, doing);
      return makeQuoteLink(t, { quote: number, revision, sentTo: to, expiresAt }, token, doing);
    });
    const address = `${originOf(c)}/q/${token}`;
    const posted =
      to === ''
        ? ({ is: 'nobody' } as const)
        : await mail(quoteLetter(quote, { to, message, address, expiresAt, paper }));
    return c.json({ link, address, posted }, 201);
  });

  app.openapi(storyRoute, async (c) => c.json(await story(c.req.valid('param').number), 200));

  app.openapi(revokeRoute, async (c) => {
    const { number, link } = c.req.valid('param');
    const by = signedName(c) ?? c.req.valid('json').by;
    await save((t) => revokeLink(t, number, link, { by, at: now() }));
    return c.json(await story(number), 200);
  });

  app.openapi(answerRoute, async (c) => {
    const { number } = c.req.valid('param');
    const { said, by: typed } = c.req.valid('json');
    await save((t) => answerQuestion(t, number, said, { by: signedName(c) ?? typed, at: now() }));
    const told = await story(number);
    const link = told.events.findLast((e) => e.kind === 'answered')?.link;
    const to = told.links.find((l) => l.id === link)?.sentTo ?? '';
    if (to === '') return c.json({ ...told, to, posted: { is: 'nobody' } as const }, 200);
    const { shop } = await shelf.current();
    const posted = await mail({
      to,
      subject: `Your question about quote ${number}`,
      text: `${said}\n\nThe answer also stands on the page of the quote, behind the link that you have.\n\n${shop.name}\n${shop.address}\n`,
    });
    return c.json({ ...told, to, posted }, 200);
  });

  app.openapi(withdrawRoute, async (c) => {
    const { number } = c.req.valid('param');
    const { said, by } = c.req.valid('json');
    await save((t) => withdrawQuote(t, number, said, { by: signedName(c) ?? by, at: now() }));
    return c.json(await findQuote(db, number), 200);
  });
}

function quoteLetter(
  { number, revision, shop, options, validUntil }: FrozenQuote,
  given: { to: string; message: string; address: string; expiresAt: string; paper: Uint8Array },
): Letter {
  const { to, message, address, expiresAt, paper } = given;
  const prices = options
    .map(({ name, summary }) =>
      options.length === 1
        ? `${summary.title}: ${moneyText(summary.totalCents)}`
        : `${name}: ${moneyText(summary.totalCents)}`,
    )
    .join('\n');
  return {
    to,
    subject: `Quote ${number} ${revision} from ${shop.name}: ${options[0]!.summary.title}`,
    text: [
      ...(message === '' ? [] : [message, '']),
      prices,
      '',
      'Read it, ask, accept or decline here. The link is for you alone:',
      address,
      '',
      `It opens until ${dateText(new Date(expiresAt))}; the quote holds until ${dateText(parseDay(validUntil))}. The quote is attached as a PDF too.`,
      '',
      shop.name,
      shop.address,
      '',
    ].join('\n'),
    files: [{ name: `${number}-${revision}.pdf`, bytes: paper }],
  };
}
