import { inRange } from './in-range.ts';

/**
 * Refuses a count that is not a whole number within its range.
 *
 * @throws RangeError naming the parameter, its value and the limit it breaks.
 */
export function wholeInRange(name: string, value: number, min: number, max: number): void {
  inRange(name, value, min, max);
  if (!Number.isInteger(value)) throw new RangeError(`${name} is ${value}; it must be a whole number`);
}
