import { STANDARD_GRAVITY } from '../us-measure.ts';
import type { DropClass } from './jet.ts';
import { NEWTON_REYNOLDS, slowDragFactor } from './sphere-drag.ts';

/**
 * Steepest elevation that is computed: nobody holds a gun truer, and in a stream without any lean the fine drops would
 * hang in their own column of air, which no measurement bears out.
 */
export const STEEPEST = (89 * Math.PI) / 180;

/** Where a flight is followed to. */
export interface FlightAim {
  readonly elevation: number;
  readonly nozzleHeight: number;
  /** Height at which the falling water is stopped [m]. */
  readonly landingHeight: number;
  /** Distance at which the height is wanted, Infinity to let the water land [m]. */
  readonly standoff: number;
  /** Whether only the highest point is wanted. */
  readonly apexOnly?: boolean;
  /** Factor on every step: 1 is the calibrated setting, smaller is finer [-]. */
  readonly stepFactor?: number;
  /** Receives x, y, z of the path, three numbers a point. */
  readonly path?: Float64Array;
}

export interface Flight {
  readonly apex: number;
  readonly apexDistance: number;
  /** Greatest distance on the way; a head wind can turn the stream back [m]. */
  readonly greatestDistance: number;
  /** Whether the stream passed the standoff, fell to the landing height, or never rose above it. */
  readonly end: 'standoff' | 'landing' | 'apex' | 'below';
  readonly distance: number;
  readonly height: number;
  readonly drift: number;
  readonly speed: number;
  readonly time: number;
  /** Momentum given to the carried air, for each unit of mass of water [m/s]. */
  readonly airMomentum: number;
  readonly points: number;
}

const STEP = 0.06;
const SHORTEST_STEP = 0.05;
const LONGEST_TIME = 0.06;
/** Steps after which fine drops that hardly move are taken to drift down at their speed of the moment. */
const MOST_STEPS = 1500;

/** Share of the jet's own speed at which the air around it moves. */
function airShare(
  speed: number,
  path: number,
  momentum: number,
  exitSpeed: number,
  airJetLength: number,
): number {
  if (momentum <= 0 || path <= 0) return 0;
  const air = (airJetLength * Math.sqrt(momentum * exitSpeed)) / path;
  if (path < airJetLength) return air < speed ? air / speed : 1;
  return (air < exitSpeed ? air : exitSpeed) / speed;
}

/** Drag of a sphere (Schiller and Naumann) times the share of the jet that is exposed [1/s]. */
function dragRate(drops: DropClass, slip: number, path: number, cohesionLength: number): number {
  let rate = drops.newtonRate * slip;
  const reynolds = drops.reynoldsRate * slip;
  if (reynolds < NEWTON_REYNOLDS) {
    const slow = drops.stokesRate * slowDragFactor(reynolds);
    if (slow > rate) rate = slow;
  }
  if (path >= cohesionLength) return rate;
  const exposed = path / cohesionLength;
  return rate * exposed * Math.sqrt(exposed);
}

