import type { TableOrigin } from '@spraywright/engine/physics';

/** Where a rule is written and where it holds; what holds everywhere says no place. */
export function originWords({ source, place }: TableOrigin): string {
  if (place === 'any') return source;
  return place.endsWith(')') ? `${source}; ${place}` : `${source} (${place})`;
}
