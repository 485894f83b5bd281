import type { Palette } from './palette.ts';
import { element, label, stroke } from './svg.ts';

/** A part's number in its ring, the same everywhere; lit is inverted. */
export function balloon(count: number, x: number, y: number, lit: boolean, palette: Palette): string {
  return (
    element('circle', {
      cx: x,
      cy: y,
      r: 9.5,
      ...stroke('thin', palette.ink, palette),
      fill: lit ? palette.ink : palette.paper,
    }) +
    label(x, y + 4.2, String(count), {
      size: 12,
      weight: 560,
      color: lit ? palette.paper : palette.ink,
      anchor: 'middle',
    })
  );
}
