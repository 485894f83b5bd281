import type { Part } from '../../catalogue/index.ts';
import type { Change } from '../../quantity/index.ts';
import { putPart } from '../part-edit.ts';
import { effectOf, type Effect } from './effect.ts';
import { partsInstead } from './slot-alternatives.ts';
import type { Trials } from './trials.ts';

/** Another part in a slot: the change of the document, what has to change with it, and what it does to the rig. */
export interface Alternative {
  readonly slot: string;
  readonly part: Part;
  readonly change: Change;
  readonly also: readonly string[];
  readonly effect: Effect;
}

/**
 * Every part of the catalogue that a slot could take, each with what it does to the whole rig, cheapest part first; one
 * at a time, so that a page can stop between two.
 *
 * @throws RangeError when the rig has no such slot
 */
export function* alternatives(trials: Trials, slot: string): Generator<Alternative> {
  for (const part of partsInstead(trials.rig, trials.catalogue, slot)) {
    const { change, also } = putPart(trials.raw, trials.catalogue, slot, part);
    const proof = trials.prove(change);
    if (proof !== undefined) yield { slot, part, change, also, effect: effectOf(trials.proof, proof) };
  }
}

/** As a builder looks at them: those with which least is broken first, then the cheapest. */
export function byUse(list: readonly Alternative[]): Alternative[] {
  return [...list].sort(
    (a, b) =>
      a.effect.counts.broken - b.effect.counts.broken ||
      a.effect.priceCents - b.effect.priceCents ||
      (a.part.id < b.part.id ? -1 : 1),
  );
}
