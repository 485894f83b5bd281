import type { PartOf } from '../catalogue/index.ts';
import {
  bestHeightAtStandoff,
  bestThrowRange,
  jetDiameterFromFlow,
  promisedReach,
  reachSigma,
  STREAM_QUALITIES,
  streamQualityFactor,
  throwArc,
  type ArcPoint,
  type BestReach,
  type StreamQuality,
  type ThrowStream,
} from '../physics/index.ts';
import type { Target } from './brief.ts';

/** A gun with its tip, and what the liquid and the air are. */
export interface ThrowConditions {
  readonly gun: Pick<PartOf<'gun'>, 'bestStream'>;
  readonly tip: Pick<PartOf<'tip'>, 'pattern' | 'angle' | 'flowAtOneBar' | 'velocityCoefficient' | 'stream'>;
  readonly density: number;
  readonly airDensity: number;
  /** Height of the tip above the ground [m]. */
  readonly tipHeight: number;
}

/** What a throw gives towards one target. */
export interface TargetReach extends BestReach {
  /** Standard deviation of the logarithm of the reach. */
  readonly sigma: number;
  /** Kept nine times in ten: of the bulk when wetted, of the farthest drops when touched [m]. */
  readonly promised: number;
}

const BAR = 1e5;
/** Below this pressure nothing worth the name leaves a tip [Pa]. */
const LEAST_PRESSURE = 100;
/** Stream the model still describes: dripping tips are wider than long [m]. */
const LEAST_JET = 0.0002;
const LARGEST_JET = 0.1;

/** Quality of the stream: the tip makes it, the gun's passage may spoil it. */
export function streamOf(gun: ThrowConditions['gun'], tip: ThrowConditions['tip']): StreamQuality {
  return STREAM_QUALITIES.indexOf(gun.bestStream) > STREAM_QUALITIES.indexOf(tip.stream)
    ? gun.bestStream
    : tip.stream;
}

/** The stream that leaves a tip at a pressure; undefined when there is none. */
export function streamAt(c: ThrowConditions, pressure: number): ThrowStream | undefined {
  if (pressure < LEAST_PRESSURE) return undefined;
  const flow = c.tip.flowAtOneBar * Math.sqrt(pressure / BAR / (c.density / 1000));
  const jetDiameter = jetDiameterFromFlow(flow, pressure, c.density, c.tip.velocityCoefficient);
  const spray = c.tip.pattern !== 'stream' && c.tip.angle > 0.01;
  return {
    jetDiameter: Math.min(LARGEST_JET, Math.max(LEAST_JET, jetDiameter)),
    pressure,
    quality: streamQualityFactor(streamOf(c.gun, c.tip)),
    velocityCoefficient: c.tip.velocityCoefficient,
    density: c.density,
    airDensity: c.airDensity,
    ...(spray ? { pattern: c.tip.pattern, sprayAngle: c.tip.angle } : {}),
  };
}

/** Reach towards a target in still air with the gun held at its best elevation; undefined without pressure. */
export function reachTowards(
  c: ThrowConditions,
  pressure: number,
  target: Target,
  aim: 'wetted' | 'touched',
): TargetReach | undefined {
  const stream = streamAt(c, pressure);
  if (stream === undefined) return undefined;
  const best =
    target.aim === 'height'
      ? bestHeightAtStandoff(stream, target.standoff, c.tipHeight)
      : bestThrowRange(stream, c.tipHeight, target.aim === 'roof' ? target.height : 0);
  // The stream of a gun and tip as named is taken, not measured: its quality counts as unknown until a water test.
  const sigma = reachSigma(pressure, stream.jetDiameter, false, stream.pattern);
  return { ...best, sigma, promised: promisedReach(best.farthest, best.bulk, sigma, aim) };
}

/** Paths of a throw for a drawing, in metres from the operator's feet, with 5 and 95 % of the bulk. */
export interface ThrowPaths {
  readonly arcBulk: readonly ArcPoint[];
  readonly arcFarthest: readonly ArcPoint[];
  readonly arcLow: readonly ArcPoint[];
  readonly arcHigh: readonly ArcPoint[];
}

export const NO_PATHS: ThrowPaths = { arcBulk: [], arcFarthest: [], arcLow: [], arcHigh: [] };

/** Paths at an elevation [rad], `sigma` being the deviation of the logarithm of the reach; empty without pressure. */
export function arcsOf(c: ThrowConditions, pressure: number, elevation: number, sigma: number): ThrowPaths {
  const stream = streamAt(c, pressure);
  if (stream === undefined) return NO_PATHS;
  const arc = throwArc(stream, elevation, c.tipHeight, sigma);
  return { arcBulk: arc.bulk, arcFarthest: arc.farthest, arcLow: arc.bulkLow, arcHigh: arc.bulkHigh };
}

/** What a target asks of the reach: a height, or a distance [m]. */
export function askedOf(target: Target): number {
  return target.aim === 'height' ? target.height : target.distance;
}
