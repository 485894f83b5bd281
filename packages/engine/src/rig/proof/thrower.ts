import type { PartOf } from '../../catalogue/index.ts';
import { outletHeightOf } from '../duty-network.ts';
import type { ThrowConditions } from '../gun-throw.ts';
import type { Rig } from '../rig-document.ts';
import type { ProvenDuty } from './context.ts';
import type { Site } from './site.ts';

/** A gun that is open in a duty. */
export interface Thrower {
  readonly line: string;
  readonly conditions: ThrowConditions;
  readonly pressure: number;
  readonly flow: number;
  /** Gun and tip. */
  readonly items: readonly string[];
}

/** The first gun that is open in a duty, with the pressure at its tip. */
export function throwerOf(
  rig: Rig,
  site: Site,
  { duty, open, liquid }: Pick<ProvenDuty, 'duty' | 'open' | 'liquid'>,
): Thrower | undefined {
  for (const outlet of open.outlets) {
    const line = rig.lines.find((l) => l.id === outlet.line)!;
    const parts = line.run.map((id) => rig.items.get(id)!);
    const gun = parts.find((p) => p.part.kind === 'gun');
    const tip = parts.find((p) => p.part.kind === 'tip');
    if (gun === undefined || tip === undefined) continue;
    return {
      line: line.id,
      conditions: {
        gun: gun.part as PartOf<'gun'>,
        tip: tip.part as PartOf<'tip'>,
        density: liquid.density,
        airDensity: site.airDensity,
        tipHeight: Math.max(0, outletHeightOf(line, duty)),
      },
      pressure: Math.max(0, outlet.tipPressure),
      flow: Math.max(0, outlet.flow),
      items: [gun.item.id, tip.item.id],
    };
  }
  return undefined;
}
