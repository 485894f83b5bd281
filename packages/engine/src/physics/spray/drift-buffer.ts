import { inRange } from '../in-range.ts';
import type { DriftCrop } from './drift.data.ts';
import { driftByRow, driftRow, nearestDistance } from './drift.ts';

/**
 * Distance from which on the drift stays at or below what is allowed.
 *
 * @formula x = (D / A)^(1/B), or (D / C)^(1/D') when that lies beyond the hinge; D = allowed / (1 - reduction)
 * @param crop crop group of the trials [one of arable, hops, vines-late, vines-early, fruit-late, fruit-early, aerial]
 * @param applications applications in a season [-] 1..8
 * @param allowed deposited share of the rate that is allowed [-] 1e-7..1
 * @param reduction share by which the tip reduces drift [-] 0..0.99
 * @returns distance, or null when even 250 m is not enough [m]
 * @valid Arithmetic only: labels and law set buffers in fixed steps. The branch is checked against the hinge after inverting; where both fit the farther one counts.
 * @throws RangeError when a parameter is outside its range
 * @source FOCUS SWS Appendix B, Table B.1 (Rautmann et al. 2001), inverted.
 */
export function driftBuffer(
  crop: DriftCrop,
  applications: number,
  allowed: number,
  reduction: number,
): number | null {
  const row = driftRow(crop, applications);
  inRange('allowed', allowed, 1e-7, 1);
  inRange('reduction', reduction, 0, 0.99);
  const percent = (100 * allowed) / (1 - reduction);
  const nearest = nearestDistance(crop);
  const near = (percent / row.a) ** (1 / row.b);
  let distance = near;
  if (row.beyond !== undefined) {
    const { hinge, c, d } = row.beyond;
    const far = (percent / c) ** (1 / d);
    // The two branches do not meet exactly at the hinge: beyond it the far branch rules, and a value that
    // falls into the step between them is first reached at the hinge itself.
    if (far >= hinge) distance = far;
    else if (near >= hinge) distance = hinge;
  }
  distance = Math.max(distance, nearest);
  if (distance > 250) return null;
  // Rounding of the powers must not leave the answer a hair on the wrong side.
  return driftByRow(row, distance) <= (percent / 100) * (1 + 1e-9) ? distance : null;
}
