import type { Palette } from './palette.ts';
import { element, number, stroke, type Attributes } from './svg.ts';

/** A part as a box on the sheet [px]: left edge, foot, width and height. */
interface Box {
  readonly x: number;
  readonly foot: number;
  readonly width: number;
  readonly height: number;
}

/** Boxes from this height on are drawn with axes and inner lines [px]. */
const DETAIL = 34;

function outline(palette: Palette, lit: boolean, fill?: string): Attributes {
  return {
    ...stroke('outline', palette.ink, palette),
    'stroke-width': (lit ? 2.5 : 1.5) * palette.weight,
    ...(fill === undefined ? {} : { fill }),
  };
}

/** A tank with its level: tint, surface, and broken rows that open with depth. */
export function drawTank(box: Box, level: number, palette: Palette, lit: boolean): string {
  const { x, foot, width, height } = box;
  const top = foot - height;
  const surface = foot - height * Math.max(0, Math.min(1, level));
  const bulge = Math.min(width * 0.16, height * 0.3, 16);
  const shell = (from: number, round: number) =>
    `M${number(x + bulge)} ${number(foot)}Q${number(x)} ${number(foot)} ${number(x)} ${number(foot - bulge)}V${number(from + round)}` +
    (round > 0 ? `Q${number(x)} ${number(from)} ${number(x + round)} ${number(from)}` : '') +
    `H${number(x + width - round)}` +
    (round > 0 ? `Q${number(x + width)} ${number(from)} ${number(x + width)} ${number(from + round)}` : '') +
    `V${number(foot - bulge)}Q${number(x + width)} ${number(foot)} ${number(x + width - bulge)} ${number(foot)}Z`;
  const wetTop = Math.min(surface, foot - bulge);
  const rows: string[] = [];
  if (height > DETAIL)
    for (let y = surface + 6, pitch = 7, row = 0; y < foot - 5; pitch *= 1.2, y += pitch, row++) {
      let d = '';
      for (let at = x + 8 + (row % 2) * 14; at + 10 < x + width - 6; at += 28)
        d += `M${number(at)} ${number(y)}h10`;
      if (d !== '') rows.push(element('path', { d, ...stroke('hatch', palette.liquidRows, palette) }));
    }
  const neck = Math.max(3, height * 0.07);
  return element(
    'g',
    { 'data-item': 'tank' },
    element('path', { d: shell(top, bulge), fill: palette.paper }),
    element('path', { d: shell(wetTop, Math.max(0, bulge - (wetTop - top))), fill: palette.liquidTint }),
    ...rows,
    element('path', {
      d: `M${number(x)} ${number(surface)}h${number(width)}`,
      ...stroke('outline', palette.liquid, palette),
    }),
    element('path', { d: shell(top, bulge), ...outline(palette, lit) }),
    element('path', {
      d: `M${number(x + width * 0.36)} ${number(top)}v${number(-neck)}h${number(width * 0.28)}v${number(neck)}`,
      ...outline(palette, lit, palette.paper),
    }),
    ...(height > DETAIL
      ? [
          element('path', {
            d: [0.2, 0.8].map((s) => `M${number(x + width * s)} ${number(top)}V${number(foot)}`).join(''),
            ...stroke('thin', palette.ink, palette),
          }),
          element('path', {
            d: `M${number(x - 6)} ${number((top + foot) / 2)}h${number(width + 12)}`,
            ...stroke('centre', palette.ink2, palette),
          }),
        ]
      : []),
  );
}

