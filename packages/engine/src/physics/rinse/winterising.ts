import { inRange } from '../in-range.ts';
import { listInRange, sameLength } from '../lists-in-range.ts';

/**
 * Strength of antifreeze after the water that stayed in the rig has thinned it.
 *
 * @formula w = V_a s / (V_a + R)
 * @param antifreeze volume of antifreeze put in [m3] 0..10
 * @param strength its strength by volume [-] 0..1
 * @param residual water that stayed in pump, hose and fittings [m3] 0..10
 * @returns strength that protects the rig [-]
 * @valid By volume and well mixed; shrinkage on mixing is ignored (under 1 %).
 * @throws RangeError when a parameter is outside its range
 * @source Mass balance; Purdue PPP-121 asks for the freeze rating after it is thinned.
 */
export function antifreezeAfterResidual(antifreeze: number, strength: number, residual: number): number {
  inRange('antifreeze', antifreeze, 0, 10, 'm3');
  inRange('strength', strength, 0, 1);
  inRange('residual', residual, 0, 10, 'm3');
  inRange('antifreeze and residual together', antifreeze + residual, 1e-9, 20, 'm3');
  return (antifreeze * strength) / (antifreeze + residual);
}

/**
 * Antifreeze that still protects to a temperature after the residual water has thinned it.
 *
 * @formula V_a = R w / (s - w), w from the freezing table
 * @param p.residual water that stayed in the rig [m3] 0..10
 * @param p.strength strength of the antifreeze by volume [-] 0..1
 * @param p.lowest lowest temperature to stand [K] 200..274
 * @param p.shares strengths of the freezing table, rising [list of -] 0..1
 * @param p.freezing freezing point at each of them, falling [list of K] 190..275
 * @result antifreeze volume to put in, or null when its strength can never do it [m3]
 * @result share strength needed after thinning [-]
 * @valid Straight between the points of the table and never beyond its ends. The table is of the liquid used: freezing and bursting point differ.
 * @throws RangeError when the lowest temperature lies below the table, or a parameter is outside its range
 * @source Mass balance; the freezing table brings its own source.
 */
export function antifreezeForCold(p: {
  readonly residual: number;
  readonly strength: number;
  readonly lowest: number;
  readonly shares: readonly number[];
  readonly freezing: readonly number[];
}): { antifreeze: number | null; share: number } {
  inRange('residual', p.residual, 0, 10, 'm3');
  inRange('strength', p.strength, 0, 1);
  inRange('lowest', p.lowest, 200, 274, 'K');
  listInRange('shares', p.shares, 0, 1);
  listInRange('freezing', p.freezing, 190, 275, 'K');
  sameLength('shares', p.shares, 'freezing', p.freezing);
  for (let i = 1; i < p.shares.length; i++) {
    inRange(`shares[${i}]`, p.shares[i] ?? NaN, p.shares[i - 1] ?? 0, 1);
    inRange(`freezing[${i}]`, p.freezing[i] ?? NaN, 190, p.freezing[i - 1] ?? 275, 'K');
  }
  const coldest = p.freezing.at(-1);
  if (coldest === undefined) throw new RangeError('freezing has no entries; it must have at least 1');
  inRange('lowest', p.lowest, coldest, 274, 'K');
  const share = shareAt(p.shares, p.freezing, p.lowest);
  if (share === 0 || p.residual === 0) return { antifreeze: 0, share };
  return { antifreeze: p.strength > share ? (p.residual * share) / (p.strength - share) : null, share };
}

/** Least strength of the table whose freezing point is at or below the temperature. */
function shareAt(shares: readonly number[], freezing: readonly number[], lowest: number): number {
  const i = freezing.findIndex((t) => t <= lowest);
  const t = freezing[i] ?? lowest;
  const share = shares[i] ?? 1;
  const before = freezing[i - 1];
  if (before === undefined || before === t) return share;
  const from = shares[i - 1] ?? share;
  return from + ((share - from) * (before - lowest)) / (before - t);
}
