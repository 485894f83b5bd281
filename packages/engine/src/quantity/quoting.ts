/** A raw value as a message quotes it: short, on one line, safe to print. */
export function quoted(raw: unknown): string {
  if (typeof raw === 'string') return `'${shortened(raw.replaceAll(/[\p{Cc}\p{Cs}]/gu, '\uFFFD'))}'`;
  if (typeof raw === 'number') return `the number ${raw}`;
  if (typeof raw === 'boolean') return String(raw);
  if (raw === null) return 'null';
  if (Array.isArray(raw)) return raw.length === 0 ? 'an empty list' : `a list of ${raw.length}`;
  return typeof raw === 'object' ? 'an object' : `a ${typeof raw}`;
}

/** At most 60 characters, with dots for the rest. */
export function shortened(text: string): string {
  if (text.length <= 60) return text;
  // Never through the middle of a character.
  return `${text.slice(0, 57).replace(/[\uD800-\uDBFF]$/, '')}...`;
}
