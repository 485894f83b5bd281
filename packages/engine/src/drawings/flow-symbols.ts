import type { Kind } from '../catalogue/index.ts';
import type { Palette } from './palette.ts';
import { element, number, stroke } from './svg.ts';

/**
 * Symbol of a part in a flow diagram, 26 px high with its middle at (x, y), drawn by us: pumps, regulators, strainers and vessels
 * after ISO 1219-1, valves and nozzles after ISO 14617, reels and booms our own. A shut valve is filled.
 */
export function flowSymbol(
  kind: Kind | 'fittings',
  x: number,
  y: number,
  palette: Palette,
  shut = false,
): string {
  const line = stroke('outline', palette.ink, palette);
  const thin = stroke('thin', palette.ink, palette);
  const solid = { ...line, fill: palette.paper };
  const d = (text: string, more = line) => element('path', { d: text, ...more });
  const at = (dx: number, dy: number) => `${number(x + dx)} ${number(y + dy)}`;
  switch (kind) {
    case 'tank':
      return (
        d(`M${at(-12, -10)}V${number(y + 10)}H${number(x + 12)}V${number(y - 10)}`) +
        d(`M${at(-12, -4)}H${number(x + 12)}`, stroke('liquid', palette.liquid, palette))
      );
    case 'strainer':
      return (
        d(`M${at(0, -12)}L${at(12, 0)}L${at(0, 12)}L${at(-12, 0)}Z`, solid) +
        d(`M${at(0, -12)}V${number(y + 12)}`, { ...thin, 'stroke-dasharray': '3 2.4' })
      );
    case 'pump':
    case 'motor-pump':
      return (
        element('circle', { cx: x, cy: y, r: 12, ...solid }) +
        element('path', { d: `M${at(-5, -8)}L${at(9, 0)}L${at(-5, 8)}Z`, fill: palette.ink })
      );
    case 'regulator':
      return (
        element('rect', { x: x - 9, y: y - 9, width: 18, height: 18, ...solid }) +
        d(`M${at(0, 6)}V${number(y - 5)}M${at(-3, -2)}L${at(0, -6)}L${at(3, -2)}`, thin) +
        d(`M${at(0, -9)}l3 -2l-6 -2l6 -2l-3 -2`, thin)
      );
    case 'reel':
      return (
        element('circle', { cx: x, cy: y, r: 12, ...solid }) +
        element('circle', { cx: x, cy: y, r: 7, ...thin }) +
        element('circle', { cx: x, cy: y, r: 2, fill: palette.ink })
      );
    case 'hose':
      return d(`M${at(-14, 0)}C${at(-7, -17)} ${at(7, 17)} ${at(14, 0)}`);
    case 'valve':
    case 'gun':
      return d(
        `M${at(-11, -7)}L${at(11, 7)}V${number(y - 7)}L${at(-11, 7)}Z`,
        shut ? { ...line, fill: palette.ink } : solid,
      );
    case 'tip':
    case 'nozzle':
      return (
        d(`M${at(-11, -7)}H${number(x - 1)}L${at(8, 0)}L${at(-1, 7)}H${number(x - 11)}Z`, solid) +
        d(`M${at(8, 0)}H${number(x + 15)}`, stroke('liquid', palette.liquid, palette))
      );
    case 'boom':
      return d(
        `M${at(-14, -4)}H${number(x + 14)}M${at(-10, -4)}v6M${at(-3, -4)}v6M${at(4, -4)}v6M${at(11, -4)}v6`,
      );
    case 'agitator':
    case 'eductor':
      return d(`M${at(-11, -8)}L${at(0, -2)}L${at(11, -8)}M${at(-11, 8)}L${at(0, 2)}L${at(11, 8)}`);
    default:
      return element('circle', { cx: x, cy: y, r: 2.6, fill: palette.ink });
  }
}