/** An engine with its pump: base, crankcase, cylinder with fins, and the wheel of its fan. */
export function drawEngine(box: Box, item: string, palette: Palette, lit: boolean): string {
  const { x, foot, width, height } = box;
  const line = outline(palette, lit, palette.paper);
  const thin = stroke('thin', palette.ink, palette);
  const small = height <= 12;
  return element(
    'g',
    { 'data-item': item },
    element('rect', { x, y: foot - height * 0.62, width, height: height * 0.62, ...line }),
    ...(small
      ? []
      : [
          element('rect', {
            x: x + width * 0.14,
            y: foot - height,
            width: width * 0.5,
            height: height * 0.38,
            ...line,
          }),
          element('path', {
            d: [0.72, 0.8, 0.88, 0.96]
              .map((s) => `M${number(x + width * 0.14)} ${number(foot - height * s)}h${number(width * 0.5)}`)
              .join(''),
            ...thin,
          }),
          element('rect', {
            x: x + width * 0.7,
            y: foot - height * 0.86,
            width: width * 0.24,
            height: height * 0.24,
            ...line,
          }),
        ]),
    element('circle', {
      cx: x + width * 0.5,
      cy: foot - height * 0.3,
      r: Math.min(width, height) * 0.21,
      ...outline(palette, lit),
      'stroke-width': (small ? 1 : 1.3) * palette.weight,
    }),
    ...(small
      ? []
      : [
          element('circle', {
            cx: x + width * 0.5,
            cy: foot - height * 0.3,
            r: Math.min(width, height) * 0.08,
            fill: palette.ink,
          }),
        ]),
  );
}

/** A hose reel: flange, rings for the hose on it, hub, spokes, and its stand. */
export function drawReel(box: Box, item: string, palette: Palette, lit: boolean): string {
  const { x, foot, width, height } = box;
  const r = Math.min(width, height) / 2;
  const [cx, cy] = [x + width / 2, foot - r - (height > DETAIL ? height * 0.06 : 0)];
  const thin = stroke('thin', palette.ink, palette);
  const detail = height > DETAIL;
  const spokes = Array.from({ length: 5 }, (_, i) => {
    const a = (i * 2 * Math.PI) / 5 + 0.4;
    return `M${number(cx)} ${number(cy)}L${number(cx + r * 0.36 * Math.cos(a))} ${number(cy + r * 0.36 * Math.sin(a))}`;
  }).join('');
  return element(
    'g',
    { 'data-item': item },
    element('path', {
      d: `M${number(cx - r * 0.6)} ${number(foot)}L${number(cx)} ${number(cy)}L${number(cx + r * 0.6)} ${number(foot)}`,
      ...outline(palette, lit),
    }),
    element('circle', { cx, cy, r, ...outline(palette, lit, palette.paper) }),
    ...(detail ? [0.86, 0.72, 0.58, 0.46] : [0.66]).map((s) =>
      element('circle', { cx, cy, r: r * s, ...thin }),
    ),
    ...(detail
      ? [
          element('circle', { cx, cy, r: r * 0.36, ...outline(palette, lit) }),
          element('path', { d: spokes, ...thin }),
        ]
      : []),
    element('circle', { cx, cy, r: Math.max(1, r * 0.1), fill: palette.ink }),
    ...(detail
      ? [
          element('path', {
            d: `M${number(cx - r - 6)} ${number(cy)}h${number(2 * r + 12)}M${number(cx)} ${number(cy - r - 6)}v${number(2 * r + 10)}`,
            ...stroke('centre', palette.ink2, palette),
          }),
        ]
      : []),
  );
}

/** A wheel on the ground: tyre, rim, and its axes from a size on. */
export function drawWheel(cx: number, ground: number, r: number, palette: Palette): string {
  const cy = ground - r;
  return (
    element('circle', { cx, cy, r, ...outline(palette, false, palette.paper) }) +
    element('circle', { cx, cy, r: r * 0.58, ...stroke('thin', palette.ink, palette) }) +
    element('circle', { cx, cy, r: Math.max(0.9, r * 0.16), fill: palette.ink }) +
    (r > 12
      ? element('path', {
          d: `M${number(cx - r - 5)} ${number(cy)}h${number(2 * r + 10)}M${number(cx)} ${number(cy - r - 5)}v${number(2 * r + 5)}`,
          ...stroke('centre', palette.ink2, palette),
        })
      : '')
  );
}
