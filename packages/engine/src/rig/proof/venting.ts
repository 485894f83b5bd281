import { isLiquid, ventDemands, type VentDemand } from '../../liquids/index.ts';
import type { RigPromise } from '../promise.ts';
import type { ProofContext } from './context.ts';
import { decisionOn } from './decision.ts';

/** The one decision on ball valves that trap a liquid which gives off gas. */
const ABOUT_VALVES = 'venting:valves';

/** A liquid that gives off gas bursts what it is shut in: the tank must vent, a ball valve needs a vented ball. */
export function ventPromises(context: ProofContext): RigPromise[] {
  const { brief, items } = context.rig;
  const liquids = [...new Set(brief.liquids.map((l) => l.liquid).filter(isLiquid))];
  const tank = ventDemands([{ name: context.tank.name, vented: context.tank.vented }], liquids);
  if (tank.length === 0) return [];
  const valves = [...items.values()].flatMap(({ item, part }) =>
    part.kind === 'valve' && part.form.startsWith('ball')
      ? [{ item: item.id, name: part.name, vented: part.ventedBall === true }]
      : [],
  );
  const demands = ventDemands(valves, liquids).filter((d) => d.state === 'must-vent');
  const shut = tank.find((d) => d.state === 'must-vent');
  const decision = decisionOn(brief, ABOUT_VALVES);
  const open = demands.length > 0 && decision === undefined;
  return [
    {
      id: 'materials:venting',
      kind: 'materials',
      state: shut !== undefined ? 'broken' : open ? 'unknown' : demands.length > 0 ? 'thin' : 'kept',
      sentence: 'Nothing that gives off gas is shut in',
      sense: 'at-least',
      cause:
        shut?.sentence ??
        (decision !== undefined && demands.length > 0
          ? `${decision.who}, ${decision.when}: ${decision.why}`
          : (demands[0]?.sentence ??
            `${tank[0]!.sentence} Never cap a hose or close a drum with it inside.`)),
      items: [...new Set(['tank', ...valves.filter((v) => !v.vented).map((v) => v.item)])],
      method: 'vessels that can be shut, against liquids that give off gas',
      source: 'Adam and Gordon 1999: oxygen from hypochlorite; handling rules of the liquids',
      working: [...tank, ...once(demands)].map((d) => ({ text: d.sentence })),
      ...(open ? { decisions: [ABOUT_VALVES] } : {}),
    },
  ];
}

/** The same valve twice is told once. */
function once(demands: readonly VentDemand[]): readonly VentDemand[] {
  return [...new Map(demands.map((d) => [d.sentence, d])).values()];
}
