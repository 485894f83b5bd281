import {
  DIMENSIONS,
  dimensionsOf,
  fromSi,
  parseQuantity,
  toSi,
  unitOf,
  type Dimension,
  type Unit,
} from '@spraywright/engine/quantity';
import type { MethodParam } from './method.ts';

/** An input as the function takes it, or what is wrong with what was given. */
export type ReadInput =
  | { readonly ok: true; readonly value: number | boolean | string | readonly number[] }
  | { readonly ok: false; readonly code: string; readonly message: string };

const LONGEST_LIST = 1000;

/** Reads one input as a person gives it: a quantity as text, a plain number where there is no unit, yes or no, a word of a list. */
export function readInput(param: MethodParam, given: unknown): ReadInput {
  switch (param.kind) {
    case 'flag':
      return readFlag(param, given);
    case 'choice':
      return readChoice(param, given);
    case 'list': {
      const values = typeof given === 'string' ? given.split(';') : given;
      if (!Array.isArray(values)) return wrong(param, given, 'a list was expected');
      if (values.length > LONGEST_LIST)
        return no(
          'too-long',
          `${param.name} has ${values.length} members; at most ${LONGEST_LIST} are allowed`,
        );
      const read: number[] = [];
      for (const [i, one] of values.entries()) {
        const value = readNumber({ ...param, name: `${param.name}[${i}]` }, one);
        if (!value.ok) return value;
        read.push(value.value as number);
      }
      return { ok: true, value: read };
    }
    case 'number':
      return readNumber(param, given);
  }
}

/** The dimension that typed text for a unit of a doc comment belongs to; undefined where the unit has no name people type. */
export function dimensionOfParam(param: Pick<MethodParam, 'name' | 'unit'>): Dimension | undefined {
  const unit = param.unit ?? '-';
  if (unit === '-') return 'ratio';
  if (unit === 'Pa') return /absolute/i.test(param.name) ? 'absolutePressure' : 'pressure';
  if (unit === 'K' || unit === 'degC')
    return /difference|rise|drop/i.test(param.name) ? 'temperatureDifference' : 'temperature';
  const possible = dimensionsOf(unit);
  // Where the SI unit of one dimension is another unit of a second, such as 1/s, the first is meant.
  return possible.find((dimension) => DIMENSIONS[dimension].si === unit) ?? possible[0];
}

function readNumber(param: MethodParam, given: unknown): ReadInput {
  const dimension = dimensionOfParam(param);
  const unit = param.unit ?? '-';
  if (typeof given === 'number') {
    if (!Number.isFinite(given))
      return no('wrong-type', `${param.name} is ${given}; a finite number was expected`);
    if (unit !== '-' && dimension !== undefined)
      return wrong(param, given, `a quantity such as '${DIMENSIONS[dimension].example}' was expected`);
    return within(param, given, String(given), undefined);
  }
  if (typeof given !== 'string')
    return wrong(param, given, `text such as '${exampleOf(param)}' was expected`);
  if (dimension === undefined) {
    // "12 mol/m3", or the bare figure in the one unit there is.
    const figure = given.trim().endsWith(unit) ? given.trim().slice(0, -unit.length) : given;
    const parsed = parseQuantity(figure, 'ratio');
    if (!parsed.ok || parsed.unit !== '1') return wrong(param, given, `a number of ${unit} was expected`);
    return within(param, parsed.value, given, undefined);
  }
  const parsed = readAs(given, [dimension, ...otherDimensions(unit, dimension)]);
  if (!parsed.ok) return no('bad-quantity', `${param.name}: ${parsed.message}`);
  const own = unit === '-' ? undefined : unitOf(unit, dimension);
  const value = own === undefined ? parsed.value : inOwnUnit(parsed.value, own);
  return within(param, value, given, parsed.unit);
}

/** m2/s is a kinematic viscosity and an area rate: whichever the text is. */
function otherDimensions(unit: string, first: Dimension): Dimension[] {
  return dimensionsOf(unit).filter(
    (d) => d !== first && DIMENSIONS[d].si === DIMENSIONS[first].si && unit !== 'Pa' && unit !== 'K',
  );
}

function readAs(text: string, dimensions: readonly Dimension[]): ReturnType<typeof parseQuantity> {
  const readings = dimensions.map((dimension) => parseQuantity(text, dimension));
  return readings.find((r) => r.ok) ?? readings[0] ?? parseQuantity(text, 'ratio');
}

/** An SI value in the unit a function takes, without the digits that the way through SI spoilt: 20 °C is 20. */
function inOwnUnit(value: number, own: Unit): number {
  return own.factor === 1 && own.offset === 0 ? value : Number(fromSi(value, own).toPrecision(13));
}

function within(param: MethodParam, value: number, typed: string, typedUnit: string | undefined): ReadInput {
  const { name, min, max } = param;
  const broken =
    min !== undefined && value < min
      ? ['at least', min]
      : max !== undefined && value > max
        ? ['at most', max]
        : undefined;
  if (broken === undefined) return { ok: true, value };
  const [word, limit] = broken as [string, number];
  const unit = param.unit === undefined || param.unit === '-' ? '' : ` ${param.unit}`;
  return no(
    'out-of-range',
    `${name} is ${typed.trim()}; it must be ${word} ${limit}${unit}${inTypedUnit(param, limit, typedUnit)}`,
  );
}

/** The limit once more in the unit that was typed. */
function inTypedUnit(param: MethodParam, limit: number, typedUnit: string | undefined): string {
  const dimension = dimensionOfParam(param);
  if (typedUnit === undefined || dimension === undefined || param.unit === '-') return '';
  const [own, other] = [unitOf(param.unit ?? '', dimension), unitOf(typedUnit, dimension)];
  if (own === undefined || other === undefined || own.factor === other.factor) return '';
  const value = fromSi(toSi(limit, own), other);
  return ` (${Number(value.toPrecision(4))} ${other.symbol})`;
}

function readFlag(param: MethodParam, given: unknown): ReadInput {
  if (typeof given === 'boolean') return { ok: true, value: given };
  const word = typeof given === 'string' ? given.trim().toLowerCase() : '';
  if (word === 'yes' || word === 'true') return { ok: true, value: true };
  if (word === 'no' || word === 'false') return { ok: true, value: false };
  return wrong(param, given, 'yes or no was expected');
}

function readChoice(param: MethodParam, given: unknown): ReadInput {
  const choices = param.choices ?? [];
  const word = typeof given === 'number' ? String(given) : given;
  if (typeof word !== 'string' || !choices.includes(word.trim()))
    return no('not-a-choice', `${param.name} is ${said(given)}; it must be one of ${choices.join(', ')}`);
  return { ok: true, value: param.numeric === true ? Number(word) : word.trim() };
}

/** What may be typed for an input: `12 gpm`. */
export function exampleOf(param: MethodParam): string {
  const dimension = dimensionOfParam(param);
  return dimension === undefined
    ? `1 ${param.unit}`
    : dimension === 'ratio'
      ? '0.6'
      : DIMENSIONS[dimension].example;
}

function said(given: unknown): string {
  if (typeof given === 'string') return `'${given.length > 60 ? `${given.slice(0, 57)}...` : given}'`;
  if (typeof given === 'number' || typeof given === 'boolean') return String(given);
  return Array.isArray(given) ? 'a list' : given === null ? 'null' : `a ${typeof given}`;
}

function wrong(param: MethodParam, given: unknown, expected: string): ReadInput {
  return no('wrong-type', `${param.name} is ${said(given)}; ${expected}`);
}

function no(code: string, message: string): ReadInput {
  return { ok: false, code, message };
}
