import { moneyText } from '@spraywright/engine/quantity';
import { dateText, parseDay } from '../quote-terms.ts';
import type { FrozenOption, FrozenQuote } from './frozen-quote.ts';
import type { OptionSummary, QuotedPromise } from './option-summary.ts';

/** What changed between two revisions, in sentences; an empty list says that nothing did. */
export interface QuoteChanges {
  /** Price, deposit, validity, terms, note. */
  readonly terms: readonly string[];
  readonly options: readonly {
    readonly name: string;
    readonly price: readonly string[];
    readonly parts: readonly string[];
    readonly promises: readonly string[];
  }[];
}

/** Compares two revisions of a quote; options are paired by name, else by place. */
export function quoteChanges(from: FrozenQuote, to: FrozenQuote): QuoteChanges {
  const pairs = to.options.map((now, i) => {
    const named = from.options.find((o) => o.name === now.name);
    const placed = from.options[i];
    const before = named ?? (to.options.some((o) => o.name === placed?.name) ? undefined : placed);
    return { now, before };
  });
  const gone = from.options.filter((o) => !pairs.some((p) => p.before === o));
  return {
    terms: [...termChanges(from, to), ...gone.map((o) => `Option '${o.name}' is no longer offered.`)],
    options: pairs.map(({ now, before }) => optionChanges(before, now)),
  };
}

function optionChanges(before: FrozenOption | undefined, now: FrozenOption): QuoteChanges['options'][number] {
  if (before === undefined)
    return {
      name: now.name,
      price: [`Option '${now.name}' is new: ${moneyText(now.summary.totalCents)}.`],
      parts: [],
      promises: [],
    };
  const renamed = before.name === now.name ? [] : [`It was called '${before.name}'.`];
  return {
    name: now.name,
    price: [...renamed, ...priceChanges(before.summary, now.summary)],
    parts: partChanges(before.summary, now.summary),
    promises: promiseChanges(before.summary.promises, now.summary.promises),
  };
}

function termChanges(from: FrozenQuote, to: FrozenQuote): string[] {
  const said: string[] = [];
  const day = (text: string) => dateText(parseDay(text));
  if (from.validUntil !== to.validUntil)
    said.push(`It holds until ${day(to.validUntil)}, before until ${day(from.validUntil)}.`);
  if (from.shop.depositPercent !== to.shop.depositPercent)
    said.push(`On order ${to.shop.depositPercent} % is due, before ${from.shop.depositPercent} %.`);
  const [before, now] = [from.shop.terms, to.shop.terms];
  said.push(...now.filter((t) => !before.includes(t)).map((t) => `New term: ${t}`));
  said.push(...before.filter((t) => !now.includes(t)).map((t) => `No longer a term: ${t}`));
  if (from.note !== to.note)
    said.push(
      to.note === '' ? 'The word to the customer is gone.' : `The word to the customer is now: ${to.note}`,
    );
  if (from.catalogue.version !== to.catalogue.version)
    said.push(`Reckoned with catalogue ${to.catalogue.version}, before with ${from.catalogue.version}.`);
  if (from.engineVersion !== to.engineVersion)
    said.push(`Reckoned with engine ${to.engineVersion}, before with ${from.engineVersion}.`);
  return said;
}

function priceChanges(before: OptionSummary, now: OptionSummary): string[] {
  const said: string[] = [];
  const step = now.totalCents - before.totalCents;
  if (step !== 0)
    said.push(
      `The price goes from ${moneyText(before.totalCents)} to ${moneyText(now.totalCents)}, ${moneyText(Math.abs(step))} ${step > 0 ? 'more' : 'less'}.`,
    );
  const [off, offNow] = [before.discount?.cents ?? 0, now.discount?.cents ?? 0];
  if (off !== offNow) said.push(`The discount is ${moneyText(offNow)}, before ${moneyText(off)}.`);
  const [tax, taxNow] = [before.tax?.cents ?? 0, now.tax?.cents ?? 0];
  if (tax !== taxNow) said.push(`Sales tax is ${moneyText(taxNow)}, before ${moneyText(tax)}.`);
  if (before.readyDay !== now.readyDay)
    said.push(
      `Ordered on the day of the quote it is ready by ${dateText(parseDay(now.readyDay))}, before by ${dateText(parseDay(before.readyDay))}.`,
    );
  if (before.dryMass !== now.dryMass) said.push(`It weighs ${now.dryMass} dry, before ${before.dryMass}.`);
  return said;
}

type QuotedPart = OptionSummary['parts'][number];

function partChanges({ parts: before }: OptionSummary, { parts: now }: OptionSummary): string[] {
  const was = new Map(before.map((p) => [p.item, p]));
  const is = new Map(now.map((p) => [p.item, p]));
  return [
    ...now.flatMap((p) => {
      const old = was.get(p.item);
      if (old === undefined) return [`New: ${partText(p)}.`];
      return partText(old) === partText(p) ? [] : [`${partText(p)} instead of ${partText(old)}.`];
    }),
    ...before.filter((p) => !is.has(p.item)).map((p) => `No longer there: ${partText(p)}.`),
  ];
}

function partText({ count, name, length }: QuotedPart): string {
  return `${count > 1 ? `${count} × ` : ''}${name}${length === undefined ? '' : `, ${length}`}`;
}

function promiseChanges(before: readonly QuotedPromise[], now: readonly QuotedPromise[]): string[] {
  const was = new Map(before.map((p) => [p.id, p]));
  const is = new Set(now.map((p) => p.id));
  return [
    ...now.flatMap((p) => {
      const old = was.get(p.id);
      if (old === undefined) return [`New promise, ${p.state}: ${p.sentence}${figures(p)}.`];
      const state = old.state === p.state ? '' : `${p.state}, before ${old.state}`;
      const asked =
        old.asked === p.asked ? '' : `asked ${p.asked ?? 'nothing'}, before ${old.asked ?? 'nothing'}`;
      const has = old.has === p.has ? '' : `has ${p.has ?? 'no figure'}, before ${old.has ?? 'no figure'}`;
      const said = [state, asked, has].filter((text) => text !== '');
      return said.length === 0 ? [] : [`${p.sentence}: ${said.join('; ')}.`];
    }),
    ...before.filter((p) => !is.has(p.id)).map((p) => `No longer promised: ${p.sentence}.`),
  ];
}

function figures({ has, asked }: QuotedPromise): string {
  const said = [has, asked === undefined ? undefined : `asked ${asked}`].filter((t) => t !== undefined);
  return said.length === 0 ? '' : ` (${said.join(', ')})`;
}
