import { pumpDemand, pumpShortfall } from '../../physics/index.ts';
import { compared, is, worked, type RigPromise } from '../promise.ts';
import { first } from '../rig-document.ts';
import { STARTS } from '../start-values.data.ts';
import { say, type ProofContext, type ProvenDuty } from './context.ts';
import { askedFlow } from '../asked-flow.ts';
import { orUnknown } from './out-of-range.ts';

/** The pump still serves when worn: outlets and agitation together with a fifth in reserve. */
export function pumpReservePromises(context: ProofContext): RigPromise[] {
  const displacement = first(context.rig, 'pump')?.part.law.action === 'displacement';
  const duties = context.duties.flatMap((proven) => {
    const { duty, open } = proven;
    const outlets = outletFlow(proven, displacement);
    if (open.status === 'failed' || open.pump === undefined || outlets === undefined) return [];
    return [
      {
        duty,
        outlets,
        agitation: stirring(context, proven),
        supply: Math.max(0, open.pump.flow),
        item: open.pump.item,
      },
    ];
  });
  if (duties.length === 0) return [];
  const told = {
    id: 'flow:pump-reserve',
    kind: 'flow' as const,
    sentence: 'The pump still serves when it is worn',
    method: 'pump flow against outlets, agitation and wear',
    source: STARTS.pumpReserve.source,
  };
  return [
    orUnknown(told, () => {
      const rows = duties.map((d) => ({ ...d, demand: pumpDemand(d.outlets, d.agitation) }));
      const worst = rows.reduce((a, b) => (b.supply / b.demand < a.supply / a.demand ? b : a));
      const short = pumpShortfall(worst.demand, worst.supply);
      return compared(
        {
          ...told,
          cause: `"${worst.duty.name}" asks ${say(context, worst.outlets, 'flow')} outside${worst.agitation > 0 ? ` and ${say(context, worst.agitation, 'flow')} in the tank` : ''}, a fifth more for wear${short > 0 ? `; ${say(context, short, 'flow')} short` : ''}`,
          items: [worst.item],
          working: rows.flatMap((r) => [
            worked(
              `asked with reserve: ${r.duty.name}`,
              is(r.demand, 'flow'),
              '({outlets} + {agitation}) × (1 + {reserve})',
              {
                outlets: is(r.outlets, 'flow'),
                agitation: is(r.agitation, 'flow'),
                reserve: is(STARTS.pumpReserve.value, 'ratio'),
              },
            ),
            { text: `pump gives: ${r.duty.name}`, figure: { value: r.supply, dimension: 'flow' as const } },
          ]),
        },
        { value: worst.demand, dimension: 'flow' },
        { value: worst.supply, dimension: 'flow' },
        'at-least',
      );
    }),
  ];
}

/** Flow that stirs the tank in a duty [m3/s]. */
export function stirring(context: ProofContext, { duty, liquid }: ProvenDuty): number {
  return duty.agitate ? liquid.agitationShare * context.tank.volume : 0;
}

/**
 * Flow the outlets must get [m3/s]. Where the duty does not say it: what comes out, if the pump has more to give. A
 * centrifugal or demand pump gives just what goes out, so its reserve can only be told against a stated flow.
 */
function outletFlow({ duty, liquid, open }: ProvenDuty, displacement: boolean): number | undefined {
  return (
    statedFlow({ duty, liquid }) ??
    (displacement ? open.outlets.reduce((sum, o) => sum + Math.max(0, o.flow), 0) : undefined)
  );
}

/** Flow that a duty says its outlets must get, all together [m3/s]. */
export function statedFlow({ duty, liquid }: Pick<ProvenDuty, 'duty' | 'liquid'>): number | undefined {
  const asked = askedFlow(duty, liquid);
  return asked === undefined ? undefined : asked * duty.open.length;
}
