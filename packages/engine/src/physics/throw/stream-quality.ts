import { oneOfChoices } from '../lists-in-range.ts';

/** How well a stream holds together when it leaves the tip, from best to worst. */
export const STREAM_QUALITIES = ['excellent', 'good', 'fair', 'gun', 'poor'] as const;
export type StreamQuality = (typeof STREAM_QUALITIES)[number];

export interface StreamQualityLevel {
  /** Factor on the cohesion length of the stream [-]. */
  readonly factor: number;
  readonly meaning: string;
  readonly evidence: string;
}

export const STREAM_QUALITY_LEVELS: Readonly<Record<StreamQuality, StreamQualityLevel>> = {
  excellent: {
    factor: 1.4,
    meaning: 'long smooth taper or pipe after a straight, vaned approach of ten bores or more',
    evidence: 'fountains of Box; pipe jets of Trettel 2020',
  },
  good: {
    factor: 1,
    meaning: 'good tapered smooth bore, irrigation-gun nozzle',
    evidence: 'Theobald 1981, nozzles 7 and 10; 20 mm irrigation guns',
  },
  fair: {
    factor: 0.75,
    meaning: 'smooth bore on a monitor or handline, some swirl upstream',
    evidence: 'Theobald 1981, nozzle 9',
  },
  gun: {
    factor: 0.3,
    meaning: 'adjustable cone gun set to stream; disc after a short valve body',
    evidence: 'assumed between fair and poor, no measurement',
  },
  poor: {
    factor: 0.1,
    meaning: 'disturbed jet: elbow or arm just upstream, burr, worn or sharp disc',
    evidence: 'small sprinklers; Theobald 1981, nozzle 6',
  },
};

/**
 * Cohesion factor of a named stream quality.
 *
 * @formula q = 1.4 excellent, 1.0 good, 0.75 fair, 0.3 gun, 0.1 poor
 * @param quality stream quality [one of excellent, good, fair, gun, poor]
 * @returns factor on the cohesion length of the stream [-]
 * @valid the level of real adjustable tree guns is not established: 'gun' is an assumption
 * @throws RangeError when the level is not one of these
 * @source Calibrated on the ranges and heights of Theobald 1981, Box and published sprinkler tables; each level's evidence stands in its table
 */
export function streamQualityFactor(quality: StreamQuality): number {
  oneOfChoices('quality', quality, STREAM_QUALITIES);
  return STREAM_QUALITY_LEVELS[quality].factor;
}
