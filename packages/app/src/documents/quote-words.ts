import { display, type UnitSystem } from '@spraywright/engine/quantity';
import { type DutyProof, type Proof, type PromiseKind, type RigPromise } from '@spraywright/engine/rig';
import { promiseFigures } from './promise-words.ts';

/** One line of the quote's two columns. */
export interface QuoteRow {
  readonly mark: 'kept' | 'thin' | 'broken' | 'unknown' | 'line';
  readonly text: string;
  /** A second sentence in small letters. */
  readonly note?: string;
  /** What the rig has, and what was asked of it. */
  readonly has?: string;
  readonly asked?: string;
}

export interface QuoteWords {
  readonly statement: string;
  readonly will: readonly QuoteRow[];
  readonly willNot: readonly QuoteRow[];
  readonly open: readonly QuoteRow[];
}

/** Kinds of promise that a customer understands, in the order he asks; the others stand in the list of all promises. */
const CUSTOMER: readonly PromiseKind[] = [
  'reach',
  'flow',
  'pattern',
  'day',
  'hold',
  'power',
  'agitation',
  'weight',
  'stability',
  'rinse',
  'reel',
  'electrics',
  'suction',
  'rating',
  'structure',
  'tip-pressure',
  'materials',
  'liquid',
];

/** Figures of these are the builder's: the sentence alone tells the customer. */
const WITHOUT_FIGURES: readonly PromiseKind[] = ['reel', 'materials', 'liquid', 'plumbing'];

/** Longest list of kept promises on the first sheet; the list of all promises has the rest. */
const MOST_KEPT = 8;

/** What the quote says in words: what it will do, what it will not do, and what is still open. */
export function quoteWords(proof: Proof, units: UnitSystem): QuoteWords {
  const state = (...states: RigPromise['state'][]) =>
    proof.promises.filter((p) => states.includes(p.state)).sort((a, b) => rank(a) - rank(b));
  const held = state('kept', 'thin');
  const told = tightest(held.filter((p) => CUSTOMER.includes(p.kind) && !isInside(p)));
  // What is thin is said before anything is left out.
  const first = [...told]
    .sort((a, b) => Number(b.state === 'thin') - Number(a.state === 'thin'))
    .slice(0, MOST_KEPT);
  const shown = told.filter((p) => first.includes(p));
  const rest = held.length - shown.length;
  return {
    statement: statement(proof),
    will: [
      ...oncePerMeaning(shown.map((p) => keptRow(p, proof, units))),
      ...(rest > 0
        ? [
            {
              mark: 'kept',
              text: `${rest} more ${rest === 1 ? 'promise' : 'promises'}, with every figure, from sheet 2`,
            } as const,
          ]
        : []),
    ],
    willNot: [
      ...state('broken').map((p) => brokenRow(p, units)),
      ...reachLimits(proof, units),
      {
        mark: 'line',
        text: 'It does not choose the product for you. The product label, local codes and licensed practice come first.',
      },
    ],
    open: state('unknown')
      .map((p) => openRow(p))
      .filter((row, i, rows) => rows.findIndex((r) => r.text === row.text) === i),
  };
}

/** Of promises with the same words the one with the least to spare, and of the flows the two tightest. */
function tightest(promises: readonly RigPromise[]): RigPromise[] {
  const spare = (p: RigPromise) => p.margin ?? 0;
  const single = promises.filter((p) =>
    promises.every(
      (q) =>
        q === p ||
        q.sentence !== p.sentence ||
        spare(q) > spare(p) ||
        (spare(q) === spare(p) && promises.indexOf(q) > promises.indexOf(p)),
    ),
  );
  const flows = single.filter((p) => p.kind === 'flow').sort((a, b) => spare(a) - spare(b));
  return single.filter((p) => p.kind !== 'flow' || flows.indexOf(p) < 2);
}

