import type { Change } from '../../quantity/index.ts';
import type { RigPromise } from '../promise.ts';
import { ask, askedValues } from './asked-values.ts';
import { effectOf, type Effect, type Standing } from './effect.ts';
import type { Trials } from './trials.ts';

/** A promise kept by asking no more than the rig gives. */
export interface AskLess {
  /** What is asked less, and to what: `height to reach in "Tops": 44 ft`. */
  readonly name: string;
  /** What is asked then, as people read it. */
  readonly text: string;
  readonly change: Change;
  readonly effect: Effect;
  readonly then?: Standing;
}

/**
 * The brief asked down to what the rig gives, for a promise that a value of the brief judges; undefined when there is no
 * such value, when the rig gives nothing of it, or when another promise would break by it.
 */
export function askLess(trials: Trials, promise: RigPromise): AskLess | undefined {
  const asked = askedValues(trials.rig.brief).find((a) => a.judges(promise));
  const has = promise.has?.value;
  if (asked === undefined || has === undefined || !(has > 0)) return undefined;
  const less = ask(asked, has, trials.units);
  if (!(less.value > 0)) return undefined;
  const proof = trials.prove(less.change);
  if (proof === undefined) return undefined;
  const effect = effectOf(trials.proof, proof);
  const then = effect.promises.find((p) => p.id === promise.id)?.after;
  if (effect.breaks.length > 0 || then === undefined || then.state === 'broken' || then.state === 'unknown')
    return undefined;
  return { name: less.change.about, text: less.text, change: less.change, effect, then };
}
