import { expectedResidual, residualVolume } from '../../physics/index.ts';
import { looseFactor } from '../loose-inputs.ts';
import type { Rig } from '../rig-document.ts';
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

const computed = new WeakMap<Rig, Residual>();

/** What stays in tank, pump, fittings and hoses, from their sizes; reckoned once for each rig. */
export function residualOf({ rig, tank }: Pick<ProofContext, 'rig' | 'tank'>): Residual {
  let residual = computed.get(rig);
  if (residual === undefined) computed.set(rig, (residual = residualIn(rig, tank.volume)));
  return residual;
}

function residualIn(rig: Rig, tank: number): Residual {
  const body = expectedResidual(tank).most * looseFactor(rig, 'residual');
  let hoses = 0;
  let plumbing = 0;
  for (const { to, run } of rig.lines)
    for (const id of run) {
      const { item, part } = rig.items.get(id)!;
      if (part.kind !== 'hose') continue;
      const contents = (Math.PI / 4) * part.bore ** 2 * (item.length ?? 0);
      if (to === 'air') hoses += contents;
      else plumbing += contents;
    }
  return { body, hoses, plumbing, total: residualVolume([body, hoses, plumbing]) };
}
