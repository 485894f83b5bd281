import type { LayoutLine } from '../../catalogue/index.ts';
import type { Way } from './main-state.ts';
import type { PartAt } from './space.ts';

const BAR = 1e5;

/** An outlet line at no less than it lets out: what its nozzles or its tip ask; undefined where it has neither. */
export function mostOut(line: LayoutLine, partAt: PartAt, density: number, lift: number): Way | undefined {
  const factor = factorOf(line, partAt);
  if (factor === undefined) return undefined;
  return { constant: lift, linear: 0, square: (density / 1000) * (BAR / factor ** 2) };
}

/** Flow of a line's last part at one bar [m3/s]. */
export function factorOf({ run }: LayoutLine, partAt: PartAt): number | undefined {
  const [boom, nozzle, tip] = ['boom', 'nozzle', 'tip'].map(partAt);
  if (run.includes('tip') && tip?.kind === 'tip') return tip.flowAtOneBar;
  if (run.includes('nozzle') && boom?.kind === 'boom' && nozzle?.kind === 'nozzle')
    return boom.nozzles * nozzle.flowAtOneBar;
  return undefined;
}
