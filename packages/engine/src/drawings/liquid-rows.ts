import type { Palette } from './palette.ts';
import { element, number, stroke } from './svg.ts';

/** Broken rows under a surface: liquid. They open with depth. */
export function liquidRows(area: readonly [number, number][], base: number, palette: Palette): string[] {
  const out: string[] = [];
  const left = area[0]![0];
  const right = area[area.length - 1]![0];
  const surface = (x: number) => {
    let level = base;
    for (let i = 1; i < area.length - 1; i++) {
      const [x1, y1] = area[i - 1]!;
      const [x2, y2] = area[i]!;
      if (x >= Math.min(x1, x2) && x <= Math.max(x1, x2) && x1 !== x2)
        level = Math.min(level, y1 + ((y2 - y1) * (x - x1)) / (x2 - x1));
    }
    return level;
  };
  let pitch = 14;
  for (
    let row = 0, line = Math.min(...area.map(([, v]) => v)) + pitch;
    line < base - 6;
    row++, line += pitch, pitch *= 1.2
  ) {
    let d = '';
    for (let x = left + 8 + (row % 2) * 22; x + 16 < right; x += 44)
      if (surface(x) < line - 5 && surface(x + 16) < line - 5) d += `M${number(x)} ${number(line)}h16`;
    if (d !== '') out.push(element('path', { d, ...stroke('thin', palette.liquidRows, palette) }));
  }
  return out;
}
