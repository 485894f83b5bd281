import type { Catalogue, Shop } from '@spraywright/engine/catalogue';
import { proveRig, readRig } from '@spraywright/engine/rig';
import type { FrozenOption, FrozenQuote } from '../../documents/quote/frozen-quote.ts';
import { summaryOf } from '../../documents/quote/option-summary.ts';
import { quoteChanges } from '../../documents/quote/quote-changes.ts';
import type { OpenQuote, ReproofFinding } from '../../store/index.ts';

/** Proves a quote with the catalogue as it is now; undefined when it says the same as before. */
export function quoteAgain(
  { number, revision, text }: OpenQuote,
  catalogue: Catalogue,
  usual: Shop,
): ReproofFinding | undefined {
  const before = JSON.parse(text) as FrozenQuote;
  const { depositPercent, validDays, terms } = before.shop;
  const shop = { ...usual, depositPercent, validDays, terms };
  const { title, customer, totalCents } = before.options[0]!.summary;
  const head = {
    quote: number,
    revision,
    title,
    customer,
    beforeCents: totalCents,
    brokenBefore: brokenIn(before),
  };
  const options: FrozenOption[] = [];
  for (const option of before.options) {
    const read = readRig(option.rig, catalogue);
    if (!read.ok) {
      const why = read.problems.map(({ message }) => message).join('; ');
      return { ...head, said: [`Option '${option.name}' can no longer be proven: ${why}.`] };
    }
    const proof = proveRig(read.rig, catalogue, shop, { units: before.units, notes: false });
    // The calendar of today is no matter of the catalogue: the days of the parts are compared by themselves.
    const { readyDay } = option.summary;
    options.push({ ...option, summary: summaryOf(proof, shop, before.units, () => readyDay) });
  }
  const now = { ...before, options };
  const several = options.length > 1;
  const said = quoteChanges(before, now).options.flatMap(({ name, price, parts, promises }, i) =>
    [...price, ...parts, ...promises, ...daysOfParts(before, now, i)].map((words) =>
      several ? `${name}: ${words}` : words,
    ),
  );
  if (said.length === 0) return undefined;
  return { ...head, afterCents: options[0]!.summary.totalCents, brokenAfter: brokenIn(now), said };
}

function daysOfParts(before: FrozenQuote, now: FrozenQuote, place: number): string[] {
  const [was, is] = [before, now].map(({ options }) => options[place]!.summary.partsInDays);
  return was === is ? [] : [`Its parts are there after ${is} working days, before after ${was}.`];
}

function brokenIn({ options }: FrozenQuote): number {
  return options.reduce((sum, { summary }) => sum + summary.counts.broken, 0);
}
