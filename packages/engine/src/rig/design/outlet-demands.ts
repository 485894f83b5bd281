import type { Layout, LayoutLine, PartOf } from '../../catalogue/index.ts';
import type { Brief, Duty } from '../brief.ts';
import type { DutyLiquid } from '../proof/liquid.ts';
import type { Chosen } from './assemble.ts';
import type { LineContext } from './line-context.ts';
import type { LineOption } from './line-options.ts';
import type { PumpDemand } from './pump-options.ts';

/** What the open outlets together ask at the manifold in one duty. */
interface OutletDemand {
  readonly duty: Duty;
  readonly liquid: DutyLiquid;
  readonly pressure: number;
  readonly flow: number;
}

/** Lines to the air that a duty of the brief opens. */
export function usedOutlets(layout: Layout, brief: Brief): LayoutLine[] {
  return layout.lines.filter(
    (l) => l.to === 'air' && brief.duties.some((d) => (d.open as readonly string[]).includes(l.opens)),
  );
}

/** What the outlets of some lines ask in each duty: the highest pressure, and all flows together. */
export function outletDemands(
  { brief, liquids }: LineContext,
  lines: readonly LineOption[],
): readonly OutletDemand[] {
  return brief.duties.map((duty) => {
    const asked = lines.flatMap((o) => o.demand.get(duty.id) ?? []);
    return {
      duty,
      liquid: liquids.get(duty.liquid)!,
      pressure: Math.max(0, ...asked.map((d) => d.pressure)),
      flow: asked.reduce((sum, d) => sum + d.flow, 0),
    };
  });
}

/** The same with the jet of an agitator, as the pump must give it: a little more than asked. */
export function pumpDemands(
  outlets: readonly OutletDemand[],
  agitator: PartOf<'agitator'> | undefined,
): PumpDemand[] {
  return outlets.map(({ duty, liquid, pressure, flow }) => {
    const jet =
      duty.agitate && agitator !== undefined
        ? agitator.flowAtOneBar * Math.sqrt(pressure / 1e5 / (liquid.density / 1000))
        : 0;
    return {
      duty: duty.id,
      pressure: pressure * 1.03 + 0.05e5,
      flow: (flow + jet) * 1.03,
      density: liquid.density,
    };
  });
}

/** Parts of lines by slot, hoses with their length and nozzles with their number. */
export function partsOfLines(lines: readonly LineOption[]): [string, Chosen][] {
  return lines.flatMap((line) =>
    [...line.parts].map(([slot, part]): [string, Chosen] => {
      const boom = line.parts.get('boom');
      if (part.kind === 'hose') return [slot, { part, length: line.hoseLength }];
      if (slot === 'nozzle' && boom?.kind === 'boom') return [slot, { part, count: boom.nozzles }];
      return [slot, { part }];
    }),
  );
}
