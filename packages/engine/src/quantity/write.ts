import type { Dimension } from './dimension.ts';
import { dimensionOf, unitOf } from './unit-text.ts';
import { fromSi, toSi } from './units.ts';

/**
 * Writes an SI value in a unit so that reading it gives the same value again: the shortest figure that does,
 * without separators. For documents; people read `display`.
 *
 * @param dimension needed where a unit has several meanings: oz, lb, C; otherwise the first is taken
 * @throws RangeError for a value that is not finite or a unit that is unknown in the dimension
 */
export function write(value: number, unit: string, dimension?: Dimension): string {
  const meant = dimension ?? (unit === '1' ? 'ratio' : dimensionOf(unit));
  if (!Number.isFinite(value))
    throw new RangeError(`a ${meant ?? 'quantity'} is ${value}; it must be finite`);
  if (meant === 'ratio' && unit === '1') return String(value + 0);
  const found = meant === undefined ? undefined : unitOf(unit, meant);
  if (found === undefined) throw new RangeError(`'${unit}' is not a unit of a ${meant ?? 'known dimension'}`);
  const figure = fromSi(value, found);
  let best = 0;
  // Two roundings may have moved the figure by a digit of its last place; its neighbours are tried after it.
  for (const nudge of [0, 1, -1, 2, -2, 3, -3]) {
    const near = figure + nudge * Math.abs(figure) * 2 ** -53;
    for (let digits = 1; digits <= 17; digits++) {
      const shorter = Number(near.toPrecision(digits));
      if (toSi(shorter, found) === value) return withUnit(shorter, found.symbol);
      if (Math.abs(toSi(shorter, found) - value) < Math.abs(toSi(best, found) - value)) best = shorter;
    }
  }
  return withUnit(best, found.symbol);
}

function withUnit(figure: number, symbol: string): string {
  return `${figure + 0} ${symbol}`;
}
