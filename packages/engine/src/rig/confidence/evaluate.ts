import type { Contender, DrawnPromise } from './draw-sheet.ts';
import type { DrawnNetwork, Reading } from './drawn-network.ts';

/** Draws in which every situation is looked at; after them those that cannot decide are left out. */
const FIRST = 64;
/** A situation is left out when in the first draws it was this many of its standard deviations from deciding. */
const APART = 4;
/** Or when it never differed from the deciding one by more than this share. */
const SAME = 1e-4;

/**
 * Works out the figure of each promise in every draw: the worst of its situations, solved one network after another.
 *
 * @returns one column a promise; NaN in a draw where a network it asks had no steady state
 */
export function evaluate(
  promises: readonly (DrawnPromise & { readonly sense: 'at-least' | 'at-most' })[],
  count: number,
): Float64Array[] {
  const first = Math.min(FIRST, count);
  solve(
    promises.flatMap((p) => p.contenders),
    0,
    first,
  );
  const kept = promises.map(({ contenders, sense }) => deciding(contenders, sense, first));
  solve(kept.flat(), first, count);
  return kept.map((contenders, p) => {
    const worse = promises[p]!.sense === 'at-least' ? Math.min : Math.max;
    const column = new Float64Array(count);
    contenders.forEach((c, i) => {
      c.prepare?.();
      const failed = [...new Set(c.readings.map((r) => r.of.failed))];
      for (let draw = 0; draw < count; draw++) {
        const value = failed.some((f) => f[draw] === 1) ? NaN : c.value(draw);
        column[draw] = i === 0 ? value : worse(column[draw]!, value);
      }
    });
    return column;
  });
}

function solve(contenders: readonly Contender[], from: number, to: number): void {
  const byNetwork = new Map<DrawnNetwork, Set<Reading>>();
  for (const { readings } of contenders)
    for (const reading of readings) {
      let of = byNetwork.get(reading.of);
      if (of === undefined) byNetwork.set(reading.of, (of = new Set<Reading>()));
      of.add(reading);
    }
  for (const [network, readings] of byNetwork) {
    if (network.condition === 'dirty' && openOf(network, byNetwork.keys()) !== undefined) continue;
    const dirty = [...byNetwork].find(([n]) => n.condition === 'dirty' && openOf(n, [network]) === network);
    network.solve(
      [...readings],
      from,
      to,
      dirty === undefined ? undefined : { network: dirty[0], readings: [...dirty[1]] },
    );
  }
}

/** Of these networks, the same duty with its strainers clean. */
function openOf(dirty: DrawnNetwork, networks: Iterable<DrawnNetwork>): DrawnNetwork | undefined {
  for (const n of networks) if (n.condition === 'open' && n.proven === dirty.proven) return n;
  return undefined;
}

function valueOf({ readings, value }: Contender, draw: number): number {
  return readings.some((r) => r.of.failed[draw] === 1) ? NaN : value(draw);
}

/** The situations that may be the worst in some draw, judged by the first of them. */
function deciding(
  contenders: readonly Contender[],
  sense: 'at-least' | 'at-most',
  first: number,
): readonly Contender[] {
  if (contenders.length < 2) return contenders;
  const sign = sense === 'at-least' ? 1 : -1;
  const rows = contenders.map((c) => Float64Array.from({ length: first }, (_, i) => sign * valueOf(c, i)));
  const means = rows.map((row) => row.reduce((sum, v) => sum + v, 0) / first);
  const worst = means.reduce((best, mean, i) => (mean < means[best]! ? i : best), 0);
  return contenders.filter((_, c) => c === worst || mayDecide(rows[c]!, rows[worst]!));
}

function mayDecide(row: Float64Array, worst: Float64Array): boolean {
  let sum = 0;
  let squares = 0;
  let largest = 0;
  for (let i = 0; i < row.length; i++) {
    const gap = row[i]! - worst[i]!;
    sum += gap;
    squares += gap * gap;
    largest = Math.max(largest, Math.abs(gap / worst[i]!));
  }
  const mean = sum / row.length;
  const deviation = Math.sqrt(Math.max(0, squares / row.length - mean * mean));
  return !(mean > APART * deviation) && !(largest < SAME);
}
