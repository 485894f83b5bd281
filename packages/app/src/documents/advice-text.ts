import { displayParts, priceChangeText } from '@spraywright/engine/quantity';
import {
  figureText,
  type Alternative,
  type Effect,
  type PromiseChange,
  type PromiseWays,
  type Proof,
  type RigPromise,
} from '@spraywright/engine/rig';
import { promiseFigures } from './promise-words.ts';
import { table } from './text-table.ts';

type Units = 'us' | 'metric';

/** Promises named beside a change before the rest is only counted. */
const NAMED = 2;

/** What every other part of a slot would do to the rig, as a table. */
export function alternativesText(
  slot: { readonly name: string; readonly now: string | undefined },
  proof: Proof,
  list: readonly Alternative[],
  units: Units,
): string {
  const measures = proof.duties.map((d) => measureOf(d, units));
  const head = ['', ...measures.map((m) => m.head), ...COMMON(units), 'promises'];
  const rows = list.map(({ part, also, effect }) => [
    [part.name, ...also].join(', '),
    ...measures.map((m) => m.change(effect)),
    ...common(effect, units),
    promisesText(effect),
  ]);
  return [
    `${slot.name}: ${slot.now === undefined ? 'left out' : `now ${slot.now}`}`,
    `${list.length} other ${list.length === 1 ? 'part' : 'parts'}, least broken first, then the cheapest; each proven with the whole rig. Figures are changes.`,
    ...measures.map((m) => `  ${m.head}: ${m.what}`),
    '',
    table(
      head,
      rows,
      head.flatMap((_, i) => (i > 0 && i < head.length - 1 ? [i] : [])),
    ),
  ].join('\n');
}

/** For each broken and thin promise the changes that keep it. */
export function waysOutText(list: readonly PromiseWays[], units: Units): string {
  if (list.length === 0) return 'No promise is broken or thin: nothing needs a way out.';
  return list.map((one) => waysText(one, units)).join('\n\n');
}

function waysText({ promise, ways, pairsTried, pairsLeft, less }: PromiseWays, units: Units): string {
  const head = ['', 'then', ...COMMON(units), 'other promises'];
  const rows = ways.map((w, i) => [
    `  ${letter(i)} ${w.name}`,
    w.then?.has === undefined ? 'kept' : figureText(w.then.has, units),
    ...common(w.effect, units),
    promisesText(w.effect, promise.id),
  ]);
  return [
    standing(promise, units),
    ...(rows.length > 0
      ? [table(head, rows, [1, 2, 3, 4])]
      : ['  No single change, and no pair that was tried, keeps it and all others.']),
    ...(less === undefined ? [] : [`  Or ask less: ${less.name}.`]),
    ...(pairsLeft > 0
      ? [`  ${pairsTried} pairs of changes were proven; ${pairsLeft} less likely ones were left.`]
      : []),
  ].join('\n');
}

function standing(p: RigPromise, units: Units): string {
  const { has, asked } = promiseFigures(p, units);
  const figures = [has && `has ${has}`, asked && `asked ${asked}`].filter(Boolean).join(', ');
  return `${p.state === 'broken' ? 'Broken' : 'Thin'}: ${p.sentence}${figures === '' ? '' : `: ${figures}`}`;
}

/** What a duty is measured by: the reach where there is a target, otherwise the flow. */
function measureOf(duty: Proof['duties'][number], units: Units) {
  const reaching = duty.reach !== undefined;
  const unit = reaching ? (units === 'us' ? 'ft' : 'm') : units === 'us' ? 'gpm' : 'L/min';
  const dimension = reaching ? ('length' as const) : ('flow' as const);
  return {
    head: `${duty.id}, ${unit}`,
    what: `${reaching ? 'reach' : 'flow'} in "${duty.name}"`,
    change: (effect: Effect): string => {
      const [before, after] =
        effect.duties.find((d) => d.duty === duty.id)?.[reaching ? 'reach' : 'flow'] ?? [];
      if (before === undefined || after === undefined) return 'unknown';
      return signed(displayParts(after - before, dimension, units, { unit, decimals: 1 }).figure);
    },
  };
}

const COMMON = (units: Units): string[] => ['price', units === 'us' ? 'lb' : 'kg', 'days'];

function common(effect: Effect, units: Units): string[] {
  const { figure } = displayParts(effect.mass, 'mass', units, {
    unit: units === 'us' ? 'lb' : 'kg',
    decimals: 0,
  });
  return [priceChangeText(effect.priceCents), signed(figure), signed(String(effect.days))];
}

/** What breaks, is mended, becomes doubtful or thin by a change, apart from the promise it is told for. */
function promisesText(effect: Effect, but?: string): string {
  const thin = effect.promises.filter((p) => p.after?.state === 'thin' && p.before?.state === 'kept');
  const said = [
    named('mends', effect.mends, but),
    named('breaks', effect.breaks, but),
    named('doubtful', effect.doubts, but),
    named('thin', thin, but),
  ].filter((t) => t !== '');
  if (said.length > 0) return said.join('. ');
  return effect.counts.broken > 0 ? 'as before' : 'keeps all';
}

function named(word: string, list: readonly PromiseChange[], but: string | undefined): string {
  const others = list.filter((p) => p.id !== but);
  if (others.length === 0) return '';
  const names = others.slice(0, NAMED).map((p) => (p.after ?? p.before)!.sentence);
  const more = others.length > NAMED ? `; ${others.length - NAMED} more` : '';
  return `${word}: ${names.join('; ')}${more}`;
}

function signed(figure: string): string {
  const plain = figure.replace('−', '-');
  if (Number(plain.replaceAll(',', '')) === 0) return '0';
  return plain.startsWith('-') ? plain : `+${plain}`;
}

function letter(i: number): string {
  return String.fromCharCode(97 + i);
}
