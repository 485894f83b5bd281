import { compared, is, unknown, worked, type RigPromise } from '../promise.ts';
import { first } from '../rig-document.ts';
import type { WorkContext, ProvenDuty } from './context.ts';
import type { DutyLiquid } from './liquid.ts';

/** Least flow through a plain return, without a jet, in tank volumes per second: 5 %/min. */
export const PLAIN_RETURN = 0.05 / 60;
const MINUTE = 60;

export function dutiesToStir(context: WorkContext): ProvenDuty[] {
  return context.duties.filter(({ duty, liquid }) => duty.agitate && liquid.agitationShare > 0);
}

/** Item through which liquid goes back into the tank: a jet, or else the plain return. */
export function backToTank({ rig }: WorkContext): string | undefined {
  return (first(rig, 'agitator') ?? first(rig, 'regulator'))?.item.id;
}

/** Flow back into the tank that keeps a liquid mixed [m3/s]. */
export function stirringAsked(context: WorkContext, liquid: DutyLiquid): number {
  return stirringShare(context, liquid) * context.tank.volume;
}

/** The same in tank volumes per second [1/s]. */
function stirringShare({ rig }: WorkContext, liquid: DutyLiquid): number {
  return Math.max(liquid.agitationShare, first(rig, 'agitator') === undefined ? PLAIN_RETURN : 0);
}

/** The mix stays mixed while spraying: the least flow back into the tank over all duties that ask for agitation. */
export function agitationPromises(context: WorkContext): RigPromise[] {
  const asking = dutiesToStir(context);
  if (asking.length === 0) return [];
  const jet = first(context.rig, 'agitator');
  const back = backToTank(context);
  const told = {
    id: 'agitation',
    kind: 'agitation' as const,
    sentence: 'The mix stays mixed while spraying',
    method: 'agitation flow per tank volume',
    source:
      'tank-mixing guidance of 3 %/min for solutions and 5 %/min for suspensions or a plain return (NL rules 2009 and 2012; GRDC manual 2025)',
  };
  const demands = asking.map(({ duty, open, liquid }) => ({
    duty,
    asked: stirringAsked(context, liquid),
    share: stirringShare(context, liquid),
    has: back === undefined ? 0 : (open.flowThrough.get(back) ?? 0),
    solved: open.status === 'converged',
  }));
  if (demands.some((d) => !d.solved))
    return [
      unknown(
        { ...told, cause: 'a duty could not be solved' },
        { value: demands[0]!.asked, dimension: 'flow' },
      ),
    ];
  const worst = demands.reduce((a, b) => (b.has / b.asked < a.has / a.asked ? b : a));
  return [
    compared(
      {
        ...told,
        cause:
          jet === undefined
            ? `the return alone, in "${worst.duty.name}"`
            : `${jet.part.name}, in "${worst.duty.name}"`,
        items: back === undefined ? [] : [back],
        working: [
          worked(
            `asked in "${worst.duty.name}"`,
            is(worst.asked, 'flow'),
            '{share of the tank a minute} × {tank}',
            {
              'share of the tank a minute': is(worst.share * MINUTE, 'ratio'),
              tank: is(context.tank.volume, 'volume'),
            },
            1 / MINUTE,
          ),
          ...demands.map((d) => ({
            text: `back into the tank: ${d.duty.name}`,
            figure: { value: d.has, dimension: 'flow' as const },
          })),
        ],
      },
      { value: worst.asked, dimension: 'flow' },
      { value: worst.has, dimension: 'flow' },
      'at-least',
    ),
  ];
}
