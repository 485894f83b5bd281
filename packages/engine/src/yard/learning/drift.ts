import type { LearnedFactor } from './learn.ts';
import { PART_SHARES } from './part-share.data.ts';
import type { ToleranceKind } from '../../rig/index.ts';

const NINETY_FIVE = 1.6449;

const percent = (x: number): string => `${(100 * Math.abs(Math.expm1(x))).toFixed(1)} %`;

/** Whether nine in ten of what is learned lies on one side of what the part is held against. */
export function drifts(factor: LearnedFactor): boolean {
  return Math.abs(factor.mean - factor.before.mean) > NINETY_FIVE * factor.deviation;
}

/** How far all copies of a part are off their leaflet: "3.0 % below its leaflet (2.1 to 3.9 %), from 7 rigs". */
export function driftText(factor: LearnedFactor): string {
  const { key, mean, before, deviation, rigs } = factor;
  const against = PART_SHARES[key.split(':')[0] as ToleranceKind]?.against ?? 'its data';
  const from = `from ${rigs} ${rigs === 1 ? 'rig' : 'rigs'}`;
  const off = mean - before.mean;
  if (!drifts(factor))
    return `no drift from ${against} to tell: within ${percent(Math.abs(off) + NINETY_FIVE * deviation)}, ${from}`;
  const [near, far] = [Math.abs(off) - NINETY_FIVE * deviation, Math.abs(off) + NINETY_FIVE * deviation];
  const sign = Math.sign(off);
  return `${percent(off)} ${off > 0 ? 'above' : 'below'} ${against} (${percent(sign * near)} to ${percent(sign * far)}), ${from}`;
}
