import { inRange } from '../in-range.ts';
import { bestOfBoth, type BestReach, dropPair, heightAt, type DropPair, type Reach } from './reach.ts';
import { checkElevation } from './throw-at.ts';
import { fly, STEEPEST } from './flight.ts';
import { type Best, bestElevation } from './best-elevation.ts';
import { goodHeightAt, goodStreamOf } from './good-stream.ts';
import { type DropClass, jetOf } from './jet.ts';
import type { ThrowStream } from './stream.ts';

/** A stream is this wide itself: nearer targets are taken to be this far off [m]. */
const NEAREST = 0.1;
const GUESS = (77 * Math.PI) / 180;
const STRIDE = (7 * Math.PI) / 180;

/**
 * Height wetted and touched at a standoff with the gun held at its best elevation.
 *
 * @formula maximum over the elevation of z(X) of the throw model; bulk = min(half of the water, farthest drops)
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
 * @param standoff horizontal distance from the nozzle to the target [m] 0..150
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @result farthest height that the farthest drops touch, above ground; 0 when they come down before the target [m]
 * @result bulk height that half of the water wets, above ground; 0 when it comes down before the target [m]
 * @result goodStream height up to which the stream is one rope [m]
 * @result farthestElevation best elevation for the farthest drops [rad]
 * @result bulkElevation best elevation for the bulk: how to hold the gun [rad]
 * @valid measured for jets of 2.7 to 25 mm at 1 to 8 bar (rms error 5.7 % on throws not used in the fit); above that an extrapolation that trade statements support. Cones and fans within 30 % only. No pressure: no stream, 0. Steeper than 89 deg counts as 89 deg; a target nearer than the highest point of that stream is overhead and is reached at its top
 * @throws RangeError when a parameter is outside its range
 * @source Throw model: entrained air of a round jet (Ricou and Spalding 1961, from memory), sphere drag of Schiller and Naumann (from memory), a core with little drag that turns into drops (Trettel and Ezekoye, IMECE 2015, abstract); constants calibrated on Theobald 1981, Box, Trettel 2020 and published sprinkler tables
 */
export function bestHeightAtStandoff(stream: ThrowStream, standoff: number, nozzleHeight: number): BestReach {
  const pair = checked(stream, standoff, nozzleHeight);
  if (pair === undefined)
    return { farthest: 0, bulk: 0, goodStream: 0, farthestElevation: 0, bulkElevation: 0 };
  const best = bestOfBoth(
    (drops, guess, stride) => bestHeight(drops, Math.max(standoff, NEAREST), nozzleHeight, guess, stride),
    pair,
    GUESS,
    STRIDE,
  );
  const bulk = Math.max(0, best.bulk.value);
  const goodStream = goodHeightAt(goodStreamOf(pair, nozzleHeight), nozzleHeight, standoff);
  return {
    farthest: Math.max(0, best.farthest.value),
    bulk,
    goodStream: Math.min(goodStream, bulk),
    farthestElevation: best.farthest.elevation,
    bulkElevation: best.bulk.elevation,
  };
}

function bestHeight(
  drops: DropClass,
  standoff: number,
  nozzleHeight: number,
  guess: number,
  stride: number,
): Best {
  const best = bestElevation(
    (elevation) => heightAt(drops, { elevation, nozzleHeight, landingHeight: 0, standoff }),
    guess,
    stride,
  );
  if (best.elevation < STEEPEST) return best;
  // Nearer than where the steepest stream is highest, the target is overhead.
  const up = { elevation: STEEPEST, nozzleHeight, landingHeight: 0, standoff: Infinity, apexOnly: true };
  const { apex, apexDistance } = fly(drops, up);
  return standoff <= apexDistance ? { elevation: STEEPEST, value: apex } : best;
}

/**
 * Height wetted and touched at a standoff with the gun held at a given elevation.
 *
 * @formula z(X) of the throw model; bulk = min(half of the water, farthest drops)
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param stream.windAlong wind along the throw, tail wind positive; default 0 [m/s] -20..20
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param standoff horizontal distance from the nozzle to the target [m] 0..150
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @result farthest height at which the farthest drops pass, above ground; 0 when they come down before the target [m]
 * @result bulk height at which half of the water passes or is higher [m]
 * @result goodStream height up to which the stream is one rope [m]
 * @valid as bestHeightAtStandoff
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function heightAtStandoff(
  stream: ThrowStream,
  elevation: number,
  standoff: number,
  nozzleHeight: number,
): Reach {
  const pair = checked(stream, standoff, nozzleHeight);
  checkElevation(elevation);
  if (pair === undefined) return { farthest: 0, bulk: 0, goodStream: 0 };
  const aim = { elevation, nozzleHeight, landingHeight: 0, standoff };
  const farthest = Math.max(0, heightAt(pair.farthest, aim));
  const bulk = Math.min(farthest, Math.max(0, heightAt(pair.bulk, aim)));
  const good = goodHeightAt(goodStreamOf(pair, nozzleHeight), nozzleHeight, standoff);
  return { farthest, bulk, goodStream: Math.min(good, bulk) };
}

function checked(stream: ThrowStream, standoff: number, nozzleHeight: number): DropPair | undefined {
  inRange('standoff', standoff, 0, 150, 'm');
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  const jet = jetOf(stream);
  return jet.exitSpeed === 0 ? undefined : dropPair(jet);
}
