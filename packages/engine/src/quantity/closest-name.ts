const LONGEST = 64;

/**
 * The one of `names` that a person most likely meant, or undefined when none is near.
 *
 * Near means: the same but for case, spaces, hyphens and underscores, or at most one slip (a letter wrong, left
 * out, put in, or two swapped) for every three letters, and never more than three.
 */
export function closestName(name: string, names: Iterable<string>): string | undefined {
  if (name.length === 0 || name.length > LONGEST) return undefined;
  const wanted = plain(name);
  const allowed = Math.min(3, Math.max(1, Math.floor(wanted.length / 3)));
  let best: string | undefined;
  let fewest = allowed + 1;
  for (const candidate of names) {
    if (candidate.length > LONGEST) continue;
    const slips = wanted === plain(candidate) ? 0 : slipsBetween(wanted, plain(candidate));
    // Two letters of two changed is another word, not a slip.
    if (slips < fewest && slips < wanted.length) {
      best = candidate;
      fewest = slips;
    }
  }
  return best;
}

function plain(name: string): string {
  return name.toLowerCase().replaceAll(/[\s_-]/g, '');
}

/** Optimal string alignment distance: a swap of neighbours counts as one slip. */
function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let slips = Math.min(at(last, j) + 1, at(row, j - 1) + 1, at(last, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        slips = Math.min(slips, at(beforeLast, j - 2) + 1);
      row.push(slips);
    }
    beforeLast = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], i: number): number {
  return row[i] ?? Infinity;
}
