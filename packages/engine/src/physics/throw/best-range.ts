import { inRange } from '../in-range.ts';
import { bestElevation } from './best-elevation.ts';
import { goodDistanceAt, goodStreamOf } from './good-stream.ts';
import { jetOf } from './jet.ts';
import { bestOfBoth, type BestReach, dropPair, landingAt } from './reach.ts';
import type { ThrowStream } from './stream.ts';

const GUESS = (34 * Math.PI) / 180;
const HIGH_GUESS = (60 * Math.PI) / 180;
const STRIDE = (7 * Math.PI) / 180;

/**
 * Greatest distance of a throw over all elevations, on level ground or onto a roof.
 *
 * @formula maximum over the elevation of x where z falls to the landing height; bulk = min(half of the water, farthest drops)
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param stream.velocityCoefficient velocity coefficient of the tip; default 0.97 [-] 0.3..1
 * @param stream.density density of the liquid; default 998.2 [kg/m3] 500..2500
 * @param stream.surfaceTension surface tension; default 0.0728 [N/m] 0.01..0.1
 * @param stream.airDensity density of the air; default 1.204 [kg/m3] 1e-9..2
 * @param stream.windAlong wind along the throw, tail wind positive; default 0 [m/s] -20..20
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @param landingHeight height at which the water is caught, a roof or bed; default 0 [m] 0..100
 * @result farthest distance of the farthest drops; 0 when they never get above the landing height [m]
 * @result bulk distance that half of the water reaches; 0 when it never gets above the landing height [m]
 * @result goodStream distance up to which the stream is one rope [m]
 * @result farthestElevation best elevation for the farthest drops [rad]
 * @result bulkElevation best elevation for the bulk: how to hold the gun [rad]
 * @valid as bestHeightAtStandoff
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function bestThrowRange(stream: ThrowStream, nozzleHeight: number, landingHeight = 0): BestReach {
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  inRange('landingHeight', landingHeight, 0, 100, 'm');
  const jet = jetOf(stream);
  if (jet.exitSpeed === 0)
    return { farthest: 0, bulk: 0, goodStream: 0, farthestElevation: 0, bulkElevation: 0 };
  const pair = dropPair(jet);
  const best = bestOfBoth(
    (drops, guess, stride) =>
      bestElevation(
        (elevation) => landingAt(drops, { elevation, nozzleHeight, landingHeight, standoff: Infinity }),
        guess,
        stride,
      ),
    pair,
    landingHeight > nozzleHeight ? HIGH_GUESS : GUESS,
    STRIDE,
  );
  const bulk = Math.max(0, best.bulk.value);
  const good = goodDistanceAt(goodStreamOf(pair, nozzleHeight), nozzleHeight, landingHeight);
  return {
    farthest: Math.max(0, best.farthest.value),
    bulk,
    goodStream: Math.min(bulk, good),
    farthestElevation: best.farthest.elevation,
    bulkElevation: best.bulk.elevation,
  };
}
