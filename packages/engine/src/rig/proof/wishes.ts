import { compared, is, type RigPromise } from '../promise.ts';
import { first, type Rig } from '../rig-document.ts';
import type { ProofContext } from './context.ts';

/** A tank is sold by a round size: so much less than wished is still that size, as the selection has it. */
const ROUND = 0.98;

/**
 * What the customer wished and the rig does not have. The selection never gives a wish up; whoever changes a part by hand
 * may, and is told. A wish that is fulfilled is told by the list of parts.
 */
export function wishPromises({ rig }: Pick<ProofContext, 'rig'>): RigPromise[] {
  const { tank, hose, rewind } = rig.brief.wishes;
  const out: RigPromise[] = [];
  const given = {
    kind: 'brief' as const,
    method: 'the rig beside the wishes of the brief',
    source: 'the brief',
  };
  const held = first(rig, 'tank');
  if (tank !== undefined && held !== undefined && held.part.volume < tank * ROUND)
    out.push(
      compared(
        {
          ...given,
          id: 'wish:tank',
          sentence: 'Holds as much as was wished',
          cause: 'a smaller tank than the customer wished',
          items: [held.item.id],
        },
        is(tank, 'volume'),
        is(held.part.volume, 'volume'),
        'at-least',
      ),
    );
  const longest = longestHose(rig);
  if (hose !== undefined && longest !== undefined && longest.length < hose * ROUND)
    out.push(
      compared(
        {
          ...given,
          id: 'wish:hose',
          sentence: 'Has as much hose as was wished',
          cause: 'a shorter hose than the customer wished',
          items: longest.items,
        },
        is(hose, 'length'),
        is(longest.length, 'length'),
        'at-least',
      ),
    );
  const reel = first(rig, 'reel');
  if (rewind !== undefined && reel !== undefined && reel.part.rewind !== rewind)
    out.push(
      compared(
        {
          ...given,
          id: 'wish:rewind',
          sentence: `Reel is rewound ${rewind === 'hand' ? 'by hand' : 'by a motor'}, as was wished`,
          cause: `the reel is rewound ${rewind === 'hand' ? 'by a motor' : 'by hand'}`,
          items: [reel.item.id],
        },
        is(1, 'count'),
        is(0, 'count'),
        'at-least',
      ),
    );
  return out;
}

/** Hose of the outlet that has most of it; a boom's own hoses follow from its size and are no wish. */
function longestHose(rig: Rig): { length: number; items: readonly string[] } | undefined {
  const hoses = rig.lines.flatMap(({ to, run }) => {
    const parts = run.map((id) => rig.items.get(id)!);
    if (to !== 'air' || parts.some(({ part }) => part.kind === 'boom')) return [];
    const wound = parts.filter(({ part }) => part.kind === 'hose');
    if (wound.length === 0) return [];
    return [
      {
        length: wound.reduce((sum, { item }) => sum + (item.length ?? 0), 0),
        items: wound.map(({ item }) => item.id),
      },
    ];
  });
  return hoses.reduce<(typeof hoses)[number] | undefined>(
    (most, h) => (most === undefined || h.length > most.length ? h : most),
    undefined,
  );
}
