import { inRange } from '../in-range.ts';
import { fly, STEEPEST } from './flight.ts';
import { jetOf } from './jet.ts';
import { type DropPair, dropPair } from './reach.ts';
import type { ThrowStream } from './stream.ts';

const OF_BULK_HEIGHT = 0.89;
const OF_FARTHEST_RANGE = 0.43;
/** Elevation within a few degrees of the best range of every solid stream; the range is flat there. */
const LEVEL_THROW = (32 * Math.PI) / 180;

export interface GoodStreamLimits {
  readonly vertical: number;
  readonly horizontal: number;
}

/**
 * How high and how far a solid stream is still one coherent rope of water.
 *
 * @formula vertical = h + 0.89 (bulk height - h); horizontal = 0.43 · farthest range at 32 deg
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @result vertical greatest height above ground [m]
 * @result horizontal greatest distance along the ground [m]
 * @valid measured on smooth fire nozzles of 19 to 32 mm at 1.4 to 6.9 bar (standard deviation 5 % of the vertical factor); smaller guns are an extrapolation; cones and fans have no good stream and give 0
 * @throws RangeError when a parameter is outside its range
 * @source Factors fitted to the good-stream table of Freeman, Trans. ASCE 21 (1889), from memory
 */
export function goodStreamLimits(stream: ThrowStream, nozzleHeight: number): GoodStreamLimits {
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  const { vertical, horizontal } = goodStreamOf(dropPair(jetOf(stream)), nozzleHeight);
  return { vertical: vertical(), horizontal: horizontal() };
}

/** The limits of a jet's good stream, each followed through the air only when it is asked for. */
export interface GoodStream {
  readonly vertical: () => number;
  readonly horizontal: () => number;
}

const none = (): number => 0;
const NONE: GoodStream = { vertical: none, horizontal: none };

export function goodStreamOf(pair: DropPair, nozzleHeight: number): GoodStream {
  const { stream, exitSpeed } = pair.bulk.jet;
  if (exitSpeed === 0 || (stream.pattern ?? 'stream') !== 'stream') return NONE;
  return {
    vertical: () => {
      const up = { elevation: STEEPEST, nozzleHeight, landingHeight: 0, standoff: Infinity, apexOnly: true };
      const bulk = Math.min(fly(pair.bulk, up).apex, fly(pair.farthest, up).apex);
      return nozzleHeight + OF_BULK_HEIGHT * (bulk - nozzleHeight);
    },
    horizontal: () => {
      const out = { elevation: LEVEL_THROW, nozzleHeight, landingHeight: 0, standoff: Infinity };
      return Math.max(0, OF_FARTHEST_RANGE * fly(pair.farthest, out).distance);
    },
  };
}

/**
 * Height of the good stream at a distance. Freeman measured upwards and along the ground; a quarter ellipse between
 * the two is our assumption.
 */
export function goodHeightAt(good: GoodStream, nozzleHeight: number, distance: number): number {
  const horizontal = good.horizontal();
  if (distance >= horizontal) return 0;
  const share = Math.max(0, distance) / horizontal;
  return nozzleHeight + (good.vertical() - nozzleHeight) * Math.sqrt(1 - share * share);
}

/** Distance of the good stream at a height, by the same ellipse; no higher than the nozzle it is at its longest. */
export function goodDistanceAt(good: GoodStream, nozzleHeight: number, height: number): number {
  if (height <= nozzleHeight) return good.horizontal();
  const vertical = good.vertical();
  if (height >= vertical) return 0;
  const share = (height - nozzleHeight) / (vertical - nozzleHeight);
  return good.horizontal() * Math.sqrt(1 - share * share);
}