/** Follows one size class of drops from the tip: midpoint steps that grow with the path. */
export function fly(drops: DropClass, aim: FlightAim): Flight {
  const { exitSpeed, cohesionLength, airJetLength, windAlong, windAcross } = drops.jet;
  const { landingHeight, standoff, path } = aim;
  const elevation = Math.min(aim.elevation, STEEPEST);
  const apexOnly = aim.apexOnly === true;
  const scale = aim.stepFactor ?? 1;
  const g = STANDARD_GRAVITY;
  const growth = scale * STEP;
  const shortest = scale * Math.min(SHORTEST_STEP, (0.02 * exitSpeed * exitSpeed) / g);
  const longest = scale * Math.min(LONGEST_TIME, (0.1 * exitSpeed) / g);
  const mostSteps = MOST_STEPS / scale;
  let x = 0;
  let y = 0;
  let z = aim.nozzleHeight;
  let u = exitSpeed * Math.cos(elevation);
  let v = 0;
  let w = exitSpeed * Math.sin(elevation);
  let s = 0;
  let momentum = 0;
  let t = 0;
  let speed = exitSpeed;
  let apex = z;
  let apexDistance = 0;
  let greatestDistance = 0;
  let end: Flight['end'] = 'apex';
  let passed = -Infinity;
  let passedDrift = 0;
  let passedSpeed = 0;
  let passedTime = 0;
  let points = path === undefined ? 0 : record(path, 0, x, y, z);
  for (let n = 0; !apexOnly || w > 0; n++) {
    if (n >= mostSteps) {
      const falling = w < 0 && z > landingHeight ? (z - landingHeight) / -w : 0;
      x += u * falling;
      y += v * falling;
      z = landingHeight;
      t += falling;
      end = 'landing';
      break;
    }
    const share = airShare(speed, s, momentum, exitSpeed, airJetLength);
    const ru = u - u * share - windAlong;
    // The carried air stays in the plane of the throw, or it would drive the stream sideways faster than the wind.
    const rv = v - windAcross;
    const rw = w - w * share;
    const k = dragRate(drops, Math.sqrt(ru * ru + rv * rv + rw * rw), s, cohesionLength);
    let dt = Math.max(growth * s + 0.3 * growth * cohesionLength, shortest) / speed;
    if (dt > longest) dt = longest;
    // Explicit steps longer than a fine drop takes to slow down would swing.
    if (dt * k > 1) dt = 1 / k;
    const half = 0.5 * dt;
    const um = u - half * k * ru;
    const vm = v - half * k * rv;
    const wm = w - half * (k * rw + g);
    const sm = s + half * speed;
    const pm = momentum + (half * k * (ru * u + rv * v + rw * w)) / speed;
    const middle = Math.max(Math.sqrt(um * um + vm * vm + wm * wm), 1e-9);
    const shareM = airShare(middle, sm, pm, exitSpeed, airJetLength);
    const au = um - um * shareM - windAlong;
    const av = vm - windAcross;
    const aw = wm - wm * shareM;
    const km = dragRate(drops, Math.sqrt(au * au + av * av + aw * aw), sm, cohesionLength);
    const x1 = x + dt * um;
    const y1 = y + dt * vm;
    const z1 = z + dt * wm;
    const u1 = u - dt * km * au;
    const v1 = v - dt * km * av;
    const w1 = w - dt * (km * aw + g);
    const speed1 = Math.max(Math.sqrt(u1 * u1 + v1 * v1 + w1 * w1), 1e-9);
    if (w > 0 && w1 <= 0) {
      const part = w / (w - w1);
      const top = z + part * (z1 - z);
      if (top > apex) {
        apex = top;
        apexDistance = x + part * (x1 - x);
      }
    }
    if (x1 > greatestDistance) greatestDistance = x1;
    if (x1 >= standoff !== x >= standoff || (x === x1 && x === standoff)) {
      const part = x1 === x ? 0 : (standoff - x) / (x1 - x);
      const height = z + part * (z1 - z);
      if (height > passed) {
        passed = height;
        passedDrift = y + part * (y1 - y);
        passedSpeed = speed + part * (speed1 - speed);
        passedTime = t + part * dt;
      }
      // Only a head wind brings the stream back to the standoff, and then perhaps higher up.
      if (windAlong >= 0 || x1 < x) break;
    }
    if (z1 <= landingHeight && w1 <= 0) {
      if (z < landingHeight) {
        end = 'below';
        break;
      }
      const part = z > z1 ? (z - landingHeight) / (z - z1) : 0;
      x += part * (x1 - x);
      y += part * (y1 - y);
      z = landingHeight;
      speed += part * (speed1 - speed);
      t += part * dt;
      end = 'landing';
      break;
    }
    x = x1;
    y = y1;
    z = z1;
    u = u1;
    v = v1;
    w = w1;
    s += dt * middle;
    momentum += (dt * km * (au * um + av * vm + aw * wm)) / middle;
    t += dt;
    speed = speed1;
    if (path !== undefined) points = record(path, points, x, y, z);
  }
  if (apex < z) apex = z;
  if (path !== undefined) points = record(path, points, x, y, z);
  if (passed >= landingHeight)
    return {
      apex,
      apexDistance,
      greatestDistance,
      end: 'standoff',
      distance: standoff,
      height: passed,
      drift: passedDrift,
      speed: passedSpeed,
      time: passedTime,
      airMomentum: momentum,
      points,
    };
  return {
    apex,
    apexDistance,
    greatestDistance,
    end,
    distance: x,
    height: z,
    drift: y,
    speed,
    time: t,
    airMomentum: momentum,
    points,
  };
}

/** Writes a point when there is room; the last place is kept for the end of the path. */
function record(path: Float64Array, points: number, x: number, y: number, z: number): number {
  const at = points * 3 + 3 <= path.length ? points * 3 : path.length - 3;
  path[at] = x;
  path[at + 1] = y;
  path[at + 2] = z;
  return at / 3 + 1;
}
