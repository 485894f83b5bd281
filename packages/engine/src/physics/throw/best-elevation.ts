import { STEEPEST } from './flight.ts';

/** The best elevation found and what it gives. */
export interface Best {
  readonly elevation: number;
  readonly value: number;
}

const DEGREE = Math.PI / 180;
const LOWEST = 2 * DEGREE;
const GOLDEN = 0.381966;
/** A parabola is trusted when both ends of the enclosure are within this share of the peak. */
const SMOOTH = 0.08;
/** And its peak is believed, rather than tried, when they are within this share of it. */
const FLAT = 0.01;
/** The peak is found when what is still to be gained is below this share of it. */
const ENOUGH = 1e-4;
/** Or when the enclosure is this narrow, at the steepest and flattest elevation too: a peak may lie close beside it. */
const CLOSE = 0.02 * DEGREE;
/** Least step into an enclosure, as a share of it: closes it from both sides. */
const LEAST = 0.15;
const MOST_TRIES = 40;

/**
 * Highest value of a single-peaked function of elevation near a first guess: walks uphill until the peak is enclosed,
 * then narrows by parabolas, and by golden sections where the curve is too steep for one (the height at a distance has
 * nearly a corner where the falling stream just clears it).
 */
export function bestElevation(value: (elevation: number) => number, guess: number, stride: number): Best {
  let mid = within(guess);
  let low = within(mid - stride);
  let high = within(mid + stride);
  let atMid = value(mid);
  let atLow = value(low);
  let atHigh = atLow > atMid ? -Infinity : value(high);
  while (atLow > atMid) {
    high = mid;
    atHigh = atMid;
    mid = low;
    atMid = atLow;
    low = within(mid - stride);
    atLow = low < mid ? value(low) : -Infinity;
  }
  while (atHigh > atMid) {
    low = mid;
    atLow = atMid;
    mid = high;
    atMid = atHigh;
    high = within(mid + stride);
    atHigh = high > mid ? value(high) : -Infinity;
  }
  for (let tries = 0; tries < MOST_TRIES && high - low > CLOSE; tries++) {
    const inside = low < mid && mid < high;
    const drop = atMid - Math.min(atLow, atHigh);
    const upward = high - mid > mid - low;
    let next = upward ? mid + GOLDEN * (high - mid) : mid - GOLDEN * (mid - low);
    if (inside && drop < SMOOTH * Math.abs(atMid)) {
      const below = (atMid - atLow) / (mid - low);
      const bend = ((atHigh - atMid) / (high - mid) - below) / (high - low);
      const tilt = below + bend * (mid - low);
      if (!(bend < 0)) break;
      const flat = drop < FLAT * Math.abs(atMid);
      if (flat && tilt * tilt < -4 * bend * ENOUGH * Math.abs(atMid)) break;
      const step = (-0.5 * tilt) / bend;
      const least = LEAST * (high - low);
      next = mid + (Math.abs(step) >= least ? step : upward ? least : -least);
    }
    const atNext = value(next);
    if (atNext > atMid) {
      if (next > mid) {
        low = mid;
        atLow = atMid;
      } else {
        high = mid;
        atHigh = atMid;
      }
      mid = next;
      atMid = atNext;
    } else if (next > mid) {
      high = next;
      atHigh = atNext;
    } else {
      low = next;
      atLow = atNext;
    }
  }
  return { elevation: mid, value: atMid };
}

const within = (elevation: number): number => Math.min(Math.max(elevation, LOWEST), STEEPEST);
