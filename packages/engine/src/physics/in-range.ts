/**
 * Refuses a number outside the valid range of a law, naming what is wrong.
 *
 * Every public law calls this first, so that a value outside a law's range is an error a person can act on
 * and never a silent extrapolation.
 *
 * @throws RangeError naming the parameter, its value and the limit it breaks; also for NaN.
 */
export function inRange(name: string, value: number, min: number, max: number, unit = ''): void {
  if (value >= min && value <= max) return;
  const u = unit === '' || unit === '-' ? '' : ` ${unit}`;
  if (Number.isNaN(value)) throw new RangeError(`${name} is not a number`);
  const limit = value < min ? `at least ${min}${u}` : `at most ${max}${u}`;
  throw new RangeError(`${name} is ${value}${u}; it must be ${limit}`);
}
