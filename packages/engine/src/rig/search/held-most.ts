import { hoseLoss } from '../../physics/index.ts';
import { RETURN_HOSE } from '../design/rest-of-rig.ts';
import { elbowK } from '../fitting-loss.ts';
import type { SearchSpace } from './space.ts';

const BAR = 1e5;
const G = 9.80665;
/** For the laminar part of bends. */
const MORE = 1.1;

/**
 * Highest pressure at the manifold by duty when a flow, and no more, goes back to the tank: through the regulator of the
 * space that lets it rise most, holding or wide open, and behind that the return that takes most [Pa].
 *
 * @param sets what is held by duty [Pa]
 * @param flow what goes back [m3/s], above 0
 */
export function mostHeld(space: SearchSpace, sets: readonly number[], flow: number): readonly number[] {
  const { brief, contexts, layout, slots } = space;
  const optionsOf = (id: string) => slots.find((s) => s.id === id)?.options ?? [];
  const line = layout.lines.find((l) => l.run.includes('regulator'));
  const regulators = optionsOf('regulator').flatMap((p) => (p?.kind === 'regulator' ? [p] : []));
  const highest = Math.max(0, ...Object.values(layout.nodes));
  const tanks = optionsOf('tank').flatMap((p) => (p?.kind === 'tank' ? [p.size.height] : []));
  return brief.duties.map((duty, i) => {
    const { density, viscosity } = contexts[0]!.liquids.get(duty.liquid)!;
    const takes = optionsOf('return-hose').map((hose) => {
      if (hose?.kind !== 'hose') return 0;
      const { bore, roughness } = hose;
      const bends =
        (MORE * (line?.elbows ?? 0) * elbowK(bore) * density * (flow / ((Math.PI / 4) * bore ** 2)) ** 2) / 2;
      return (
        bends + hoseLoss({ flow, bore, length: RETURN_HOSE, roughness, density, viscosity }).pressureLoss
      );
    });
    const behind = Math.max(0, ...takes) + density * G * Math.max(highest, ...tanks);
    const rises = regulators.map((r) =>
      Math.max(
        sets[i]! + (r.overridePressure / r.ratedFlow) * flow,
        (density / 1000) * BAR * (flow / r.flowAtOneBar) ** 2,
      ),
    );
    return Math.max(sets[i]!, ...rises) + behind;
  });
}
