import type { PromiseState } from '@spraywright/engine/rig';
import { moneyText } from '@spraywright/engine/quantity';
import { escaped, faces } from '../chapters/on-page.ts';
import { dateText, parseDay } from '../quote-terms.ts';
import type { QuoteRow } from '../quote-words.ts';
import { choiceRows } from './choices.ts';
import { CUSTOMER_STYLE } from './customer-style.ts';
import type { FrozenOption, FrozenQuote } from './frozen-quote.ts';

/** What was asked and answered over a link, and how the quote stands for whoever holds it. */
export interface CustomerView {
  /** Address of the page; the forms and the PDF hang below it. */
  readonly address: string;
  /** Taken, refused, no longer to be had, past its day, or open. */
  readonly standing: 'open' | 'accepted' | 'declined' | 'withdrawn' | 'replaced' | 'past';
  /** Who settled it, when and how, in a sentence. */
  readonly settled?: string;
  readonly talk: readonly {
    readonly who: 'customer' | 'shop';
    readonly by: string;
    readonly day: string;
    readonly said: string;
  }[];
  /** Why a form was refused. */
  readonly refused?: string;
  /** What was typed into a refused form. */
  readonly typed?: Readonly<Record<string, string>>;
}

/** A quote as one page for a telephone, without script: what it will do, what it will not, price, and three forms. */
export function customerPage(quote: FrozenQuote, view: CustomerView): string {
  const { shop, number, revision, options } = quote;
  const [first] = options;
  const several = options.length > 1;
  const title = several
    ? `${first!.summary.title}: ${options.length} options`
    : first!.summary.words.statement;
  return customerSheet(
    `Quote ${number} ${revision}`,
    `<header><p class="shop">${escaped(shop.name)}<br><small>${escaped(shop.address)}</small></p>
<h1>${escaped(title)}</h1>
<p>Quote ${number} ${revision} for ${escaped(first!.summary.customer)}, ${dateText(parseDay(quote.date))}. Holds until ${dateText(parseDay(quote.validUntil))}.</p>
${standingOf(view)}
${quote.note === '' ? '' : `<p class="note">${escaped(quote.note)}</p>`}
<p><a class="way" href="${view.address}/quote.pdf">The whole quote as a PDF, with drawings and every promise</a></p></header>
<main>
${several ? sideBySide(quote) : ''}
${options.map((option, i) => optionPart(quote, option, several ? i + 1 : undefined)).join('\n')}
<section><h2>Terms</h2><ul class="rows">${shop.terms.map((t) => `<li>${escaped(t)}</li>`).join('')}
<li>This quote does not say that a use is lawful: the product label, local codes and licensed practice come first.</li></ul></section>
${talkPart(view)}
${formsPart(quote, view)}
</main>`,
  );
}

