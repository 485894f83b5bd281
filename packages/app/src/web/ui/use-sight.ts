import { useEffect, type RefObject } from 'react';
import type { Spared } from '../protocol.ts';
import { useStore } from './desk-context.ts';

/** How far outside the window a drawing counts as seen, so that it is there when it is scrolled to. */
const NEAR = '120px';

/** Tells the desk whether a drawing can be seen: one that nobody sees need not follow a drag. */
export function useSight(name: Spared, ref: RefObject<HTMLElement | null>, there: boolean): void {
  const store = useStore();
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new IntersectionObserver(
      (entries) => store.setSight(name, entries.at(-1)!.isIntersecting),
      { rootMargin: NEAR },
    );
    observer.observe(element);
    return () => {
      observer.disconnect();
      store.setSight(name, true);
    };
  }, [store, name, ref, there]);
}
