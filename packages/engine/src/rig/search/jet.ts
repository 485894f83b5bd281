import type { LayoutLine, Part } from '../../catalogue/index.ts';
import { elbowK, teeBranchK, teeRunK } from '../fitting-loss.ts';
import type { Way } from './main-state.ts';
import { bendTerms, factorTerms, sumOfTerms, valveTerms } from './part-terms.ts';

/**
 * A jet or an eductor behind its valve and bends, as the network has it; undefined where there is none.
 *
 * @param constant pressure of the tank at the manifold with nothing flowing [Pa]
 */
export function jetWay(
  { elbows = 0, teesRun = 0, teesBranch = 0 }: LayoutLine,
  agitator: Part | undefined,
  valve: Part | undefined,
  liquid: { readonly density: number; readonly viscosity: number },
  constant: number,
): Way | undefined {
  if (agitator?.kind !== 'agitator' && agitator?.kind !== 'eductor') return undefined;
  const through = valve?.kind === 'valve' ? valve : undefined;
  const bore = through?.bore ?? agitator.ports[0]?.size ?? 0.0254;
  const k = elbows * elbowK(bore) + teesRun * teeRunK(bore) + teesBranch * teeBranchK(bore);
  const terms = sumOfTerms([
    factorTerms(agitator.flowAtOneBar, liquid),
    bendTerms(k, bore, liquid),
    ...(through === undefined ? [] : [valveTerms(through, liquid)]),
  ]);
  return { constant, ...terms };
}
