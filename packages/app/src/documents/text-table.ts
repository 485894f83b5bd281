/** A plain table for the terminal: figures to the right, words to the left, columns as wide as they need. */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string {
  const width = head.map((h, i) => Math.max(h.length, ...rows.map((r) => (r[i] ?? '').length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((c, i) => (right.includes(i) ? c.padStart(width[i]!) : c.padEnd(width[i]!)))
      .join('  ')
      .trimEnd();
  return [line(head), width.map((w) => '-'.repeat(w)).join('  '), ...rows.map(line)].join('\n');
}
