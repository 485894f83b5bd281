import { inRange } from './in-range.ts';

/**
 * Refuses a list with a number outside the valid range, naming its place in the list.
 *
 * @throws RangeError naming the parameter with its index, its value and the limit it breaks.
 */
export function listInRange(
  name: string,
  values: readonly number[],
  min: number,
  max: number,
  unit = '',
): void {
  // The name of an entry is made for one that is out of range only: lists are checked thousands of times a second.
  values.forEach((value, i) => {
    if (!(value >= min && value <= max)) inRange(`${name}[${i}]`, value, min, max, unit);
  });
}

/**
 * Refuses lists that describe the same things but differ in length.
 *
 * @throws RangeError naming both lists and their lengths.
 */
export function sameLength(nameA: string, a: readonly unknown[], nameB: string, b: readonly unknown[]): void {
  if (a.length !== b.length)
    throw new RangeError(`${nameB} has ${b.length} entries; it must have as many as ${nameA}: ${a.length}`);
}

/**
 * Refuses a choice that is not in the list of choices.
 *
 * @throws RangeError naming the parameter, the choice and what is allowed.
 */
export function oneOfChoices(name: string, value: string, choices: readonly string[]): void {
  if (!choices.includes(value))
    throw new RangeError(`${name} is '${value}'; it must be one of ${choices.join(', ')}`);
}
