import { FONTS, LINES, type Palette } from './palette.ts';

/**
 * Drawings are SVG text with explicit attributes only: no style sheet, no inherited presentation, so that the same text
 * is right on the page, on paper and alone in a file.
 */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let open = `<${name}`;
  // By name: pairs of all attributes would be a quarter of what a drawing leaves to be collected.
  for (const key in attributes) {
    const value = attributes[key];
    if (value !== undefined)
      open += ` ${key}="${typeof value === 'number' ? number(value) : escapeText(value)}"`;
  }
  return children.length === 0 ? `${open}/>` : `${open}>${children.join('')}</${name}>`;
}

/** Coordinates to a hundredth of a pixel, so that the same rig gives the same bytes. */
export function number(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

const MARKUP = /[&<>"]/;

function escapeText(text: string): string {
  if (!MARKUP.test(text)) return text;
  return text.replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c]!);
}

type LineName = keyof typeof LINES;

/** Presentation of a stroked line of one of the sheet's weights. */
export function stroke(line: LineName, color: string, palette: Palette): Attributes {
  const { width } = LINES[line];
  const dash = 'dash' in LINES[line] ? (LINES[line] as { dash: string }).dash : undefined;
  const round = line === 'liquid' || line === 'farthest';
  return {
    fill: 'none',
    stroke: color,
    'stroke-width': width * palette.weight,
    'stroke-dasharray': dash,
    'stroke-linejoin': 'round',
    'stroke-linecap': round ? 'round' : 'butt',
  };
}

export function path(points: readonly (readonly [number, number])[], closed = false): string {
  return (
    points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${number(x)} ${number(y)}`).join('') +
    (closed ? 'Z' : '')
  );
}

export interface TextStyle {
  readonly size: number;
  readonly weight?: number;
  readonly family?: 'semi' | 'condensed';
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly color: string;
  /** Colour of the halo that keeps text readable over lines. */
  readonly halo?: string;
  readonly spacing?: number;
}

const SIGNS = /([≥≤≈√∞]+)/;

/** One line of text. Signs that the family lacks are set in the face of signs. */
export function label(x: number, y: number, text: string, style: TextStyle): string {
  const family = FONTS[style.family ?? 'condensed'];
  const weight = style.weight ?? 500;
  const common: Attributes = {
    x,
    y,
    'font-family': family,
    'font-size': style.size,
    'font-weight': weight,
    'text-anchor': style.anchor ?? 'start',
    'letter-spacing': style.spacing,
  };
  const runs = text
    .split(SIGNS)
    .filter((run) => run !== '')
    .map((run) =>
      SIGNS.test(run)
        ? element('tspan', { 'font-family': FONTS.signs, 'font-weight': weight }, run)
        : escapeText(run),
    );
  const halo =
    style.halo === undefined
      ? ''
      : element(
          'text',
          { ...common, fill: style.halo, stroke: style.halo, 'stroke-width': 4, 'stroke-linejoin': 'round' },
          ...runs,
        );
  return halo + element('text', { ...common, fill: style.color }, ...runs);
}

/** Hatching at 45° inside a rectangle: solid ground, a ceiling's far side. Rectangles side by side share their lines by `first`. */
export function hatch(
  x: number,
  y: number,
  width: number,
  height: number,
  pitch: number,
  color: string,
  palette: Palette,
  first = -height,
): string {
  let d = '';
  for (let s = first; s < width; s += pitch) {
    const x1 = Math.max(0, s);
    const x2 = Math.min(width, s + height);
    if (x2 <= x1) continue;
    d += `M${number(x + x1)} ${number(y + height - (x1 - s))}L${number(x + x2)} ${number(y + height - (x2 - s))}`;
  }
  return element('path', { d, ...stroke('hatch', color, palette) });
}

/** A whole drawing with its one sentence of description; without one it is hidden from readers. */
export function drawing(
  width: number,
  height: number,
  description: string,
  ...children: readonly string[]
): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width,
      height,
      viewBox: `0 0 ${number(width)} ${number(height)}`,
      role: description === '' ? undefined : 'img',
      'aria-hidden': description === '' ? 'true' : undefined,
      'text-rendering': 'geometricPrecision',
    },
    ...(description === '' ? [] : [element('title', {}, escapeText(description))]),
    ...children,
  );
}
