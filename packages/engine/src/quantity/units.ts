import { DIMENSIONS, type Dimension } from './dimension.ts';
import { asDoubles, exact, toDouble, type Exact } from './exact.ts';
import { UNIT_ROWS } from './units.data.ts';

/** A unit, by itself or put together: value in SI = (figure + offset) × factor. */
export interface Unit {
  /** How the program writes it; reading it gives the same unit. */
  readonly symbol: string;
  readonly kind: string;
  /** Whose habit the unit is; in a metric unit a comma may be a decimal comma. */
  readonly system: 'us' | 'metric' | 'any';
  readonly factor: number;
  /** What is added to a figure before it is multiplied: the zero of °C and °F lies above that of K. */
  readonly offset: number;
  readonly exactly: Exact;
  /** The factor as a fraction of two doubles; the second is 1 where that cannot be exact. */
  readonly fraction: readonly [number, number];
}

/** Every unit that stands by itself. */
export const UNITS: readonly Unit[] = UNIT_ROWS.map(([symbol, kind, system, factor, , offset = 0]) => {
  return { symbol, kind, system, offset, ...factorOf(exact(factor)) };
});

const asTyped = new Map<string, Unit[]>();
const anyCase = new Map<string, Unit[]>();

UNITS.forEach((unit, i) => {
  for (const name of [unit.symbol, ...spellings(UNIT_ROWS[i]?.[4] ?? '')]) {
    enter(asTyped, name, unit);
    enter(anyCase, name.toLowerCase(), unit);
  }
});

/**
 * The units a name may stand for, at most one of a kind. A name is tried as typed first, then without regard to
 * case; where two units of one kind differ only by case (mPa, MPa) the other ways of writing are refused.
 */
export function unitsNamed(name: string): readonly Unit[] {
  const found = [...(asTyped.get(name) ?? [])];
  const others = (anyCase.get(name.toLowerCase()) ?? []).filter((u) => !found.some((f) => f.kind === u.kind));
  for (const unit of others) if (others.every((o) => o === unit || o.kind !== unit.kind)) found.push(unit);
  return found;
}

/** All names of the units that stand by themselves in a dimension. */
export function unitNames(dimension: Dimension): string[] {
  const kinds = DIMENSIONS[dimension].made;
  return [...asTyped].filter(([, units]) => units.some((u) => kinds.includes(u.kind))).map(([name]) => name);
}

/** The factor of a unit in the forms that conversion needs. */
export function factorOf(exactly: Exact): Pick<Unit, 'exactly' | 'factor' | 'fraction'> {
  const factor = toDouble(exactly);
  return { exactly, factor, fraction: asDoubles(exactly) ?? [factor, 1] };
}

export function toSi(figure: number, unit: Unit): number {
  const [over, under] = unit.fraction;
  const shifted = figure + unit.offset;
  const product = shifted * over;
  // Beyond the range of a double the product would not be finite though the value is.
  return Number.isFinite(product) ? product / under : shifted * unit.factor;
}

export function fromSi(value: number, unit: Unit): number {
  const [over, under] = unit.fraction;
  const product = value * under;
  return (Number.isFinite(product) ? product / over : value / unit.factor) - unit.offset;
}

function enter(map: Map<string, Unit[]>, name: string, unit: Unit): void {
  const units = map.get(name);
  if (units === undefined) map.set(name, [unit]);
  else if (!units.includes(unit)) units.push(unit);
}

function spellings(list: string): string[] {
  return list.split('|').flatMap((spelling) => {
    if (spelling.includes('~')) return [spelling.replace('~', ''), spelling.replace('~', 's')];
    const name = spelling.replace('&', '');
    if (spelling.endsWith('&')) return [name, `US ${name}`, `${name} US`];
    return spelling === '' ? [] : [spelling];
  });
}
