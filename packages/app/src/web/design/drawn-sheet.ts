import type { SheetName } from '@spraywright/engine/drawings';

/** The sheet that the page is laid out on: by day or by night. */
export function drawnSheet(): SheetName {
  return document.documentElement.dataset.sheet === 'night' ? 'night' : 'day';
}
