import { changed, type Change } from '../../quantity/index.ts';
import { THIN, type PromiseState, type RigPromise } from '../promise.ts';
import { askLess, type AskLess } from './ask-less.ts';
import { effectOf, type Effect, type Standing } from './effect.ts';
import { pairsFor } from './pairs.ts';
import { singleChanges, tried, type SingleChange, type TriedChange } from './single-changes.ts';
import type { Trials } from './trials.ts';

/** A change of one or two things that keeps a promise and every other. */
export interface WayOut {
  readonly name: string;
  /** Slots it touches. */
  readonly slots: readonly string[];
  readonly change: Change;
  readonly effect: Effect;
  /** How the promise then stands; absent when it is gone, such as a finding on a part that is gone. */
  readonly then?: Standing;
}

export interface PromiseWays {
  readonly promise: RigPromise;
  /** Cheapest first. */
  readonly ways: readonly WayOut[];
  /** Pairs of changes that were proven for it, and those left when the limit was reached. */
  readonly pairsTried: number;
  readonly pairsLeft: number;
  /** What a broken promise could be asked down to instead. */
  readonly less?: AskLess;
}

export interface WaysOutOptions {
  /** Ways kept for each promise. */
  readonly most?: number;
  /** Pairs of changes proven for each promise, the likeliest of the cheap first. */
  readonly pairs?: number;
  /** States of the promises that ways are looked for; broken and thin ones when it is not said. */
  readonly states?: readonly PromiseState[];
}

/**
 * For each broken and each thin promise of a rig the changes of one or two things with which it is kept, breaking no
 * promise that was kept and throwing none into doubt; cheapest first. A thin promise counts as kept with 5 % to spare.
 *
 * Every single part of every slot and every setting is proven. Pairs are made of changes that each help, or of one that
 * would do but for promises which the other helps; only the cheapest likely ones are proven, and the rest are counted.
 * Yields after each proof with the share done, so that a page can stop between two.
 */
export function* waysOut(
  trials: Trials,
  { most = 4, pairs = 60, states = ['broken', 'thin'] }: WaysOutOptions = {},
): Generator<number, PromiseWays[]> {
  const wanting = trials.proof.promises.filter((p) => states.includes(p.state));
  if (wanting.length === 0) return [];
  const singles = singleChanges(trials);
  const all: TriedChange[] = [];
  for (const [i, single] of singles.entries()) {
    const one = tried(trials, single);
    if (one !== undefined) all.push(one);
    yield ((i + 1) / singles.length) * SINGLES;
  }
  const out: PromiseWays[] = [];
  for (const [i, promise] of wanting.entries()) {
    const found = all
      .filter(({ effect }) => isKept(effect, promise) && harmless(effect))
      .map((one) => wayOut(trials, [one], one.effect, promise));
    const dearest = () => best(found, most)[most - 1]?.effect.priceCents ?? Infinity;
    const candidates = pairsFor(all, promise, isKept);
    let proven = 0;
    while (candidates.length > 0 && proven < pairs && candidates[0]!.priceCents < dearest()) {
      const { two } = candidates.shift()!;
      const way = pairTried(trials, two, promise);
      if (way !== undefined) found.push(way);
      proven++;
      yield SINGLES + ((i + proven / pairs) / wanting.length) * (1 - SINGLES);
    }
    const left = candidates.filter((c) => c.priceCents < dearest()).length;
    const less = promise.state === 'broken' ? askLess(trials, promise) : undefined;
    out.push({
      promise,
      ways: best(found, most),
      pairsTried: proven,
      pairsLeft: left,
      ...(less === undefined ? {} : { less }),
    });
  }
  return out;
}

/** Share of the work that single changes are taken to be. */
const SINGLES = 0.6;

/** Whether a promise that was broken or thin is well kept after a change. */
function isKept(effect: Effect, { id, state }: RigPromise): boolean {
  if (state === 'broken') return effect.mends.some((m) => m.id === id);
  const after = effect.promises.find((p) => p.id === id)?.after;
  return after?.state === 'kept' && (after.margin ?? 1) >= THIN;
}

function harmless(effect: Effect): boolean {
  return effect.breaks.length === 0 && effect.doubts.length === 0;
}

function pairTried(
  trials: Trials,
  two: readonly [SingleChange, SingleChange],
  promise: RigPromise,
): WayOut | undefined {
  const proof = trials.prove(together(trials, two));
  if (proof === undefined) return undefined;
  const effect = effectOf(trials.proof, proof);
  return isKept(effect, promise) && harmless(effect) ? wayOut(trials, two, effect, promise) : undefined;
}

function wayOut(
  trials: Trials,
  changes: readonly SingleChange[],
  effect: Effect,
  { id }: RigPromise,
): WayOut {
  const then = effect.promises.find((p) => p.id === id)?.after;
  const change = together(trials, changes);
  return {
    name: change.about,
    slots: changes.map((c) => c.slot),
    change,
    effect,
    ...(then === undefined ? {} : { then }),
  };
}

/** Changes one after the other as one change of the document. */
function together({ raw }: Trials, changes: readonly SingleChange[]): Change {
  let document = raw;
  const puts: Change['puts'][number][] = [];
  const names: string[] = [];
  for (const { make, name } of changes) {
    const { change, also } = make(document);
    document = changed(document, change).document;
    puts.push(...change.puts);
    names.push([name, ...also].join(', '));
  }
  return { about: names.join(' and '), puts };
}

/** What a second change must save to be worth its trouble: judgement, no source [cents]. */
const SECOND_CHANGE = 2500;

/** The cheapest, single changes before pairs that save little; of equals those that leave least thin; two a slot. */
function best(ways: readonly WayOut[], most: number): WayOut[] {
  const trouble = ({ effect, slots }: WayOut) => effect.priceCents + (slots.length - 1) * SECOND_CHANGE;
  const taken = new Map<string, number>();
  return [...ways]
    .sort((a, b) => trouble(a) - trouble(b) || a.effect.counts.thin - b.effect.counts.thin)
    .filter(({ slots }) => {
      const key = [...slots].sort().join(' ');
      taken.set(key, (taken.get(key) ?? 0) + 1);
      return taken.get(key)! <= 2;
    })
    .slice(0, most);
}
