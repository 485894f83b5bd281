import type { LayoutLine } from '../../catalogue/index.ts';
import { elbowK, teeBranchK } from '../fitting-loss.ts';
import type { Way } from './main-state.ts';
import type { PartAt } from './space.ts';

const BAR = 1e5;
/** Losses at a boom are reckoned with this much more than they are. */
const MORE = 1.1;

/** An outlet line at no less than it lets out: what its nozzles or its tip ask; undefined where it has neither. */
export function mostOut(line: LayoutLine, partAt: PartAt, density: number, lift: number): Way | undefined {
  const factor = factorOf(line, partAt);
  if (factor === undefined) return undefined;
  return { constant: lift, linear: 0, square: (density / 1000) * (BAR / factor ** 2) };
}

/** Flow of a line's last part at one bar [m3/s]. */
function factorOf({ run }: LayoutLine, partAt: PartAt): number | undefined {
  const [boom, nozzle, tip] = ['boom', 'nozzle', 'tip'].map(partAt);
  if (run.includes('tip') && tip?.kind === 'tip') return tip.flowAtOneBar;
  if (run.includes('nozzle') && boom?.kind === 'boom' && nozzle?.kind === 'nozzle')
    return boom.nozzles * nozzle.flowAtOneBar;
  return undefined;
}

/** The least pressure in front of the nozzles of a boom by that of the manifold, with more loss than the line has [Pa]. */
export function leastAtNozzles(
  line: LayoutLine,
  partAt: PartAt,
  density: number,
  lift: number,
  loss: (flow: number) => number,
): (pressure: number) => number {
  const factor = factorOf(line, partAt) ?? 0;
  const hose = line.run.map(partAt).find((p) => p?.kind === 'hose');
  const bore = hose?.kind === 'hose' ? hose.bore : 0.02;
  const k = (line.elbows ?? 0) * elbowK(bore) + (line.teesBranch ?? 0) * teeBranchK(bore);
  const bends = (flow: number) => (k * density * (flow / ((Math.PI / 4) * bore ** 2)) ** 2) / 2;
  return (pressure) => {
    let [low, high] = [0, Math.max(0, pressure)];
    for (let i = 0; i < 20; i++) {
      const middle = (low + high) / 2;
      const flow = factor * Math.sqrt(middle / BAR / (density / 1000));
      if (middle + Math.max(0, lift) + MORE * (loss(flow) + bends(flow)) < pressure) low = middle;
      else high = middle;
    }
    return low;
  };
}
