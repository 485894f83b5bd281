import { unknown, type Figure, type RigPromise } from '../promise.ts';

type Told = Parameters<typeof unknown>[0];

/**
 * A promise whose formula may refuse its input: what it refuses becomes an unknown promise with the reason, since a
 * rig may be described that no published formula covers.
 */
export function orUnknown(
  told: Omit<Told, 'cause'>,
  judge: () => RigPromise,
  asked?: Figure,
  sense: 'at-least' | 'at-most' = 'at-least',
): RigPromise {
  try {
    return judge();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return unknown({ ...told, cause: error.message }, asked, sense);
  }
}
