import { moneyText } from '@spraywright/engine/quantity';
import { dateText, parseDay } from '../quote-terms.ts';
import type { FrozenOption, FrozenQuote } from './frozen-quote.ts';

/** One thing that every option of a quote has, said of each. */
export interface ChoiceRow {
  readonly name: string;
  readonly values: readonly string[];
  /** Not the same for all. */
  readonly differs: boolean;
}

/** Parts that a customer asks about, in the order in which he does. */
const KINDS: readonly (readonly [kind: string, name: string])[] = [
  ['carrier', 'On'],
  ['tank', 'Tank'],
  ['pump', 'Pump'],
  ['motor-pump', 'Pump'],
  ['engine', 'Engine'],
  ['pto-drive', 'Drive'],
  ['battery', 'Battery'],
  ['hose', 'Hose'],
  ['reel', 'Reel'],
  ['gun', 'Gun'],
  ['boom', 'Boom'],
];

/** What the options of a quote have in common and where they differ. */
export function choiceRows({ options }: FrozenQuote): ChoiceRow[] {
  const row = (name: string, value: (option: FrozenOption) => string): ChoiceRow => {
    const values = options.map(value);
    return { name, values, differs: new Set(values).size > 1 };
  };
  const promises = distinct(options.flatMap(({ summary }) => summary.promises.map((p) => p.id)));
  return [
    row('Price', ({ summary }) => moneyText(summary.totalCents)),
    row('To pay on order', ({ summary }) => moneyText(summary.depositCents)),
    row('Ordered on the day of this quote, ready by', ({ summary }) => dateText(parseDay(summary.readyDay))),
    row('Weighs dry', ({ summary }) => summary.dryMass),
    row('Promises', ({ summary }) => countsText(summary.counts)),
    ...KINDS.map(([kind, name]) => row(name, (option) => partsOfKind(option, kind))).filter(({ values }) =>
      values.some((v) => v !== NONE),
    ),
    ...promises
      .map((id) => row(sentenceOf(options, id), (option) => promiseText(option, id)))
      .filter(({ differs }) => differs),
  ];
}

const NONE = 'none';

function partsOfKind({ summary }: FrozenOption, kind: string): string {
  const found = summary.parts.filter((p) => p.kind === kind);
  if (found.length === 0) return NONE;
  return found
    .map(
      ({ count, name, length }) =>
        `${count > 1 ? `${count} × ` : ''}${name}${length === undefined ? '' : `, ${length}`}`,
    )
    .join('; ');
}

/** "41 kept, 2 thin, 1 broken, 3 unknown": what there is none of is left out. */
function countsText(counts: FrozenOption['summary']['counts']): string {
  return (['broken', 'unknown', 'thin', 'kept'] as const)
    .filter((state) => counts[state] > 0)
    .map((state) => `${counts[state]} ${state}`)
    .join(', ');
}

function sentenceOf(options: readonly FrozenOption[], id: string): string {
  return options.flatMap(({ summary }) => summary.promises).find((p) => p.id === id)!.sentence;
}

function promiseText({ summary }: FrozenOption, id: string): string {
  const promise = summary.promises.find((p) => p.id === id);
  if (promise === undefined) return 'does not arise';
  const { state, has, asked } = promise;
  return `${state}${has === undefined ? '' : `: ${has}`}${asked === undefined ? '' : `, asked ${asked}`}`;
}

function distinct(list: readonly string[]): string[] {
  return [...new Set(list)];
}
