import { display } from '../../quantity/index.ts';
import type { OutletState } from '../duty-state.ts';
import type { Step } from '../promise.ts';
import type { WorkContext, ProvenDuty } from './context.ts';

const BAR = 1e5;
/** Water that leaflets give their flows with [kg/m3]. */
const LEAFLET_WATER = 1000;

/** The flow of a tip put into its law with this rig's numbers, for whoever wants to do the sum again. */
export function tipWorking(context: WorkContext, { liquid }: ProvenDuty, outlet: OutletState): Step[] {
  const run = context.rig.lines.find((l) => l.id === outlet.line)!.run;
  const last = context.rig.items.get(run[run.length - 1] ?? '');
  if (last?.part.kind !== 'tip' && last?.part.kind !== 'nozzle') return [];
  // As the network counts them: the boom says how many nozzles it has.
  const boom = run.map((id) => context.rig.items.get(id)!.part).find((p) => p.kind === 'boom');
  const count = boom?.nozzles ?? last.item.count;
  const bar = display(BAR, 'pressure', context.units, { decimals: 1 });
  const sum = [
    ...(count > 1 ? [String(count)] : []),
    display(last.part.flowAtOneBar, 'flow', context.units, { decimals: 3 }),
    `√(${display(outlet.tipPressure, 'pressure', context.units, { decimals: 1 })} / (${bar} × ${(liquid.density / LEAFLET_WATER).toFixed(3)}))`,
  ].join(' × ');
  return [
    {
      text: `flow by the law of the tip, n q √(p / (${bar} × specific gravity)): ${sum}`,
      figure: { value: outlet.flow, dimension: 'flow' },
    },
  ];
}
