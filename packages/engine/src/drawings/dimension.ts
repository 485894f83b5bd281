import type { Palette } from './palette.ts';
import { element, label, number, stroke } from './svg.ts';

/** Room that a line of condensed letters takes, near enough to set lines around it [px]. */
export function textWidth(text: string, size: number): number {
  const digits = text.replace(/[^0-9≥≤]/g, '').length;
  return (digits * 0.46 + (text.length - digits) * 0.36) * size;
}

/** Closed, filled arrowhead with its tip at (x, y), 8 long and 2.7 wide, pointing along (dx, dy) of unit length. */
export function arrowhead(x: number, y: number, dx: number, dy: number, color: string): string {
  const [bx, by] = [x - 8 * dx, y - 8 * dy];
  const at = (side: number) => `${number(bx - side * 1.35 * dy)} ${number(by + side * 1.35 * dx)}`;
  return element('path', { d: `M${number(x)} ${number(y)}L${at(1)}L${at(-1)}Z`, fill: color });
}

/** A figure as somebody gave it, without a decimal that says nothing: "52 ft", not "52.0 ft". */
export function asGiven(text: string): string {
  return text.replace(/\.0+(?=\D|$)/, '');
}

/** A value that somebody gave, in its box; (x, y) is the middle of the box. */
export function given(x: number, y: number, text: string, palette: Palette): string {
  const width = textWidth(text, 13.5) + 13;
  return (
    element('rect', {
      x: x - width / 2,
      y: y - 9,
      width,
      height: 18,
      ...stroke('thin', palette.ink, palette),
      fill: palette.paper,
    }) + label(x, y + 4.6, text, { size: 13.5, weight: 560, color: palette.ink, anchor: 'middle' })
  );
}

interface Dimension {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  /** Where the extension lines begin. */
  readonly above: number;
  readonly text: string;
  /** In a box when somebody gave it, bare when it is computed. */
  readonly boxed: boolean;
  /** Words behind the figure. */
  readonly words?: string;
  readonly color?: string;
}

/** A level dimension between two uprights, its figure in the middle; beside it where the gap is too small. */
export function levelDimension(d: Dimension, palette: Palette): string {
  const color = d.color ?? palette.ink;
  const figure = textWidth(d.text, 13.5) + (d.boxed ? 14 : 8);
  const words = d.words === undefined ? 0 : textWidth(d.words, 12) + 12;
  const room = Math.abs(d.to - d.from);
  const outside = room < figure + words + 26;
  const left = outside ? Math.max(d.from, d.to) + 6 : (d.from + d.to) / 2 - (figure + words) / 2;
  const upright = (x: number) => `M${number(x)} ${number(d.above)}V${number(d.y + 4)}`;
  const line = outside
    ? `M${number(d.from)} ${number(d.y)}H${number(d.to)}`
    : `M${number(d.from)} ${number(d.y)}H${number(left)}M${number(left + figure + words)} ${number(d.y)}H${number(d.to)}`;
  const sign = d.to >= d.from ? 1 : -1;
  return [
    element('path', { d: upright(d.from) + upright(d.to) + line, ...stroke('thin', color, palette) }),
    ...(room > 18 ? [arrowhead(d.from, d.y, -sign, 0, color), arrowhead(d.to, d.y, sign, 0, color)] : []),
    d.boxed
      ? given(left + figure / 2, d.y, d.text, palette)
      : label(left + figure / 2, d.y + 4.6, d.text, { size: 13.5, weight: 640, color, anchor: 'middle' }),
    ...(d.words === undefined
      ? []
      : [
          label(left + figure + 5, d.y + 4.4, d.words, {
            size: 12,
            color: color === palette.ink ? palette.ink2 : color,
          }),
        ]),
  ].join('');
}

/** A line broken in two where length was left out, upright at (x, y). */
export function breakLines(x: number, y: number, palette: Palette): string {
  const one = (at: number) =>
    `M${number(at)} ${number(y - 11)}V${number(y - 4)}l-3 2.5l6 3.5l-3 2.5V${number(y + 11)}`;
  return (
    element('path', {
      d: `M${number(x - 4)} ${number(y - 10)}h8v20h-8Z`,
      fill: palette.paper,
    }) + element('path', { d: one(x - 4) + one(x + 4), ...stroke('thin', palette.ink, palette) })
  );
}
