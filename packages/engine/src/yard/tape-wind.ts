import type { ReadingsDocument } from './readings-document.ts';

/** Wind above which a tape says nothing [m/s]; as for the throw model and its water test. */
export const WIND_LIMIT = 3;

/** Whether a tape that was read says anything: in still air, and the wind told. */
export function tapeSays({ wind }: Pick<ReadingsDocument, 'wind'>): boolean {
  return wind !== undefined && wind <= WIND_LIMIT;
}
