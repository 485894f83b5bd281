/**
 * An exact positive number: a fraction of whole numbers times a power of pi.
 * Unit factors are kept this way so that a unit made of several others is rounded once, at the end.
 */
export interface Exact {
  readonly over: bigint;
  readonly under: bigint;
  readonly pi: number;
}

export const ONE: Exact = { over: 1n, under: 1n, pi: 0 };

/** Reads a product such as `231 * 0.0254^3 / 60`; `pi` stands for pi. */
export function exact(product: string): Exact {
  let value = ONE;
  let inverse = false;
  for (const word of product.split(' ')) {
    if (word === '*' || word === '/') inverse = word === '/';
    else {
      const [base = '', exponent = '1'] = word.split('^');
      value = times(
        value,
        base === 'pi' ? { ...ONE, pi: 1 } : decimal(base),
        Number(exponent) * (inverse ? -1 : 1),
      );
    }
  }
  return value;
}

/** `a` times `b` raised to a whole power, which may be negative. */
export function times(a: Exact, b: Exact, power = 1): Exact {
  const n = BigInt(Math.abs(power));
  const [over, under] = power < 0 ? [b.under, b.over] : [b.over, b.under];
  return { over: a.over * over ** n, under: a.under * under ** n, pi: a.pi + b.pi * power };
}

/** The nearest double, except that a factor of pi adds its own rounding. */
export function toDouble(value: Exact): number {
  const { over, under, pi } = value;
  // 80 bits of quotient with a sticky last bit, so that the conversion to 53 bits is the only rounding.
  const shift = 80 - bits(over) + bits(under);
  const [n, d] = shift >= 0 ? [over << BigInt(shift), under] : [over, under << BigInt(-shift)];
  const quotient = ((n / d) << 1n) | (n % d === 0n ? 0n : 1n);
  return Number(quotient) * 2 ** -(shift + 1) * Math.PI ** pi;
}

/**
 * The fraction as two doubles that hold it exactly, or undefined when it is too fine for that. Multiplying and
 * then dividing by them keeps 3/4 in at exactly 0.01905 m, where a rounded factor would miss it by one digit.
 */
export function asDoubles({ over, under, pi }: Exact): readonly [number, number] | undefined {
  if (pi !== 0) return undefined;
  const common = commonDivisor(over, under);
  const [n, d] = [Number(over / common), Number(under / common)];
  return Number.isSafeInteger(n) && Number.isSafeInteger(d) ? [n, d] : undefined;
}

function commonDivisor(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}

function decimal(text: string): Exact {
  const [whole = '', fraction = ''] = text.split('.');
  return { over: BigInt(whole + fraction), under: 10n ** BigInt(fraction.length), pi: 0 };
}

function bits(n: bigint): number {
  return n.toString(2).length;
}
