import { useCallback, useEffect, useRef, useState } from 'react';

/** A page of what was found, and where the next one begins; or in words why nothing was. */
export type FoundPage<T> =
  { readonly items: readonly T[]; readonly next?: string | undefined } | { readonly why: string };

/** What was found so far, and what it is the answer to. */
export interface Found<A, T> {
  readonly asked: A;
  readonly items: readonly T[];
  /** There is more to ask for. */
  readonly next?: string | undefined;
  /** Why the last request was not answered. */
  readonly why?: string;
}

/** Quiet time after a letter before the records are asked [ms]. */
const QUIET = 150;

/**
 * A list that is found by what is typed: asked for at once, after a letter when it has been quiet for a moment, page
 * by page. An answer that comes after a newer question is left out.
 *
 * @param asked the same value as long as the same is asked
 * @param ask the same function at every call
 * @returns undefined before the first answer
 */
export function useFound<A, T>(asked: A, ask: (asked: A, after?: string) => Promise<FoundPage<T>>) {
  const [found, setFound] = useState<Found<A, T>>();
  const question = useRef(0);
  const answer = useCallback(
    async (of: A, before?: Found<A, T>, after?: string) => {
      const own = ++question.current;
      const page = await ask(of, after);
      if (own !== question.current) return;
      if ('why' in page) setFound({ ...(before ?? { items: [] }), asked: of, why: page.why });
      else
        setFound({
          asked: of,
          items: after === undefined ? page.items : [...(before?.items ?? []), ...page.items],
          next: page.next,
        });
    },
    [ask],
  );
  const quiet = useRef(0);
  useEffect(() => {
    const timer = setTimeout(() => void answer(asked), quiet.current);
    quiet.current = QUIET;
    return () => {
      clearTimeout(timer);
      question.current++;
    };
  }, [asked, answer]);
  return {
    found,
    /** Asks for the next page. */
    more: async () => {
      if (found?.next !== undefined) await answer(found.asked, found, found.next);
    },
    /** Asks the same again: something was changed. */
    again: () => answer(asked, found),
  };
}
