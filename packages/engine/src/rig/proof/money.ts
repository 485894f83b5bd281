import type { Bill } from '../bill/index.ts';
import { compared, is, worked, type RigPromise } from '../promise.ts';
import { packDiameter } from '../reel-drum.ts';
import { first } from '../rig-document.ts';
import type { ProofContext } from './context.ts';

/** Price, delivery and the joints of the plumbing: what the bill decides. */
export function billPromises(context: ProofContext): RigPromise[] {
  const { bill } = context;
  const { budgetCents, readyInDays } = context.rig.brief.limits;
  const out: RigPromise[] = [plumbingPromise(bill)];
  if (budgetCents !== undefined)
    out.push(
      compared(
        {
          id: 'price',
          kind: 'price',
          sentence: 'Costs no more than the budget',
          cause: 'list prices, labour and small stuff',
          method: 'bill',
          source: 'the catalogue and the shop',
        },
        { value: budgetCents / 100, dimension: 'money' },
        { value: bill.priceCents / 100, dimension: 'money' },
        'at-most',
      ),
    );
  if (readyInDays !== undefined) {
    const late = [...bill.lines]
      .filter((l) => l.short > 0)
      .sort((a, b) => b.leadTimeDays - a.leadTimeDays)[0];
    out.push(
      compared(
        {
          id: 'ready',
          kind: 'ready',
          sentence: 'Ready by the day it is wanted',
          cause:
            late === undefined
              ? 'everything is in stock'
              : `${late.name} must be ordered and takes ${late.leadTimeDays} days`,
          items: late?.item === undefined ? [] : [late.item],
          method: 'bill',
          source: 'lead times of the catalogue; assembly days of the shop',
        },
        { value: readyInDays, dimension: 'days' },
        { value: bill.readyInDays, dimension: 'days' },
        'at-most',
      ),
    );
  }
  return [...out, ...reelPromises(context)];
}

/** Broken by a joint that nothing makes; unknown while the catalogue lacks a small thing. */
function plumbingPromise({ plumbing, missing }: Bill): RigPromise {
  const { gaps, joints } = plumbing;
  const state = gaps.length > 0 ? 'broken' : missing.length > 0 ? 'unknown' : 'kept';
  return {
    id: 'plumbing',
    kind: 'plumbing',
    state,
    sentence: {
      broken: `${gaps.length} ${gaps.length === 1 ? 'joint has' : 'joints have'} no fitting in the catalogue`,
      unknown: 'Every joint is made; small things are missing in the catalogue',
      kept: 'Every joint is made with parts of the catalogue',
    }[state],
    ...(state === 'broken'
      ? {
          asked: { value: 0, dimension: 'count' } as const,
          has: { value: gaps.length, dimension: 'count' } as const,
        }
      : {}),
    sense: 'at-most',
    ...(state === 'unknown' ? {} : { margin: state === 'kept' ? 1 : -1 }),
    cause: gaps[0] ?? missing[0] ?? `${joints.length} joints from the tank to the last tip`,
    items: [],
    method: 'cheapest chain of fittings between each two ports',
    source: 'the catalogue',
    working: [...gaps, ...missing].map((text) => ({ text })),
  };
}

function reelPromises(context: ProofContext): RigPromise[] {
  const reel = first(context.rig, 'reel');
  const hose = context.rig.items.get('hose');
  if (reel === undefined || hose?.part.kind !== 'hose') return [];
  const wound = hose.item.length ?? 0;
  const pack = packDiameter(reel.part, hose.part, wound);
  return [
    compared(
      {
        id: 'reel',
        kind: 'reel',
        sentence: 'All the hose goes on the reel',
        cause: 'the wound pack against the flange',
        working: [
          worked(
            'wound pack',
            is(pack, 'length'),
            '√({hub} ^ 2 + 4 × {hose wound} × {outside of the hose} ^ 2 / (π × {width of the drum}))',
            {
              hub: is(reel.part.hubDiameter, 'length'),
              'hose wound': is(wound, 'length'),
              'outside of the hose': is(hose.part.outsideDiameter, 'length'),
              'width of the drum': is(reel.part.drumWidth, 'length'),
            },
          ),
        ],
        items: [reel.item.id, hose.item.id],
        method: 'pack of hose turns on a drum',
        source: 'geometry: each turn takes a square of the hose',
      },
      { value: reel.part.flangeDiameter, dimension: 'length' },
      { value: pack, dimension: 'length' },
      'at-most',
    ),
  ];
}
