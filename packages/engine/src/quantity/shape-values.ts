import { closestName } from './closest-name.ts';
import { DIMENSIONS, type Dimension } from './dimension.ts';
import { parseQuantity } from './parse.ts';
import { quoted } from './quoting.ts';
import { fieldName, wrongType, type Limits, type Shape, type ShapeDescription } from './shape.ts';

const LONGEST_TEXT = 10_000;
// Control characters other than tab and line break, and halves of characters, break papers and terminals.
const UNPRINTABLE = /\p{Cs}|(?![\t\n\r])\p{Cc}/u;

/** Free text; `min` counts what is left without the white space around it; `like` is what else it must look like. */
export function text(
  limits: {
    readonly min?: number;
    readonly max?: number;
    readonly like?: { readonly pattern: RegExp; readonly expected: string };
  } = {},
): Shape<string> {
  const { min = 0, max = LONGEST_TEXT, like } = limits;
  const expected = like?.expected ?? 'text';
  const describe: ShapeDescription = { type: 'text', expected, limits: { min, max } };
  return {
    describe,
    read(raw, path, problems) {
      if (typeof raw !== 'string') return void problems.push(wrongType(path, raw, describe));
      const name = fieldName(path);
      if (raw.length > max) {
        const message = `${name} has ${raw.length} characters; at most ${max} are allowed`;
        return void problems.push({ path, code: 'too-long', message });
      }
      if (raw.trim().length < min) {
        const message = `${name} is ${quoted(raw)}; at least ${min} character${min === 1 ? ' is' : 's are'} needed`;
        return void problems.push({ path, code: 'too-short', message });
      }
      if (UNPRINTABLE.test(raw)) {
        const message = `${name} is ${quoted(raw)}; it must not contain control characters`;
        return void problems.push({ path, code: 'bad-text', message });
      }
      if (like !== undefined && !like.pattern.test(raw)) {
        const message = `${name} is ${quoted(raw)}; ${expected} was expected`;
        return void problems.push({ path, code: 'bad-text', message });
      }
      return raw;
    },
  };
}

/** A name for machines: small letters, digits and hyphens, up to 64, beginning with a letter or digit. */
export function identifier(): Shape<string> {
  const expected = 'an identifier of a-z, 0-9 and - (at most 64)';
  const describe: ShapeDescription = { type: 'identifier', expected, limits: { min: 1, max: 64 } };
  return {
    describe,
    read(raw, path, problems) {
      if (typeof raw !== 'string') return void problems.push(wrongType(path, raw, describe));
      if (/^[a-z0-9][a-z0-9-]{0,63}$/.test(raw)) return raw;
      const message = `${fieldName(path)} is ${quoted(raw)}; ${expected} was expected`;
      return void problems.push({ path, code: 'bad-text', message });
    },
  };
}

interface NumberLimits {
  readonly min?: number;
  readonly max?: number;
  readonly above?: number;
  readonly below?: number;
}

/** A finite number without a unit. `above` and `below` exclude their limit, `min` and `max` include it. */
export function number(limits: NumberLimits = {}): Shape<number> {
  const describe: ShapeDescription = { type: 'number', expected: 'a number', limits };
  return {
    describe,
    read(raw, path, problems) {
      if (typeof raw !== 'number' || !Number.isFinite(raw))
        return void problems.push(wrongType(path, raw, describe));
      const broken = brokenLimit(raw, limits, limits);
      if (broken === undefined) return raw + 0;
      const message = `${fieldName(path)} is ${raw}; it must be ${broken}`;
      return void problems.push({ path, code: 'out-of-range', message });
    },
  };
}

/** A whole number that a double holds exactly. */
export function integer(limits: { readonly min?: number; readonly max?: number } = {}): Shape<number> {
  const describe: ShapeDescription = { type: 'integer', expected: 'a whole number', limits };
  return {
    describe,
    read(raw, path, problems) {
      if (typeof raw !== 'number' || !Number.isSafeInteger(raw))
        return void problems.push(wrongType(path, raw, describe));
      const broken = brokenLimit(raw, limits, limits);
      if (broken === undefined) return raw + 0;
      const message = `${fieldName(path)} is ${raw}; it must be ${broken}`;
      return void problems.push({ path, code: 'out-of-range', message });
    },
  };
}

