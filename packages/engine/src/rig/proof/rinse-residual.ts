import { expectedResidual, residualVolume } from '../../physics/index.ts';
import { looseFactor } from '../loose-inputs.ts';
import type { ProofContext } from './context.ts';

/** Liquid that stays in a rig after it has sucked air [m3]. */
export interface Residual {
  /** Tank sump, pump, strainer and fittings. */
  readonly body: number;
  /** Contents of the hoses that lead to the outlets; on a rig with a reel by far the most. */
  readonly hoses: number;
  /** Contents of suction and return hoses. */
  readonly plumbing: number;
  readonly total: number;
}

/** What stays in tank, pump, fittings and hoses, from their sizes. */
export function residualOf(context: ProofContext): Residual {
  const contents = (out: boolean) =>
    context.rig.lines
      .filter((line) => (line.to === 'air') === out)
      .flatMap((line) => line.run)
      .reduce((sum, id) => {
        const { item, part } = context.rig.items.get(id)!;
        return part.kind === 'hose' ? sum + (Math.PI / 4) * part.bore ** 2 * (item.length ?? 0) : sum;
      }, 0);
  const body = expectedResidual(context.tank.volume).most * looseFactor(context.rig, 'residual');
  const [hoses, plumbing] = [contents(true), contents(false)];
  return { body, hoses, plumbing, total: residualVolume([body, hoses, plumbing]) };
}
