import { closestName } from './closest-name.ts';
import { DIMENSIONS, type Dimension } from './dimension.ts';
import { readFigure, type Figure } from './figure.ts';
import { quoted } from './quoting.ts';
import { dimensionOf, plainUnitText, unitOf } from './unit-text.ts';
import { NOT_UNITS } from './units.data.ts';
import { toSi, unitNames, type Unit } from './units.ts';

export type ParsedQuantity =
  | { readonly ok: true; /** in SI */ readonly value: number; readonly unit: string }
  | { readonly ok: false; readonly message: string };

const LONGEST = 100;
const MOST_PARTS = 4;
const WITH_PARTS: readonly Dimension[] = ['length', 'mass', 'time'];

/**
 * Reads a quantity as people type it: `12 gpm`, `1,200 gal`, `3/4"`, `1 1/2 in`, `5'6"`, `70 °F`, `3,25 bar`, `8.3 lb/gal`.
 *
 * - A unit is needed, except for a ratio: `0.6`, `60 %` and `3/5` are the same.
 * - Numbers are read as `readFigure` says. "1,200 gal" is twelve hundred and "3,25 bar" is 3.25. "1,200 bar" is refused:
 *   with a metric unit a comma before three digits may be either mark. "1.200 bar" is 1.2.
 * - A pressure is gauge, so psi and psig are one. psia and "bar abs" are refused for a gauge pressure, psig for an absolute
 *   one. "10 inHg vac" is a gauge pressure of -10 inHg.
 * - A gallon, quart, pint or fluid ounce is of the US, unless "imp" or "UK" stands beside it.
 * - An ounce is a fluid ounce where a volume is meant and a mass where a mass is meant; lb is a force where one is meant.
 * - An acre is 43560 international square feet; "US survey acre" is the other. hp is mechanical; "metric hp" or PS the other.
 * - °F and °C are points of the scale for a temperature and steps of it for a difference.
 * - Letters are read without regard to case, except where two units differ only by it (mPa, MPa).
 * - AWG, mesh and Saybolt seconds are refused: they are no multiples of an SI unit.
 */
export function parseQuantity(text: string, dimension: Dimension): ParsedQuantity {
  if (text.length > LONGEST) return refuse(dimension, `${quoted(text)} is too long to be a quantity`);
  const plain = plainText(text);
  if (plain === '') return refuse(dimension, 'nothing was given');
  const figure = readFigure(plain);
  if (figure === undefined) {
    const why = /^[+-]? ?[\d.,]/.test(plain)
      ? 'has a number that cannot be read'
      : 'does not begin with a number';
    return refuse(dimension, `${quoted(text)} ${why}`);
  }
  const rest = figure.rest.trim();
  if (rest === '') {
    if (dimension === 'ratio') return finished(text, dimension, figure, figure.value, '1');
    return refuse(dimension, `${quoted(text)} has no unit`);
  }
  const { name, sense } = senseOf(rest, dimension);
  const unit = sense === 'absolute' && dimension !== 'absolutePressure' ? undefined : unitOf(name, dimension);
  if (unit !== undefined) {
    if (sense === 'gauge' && dimension === 'absolutePressure')
      return refuse(dimension, `${quoted(text)} is a gauge pressure`);
    const value = toSi(sense === 'vacuum' ? -figure.value : figure.value, unit);
    return finished(text, dimension, figure, value, unit.symbol, unit);
  }
  const parts = WITH_PARTS.includes(dimension) ? inParts(figure, dimension) : undefined;
  if (parts !== undefined) return finished(text, dimension, figure, parts.value, parts.unit.symbol);
  return refuse(dimension, whyNot(text, rest, dimension));
}

function finished(
  text: string,
  dimension: Dimension,
  figure: Figure,
  value: number,
  symbol: string,
  unit?: Unit,
): ParsedQuantity {
  if (figure.decimalReading !== undefined && unit?.system === 'metric') {
    const readings = `${figure.decimalReading} ${symbol} or ${figure.value} ${symbol}`;
    return { ok: false, message: `${quoted(text)} can be read two ways; write ${readings}` };
  }
  if (!Number.isFinite(value)) return refuse(dimension, `${quoted(text)} is too large a number`);
  const vanished = value === 0 && figure.value !== 0 && (unit?.offset ?? 0) === 0;
  if (vanished) return refuse(dimension, `${quoted(text)} is too small a number`);
  if (dimension === 'temperature' && value < 0)
    return {
      ok: false,
      message: `${quoted(text)} is below absolute zero, ${symbol === '°F' ? '-459.67 °F' : '-273.15 °C'}`,
    };
  if (dimension === 'absolutePressure' && value < 0)
    return { ok: false, message: `${quoted(text)} is below full vacuum; an absolute pressure is at least 0` };
  // Adding 0 makes -0 a plain 0.
  return { ok: true, value: value + 0, unit: symbol };
}

