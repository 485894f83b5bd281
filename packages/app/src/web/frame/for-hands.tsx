import type { ReactNode } from 'react';
import { useMe, worksInShop } from './me.ts';

/** What only those who work in the shop do: others read it, and its buttons are not there for them. */
export function ForHands({ children }: { readonly children: ReactNode }) {
  const me = useMe();
  return (
    <fieldset className="for-hands" disabled={!worksInShop(me)}>
      {children}
    </fieldset>
  );
}
