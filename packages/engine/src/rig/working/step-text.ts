import {
  display,
  displayUnit,
  fromSi,
  unitOf,
  type Dimension,
  type UnitSystem,
} from '../../quantity/index.ts';
import { plainNumber, type Figure, type Step } from '../promise.ts';
import { valueOfSum } from './formula.ts';

/** A factor of units this near 1 is none. */
const NO_FACTOR = 1e-9;

/**
 * A step of the working as people read it: what it is, the sum in words, and the sum with this rig's numbers put in.
 * Where the units of the trade do not go together by themselves, the factor between them stands at the end of the sum:
 * gpm × psi / 1,714 are hp.
 *
 * @example stepText(step, 'us') // "power in the liquid, flow × pressure rise: 21.30 gpm × 520.0 psi / 1,714"
 */
export function stepText({ text, figure, sum }: Step, units: UnitSystem): string {
  if (sum === undefined || figure === undefined) return text;
  const names = sum.formula.replaceAll(/[{}]/g, '');
  return `${text}, ${names}: ${numbersOf(sum, figure, units)}`.replaceAll(' ^ 2', '²');
}

type Sum = NonNullable<Step['sum']>;
/** The unit of each dimension in one sum. */
type Units = ReadonlyMap<Figure['dimension'], string>;

function numbersOf({ formula, terms }: Sum, result: Figure, units: UnitSystem): string {
  const unit = unitsFor(Object.values(terms), units);
  const written = formula.replaceAll(/\{([^}]+)\}( \^ 2)?/g, (_, name: string, squared?: string) => {
    const text = termText(termOf(terms, name), units, unit);
    return squared === undefined ? text : `(${text})²`;
  });
  const plain = valueOfSum(formula, (name) => inUnit(termOf(terms, name), unit));
  return withFactor(written, plain === 0 ? 1 : inUnit(result, unitsFor([result], units)) / plain);
}

function inUnit({ value, dimension }: Figure, unit: Units): number {
  const own = unit.get(dimension);
  return own === undefined ? value : fromSi(value, unitOf(own, dimension as Dimension)!);
}

function termOf(terms: Sum['terms'], name: string): Figure {
  const term = terms[name];
  if (term === undefined) throw new RangeError(`a sum speaks of '${name}', which it has no figure of`);
  return term;
}

/** One unit for each dimension, that of its largest figure: what is added must be alike. Shares stay plain numbers. */
function unitsFor(figures: readonly Figure[], units: UnitSystem): Units {
  const largest = new Map<Dimension, Figure>();
  for (const figure of figures) {
    const { value, dimension } = figure;
    if (!hasUnits(dimension)) continue;
    const before = largest.get(dimension);
    if (before === undefined || Math.abs(value) > Math.abs(before.value)) largest.set(dimension, figure);
  }
  return new Map(
    [...largest].map(([d, { value, as }]) => [
      d,
      displayUnit(value, d, units, as === undefined ? {} : { as }),
    ]),
  );
}

/** Shares, counts and bare numbers have none to be told in. */
function hasUnits(dimension: Figure['dimension']): dimension is Dimension {
  return !['count', 'money', 'days', 'number', 'ratio'].includes(dimension);
}

function termText({ value, dimension }: Figure, units: UnitSystem, unit: Units): string {
  const own = unit.get(dimension);
  const text =
    own === undefined
      ? `${dimension === 'money' ? '$' : ''}${plainNumber(value, 4)}${dimension === 'days' ? ' days' : ''}`
      : display(value, dimension as Dimension, units, { unit: own });
  return value < 0 ? `(${text})` : text;
}

function withFactor(written: string, factor: number): string {
  if (Math.abs(factor - 1) < NO_FACTOR) return written;
  const open = addsOutside(written) ? `(${written})` : written;
  return factor < 1 ? `${open} / ${plainNumber(1 / factor, 4)}` : `${open} × ${plainNumber(factor, 4)}`;
}

/** Whether it adds or takes off outside every bracket. */
function addsOutside(written: string): boolean {
  let depth = 0;
  for (const sign of written) {
    if (sign === '(') depth++;
    else if (sign === ')') depth--;
    else if (depth === 0 && (sign === '+' || sign === '−')) return true;
  }
  return false;
}
