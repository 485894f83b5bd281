import type { Best } from './best-elevation.ts';
import { BULK_SHARE, FARTHEST_SHARE } from './drop-class.ts';
import { type Flight, fly, type FlightAim } from './flight.ts';
import { type DropClass, dropsOfShare, type Jet } from './jet.ts';

/** The three meanings of reach, never mixed: where they differ by 15 to 50 % a number must say which one it is. */
export interface Reach {
  /** Only a thousandth of the water goes beyond: what people point at, enough to touch [m]. */
  readonly farthest: number;
  /** Half of the water gets at least this far: enough to wet [m]. */
  readonly bulk: number;
  /** Still a coherent rope of water [m]. */
  readonly goodStream: number;
}

export interface BestReach extends Reach {
  /** Elevation at which the farthest drops do best [rad]. */
  readonly farthestElevation: number;
  /** Elevation at which the bulk does best: how the gun is held to wet [rad]. */
  readonly bulkElevation: number;
}

/** Both size classes of a jet. */
export interface DropPair {
  readonly farthest: DropClass;
  readonly bulk: DropClass;
}

export function dropPair(jet: Jet): DropPair {
  return { farthest: dropsOfShare(jet, FARTHEST_SHARE), bulk: dropsOfShare(jet, BULK_SHARE) };
}

/** Height at the standoff; below zero by what is missing when the stream comes down before it. */
export function heightAt(drops: DropClass, aim: FlightAim): number {
  const end = fly(drops, aim);
  return end.end === 'standoff' ? end.height : Math.min(end.greatestDistance, aim.standoff) - aim.standoff;
}

/** Distance at which the stream comes down to the landing height; below zero by what is missing when it stays under it. */
export function landingAt(drops: DropClass, aim: FlightAim): number {
  const end: Flight = fly(drops, aim);
  return end.end === 'below' ? Math.min(0, end.apex - aim.landingHeight) : end.distance;
}

/**
 * Best of both classes over elevation. The bulk can never be farther than the farthest drops: where the carried air
 * lifts fine drops above coarse ones the smaller of the two counts.
 */
export function bestOfBoth(
  best: (drops: DropClass, guess: number, stride: number) => Best,
  pair: DropPair,
  guess: number,
  stride: number,
): { farthest: Best; bulk: Best } {
  const farthest = best(pair.farthest, guess, stride);
  const bulk = best(pair.bulk, farthest.elevation, 0.5 * stride);
  return { farthest, bulk: bulk.value > farthest.value ? farthest : bulk };
}
