import { bandShare } from '../physics/index.ts';
import type { Duty } from './brief.ts';

type Application = NonNullable<Duty['application']>;

/** Share of the ground under the swath that is treated: less than 1 for bands. */
export function treatedShare({ band, row }: Application): number {
  return band === undefined || row === undefined ? 1 : bandShare(band, row);
}

/** Dose over all the ground that the swath passes, untreated strips counted in [m3/m2]. */
export function groundDose(a: Application): number {
  return a.basis === 'treated' ? a.rate * treatedShare(a) : a.rate;
}

/** Width driven in one pass [m]; undefined when it is not told, as for lanes of unknown width. */
export function drivenWidth({ application, lane }: Duty): number | undefined {
  if (application !== undefined) return application.width;
  return lane?.width === undefined ? undefined : lane.width * lane.lanes;
}
