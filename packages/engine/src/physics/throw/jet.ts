import { BULK_SHARE, dropSizeOfShare, FARTHEST_SHARE } from './drop-class.ts';
import { checkStream, THROW_DEFAULTS, type ThrowStream } from './stream.ts';

/** Constants of the throw model: calibrated together on 103 measured throws, rounded, and kept. */
const COHESION = 200;
const COHESION_POWER = 0.4;
const DROP_SIZE = 4.5;
const LARGEST_DROP = 0.006;
const AIR_JET_DECAY = 6.2;
const SPRAY_QUALITY = 0.02;
const SPRAY_DROP_SHARE = 0.5;
const SPRAY_AIR_JET = 0.5;
const FAN_SPREAD = 0.103;
/** Slower than this the tip drips: there is no stream [m/s]. */
const DRIPS = 0.01;
const BULK_SIZE = dropSizeOfShare(BULK_SHARE);

/** A stream with everything computed that does not change along its path. */
export interface Jet {
  readonly exitSpeed: number;
  readonly weber: number;
  readonly cohesionLength: number;
  /** Distance over which the carried air is as fast as the jet [m]. */
  readonly airJetLength: number;
  /** Size of the farthest drops [m]. */
  readonly dropDiameter: number;
  readonly stream: ThrowStream;
  readonly airOverLiquid: number;
  readonly airKinematic: number;
  readonly windAlong: number;
  readonly windAcross: number;
}

/** One size class of drops of a jet, as the flight needs it. */
export interface DropClass {
  readonly jet: Jet;
  readonly diameter: number;
  /** Drag rate per relative speed at high Reynolds number [1/m]. */
  readonly newtonRate: number;
  /** Drag rate of a slow drop [1/s]. */
  readonly stokesRate: number;
  /** Reynolds number per relative speed [s/m]. */
  readonly reynoldsRate: number;
}

export function jetOf(stream: ThrowStream): Jet {
  checkStream(stream);
  const density = stream.density ?? THROW_DEFAULTS.density;
  const tension = stream.surfaceTension ?? THROW_DEFAULTS.surfaceTension;
  const air = stream.airDensity ?? THROW_DEFAULTS.airDensity;
  const speed =
    (stream.velocityCoefficient ?? THROW_DEFAULTS.velocityCoefficient) *
    Math.sqrt((2 * stream.pressure) / density);
  const exitSpeed = speed < DRIPS ? 0 : speed;
  const d = stream.jetDiameter;
  const spray = (stream.pattern ?? 'stream') !== 'stream';
  const weber = (air * exitSpeed * exitSpeed * d) / tension;
  const quality = spray ? SPRAY_QUALITY : stream.quality;
  return {
    exitSpeed,
    weber,
    cohesionLength: COHESION * quality * d * weber ** COHESION_POWER,
    airJetLength: airJetDecay(stream) * d * Math.sqrt(density / air),
    dropDiameter:
      givenDropDiameter(stream) ??
      farthestDropDiameter(exitSpeed, d, tension, air, spray ? SPRAY_DROP_SHARE : 1),
    stream,
    airOverLiquid: air / density,
    airKinematic: (stream.airViscosity ?? THROW_DEFAULTS.airViscosity) / air,
    windAlong: stream.windAlong ?? 0,
    windAcross: stream.windAcross ?? 0,
  };
}

/** A maker's DV0.9 stands for the farthest drops; a DV0.5 alone is scaled up to it. */
function givenDropDiameter(stream: ThrowStream): number | undefined {
  if (stream.dropDiameter90 !== undefined || stream.dropDiameter50 === undefined)
    return stream.dropDiameter90;
  return Math.min(LARGEST_DROP, stream.dropDiameter50 / BULK_SIZE);
}

function farthestDropDiameter(
  exitSpeed: number,
  jetDiameter: number,
  tension: number,
  air: number,
  share: number,
): number {
  if (exitSpeed === 0) return LARGEST_DROP;
  const free = (share * DROP_SIZE * Math.sqrt((jetDiameter * tension) / air)) / exitSpeed;
  // Written as a quotient so that a huge free drop (no air) cannot overflow.
  const ratio = free / LARGEST_DROP;
  return ratio > 1 ? LARGEST_DROP / (1 + ratio ** -4) ** 0.25 : free / (1 + ratio ** 4) ** 0.25;
}

/** A wide spray pushes its air over a wide front: the air jet it drags along decays sooner. */
function airJetDecay(stream: ThrowStream): number {
  const pattern = stream.pattern ?? 'stream';
  if (pattern === 'stream') return AIR_JET_DECAY;
  const tangent = Math.tan((stream.sprayAngle ?? 0) / 2);
  const spread = pattern === 'fan' ? Math.sqrt(FAN_SPREAD * tangent) : tangent;
  return Math.min(AIR_JET_DECAY, SPRAY_AIR_JET / spread);
}

export function dropClass(jet: Jet, diameter: number): DropClass {
  return {
    jet,
    diameter,
    newtonRate: (0.75 * 0.44 * jet.airOverLiquid) / diameter,
    stokesRate: (18 * jet.airOverLiquid * jet.airKinematic) / (diameter * diameter),
    reynoldsRate: diameter / jet.airKinematic,
  };
}

/** Drops that a share of the water outflies. */
export function dropsOfShare(jet: Jet, share: number): DropClass {
  if (share <= FARTHEST_SHARE) return dropClass(jet, jet.dropDiameter);
  const median = jet.stream.dropDiameter50;
  const size = share === BULK_SHARE ? BULK_SIZE : dropSizeOfShare(share);
  if (median !== undefined) return dropClass(jet, Math.min(jet.dropDiameter, (median * size) / BULK_SIZE));
  return dropClass(jet, jet.dropDiameter * size);
}
