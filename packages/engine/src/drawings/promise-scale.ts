import type { RigPromise } from '../rig/index.ts';
import { stateColor } from './marks.ts';
import type { Palette } from './palette.ts';
import { drawing, element, number, stroke } from './svg.ts';

/** Spare beyond this share of what is asked is an arrow; short beyond the lesser one too. */
const FARTHEST_SPARE = 0.42;
const FARTHEST_SHORT = 0.3;

/** Half the size of the point on the scale, its stroke included [px]. */
const POINT = 6;

export interface PromiseScale {
  readonly svg: string;
  /** Where the drawing lies in the scale [px]; only a point is smaller than the scale. */
  readonly x: number;
  readonly y: number;
  /** One of the few drawings that many rows have; one with a whisker is a row's own. */
  readonly common: boolean;
}

/**
 * The small scale at the end of a promise's row. All rows share one upright line, the asked value: left is short, right is
 * spare, the narrow zone is the 5 % called thin. A whisker is the 5 to 95 % band. Line and zone run through all rows, so they
 * are not part of the drawing of a point.
 */
export function promiseScale(
  promise: RigPromise,
  width: number,
  height: number,
  palette: Palette,
): PromiseScale {
  const { margin, band, sense, state } = promise;
  const zero = width * (FARTHEST_SHORT / (FARTHEST_SHORT + FARTHEST_SPARE));
  const perShare = (width - 12 - zero) / FARTHEST_SPARE;
  const middle = height / 2;
  const color = stateColor(state, palette);
  const clamp = (share: number) =>
    zero + Math.max(-FARTHEST_SHORT, Math.min(FARTHEST_SPARE, share)) * perShare;
  const whole = (common: boolean, ...parts: readonly string[]): PromiseScale => ({
    svg: drawing(
      width,
      height,
      '',
      element('rect', { x: zero, y: 0, width: 0.05 * perShare, height, fill: palette.thinTint }),
      element('path', {
        d: `M${number(zero)} 0V${number(height)}`,
        ...stroke('outline', palette.ink, palette),
      }),
      ...parts,
    ),
    x: 0,
    y: 0,
    common,
  });
  if (margin === undefined) {
    const d = `M${number(zero - 14)} ${number(middle)}H${number(width - 6)}`;
    return whole(true, element('path', { d, ...stroke('hidden', color, palette) }));
  }
  if (margin > FARTHEST_SPARE) {
    const tip = width - 3;
    return whole(
      true,
      element('path', {
        d: `M${number(tip - 16)} ${number(middle)}H${number(tip - 6)}`,
        ...stroke('thin', color, palette),
      }),
      element('path', { d: `M${number(tip)} ${number(middle)}l-8 -2.7v5.4Z`, fill: color }),
    );
  }
  const point = (x: number, y: number) =>
    element('path', {
      d: `M${number(x)} ${number(y - 5)}l5 5l-5 5l-5 -5Z`,
      fill: state === 'thin' ? palette.paper : color,
      stroke: color,
      'stroke-width': 1.3,
    });
  const x = clamp(margin);
  const asked = promise.asked?.value;
  if (band === undefined || asked === undefined || asked === 0) {
    const svg = drawing(2 * POINT, 2 * POINT, '', point(POINT, POINT));
    return { svg, x: Math.round((x - POINT) * 10) / 10, y: middle - POINT, common: true };
  }
  const share = (v: number) => ((sense === 'at-least' ? 1 : -1) * (v - asked)) / Math.abs(asked);
  const ends = band.map((v) => clamp(share(v))).sort((a, b) => a - b);
  const whisker = element('path', {
    d: `M${number(ends[0]!)} ${number(middle)}H${number(ends[1]!)}M${number(ends[0]!)} ${number(middle - 3)}v6M${number(ends[1]!)} ${number(middle - 3)}v6`,
    ...stroke('thin', color, palette),
  });
  return whole(false, whisker, point(x, middle));
}
