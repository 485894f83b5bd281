import type { RigPromise } from '../rig/index.ts';
import { stateColor } from './marks.ts';
import type { Palette } from './palette.ts';
import { drawing, element, number, stroke } from './svg.ts';

/** Spare beyond this share of what is asked is an arrow; short beyond the lesser one too. */
const FARTHEST_SPARE = 0.42;
const FARTHEST_SHORT = 0.3;

/**
 * The small scale at the end of a promise's row. All rows share one upright line, the asked value: left is short, right is
 * spare, the narrow zone is the 5 % called thin. A whisker is the 5 to 95 % band.
 */
export function promiseScale(promise: RigPromise, width: number, height: number, palette: Palette): string {
  const zero = width * (FARTHEST_SHORT / (FARTHEST_SHORT + FARTHEST_SPARE));
  const perShare = (width - 12 - zero) / FARTHEST_SPARE;
  const middle = height / 2;
  const color = stateColor(promise.state, palette);
  const clamp = (share: number) =>
    zero + Math.max(-FARTHEST_SHORT, Math.min(FARTHEST_SPARE, share)) * perShare;
  const parts = [
    element('rect', { x: zero, y: 0, width: 0.05 * perShare, height, fill: palette.thinTint }),
    element('path', {
      d: `M${number(zero)} 0V${number(height)}`,
      ...stroke('outline', palette.ink, palette),
    }),
  ];
  if (promise.margin === undefined) {
    parts.push(
      element('path', {
        d: `M${number(zero - 14)} ${number(middle)}H${number(width - 6)}`,
        ...stroke('hidden', color, palette),
      }),
    );
  } else if (promise.margin > FARTHEST_SPARE) {
    const tip = width - 3;
    parts.push(
      element('path', {
        d: `M${number(tip - 16)} ${number(middle)}H${number(tip - 6)}`,
        ...stroke('thin', color, palette),
      }),
      element('path', { d: `M${number(tip)} ${number(middle)}l-8 -2.7v5.4Z`, fill: color }),
    );
  } else {
    const x = clamp(promise.margin);
    const asked = promise.asked?.value;
    if (promise.band !== undefined && asked !== undefined && asked !== 0) {
      const share = (v: number) => ((promise.sense === 'at-least' ? 1 : -1) * (v - asked)) / Math.abs(asked);
      const ends = promise.band.map((v) => clamp(share(v))).sort((a, b) => a - b);
      parts.push(
        element('path', {
          d: `M${number(ends[0]!)} ${number(middle)}H${number(ends[1]!)}M${number(ends[0]!)} ${number(middle - 3)}v6M${number(ends[1]!)} ${number(middle - 3)}v6`,
          ...stroke('thin', color, palette),
        }),
      );
    }
    parts.push(
      element('path', {
        d: `M${number(x)} ${number(middle - 5)}l5 5l-5 5l-5 -5Z`,
        fill: promise.state === 'thin' ? palette.paper : color,
        stroke: color,
        'stroke-width': 1.3,
      }),
    );
  }
  return drawing(width, height, '', ...parts);
}
