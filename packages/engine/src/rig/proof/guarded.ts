import { unknown, type RigPromise } from '../promise.ts';

/**
 * Promises of one kind; when a size of the catalogue or the rig lies outside what the physics may be asked, one unknown
 * promise that names the value and its limit.
 */
export function guarded(
  kind: RigPromise['kind'],
  sentence: string,
  compute: () => RigPromise[],
): RigPromise[] {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return [
      unknown({
        id: `${kind}:out-of-range`,
        kind,
        sentence,
        cause: error.message,
        method: 'none: a size lies outside what can be reckoned',
        source: 'valid ranges of the physics',
      }),
    ];
  }
}