/** A page of the customer's sheet with a title and what stands on it. */
export function customerSheet(title: string, body: string): string {
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex"><title>${escaped(title)}</title><style>${faces()}${CUSTOMER_STYLE}</style></head>
<body>${body}</body></html>
`;
}

const STANDING = {
  open: '',
  accepted: 'This quote was accepted.',
  declined: 'This quote was declined.',
  withdrawn: 'The shop has taken this quote back. It can no longer be accepted.',
  replaced:
    'A newer revision of this quote is being drawn up or was sent. This one can no longer be accepted.',
  past: 'The day until which this quote held is past. Ask the shop for a new one.',
} as const;

function standingOf({ standing, settled, refused }: CustomerView): string {
  const stands =
    standing === 'open'
      ? ''
      : `<p class="standing" role="status">${escaped(settled ?? STANDING[standing])}</p>`;
  return refused === undefined ? stands : `${stands}<p class="refused" role="alert">${escaped(refused)}</p>`;
}

function sideBySide(quote: FrozenQuote): string {
  const rows = choiceRows(quote)
    .filter(({ differs }) => differs)
    .slice(0, MOST_ROWS);
  const head = quote.options.map(({ name }, i) => `<th scope="col">${i + 1}. ${escaped(name)}</th>`).join('');
  return `<section><h2>Side by side</h2><div class="scroll" tabindex="0" role="region" aria-label="The options side by side"><table>
<thead><tr><td></td>${head}</tr></thead><tbody>${rows
    .map(
      ({ name, values }) =>
        `<tr><th scope="row">${escaped(name)}</th>${values.map((v) => `<td>${escaped(v)}</td>`).join('')}</tr>`,
    )
    .join('')}</tbody></table></div></section>`;
}

/** Rows of the comparison on a telephone; the PDF has them all. */
const MOST_ROWS = 14;

function optionPart(
  quote: FrozenQuote,
  { name, summary, scene }: FrozenOption,
  place: number | undefined,
): string {
  const { words } = summary;
  const head =
    place === undefined
      ? ''
      : `<h2 class="option">${place}. ${escaped(name)}</h2><p>${escaped(words.statement)}</p>`;
  return `<section>${head}
<figure role="img" aria-label="${escaped(words.statement)}">${scene.replace(/^<svg/, '<svg aria-hidden="true"')}</figure>
<h2>What it will do</h2>${rowsOf(words.will)}
<h2>What it will not do</h2>${rowsOf(words.willNot)}
${words.open.length === 0 ? '' : `<h2>Still open</h2>${rowsOf(words.open)}`}
<h2>Price</h2>${priceOf(quote, summary)}
</section>`;
}

function rowsOf(rows: readonly QuoteRow[]): string {
  return `<ul class="rows">${rows
    .map(({ mark, text, note, has, asked }) => {
      const state = mark === 'line' ? '' : `<b class="state ${mark}">${STATES[mark]}</b> `;
      const figures =
        has === undefined && asked === undefined
          ? ''
          : `<span class="figures"><b>${escaped(has ?? '')}</b>${asked === undefined ? '' : `<small>${escaped(asked)}</small>`}</span>`;
      return `<li><span>${state}${escaped(text.replace(/ from sheet 2$/, ' in the PDF'))}${note === undefined || note === '' ? '' : `<small>${escaped(note)}</small>`}</span>${figures}</li>`;
    })
    .join('')}</ul>`;
}

const STATES: Readonly<Record<PromiseState, string>> = {
  kept: 'Kept',
  thin: 'Thin',
  broken: 'Broken',
  unknown: 'Unknown',
};

function priceOf(quote: FrozenQuote, summary: FrozenOption['summary']): string {
  const row = (name: string, figure: string, strong = false) =>
    `<tr${strong ? ' class="total"' : ''}><th scope="row">${escaped(name)}</th><td>${escaped(figure)}</td></tr>`;
  const { discount, tax, freightCents } = summary;
  return `<table class="price"><tbody>
${row('Rig as drawn, labour and water test included', moneyText(summary.linesCents))}
${discount === undefined ? '' : row('Discount', `−${moneyText(discount.cents)}`)}
${tax === undefined ? '' : row(`Sales tax, ${tax.percent} %${tax.on === 'goods' ? ' on parts and hose' : ''}`, moneyText(tax.cents))}
${freightCents === undefined ? '' : row('Freight, no sales tax reckoned on it', moneyText(freightCents))}
${row(tax === undefined ? 'Total, sales tax not included' : 'Total, sales tax included', moneyText(summary.totalCents), true)}
${row(`On order ${quote.shop.depositPercent} %, balance after the water test`, moneyText(summary.depositCents))}
${row(`Ordered on ${dateText(parseDay(quote.date))}, ready by`, dateText(parseDay(summary.readyDay)))}
</tbody></table>`;
}

function talkPart({ talk }: CustomerView): string {
  if (talk.length === 0) return '';
  return `<section><h2>Asked and answered</h2><ul class="rows">${talk
    .map(
      ({ who, by, day, said }) =>
        `<li><span><b>${escaped(by === '' ? (who === 'shop' ? 'The shop' : 'You') : by)}</b>, ${escaped(day)}<br>${escaped(said)}</span></li>`,
    )
    .join('')}</ul></section>`;
}

function formsPart({ options }: FrozenQuote, { address, standing, typed = {} }: CustomerView): string {
  const value = (name: string) => escaped(typed[name] ?? '');
  const name = (form: string) =>
    `<label>Your name<input name="name" autocomplete="name" maxlength="60" required value="${value(`${form}-name`)}"></label>`;
  const choose =
    options.length < 2
      ? `<input type="hidden" name="option" value="1">`
      : `<fieldset><legend>Which one</legend>${options
          .map(
            (o, i) =>
              `<label class="choice"><input type="radio" name="option" value="${i + 1}" required><span>${i + 1}. ${escaped(o.name)}, ${moneyText(o.summary.totalCents)}</span></label>`,
          )
          .join('')}</fieldset>`;
  const settle =
    standing !== 'open'
      ? ''
      : `<section><h2>Accept</h2><form method="post" action="${address}/accept">${choose}${name('accept')}
<button class="main">Accept this quote</button><p><small>Your name stands for your signature. The deposit is asked for by the shop.</small></p></form></section>
<section><h2>Decline</h2><form method="post" action="${address}/decline">${name('decline')}
<label>Why, so that the shop can do better<textarea name="said" maxlength="600" rows="3">${value('decline-said')}</textarea></label>
<button>Decline this quote</button></form></section>`;
  return `${settle}<section><h2>Ask</h2><form method="post" action="${address}/ask">${name('ask')}
<label>Your question<textarea name="said" maxlength="1000" rows="4" required>${value('ask-said')}</textarea></label>
<button>Ask the shop</button></form></section>`;
}
