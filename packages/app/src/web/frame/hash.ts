import { useSyncExternalStore } from 'react';

/** The parts of the page's address behind `#`, decoded: `#LF-0412/yard` is `['LF-0412', 'yard']`. */
export function useHash(): readonly string[] {
  return useSyncExternalStore(follow, () => location.hash)
    .slice(1)
    .split('/')
    .map(decoded);
}

/** The address of a place on this page. */
export function hashOf(...parts: readonly string[]): string {
  return `#${parts.map(encodeURIComponent).join('/')}`;
}

/** The address of a job on the desk, from any page. */
export function deskAt(job: string): string {
  return `./${hashOf(job)}`;
}

function follow(told: () => void): () => void {
  addEventListener('hashchange', told);
  return () => removeEventListener('hashchange', told);
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
