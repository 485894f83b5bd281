import { useSyncExternalStore } from 'react';

/** A state that parts of a page follow: each put is a new one, told to whoever follows. */
export class Followed<S> {
  #state: S;
  readonly #told = new Set<() => void>();

  constructor(state: S) {
    this.#state = state;
  }

  readonly state = (): S => this.#state;

  readonly follow = (told: () => void): (() => void) => {
    this.#told.add(told);
    return () => this.#told.delete(told);
  };

  put(state: S): void {
    this.#state = state;
    for (const told of this.#told) told();
  }
}

/** The state as it stands; the part of the page is drawn again when another is put. */
export function useFollowed<S>({ follow, state }: Followed<S>): S {
  return useSyncExternalStore(follow, state);
}
