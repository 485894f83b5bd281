import type { Part } from '../../catalogue/index.ts';
import type { Bounds } from './bounds.ts';
import type { Proven } from './evaluate.ts';
import type { Front } from './front.ts';
import type { Prover } from './prover.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** Part of the proofs that may go into finding good rigs before all are gone through, and most of them. */
const SHARE = 0.6;
const MOST = 400;

type Parts = ReadonlyMap<string, Part>;

/**
 * Finds good rigs near one: changes one part at a time, keeps what no other beats, and goes on from there. It proves
 * nothing of the rigs it does not look at; that is for the whole search, which good rigs make shorter.
 *
 * @param enough good rigs: it ends when it has so many
 */
export function climb(
  space: SearchSpace,
  bounds: Bounds,
  prover: Prover,
  front: Front,
  start: Parts,
  enough: number,
  goOn: () => boolean,
): void {
  const first = prover.of(space, (id) => start.get(id));
  if (first === undefined) return;
  let waiting: { parts: Parts; proven: Proven }[] = [{ parts: start, proven: first }];
  front.offer(first);
  while (waiting.length > 0 && front.choices.length < enough && goOn()) {
    waiting.sort((a, b) => troubleOf(a.proven) - troubleOf(b.proven) || cents(a.proven) - cents(b.proven));
    const { parts, proven } = waiting.shift()!;
    if (proven.broken.length === 0 && front.beatsAll(proven.figures)) continue;
    for (const next of changesOf(space, parts, proven)) {
      if (prover.share >= SHARE || prover.proofs >= MOST || front.choices.length >= enough) return;
      const partAt: PartAt = (id) => next.get(id);
      if (isRefused(space, bounds, front, partAt)) continue;
      const found = prover.of(space, partAt);
      if (found === undefined) continue;
      const better =
        front.offer(found) || (front.choices.length === 0 && troubleOf(found) < troubleOf(proven));
      if (better) waiting.push({ parts: next, proven: found });
    }
    if (front.choices.length > 0) waiting = waiting.filter((w) => w.proven.broken.length === 0);
  }
}

/** Rigs that differ in one slot, or in a valve with what it serves, and promise to be cheaper or lighter or to mend something. */
function* changesOf({ slots }: SearchSpace, parts: Parts, { broken }: Proven): Generator<Parts> {
  for (const { id, options } of slots) {
    const now = parts.get(id);
    for (const part of options) {
      if (part === now) continue;
      const gains =
        broken.length > 0 ||
        (part?.priceCents ?? 0) < (now?.priceCents ?? 0) ||
        (part?.mass ?? 0) < (now?.mass ?? 0);
      if (!gains) continue;
      const next = new Map(parts);
      if (part === undefined) next.delete(id);
      else next.set(id, part);
      yield next;
    }
  }
}

function isRefused({ slots }: SearchSpace, bounds: Bounds, front: Front, partAt: PartAt): boolean {
  let margin = Infinity;
  for (let depth = 0; depth < slots.length; depth++) {
    margin = Math.min(margin, bounds.limit(depth, partAt));
    if (margin < 0) return true;
  }
  const best = bounds.best(slots.length, partAt, margin);
  return best.margin < 0 || front.beatsAll(best);
}

function troubleOf({ broken, missed }: Proven): number {
  return broken.length === 0 ? 0 : broken.length + missed;
}

function cents({ figures }: Proven): number {
  return figures.priceCents;
}
