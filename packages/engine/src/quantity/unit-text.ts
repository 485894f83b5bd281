import { DIMENSIONS, type Dimension } from './dimension.ts';
import { exact, ONE, times } from './exact.ts';
import { factorOf, unitsNamed, type Unit } from './units.ts';

/** One unit of a product, with what its name may stand for. */
interface Factor {
  readonly choices: readonly Unit[];
  readonly power: number;
  /** The 1000 of "gal/1000 ft2". */
  readonly count: number;
}

const MOST_FACTORS = 4;
const LONGEST = 60;

// Documents use a few units thousands of times. Bounded, since what people type has no end.
const MOST_REMEMBERED = 100;
const remembered = new Map<Dimension, Map<string, Unit>>();

/** The unit a text stands for in a dimension, or undefined: `unitOf('gal/acre', 'dose')`. */
export function unitOf(text: string, dimension: Dimension): Unit | undefined {
  let known = remembered.get(dimension);
  if (known === undefined) remembered.set(dimension, (known = new Map<string, Unit>()));
  const unit = known.get(text);
  if (unit !== undefined) return unit;
  const made = DIMENSIONS[dimension].made;
  const found = readings(text).find((unit) => made.includes(unit.kind));
  if (found !== undefined && known.size < MOST_REMEMBERED) known.set(text, found);
  return found;
}

/** The first dimension a unit text could belong to, for messages. */
export function dimensionOf(text: string): Dimension | undefined {
  return dimensionsOf(text)[0];
}

/** Every dimension a unit text could belong to: N.m is a torque or an energy. */
export function dimensionsOf(text: string): Dimension[] {
  const dimensions = Object.keys(DIMENSIONS) as Dimension[];
  const found = readings(text).flatMap((u) => dimensions.filter((d) => DIMENSIONS[d].made.includes(u.kind)));
  return [...new Set(found)];
}

/** Everything a unit text may mean: as one name, then put together. */
function readings(text: string): Unit[] {
  if (text.length > LONGEST) return [];
  const plain = plainUnitText(text);
  const whole = unitsNamed(plain);
  const factors = factorsOf(plain);
  if (factors === undefined || (factors.length === 1 && whole.length > 0 && factors[0]?.power === 1))
    return [...whole];
  return [...whole, ...combinations(factors).map((units) => putTogether(factors, units))];
}

/** One way of writing each sign: no abbreviation points, plain digits for raised ones, "/" for "per". */
export function plainUnitText(text: string): string {
  return text
    .replaceAll(/[²₂]/g, '2')
    .replaceAll('³', '3')
    .replaceAll('⁴', '4')
    .replaceAll('\u03BC', '\u00B5')
    .replaceAll('\u2126', '\u03A9')
    .replaceAll(/U\.S\.?(?=\W|$)/gi, 'US')
    .replaceAll(/[()]/g, ' ')
    .replaceAll(/\.(?=\s|\/|$)/g, '')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/ ?\/ ?|(?<=\S) per (?!cent\b|mille\b)/gi, '/')
    .trim();
}

/** Everything behind the first "/" divides: lb/hp.h is lb/(hp.h). */
function factorsOf(text: string): Factor[] | undefined {
  const [above = '', ...below] = text.split('/');
  const factors: Factor[] = [];
  if (above !== '' && above !== '1') factors.push(...(product(above, 1) ?? [UNKNOWN]));
  for (const piece of below) factors.push(...(product(piece, -1) ?? [UNKNOWN]));
  const known = factors.length > 0 && factors.length <= MOST_FACTORS && !factors.includes(UNKNOWN);
  return known ? factors : undefined;
}

const UNKNOWN: Factor = { choices: [], power: 0, count: 1 };

