import type { LayoutLine, Part } from '../../catalogue/index.ts';
import { elbowK, teeBranchK, valveK } from '../fitting-loss.ts';
import type { Way } from './main-state.ts';

const BAR = 1e5;
/** Share of a loss that is counted on: the rest is left to what the laws of the network have besides. */
const COUNTED = 0.98;

/**
 * A jet or an eductor behind its valve and bends, at no less than it lets through; undefined where there is none.
 *
 * @param constant pressure of the tank at the manifold with nothing flowing [Pa]
 */
export function jetWay(
  { elbows = 0, teesBranch = 0 }: LayoutLine,
  agitator: Part | undefined,
  valve: Part | undefined,
  density: number,
  constant: number,
): Way | undefined {
  if (agitator?.kind !== 'agitator' && agitator?.kind !== 'eductor') return undefined;
  const sg = density / 1000;
  let square = (sg * BAR) / agitator.flowAtOneBar ** 2;
  if (valve?.kind === 'valve') {
    const byK = (k: number) => (k * density) / 2 / ((Math.PI / 4) * valve.bore ** 2) ** 2;
    square += COUNTED * byK(elbows * elbowK(valve.bore) + teesBranch * teeBranchK(valve.bore));
    if (valve.flowAtOneBar !== undefined) square += (sg * BAR) / valve.flowAtOneBar ** 2;
    else if (valve.form.startsWith('ball')) square += COUNTED * byK(valveK(valve.form, valve.bore));
  }
  return { constant, linear: 0, square };
}
