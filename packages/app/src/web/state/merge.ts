import { changeBetween, changed, valueAt, type Change } from '@spraywright/engine/quantity';

type Put = Change['puts'][number];

/** A value that two people changed, each to something else. */
export interface Clash {
  readonly path: Put['path'];
  readonly mine: unknown;
  readonly theirs: unknown;
}

/**
 * What two people made of one document, put together: all that each changed alone, and of what both changed theirs,
 * unless `mineStands` says otherwise.
 */
export function merged<T>(
  base: T,
  mine: T,
  theirs: T,
  mineStands: (clash: Clash) => boolean = () => false,
): { readonly document: T; readonly clashes: readonly Clash[] } {
  const my = changeBetween(base, mine, '').puts;
  const their = changeBetween(base, theirs, '').puts;
  const clashes: Clash[] = [];
  const stands: Put[] = [];
  for (const put of my) {
    const met = their.find((t) => isWithin(t.path, put.path) || isWithin(put.path, t.path));
    if (met === undefined) {
      stands.push(put);
      continue;
    }
    // The wider of the two paths is what has to be decided.
    const path = met.path.length < put.path.length ? met.path : put.path;
    const clash: Clash = { path, mine: valueAt(mine, path), theirs: valueAt(theirs, path) };
    if (JSON.stringify(clash.mine) === JSON.stringify(clash.theirs)) continue;
    if (!clashes.some((c) => c.path.join('.') === path.join('.'))) clashes.push(clash);
    if (mineStands(clash)) stands.push({ path, value: clash.mine });
  }
  return { document: changed(theirs, { about: '', puts: stands }).document, clashes };
}

function isWithin(path: Put['path'], of: Put['path']): boolean {
  return of.length <= path.length && of.every((step, i) => step === path[i]);
}
