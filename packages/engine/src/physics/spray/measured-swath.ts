import { inRange } from '../in-range.ts';

/** How the passes lie: round the field the same way, or there and back with each second pass turned round. */
export const PASS_MANNERS = ['round-and-round', 'there-and-back'] as const;
export type PassManner = (typeof PASS_MANNERS)[number];

function checkCatches(catches: readonly number[], pitch: number): void {
  inRange('number of catches', catches.length, 3, 2000);
  catches.forEach((c, i) => inRange(`catches[${i}]`, c, 0, Infinity));
  inRange(
    'sum of catches',
    catches.reduce((a, b) => a + b, 0),
    Number.MIN_VALUE,
    Infinity,
  );
  inRange('pitch', pitch, 0.01, 5, 'm');
}

/** Catch at a distance from the middle of the pass, straight between the cups, nothing beyond the last. */
function catchAt(catches: readonly number[], pitch: number, distance: number): number {
  const place = distance / pitch + (catches.length - 1) / 2;
  const i = Math.floor(place);
  const left = catches[i] ?? 0;
  const right = catches[i + 1] ?? 0;
  return left + (right - left) * (place - i);
}

/**
 * Evenness of overlapping passes from one measured pattern, as for a boomless nozzle or a hand gun.
 *
 * @formula CV of sum over passes of the catch, at steps of the pitch or finer
 * @param catches volume in each cup across one pass, left to right, equal pitch [list of m3] 0..
 * @param pitch distance of the cups [m] 0.01..5
 * @param swath distance from pass to pass [m] 0.05..60
 * @param manner how the passes lie [one of round-and-round, there-and-back]
 * @returns coefficient of variation of the ground after all passes [-]
 * @valid Uses the measured pattern as it is; between cups it is straight.
 * @throws RangeError when a parameter is outside its range
 * @source Superposition of passes; common practice for spreaders and boomless nozzles, no source read.
 */
export function swathUniformity(
  catches: readonly number[],
  pitch: number,
  swath: number,
  manner: PassManner,
): number {
  checkCatches(catches, pitch);
  inRange('swath', swath, 0.05, 60, 'm');
  const half = ((catches.length + 1) * pitch) / 2;
  const reach = Math.ceil(half / swath) + 1;
  const steps = Math.max(50, Math.ceil((4 * swath) / pitch));
  // Two swaths, so that both a pass and its turned neighbour are in the picture.
  const span = 2 * swath;
  const ground: number[] = [];
  for (let s = 0; s < steps; s++) {
    const x = ((s + 0.5) / steps) * span;
    let volume = 0;
    for (let k = -reach; k <= reach + 2; k++) {
      const turned = manner === 'there-and-back' && Math.abs(k) % 2 === 1;
      const distance = x - k * swath;
      volume += catchAt(catches, pitch, turned ? -distance : distance);
    }
    ground.push(volume);
  }
  const mean = ground.reduce((a, b) => a + b, 0) / steps;
  return Math.sqrt(ground.reduce((sum, v) => sum + (v - mean) ** 2, 0) / steps) / mean;
}

/**
 * Widest swath at which a measured pattern still gives an even enough ground.
 *
 * @formula largest w with CV(w) <= limit
 * @param catches volume in each cup across one pass, left to right, equal pitch [list of m3] 0..
 * @param pitch distance of the cups [m] 0.01..5
 * @param manner how the passes lie [one of round-and-round, there-and-back]
 * @param limit coefficient of variation allowed [-] 0.01..1
 * @returns widest swath, or null when none is even enough [m]
 * @valid Tries swaths in steps of half the pitch; narrower ones cost only time, so the widest that serves is given.
 * @throws RangeError when a parameter is outside its range
 * @source Superposition of passes; common practice, no source read.
 */
export function widestEvenSwath(
  catches: readonly number[],
  pitch: number,
  manner: PassManner,
  limit: number,
): number | null {
  checkCatches(catches, pitch);
  inRange('limit', limit, 0.01, 1);
  for (let steps = 2 * catches.length; steps >= 2; steps--) {
    const swath = Math.min(60, (steps * pitch) / 2);
    if (swath >= 0.05 && swathUniformity(catches, pitch, swath, manner) <= limit) return swath;
  }
  return null;
}
