import { STEEPEST } from './flight.ts';

/** The best elevation found and what it gives. */
export interface Best {
  readonly elevation: number;
  readonly value: number;
}

const DEGREE = Math.PI / 180;
const LOWEST = 2 * DEGREE;
const GOLDEN = 0.381966;
/** The peak is found when both ends of the enclosure are within this share of it, or this close together. */
const FLAT = 4e-4;
const CLOSE = 0.02 * DEGREE;
/** A peak at the steepest or flattest elevation is taken for one when nothing this far from it is higher. */
const EDGE = 0.5 * DEGREE;
/** A parabola is trusted only when both ends of the enclosure are within this share of the peak. */
const SMOOTH = 0.08;
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
    const atEdge = !(low < mid && mid < high);
    if (atEdge ? high - low < EDGE : atMid - Math.min(atLow, atHigh) < FLAT * Math.abs(atMid)) break;
    const next = nextTry(low, atLow, mid, atMid, high, atHigh);
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

function nextTry(
  low: number,
  atLow: number,
  mid: number,
  atMid: number,
  high: number,
  atHigh: number,
): number {
  const upward = high - mid > mid - low;
  const floor = atMid - SMOOTH * Math.abs(atMid);
  if (atLow < floor || atHigh < floor)
    return upward ? mid + GOLDEN * (high - mid) : mid - GOLDEN * (mid - low);
  const a = (mid - low) * (atMid - atHigh);
  const b = (mid - high) * (atMid - atLow);
  const top = mid - (0.5 * ((mid - low) * a - (mid - high) * b)) / (a - b);
  const least = LEAST * (high - low);
  if (Math.abs(top - mid) < least || !(top > low && top < high)) return upward ? mid + least : mid - least;
  return top;
}