interface QuantityLimits {
  readonly min?: string;
  readonly max?: string;
  readonly above?: string;
  readonly below?: string;
}

/**
 * A quantity as people type it, read into SI: `quantity('flow', { max: '5000 gpm' })` reads "12 gpm".
 * A ratio may also be a bare number.
 */
export function quantity(dimension: Dimension, limits: QuantityLimits = {}): Shape<number> {
  const { phrase, example } = DIMENSIONS[dimension];
  const expected = `${phrase} such as '${example}'`;
  const describe: ShapeDescription = { type: 'quantity', expected, dimension, limits };
  const inSi = limitsInSi(dimension, limits);
  return {
    describe,
    read(raw, path, problems) {
      const bareRatio = dimension === 'ratio' && typeof raw === 'number' && Number.isFinite(raw);
      if (typeof raw !== 'string' && !bareRatio) {
        const problem = wrongType(path, raw, describe);
        const unitNeeded = typeof raw === 'number' ? '; a quantity is written as text with its unit' : '';
        return void problems.push({ ...problem, message: problem.message + unitNeeded });
      }
      const parsed = parseQuantity(String(raw), dimension);
      if (!parsed.ok) {
        const message = `${fieldName(path)}: ${parsed.message}`;
        return void problems.push({ path, code: 'bad-quantity', message });
      }
      const broken = brokenLimit(parsed.value, inSi, limits);
      if (broken === undefined) return parsed.value;
      const message = `${fieldName(path)} is ${quoted(String(raw))}; it must be ${broken}`;
      return void problems.push({ path, code: 'out-of-range', message });
    },
  };
}

/** One of the given words. */
export function oneOf<const C extends readonly string[]>(...choices: C): Shape<C[number]> {
  const expected = `one of ${choices.join(', ')}`;
  const describe: ShapeDescription = { type: 'choice', expected, choices };
  return {
    describe,
    read(raw, path, problems) {
      if (typeof raw !== 'string') return void problems.push(wrongType(path, raw, describe));
      if (choices.includes(raw)) return raw;
      const near = closestName(raw, choices);
      const hint = near === undefined ? '' : `; did you mean '${near}'?`;
      const message = `${fieldName(path)} is ${quoted(raw)}; it must be ${expected}${hint}`;
      return void problems.push({ path, code: 'not-a-choice', message });
    },
  };
}

/** true or false. */
export function flag(): Shape<boolean> {
  const describe: ShapeDescription = { type: 'flag', expected: 'true or false' };
  return {
    describe,
    read(raw, path, problems) {
      return typeof raw === 'boolean' ? raw : void problems.push(wrongType(path, raw, describe));
    },
  };
}

/** The first limit that `value` breaks, in words, or undefined; `shown` holds the limits as declared. */
function brokenLimit(value: number, limits: NumberLimits, shown: Limits): string | undefined {
  if (limits.min !== undefined && value < limits.min) return `at least ${shown.min}`;
  if (limits.above !== undefined && value <= limits.above) return `more than ${shown.above}`;
  if (limits.max !== undefined && value > limits.max) return `at most ${shown.max}`;
  if (limits.below !== undefined && value >= limits.below) return `less than ${shown.below}`;
  return undefined;
}

function limitsInSi(dimension: Dimension, limits: QuantityLimits): NumberLimits {
  const inSi: { -readonly [K in keyof NumberLimits]: number } = {};
  for (const key of ['min', 'max', 'above', 'below'] as const) {
    const typed = limits[key];
    if (typed === undefined) continue;
    const parsed = parseQuantity(typed, dimension);
    if (!parsed.ok) throw new Error(`the ${key} of a declared ${dimension}: ${parsed.message}`);
    inSi[key] = parsed.value;
  }
  return inSi;
}