function refuse(dimension: Dimension, why: string): ParsedQuantity {
  const { phrase, example } = DIMENSIONS[dimension];
  return { ok: false, message: `${why}; ${phrase} was expected, such as ${example}` };
}

/** One way of writing quotes, signs, spaces and fractions. */
function plainText(text: string): string {
  if (/^[!-~]+(?: [!-~]+)*$/.test(text)) return text;
  return text
    .replaceAll(/(\d?)([¼½¾⅐-⅞])/g, (_, before: string, sign: string) => {
      return `${before}${before === '' ? '' : ' '}${sign.normalize('NFKC').replace('\u2044', '/')}`;
    })
    .replaceAll('\u2044', '/')
    .replaceAll(/[\u2032\u2019\u00B4]/g, "'")
    .replaceAll(/[\u2033\u201D\u201C]/g, '"')
    .replaceAll(/[\u2212\u2010-\u2013]/g, '-')
    .replaceAll(/[\s\u00A0\u202F]+/g, ' ')
    .trim();
}

type Sense = 'plain' | 'gauge' | 'absolute' | 'vacuum';

/** Takes "g", "abs", "vac" and the like from behind a unit of pressure. */
function senseOf(rest: string, dimension: Dimension): { name: string; sense: Sense } {
  if (dimension !== 'pressure' && dimension !== 'absolutePressure') return { name: rest, sense: 'plain' };
  if (unitOf(rest, dimension) !== undefined) return { name: rest, sense: 'plain' };
  const plain = plainUnitText(rest);
  const found = /^(.*\S) ?(?: (gauge|gage|g|absolute|abs|a|vacuum|vac)|(?<=psi|bar|pa)(g|a|ga|abs))$/i.exec(
    plain,
  );
  const name = found?.[1]?.trim() ?? rest;
  const word = (found?.[2] ?? found?.[3] ?? '').toLowerCase();
  // "lb/in2 a" is a pressure with a sense, "a" alone is not: the rest must still be a unit.
  if (word === '' || unitOf(name, 'pressure') === undefined) return { name: rest, sense: 'plain' };
  return { name, sense: word.startsWith('g') ? 'gauge' : word.startsWith('v') ? 'vacuum' : 'absolute' };
}

/** Reads 5'6", 2 lb 3 oz, 1 h 30 min: each part smaller than one of the unit before it. */
function inParts(first: Figure, dimension: Dimension): { value: number; unit: Unit } | undefined {
  const sign = first.value < 0 ? -1 : 1;
  let value = 0;
  let leading: Unit | undefined;
  let before: Unit | undefined;
  let figure = first;
  for (let count = 0; count < MOST_PARTS; count++) {
    const matched = /^ ?(\D*)/.exec(figure.rest)?.[0] ?? '';
    const rest = figure.rest.slice(matched.length);
    const name = rest === '' ? matched.trim() : matched.replace(/ ?(,|-|\band)? ?$/, '').trim();
    // 5'6 leaves the inches unsaid.
    const unit = unitOf(name === '' && before?.symbol === 'ft' ? 'in' : name, dimension);
    if (unit === undefined) return undefined;
    const size = toSi(Math.abs(figure.value), unit);
    if (before !== undefined && (unit.factor >= before.factor || size >= before.factor)) return undefined;
    value += size;
    leading ??= unit;
    before = unit;
    if (rest === '') return { value: sign * value, unit: leading };
    const following = readFigure(rest);
    if (following === undefined) return undefined;
    figure = following;
  }
  return undefined;
}

function whyNot(text: string, rest: string, dimension: Dimension): string {
  const shown = quoted(text);
  const other = dimensionOf(rest);
  const notUnit = NOT_UNITS.find(({ text: named }) => named.test(rest));
  if (/^(-|to|\.\.|x|×|\*) ?[\d.,]/i.test(rest)) return `${shown} is more than one number`;
  if (
    dimension === 'pressure' &&
    /(a|abs|absolute)\W*$/i.test(rest) &&
    senseOf(rest, dimension).sense === 'absolute'
  )
    return `${shown} is an absolute pressure`;
  if (notUnit !== undefined && (other === undefined || notUnit.where.includes(dimension)))
    return `${shown}: ${notUnit.why}`;
  if (other !== undefined) return `${shown} is ${DIMENSIONS[other].phrase}`;
  const near = closestName(rest, unitNames(dimension));
  const hint = near === undefined ? '' : ` (did you mean '${near}'?)`;
  return `${shown} has the unknown unit ${quoted(rest)}${hint}`;
}
