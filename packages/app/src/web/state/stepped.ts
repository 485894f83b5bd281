/** A typed figure one or more steps on: a whole number by ones, a decimal by its last digit. Undefined when it has no number. */
export function stepped(text: string, by: number): string | undefined {
  const match = /^([^\d−-]*)([−-]?)(\d[\d,]*(?:\.\d+)?)(.*)$/.exec(text);
  if (match === null) return undefined;
  const [, before = '', sign = '', figure = '', after = ''] = match;
  if (/^\s*\d|^\//.test(after)) return undefined;
  const plain = figure.replaceAll(',', '');
  const decimals = plain.split('.')[1]?.length ?? 0;
  const value = Number(plain) * (sign === '' ? 1 : -1) + by * 10 ** -decimals;
  // A length or a price goes down to nothing and not below; a value that was negative may be.
  const kept = sign === '' ? Math.max(0, value) : value;
  return `${before}${kept.toFixed(decimals)}${after}`;
}
