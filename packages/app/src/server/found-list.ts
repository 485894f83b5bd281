import type { Place } from '../store/index.ts';

/** The words of a search. */
export function wordsOf(find: string): string[] {
  return find.split(/\s+/).filter((word) => word !== '');
}

/** Where the page begins that was asked for by the `next` of the one before. */
export function afterPlace(next: string | undefined): { readonly after?: Place } {
  if (next === undefined) return {};
  const [at = '', name = ''] = next.split(' ');
  return { after: { at, name } };
}

/** Where the next page begins: behind the last of this one; nothing when this one is not full. */
export function nextOf<T>(page: readonly T[], limit: number, placeOf: (last: T) => Place): { next?: string } {
  const last = page.at(-1);
  if (last === undefined || page.length < limit) return {};
  const { at, name } = placeOf(last);
  return { next: `${at} ${name}` };
}
