import { useEffect, useState } from 'react';
import { askServer } from './ask.ts';

/** Who works at the page; `alone` while nobody has to sign in. */
export interface Me {
  readonly name: string;
  readonly email: string;
  readonly role: string;
  readonly alone: boolean;
}

/** Whether somebody sells and designs: changes jobs and parts, quotes, is told costs. True while it is not known who it is. */
export function sells(me: Me | undefined): boolean {
  return me === undefined || me.role === 'owner' || me.role === 'builder';
}

/** Whether somebody works in the shop: begins machines, moves stock, puts in other parts. True while it is not known who it is. */
export function worksInShop(me: Me | undefined): boolean {
  return me?.role !== 'support';
}

let asking: Promise<Me | undefined> | undefined;

/** Who works here, asked once for each page; undefined until it is known, and without a connection. */
export function useMe(): Me | undefined {
  const [me, setMe] = useState<Me>();
  useEffect(() => {
    asking ??= askServer<Me>('api/me').then((answer) => (answer.is === 'done' ? answer.value : undefined));
    void asking.then((found) => {
      if (found === undefined) asking = undefined;
      else setMe(found);
    });
  }, []);
  return me;
}
