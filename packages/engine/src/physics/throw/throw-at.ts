import { inRange } from '../in-range.ts';
import { fly } from './flight.ts';
import { goodDistanceAt, goodStreamOf } from './good-stream.ts';
import { dropsOfShare, jetOf } from './jet.ts';
import { dropPair, type Reach } from './reach.ts';
import type { ThrowStream } from './stream.ts';

export function checkElevation(elevation: number): void {
  inRange('elevation', elevation, -1.5707963, 1.5707964, 'rad');
}

export interface ShareFlight {
  readonly apex: number;
  readonly apexDistance: number;
  readonly range: number;
  readonly drift: number;
  readonly flightTime: number;
  readonly landingSpeed: number;
}

/**
 * Flight of the drops that a given share of the water outflies, down to a landing height.
 *
 * @formula dv/dt = -k v_rel - g; v_rel = v - Ua - wind; k = 3/4 ρa/(ρl D) Cdrag φ |v_rel|; φ = min(1, (s/Lc)^1.5); Ua = 6.2 dj sqrt(ρl/ρa) sqrt(P U0)/s; dP/dt = k v_rel·v/V; across the throw v_rel = v - wind
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param stream.velocityCoefficient velocity coefficient of the tip; default 0.97 [-] 0.3..1
 * @param stream.density density of the liquid; default 998.2 [kg/m3] 500..2500
 * @param stream.surfaceTension surface tension; default 0.0728 [N/m] 0.01..0.1
 * @param stream.airDensity density of the air; default 1.204 [kg/m3] 1e-9..2
 * @param stream.airViscosity dynamic viscosity of the air; default 1.81e-5 [Pa.s] 1e-5..3e-5
 * @param stream.windAlong wind along the throw, tail wind positive; default 0 [m/s] -20..20
 * @param stream.windAcross wind across the throw; default 0 [m/s] -20..20
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @param share share of the water that goes farther: 0.001 farthest drops, 0.5 bulk [-] 0.001..0.99
 * @param landingHeight height at which the water is caught; default 0 [m] 0..100
 * @result apex greatest height above ground [m]
 * @result apexDistance distance at which it is highest [m]
 * @result range distance at which it comes down to the landing height; 0 when it never gets above it; negative when the wind blows it back behind the nozzle [m]
 * @result drift sideways drift at landing [m]
 * @result flightTime time from nozzle to landing [s]
 * @result landingSpeed speed at landing [m/s]
 * @valid as bestHeightAtStandoff; steeper than 89 deg counts as 89 deg; distances of the highest point are some 12 % long
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function throwOfShare(
  stream: ThrowStream,
  elevation: number,
  nozzleHeight: number,
  share: number,
  landingHeight = 0,
): ShareFlight {
  checkElevation(elevation);
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  inRange('share', share, 0.001, 0.99);
  inRange('landingHeight', landingHeight, 0, 100, 'm');
  const jet = jetOf(stream);
  if (jet.exitSpeed === 0)
    return { apex: 0, apexDistance: 0, range: 0, drift: 0, flightTime: 0, landingSpeed: 0 };
  const end = fly(dropsOfShare(jet, share), { elevation, nozzleHeight, landingHeight, standoff: Infinity });
  const landed = end.end === 'landing';
  return {
    apex: end.apex,
    apexDistance: end.apexDistance,
    range: landed ? end.distance : 0,
    drift: landed ? end.drift : 0,
    flightTime: landed ? end.time : 0,
    landingSpeed: landed ? end.speed : 0,
  };
}

/**
 * Greatest height of a throw at a given elevation, wherever along the way it is.
 *
 * @formula greatest z of the throw model; bulk = min(half of the water, farthest drops); goodStream = h + 0.89 (bulk - h)
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param stream.windAlong wind along the throw, tail wind positive; default 0 [m/s] -20..20
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @result farthest greatest height of the farthest drops above ground [m]
 * @result bulk greatest height that half of the water reaches [m]
 * @result goodStream height up to which the stream is one rope [m]
 * @valid as bestHeightAtStandoff
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function throwHeight(stream: ThrowStream, elevation: number, nozzleHeight: number): Reach {
  checkElevation(elevation);
  inRange('nozzleHeight', nozzleHeight, 0, 50, 'm');
  const jet = jetOf(stream);
  if (jet.exitSpeed === 0) return { farthest: 0, bulk: 0, goodStream: 0 };
  const pair = dropPair(jet);
  const aim = { elevation, nozzleHeight, landingHeight: 0, standoff: Infinity, apexOnly: true };
  const farthest = fly(pair.farthest, aim).apex;
  const bulk = Math.min(farthest, fly(pair.bulk, aim).apex);
  const limit = goodStreamOf(pair, nozzleHeight).vertical();
  return { farthest, bulk, goodStream: Math.min(bulk, limit) };
}

/**
 * Distance of a throw at a given elevation, to where it comes down to the ground or a landing height.
 *
 * @formula x of the throw model where z falls to the landing height; bulk = min(half of the water, farthest drops); goodStream = 0.43 farthest on level ground
 * @param stream.jetDiameter diameter of the jet, not of the hole [m] 0.0002..0.1
 * @param stream.pressure pressure at the gun while it flows, gauge [Pa] 0..1e7
 * @param stream.quality cohesion factor, see streamQualityFactor [-] 0.01..2
 * @param stream.pattern solid stream, cone or fan; default stream [one of stream, cone, fan]
 * @param stream.sprayAngle full angle of a cone or fan [rad] 0.01..2.9
 * @param stream.windAlong wind along the throw, tail wind positive; default 0 [m/s] -20..20
 * @param elevation elevation of the gun [rad] -1.5707963..1.5707964
 * @param nozzleHeight height of the nozzle above ground [m] 0..50
 * @param landingHeight height at which the water is caught, a roof or bed; default 0 [m] 0..100
 * @result farthest distance of the farthest drops; 0 when they never get above the landing height [m]
 * @result bulk distance that half of the water reaches [m]
 * @result goodStream distance up to which the stream is one rope [m]
 * @valid as bestHeightAtStandoff
 * @throws RangeError when a parameter is outside its range
 * @source Throw model, see bestHeightAtStandoff
 */
export function throwRange(
  stream: ThrowStream,
  elevation: number,
  nozzleHeight: number,
  landingHeight = 0,
): Reach {
  const farthest = Math.max(0, throwOfShare(stream, elevation, nozzleHeight, 0.001, landingHeight).range);
  const half = Math.max(0, throwOfShare(stream, elevation, nozzleHeight, 0.5, landingHeight).range);
  const bulk = Math.min(farthest, half);
  const jet = jetOf(stream);
  if (jet.exitSpeed === 0 || bulk === 0) return { farthest, bulk, goodStream: 0 };
  const good = goodDistanceAt(goodStreamOf(dropPair(jet), nozzleHeight), nozzleHeight, landingHeight);
  return { farthest, bulk, goodStream: Math.min(bulk, good) };
}
