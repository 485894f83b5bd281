/**
 * Refuses a number outside the valid range of a law, naming what is wrong.
 *
 * Every public law calls this first, so that a value outside a law's range is an error a person can act on
 * and never a silent extrapolation.
 *
 * @throws RangeError naming the parameter, its value and the limit it breaks; also for NaN.
 */
export function inRange(name: string, value: number, min: number, max: number, unit = ''): void {
  const problem = rangeProblem(name, value, min, max, unit);
  if (problem !== undefined) throw new RangeError(problem);
}

/**
 * What is wrong with a number outside the valid range of a law, in the words of `inRange`; undefined when nothing is.
 *
 * For a law that is asked often outside its range: an error thrown and caught costs a hundred times the law.
 */
export function rangeProblem(
  name: string,
  value: number,
  min: number,
  max: number,
  unit = '',
): string | undefined {
  if (value >= min && value <= max) return undefined;
  if (Number.isNaN(value)) return `${name} is not a number`;
  const u = unit === '' || unit === '-' ? '' : ` ${unit}`;
  const limit = value < min ? `at least ${min}${u}` : `at most ${max}${u}`;
  return `${name} is ${value}${u}; it must be ${limit}`;
}
