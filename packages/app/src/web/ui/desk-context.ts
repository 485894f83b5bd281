import { createContext, useContext, useSyncExternalStore } from 'react';
import type { DeskState } from '../state/desk-state.ts';
import type { DeskStore } from '../state/desk-store.ts';

export const DeskContext = createContext<DeskStore | undefined>(undefined);

export function useStore(): DeskStore {
  const store = useContext(DeskContext);
  if (store === undefined) throw new Error('there is no desk around this');
  return store;
}

/** A piece of the desk's state; the piece must be the same object while nothing in it changes. */
export function useDesk<T>(piece: (state: DeskState) => T): T {
  const store = useStore();
  return useSyncExternalStore(store.subscribe, () => piece(store.state()));
}