function product(text: string, sign: 1 | -1): Factor[] | undefined {
  const counted = sign < 0 ? /^(\d{1,3}(?:,\d{3})*|\d{1,7}) ?(?=\D)/.exec(text) : null;
  const count = counted === null ? 1 : Number(counted[1]?.replaceAll(',', ''));
  if (count === 0) return undefined;
  const words = text.slice(counted?.[0].length ?? 0).split(/[ .·⋅*]+/);
  const factors: Factor[] = [];
  for (let i = 0; i < words.length;) {
    // The longest run of words that is a name: "fl oz", "sq ft", "in of water".
    let taken = 0;
    for (let n = Math.min(4, words.length - i); n > 0 && taken === 0; n--) {
      const found = namedWithPower(words.slice(i, i + n).join(' '), sign);
      if (found === undefined) continue;
      factors.push(...found);
      taken = n;
    }
    if (taken === 0 || factors.length > MOST_FACTORS) return undefined;
    i += taken;
  }
  const [first, ...rest] = factors;
  return first === undefined ? undefined : [{ ...first, count }, ...rest];
}

/** "ft", "ft2", "s-1", "sq ft", or names joined by hyphens such as "lb-ft". */
function namedWithPower(name: string, sign: 1 | -1): Factor[] | undefined {
  const one = (of: string, power: number): Factor[] | undefined => {
    const choices = unitsNamed(of);
    return choices.length === 0 ? undefined : [{ choices, power: power * sign, count: 1 }];
  };
  // "s-1" is a power of s here, whatever else it may be called.
  const plain = /-[1-4]$/.test(name) ? undefined : one(name, 1);
  if (plain !== undefined) return plain;
  const raised = /^(\D+?)\^?(-?[1-4])$/.exec(name);
  const power = raised === null ? undefined : one(raised[1] ?? '', Number(raised[2]));
  if (power !== undefined) return power;
  const inWords = /^(?:(square|sq)|cubic|cu) ?(.+)$/i.exec(name);
  if (inWords !== null) return one(inWords[2] ?? '', inWords[1] === undefined ? 3 : 2);
  const joined = name.includes(' ') ? [] : name.split('-');
  if (joined.length < 2 || joined.length > MOST_FACTORS) return undefined;
  const factors = joined.map((word) => namedWithPower(word, sign));
  return factors.every((f) => f !== undefined) ? factors.flat() : undefined;
}

function combinations(factors: readonly Factor[]): Unit[][] {
  return factors.reduce<Unit[][]>(
    (made, factor) => made.flatMap((units) => factor.choices.map((unit) => [...units, unit])),
    [[]],
  );
}

function putTogether(factors: readonly Factor[], units: readonly Unit[]): Unit {
  let exactly = ONE;
  const above = { kinds: [] as string[], symbols: [] as string[] };
  const below = { kinds: [] as string[], symbols: [] as string[] };
  factors.forEach(({ power, count }, i) => {
    const unit = units[i] as Unit;
    exactly = times(exactly, unit.exactly, power);
    if (count !== 1) exactly = times(exactly, exact(String(count)), -1);
    const side = power > 0 ? above : below;
    side.kinds.push(kindRaised(unit.kind, Math.abs(power)));
    const raised = ['', '', '²', '³', '⁴'][Math.abs(power)] ?? '';
    side.symbols.push(`${count === 1 ? '' : `${count} `}${unit.symbol}${raised}`);
  });
  const name = (upper: string, lower: string) => (lower === '' ? upper : `${upper}/${lower}`);
  const systems = new Set(units.map((unit) => unit.system));
  return {
    symbol: name(above.symbols.join('·'), below.symbols.join('·')),
    kind: name(above.kinds.sort().join('*') || '1', below.kinds.sort().join('*')),
    system: systems.has('us') ? 'us' : systems.has('metric') ? 'metric' : 'any',
    offset: 0,
    ...factorOf(exactly),
  };
}

function kindRaised(kind: string, power: number): string {
  if (power === 1) return kind;
  if (kind === 'length' && power === 2) return 'area';
  if (kind === 'length' && power === 3) return 'volume';
  return `${kind}${power}`;
}
