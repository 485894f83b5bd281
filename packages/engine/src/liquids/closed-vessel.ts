import { liquidOf } from './liquid-of.ts';
import type { SourceId } from './sources.data.ts';

/** A vessel of a rig that can be shut with liquid in it. */
export interface Vessel {
  readonly name: string;
  readonly vented: boolean;
}

export interface VentDemand {
  readonly vessel: string;
  readonly liquid: string;
  readonly state: 'must-vent' | 'fine';
  readonly sentence: string;
  readonly sources: readonly SourceId[];
}

/**
 * Vessels that must vent: tanks, drums, ball valves and capped hoses with a liquid that gives off gas.
 *
 * @throws RangeError for an unknown liquid.
 */
export function ventDemands(vessels: readonly Vessel[], liquids: readonly string[]): readonly VentDemand[] {
  return liquids
    .map(liquidOf)
    .filter((l) => l.vented)
    .flatMap((liquid) =>
      vessels.map((vessel): VentDemand => ({
        vessel: vessel.name,
        liquid: liquid.id,
        state: vessel.vented ? 'fine' : 'must-vent',
        sentence: vessel.vented
          ? `${vessel.name} vents: ${liquid.name} gives off oxygen.`
          : `${vessel.name} can be shut with ${liquid.name} in it: the oxygen it gives off bursts it. Fit a vent, or a vented ball.`,
        sources: ['ADAM_GORDON_1999', 'HSDB_NAOCL'],
      })),
    );
}
