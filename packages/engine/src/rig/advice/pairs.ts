import { THIN, type RigPromise } from '../promise.ts';
import type { Effect, PromiseChange } from './effect.ts';
import type { TriedChange } from './single-changes.ts';

/** Two changes that together may keep a promise, with what they cost together. */
export interface Pair {
  readonly two: readonly [TriedChange, TriedChange];
  readonly priceCents: number;
}

type IsKept = (effect: Effect, promise: RigPromise) => boolean;

/** Share of what is missing that two changes must bring by themselves: together they may bring more than the sum. */
const LIKELY = 0.7;
/** Changes of one slot that are combined with others: the best by price for what they bring. */
const MOST_OF_SLOT = 6;

/**
 * Pairs of tried changes of different slots that may keep a promise neither keeps alone, cheapest first: both move its
 * margin, or one keeps it and breaks others whose margins the other moves.
 */
export function pairsFor(all: readonly TriedChange[], promise: RigPromise, isKept: IsKept): Pair[] {
  const helpers = all.filter(({ effect }) => !isKept(effect, promise));
  const both = bothHelp(helpers, promise);
  const repaired = all
    .filter(({ effect }) => isKept(effect, promise) && troubles(effect).length > 0)
    .flatMap((one) => repairs(one, helpers));
  const seen = new Set<string>();
  return [...both, ...repaired]
    .map((two): Pair => ({ two, priceCents: two[0].effect.priceCents + two[1].effect.priceCents }))
    .sort((a, b) => a.priceCents - b.priceCents || a.two[0].effect.mass - b.two[0].effect.mass)
    .filter(({ two }) => {
      const key = two
        .map((t) => `${t.slot}: ${t.name}`)
        .sort()
        .join(' and ');
      return !seen.has(key) && seen.add(key) !== undefined;
    });
}

/** Pairs that each move the margin of the promise, and together as far as is missing. */
function bothHelp(helpers: readonly TriedChange[], promise: RigPromise): [TriedChange, TriedChange][] {
  if (promise.margin === undefined) return [];
  const missing = (promise.state === 'thin' ? THIN : 0) - promise.margin;
  const useful = bestOfSlots(
    helpers
      .map((one) => ({ one, gain: gainOf(one.effect, promise.id) }))
      .filter(({ gain, one }) => gain > missing * 0.05 && gain > 1e-6 && troubles(one.effect).length < 3),
  );
  return useful.flatMap(({ one, gain }, i) =>
    useful
      .slice(i + 1)
      .filter((other) => other.one.slot !== one.slot && gain + other.gain >= LIKELY * missing)
      .map((other): [TriedChange, TriedChange] => [one, other.one]),
  );
}

/** Pairs of a change that keeps the promise with one that moves the margins of all it breaks. */
function repairs(one: TriedChange, helpers: readonly TriedChange[]): [TriedChange, TriedChange][] {
  const broken = troubles(one.effect);
  return helpers
    .filter(
      (other) =>
        other.slot !== one.slot &&
        broken.every((b) => {
          const missing = -(b.after?.margin ?? -Infinity);
          return gainOf(other.effect, b.id) >= LIKELY * missing;
        }) &&
        troubles(other.effect).every((t) => gainOf(one.effect, t.id) > 0),
    )
    .map((other): [TriedChange, TriedChange] => [one, other]);
}

/** Of each slot those that no other beats both in price and in what it brings, the cheapest few. */
function bestOfSlots(list: readonly { one: TriedChange; gain: number }[]): typeof list {
  const bySlot = new Map<string, { one: TriedChange; gain: number }[]>();
  for (const entry of [...list].sort((a, b) => a.one.effect.priceCents - b.one.effect.priceCents)) {
    const slot = bySlot.get(entry.one.slot) ?? [];
    if (slot.length < MOST_OF_SLOT && (slot.at(-1)?.gain ?? 0) < entry.gain) slot.push(entry);
    bySlot.set(entry.one.slot, slot);
  }
  return [...bySlot.values()].flat();
}

function troubles({ breaks, doubts }: Effect): readonly PromiseChange[] {
  return doubts.length === 0 ? breaks : [...breaks, ...doubts];
}

/** What a change adds to the margin of a promise; 0 where it changes nothing or nothing can be said. */
function gainOf(effect: Effect, id: string): number {
  const found = effect.promises.find((p) => p.id === id);
  if (found?.before?.margin === undefined || found.after?.margin === undefined) return 0;
  return found.after.margin - found.before.margin;
}
