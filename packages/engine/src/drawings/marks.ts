import type { PromiseState } from '../rig/index.ts';
import type { Palette } from './palette.ts';
import { element, number, type Attributes } from './svg.ts';

/** Words of the four states, as rows begin with them. */
export const STATE_WORDS: Readonly<Record<PromiseState, string>> = {
  broken: 'Broken',
  thin: 'Thin',
  unknown: 'Unknown',
  kept: 'Kept',
};

export function stateColor(state: PromiseState, palette: Palette): string {
  if (state === 'broken') return palette.broken;
  return state === 'thin' ? palette.thin : palette.ink;
}

/** Mark of a state, 14 px square, its middle at (x, y): tick, arrows nose to nose, parted line, ? in a dashed circle. */
export function stateMark(state: PromiseState, x: number, y: number, palette: Palette): string {
  const color = stateColor(state, palette);
  const line: Attributes = {
    fill: 'none',
    stroke: color,
    'stroke-width': 1.9 * palette.weight,
    'stroke-linejoin': 'round',
  };
  const at = (dx: number, dy: number) => `${number(x + dx)} ${number(y + dy)}`;
  switch (state) {
    case 'kept':
      return element('path', { d: `M${at(-6, 0.5)}L${at(-2, 5)}L${at(6, -5)}`, ...line });
    case 'thin':
      return (
        element('path', {
          d: `M${at(-1.6, -6)}V${number(y + 6)}M${at(1.6, -6)}V${number(y + 6)}`,
          ...line,
          'stroke-width': 1.3 * palette.weight,
        }) +
        element('path', {
          d: `M${at(-7.5, -3)}L${at(-2.4, 0)}L${at(-7.5, 3)}ZM${at(7.5, -3)}L${at(2.4, 0)}L${at(7.5, 3)}Z`,
          fill: color,
        })
      );
    case 'broken':
      return element('path', {
        d: `M${at(-7.5, 0)}H${number(x - 3.4)}M${at(3.4, 0)}H${number(x + 7.5)}M${at(-4.2, 5.5)}L${at(-0.4, -5.5)}M${at(0.4, 5.5)}L${at(4.2, -5.5)}`,
        ...line,
      });
    case 'unknown':
      return (
        element('circle', {
          cx: x,
          cy: y,
          r: 6.6,
          ...line,
          'stroke-width': 1 * palette.weight,
          'stroke-dasharray': '2.4 1.7',
        }) +
        element('path', {
          d: `M${at(-2, -1.8)}C${at(-2, -4.4)} ${at(2.2, -4.4)} ${at(2.2, -1.9)}C${at(2.2, 0)} ${at(0, -0.2)} ${at(0, 1.6)}M${at(0, 3)}V${number(y + 4.2)}`,
          ...line,
          'stroke-width': 1.3 * palette.weight,
        })
      );
  }
}
