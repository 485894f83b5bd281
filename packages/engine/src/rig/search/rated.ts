import type { LayoutLine } from '../../catalogue/index.ts';
import type { PartAt } from './space.ts';

/** Least ratings of what some lines have before what shuts them [Pa]: as high as the manifold, and as high as the outlet. */
export interface Rated {
  readonly near: number;
  readonly far: number;
}

/** What follows the first hose of a line stands as high as its outlet. */
export function ratedOf(lines: readonly LayoutLine[], partAt: PartAt): Rated {
  let [near, far] = [Infinity, Infinity];
  for (const { run } of lines) {
    const parts = run.flatMap((id) => partAt(id) ?? []);
    const gun = parts.findIndex((p) => p.kind === 'gun');
    const valve = parts.findIndex((p) => p.kind === 'valve');
    const shutter = gun >= 0 ? gun : Math.max(0, valve);
    const hose = parts.findIndex((p) => p.kind === 'hose');
    for (const [i, part] of parts.slice(0, shutter + 1).entries()) {
      if (!('maxPressure' in part)) continue;
      if (hose >= 0 && i > hose) far = Math.min(far, part.maxPressure);
      else near = Math.min(near, part.maxPressure);
    }
  }
  return { near, far };
}
