import type { Rig } from '../../rig/index.ts';
import type { TakenReadings } from '../readings-document.ts';
import type { YardOptions } from '../yard-model.ts';
import { weigh, type Suspect } from './diagnose.ts';
import { faultModel, type FaultModel } from './fault-model.ts';
import { firstRound, type Check } from './first-round.ts';
import { FAULT_SOURCE } from './faults.data.ts';
import { nextChecks, type NextCheck } from './next-check.ts';

/**
 * found: one cause stands out. nothing-wrong: the readings are those of a sound rig. unknown-cause: no known fault fits.
 * cannot-tell: the readings do not separate the causes.
 */
export type DiagnosisState = 'found' | 'nothing-wrong' | 'unknown-cause' | 'cannot-tell';

export interface Diagnosis {
  readonly state: DiagnosisState;
  /** Likeliest first; probabilities of all add to 1. */
  readonly suspects: readonly Suspect[];
  /** What a support desk asks at once and has not been answered yet. */
  readonly first: readonly Check[];
  /** Most telling first. */
  readonly next: readonly NextCheck[];
  readonly source: string;
}

/** A cause below this probability is not called found. */
const FOUND = 0.6;

/** Finds what is wrong with a rig in service by what it reads: every fault through the solver, weighed by Bayes' rule. */
export function diagnose(rig: Rig, taken: TakenReadings, options: YardOptions = {}): Diagnosis {
  const { waterTemperature } = taken.document;
  return diagnoseWith(
    faultModel(rig, { ...options, ...(waterTemperature === undefined ? {} : { waterTemperature }) }),
    taken,
  );
}

/** The same with a model made before, for many calls about rigs of one kind. */
export function diagnoseWith(model: FaultModel, taken: TakenReadings): Diagnosis {
  const weighed = weigh(model, taken);
  const suspects = [...weighed.suspects].sort((a, b) => b.probability - a.probability);
  const likeliest = suspects[0]!;
  const state =
    likeliest.probability < FOUND
      ? 'cannot-tell'
      : likeliest.id === 'nothing-wrong'
        ? 'nothing-wrong'
        : likeliest.id === 'something-else'
          ? 'unknown-cause'
          : 'found';
  const looked = new Set((taken.document.looks ?? []).map((l) => l.id));
  const first = firstRound(model).filter((c) =>
    'look' in c ? !looked.has(c.look) : !taken.values.has(c.reading),
  );
  return { state, suspects, first, next: nextChecks(model, weighed, taken), source: FAULT_SOURCE };
}
