import type { UnitSystem } from '@spraywright/engine/quantity';
import type { Choice, SearchProgress } from '@spraywright/engine/rig';
import type { RigJson } from './given.ts';

/** What the worker of the search is asked: it is ended to stop it. */
export interface ToSearch {
  readonly address: string;
  readonly rig: RigJson;
  readonly units: UnitSystem;
}

/** Rigs of the whole catalogue that no other found beats. */
export interface FoundRigs {
  readonly rigs: readonly Choice[];
  /** Nothing of the catalogue is left to look at. */
  readonly complete: boolean;
}

export type FromSearch =
  | { readonly type: 'progress'; readonly progress: SearchProgress; readonly rigs?: readonly Choice[] }
  | {
      readonly type: 'ended';
      readonly progress: SearchProgress;
      readonly found: FoundRigs;
      /** Why sets of parts were refused, most first. */
      readonly refused: readonly string[];
    }
  | { readonly type: 'failed'; readonly message: string };