/** Which reach is meant is said once for each meaning. */
function oncePerMeaning(rows: readonly QuoteRow[]): QuoteRow[] {
  return rows.map(({ note, ...row }, i) =>
    note === undefined || rows.findIndex((r) => r.note === note) < i ? row : { ...row, note },
  );
}

function rank(p: RigPromise): number {
  const order = CUSTOMER.indexOf(p.kind);
  return order === -1 ? CUSTOMER.length : order;
}

/** The range that a tip works in, the speed of a pump and its belt are the builder's matter. */
function isInside(p: RigPromise): boolean {
  return p.id.endsWith(':range') || p.id === 'power:speed' || p.id === 'power:reduction';
}

/** The sentence over the sheet: what the rig is for, and whether it does it. */
function statement(proof: Proof): string {
  const { broken } = proof.counts;
  if (broken > 0)
    return `${proof.title}: as drawn it does not keep ${broken === 1 ? 'one of its promises' : `${broken} of its promises`}`;
  const first = [...proof.promises]
    .filter((p) => (p.state === 'kept' || p.state === 'thin') && CUSTOMER.includes(p.kind))
    .sort((a, b) => rank(a) - rank(b))[0];
  return first === undefined ? proof.title : `${proof.title}: ${lowerFirst(first.sentence)}`;
}

function keptRow(p: RigPromise, proof: Proof, units: UnitSystem): QuoteRow {
  const note = p.kind === 'reach' ? reachNote(proof.duties.find((d) => d.id === p.duty)) : undefined;
  return {
    mark: p.state === 'thin' ? 'thin' : 'kept',
    text: p.sentence,
    ...(note === undefined ? {} : { note }),
    ...(WITHOUT_FIGURES.includes(p.kind) ? {} : promiseFigures(p, units)),
  };
}

/** Which of the three reaches is promised: they differ by 15 to 50 %. */
function reachNote(duty: DutyProof | undefined): string | undefined {
  if (duty === undefined) return undefined;
  return duty.duty.reach === 'wetted'
    ? 'Promised: half the water gets that far, 9 times in 10.'
    : 'Promised: the farthest drops touch it, 9 times in 10. Most of the water stays lower.';
}

function brokenRow(p: RigPromise, units: UnitSystem): QuoteRow {
  return { mark: 'broken', text: p.sentence, note: sentenceOf(p.cause), ...promiseFigures(p, units) };
}

/** What is not promised about a throw, and where its farthest drops come down. */
function reachLimits(proof: Proof, units: UnitSystem): QuoteRow[] {
  const reaches = proof.duties.flatMap((d) => (d.reach === undefined ? [] : [d.reach]));
  if (reaches.length === 0) return [];
  const say = (value: number) => display(value, 'length', units);
  const flown = reaches.flatMap((r) => r.arcFarthest);
  const rows: QuoteRow[] = [
    {
      mark: 'line',
      text: 'Nothing beyond the reach promised here. Even there, one try in ten falls short.',
    },
    {
      mark: 'line',
      text: `No reach in wind: every one holds in still air${proof.site.wind > 0 ? `, and the site was given as ${display(proof.site.wind, 'speed', units, { as: 'wind' })}` : ''}.`,
    },
  ];
  if (flown.length > 0)
    rows.push({
      mark: 'line',
      text: `The farthest drops fly up to ${say(Math.max(...flown.map(([, z]) => z)))} high and come down up to ${say(Math.max(...flown.map(([x]) => x)))} from where the operator stands. Keep people, cars and windows clear.`,
    });
  return rows;
}

function openRow(p: RigPromise): QuoteRow {
  return { mark: 'unknown', text: p.sentence, note: sentenceOf(p.cause) };
}

export function sentenceOf(text: string): string {
  const trimmed = text.trim();
  if (trimmed === '') return '';
  const first = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.?!]$/.test(first) ? first : `${first}.`;
}

function lowerFirst(text: string): string {
  // A word in capitals (PTO, 12 V) keeps them.
  return /^[A-Z][a-z' ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
