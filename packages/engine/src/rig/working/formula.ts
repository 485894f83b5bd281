/**
 * Sums as the working of a promise writes them: `{flow} × {pressure rise} / {efficiency}`, with + − × / ^ √ ( ),
 * max(a, b), min(a, b), exp(a), ln(a), tan(a), atan(a) in radians, figures, π, and the names of its terms in braces.
 */
const TOKEN = /\s*(\{[^}]+\}|\d+(?:\.\d+)?|π|max|min|exp|ln|atan|tan|[-+−×/^√(),])/y;

type Terms = (name: string) => number;

interface Reading {
  readonly tokens: readonly string[];
  readonly terms: Terms;
  at: number;
}

/**
 * What a sum comes to with its terms put in.
 *
 * @throws RangeError for a sum that cannot be read
 */
export function valueOfSum(formula: string, terms: Terms): number {
  const reading: Reading = { tokens: tokensOf(formula), terms, at: 0 };
  const value = additions(reading);
  if (reading.at < reading.tokens.length) unread(reading);
  return value;
}

function tokensOf(formula: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < formula.length) {
    const from = TOKEN.lastIndex;
    const found = TOKEN.exec(formula);
    if (found === null) throw new RangeError(`sum '${formula}' cannot be read at '${formula.slice(from)}'`);
    tokens.push(found[1]!);
  }
  return tokens;
}

function unread({ tokens, at }: Reading): never {
  throw new RangeError(`sum '${tokens.join(' ')}' cannot be read at '${tokens[at] ?? 'its end'}'`);
}

function took(r: Reading, token: string): boolean {
  if (r.tokens[r.at] !== token) return false;
  r.at++;
  return true;
}

function needed(r: Reading, token: string): void {
  if (!took(r, token)) unread(r);
}

function additions(r: Reading): number {
  let value = products(r);
  for (;;) {
    if (took(r, '+')) value += products(r);
    else if (took(r, '−') || took(r, '-')) value -= products(r);
    else return value;
  }
}

function products(r: Reading): number {
  let value = power(r);
  for (;;) {
    if (took(r, '×')) value *= power(r);
    else if (took(r, '/')) value /= power(r);
    else return value;
  }
}

function power(r: Reading): number {
  const base = single(r);
  return took(r, '^') ? base ** single(r) : base;
}

function single(r: Reading): number {
  if (took(r, '√')) return Math.sqrt(single(r));
  if (took(r, '−') || took(r, '-')) return -products(r);
  for (const [name, choose] of CHOICES) if (took(r, name)) return chosen(r, choose);
  for (const [name, law] of LAWS) if (took(r, name)) return law(inBrackets(r));
  if (took(r, 'π')) return Math.PI;
  if (r.tokens[r.at] === '(') return inBrackets(r);
  const token = r.tokens[r.at++];
  if (token?.startsWith('{')) return r.terms(token.slice(1, -1));
  const value = Number(token);
  if (token !== undefined && Number.isFinite(value)) return value;
  r.at--;
  return unread(r);
}

function inBrackets(r: Reading): number {
  needed(r, '(');
  const value = additions(r);
  needed(r, ')');
  return value;
}

const LAWS = [
  ['exp', Math.exp],
  ['ln', Math.log],
  ['tan', Math.tan],
  ['atan', Math.atan],
] as const;

const CHOICES = [
  ['max', Math.max],
  ['min', Math.min],
] as const;

function chosen(r: Reading, choose: (a: number, b: number) => number): number {
  needed(r, '(');
  const a = additions(r);
  needed(r, ',');
  const b = additions(r);
  needed(r, ')');
  return choose(a, b);
}
