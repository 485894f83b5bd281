import { mates, type Kind, type Port, type Shop } from '../../catalogue/index.ts';
import type { Plumbing, RigJoint } from '../plumbing/index.ts';
import type { Rig } from '../rig-document.ts';
import type { RawLine } from './part-lines.ts';

type Per = Shop['operations'][number]['per'];

/** Hours of each operation of the shop, at its own rate where it has one. */
export function labour(shop: Shop, times: Times): RawLine[] {
  return shop.operations.flatMap((op): RawLine[] => {
    const hours = Math.round(op.hours * times(op.per, op.kinds) * 100) / 100;
    if (hours === 0) return [];
    const cost = op.costCentsPerHour ?? shop.labourCostCentsPerHour;
    const rate = op.rateCentsPerHour ?? shop.labourRateCentsPerHour;
    return [line('labour', op.name, hours, 'h', Math.round(hours * cost), Math.round(hours * rate))];
  });
}

/** What is used up and not bought for one rig: sealant, bolts of the mountings, paint. */
export function smallStuff(shop: Shop, times: Times): RawLine[] {
  return shop.consumables.flatMap((c): RawLine[] => {
    const quantity = times(c.per, c.kinds);
    return quantity === 0
      ? []
      : [line('small-stuff', c.name, quantity, 'each', c.costCents * quantity, c.priceCents * quantity)];
  });
}

function line(
  sort: 'labour' | 'small-stuff',
  name: string,
  quantity: number,
  unit: 'each' | 'h',
  costCents: number,
  priceCents: number,
): RawLine {
  return { sort, name, quantity, unit, costCents, mass: 0, short: 0, leadTimeDays: 0, priceCents };
}

/** How often something is done at a rig, of those kinds of parts where it names any. */
type Times = (per: Per, kinds: readonly Kind[] | undefined) => number;

/** Counts a rig once for all operations and small things that go by the count. */
export function timesIn(rig: Rig, plumbing: Plumbing): Times {
  let joints = 0;
  let threads = 0;
  for (const joint of plumbing.joints) {
    joints += (joint.pieces.length + 1) * joint.times;
    threads += threadsIn(rig, plumbing, joint) * joint.times;
  }
  return (per, kinds) => {
    switch (per) {
      case 'rig':
        return 1;
      case 'line':
        return rig.lines.length;
      case 'joint':
        return joints;
      case 'thread':
        return threads;
      case 'part': {
        let parts = 0;
        for (const { part } of rig.items.values())
          if (kinds === undefined || kinds.includes(part.kind)) parts++;
        return parts;
      }
    }
  };
}

/** Taper threads that are made up along a joint: each takes sealant. */
function threadsIn(rig: Rig, { added }: Plumbing, { ends, pieces }: RigJoint): number {
  const [of, id] = [ends[0].of, ends[0].port];
  const part = rig.items.get(of)?.part ?? added.find((f) => f.id === of)?.part;
  let at: Port | undefined = part?.ports.find((p) => p.id === id);
  let threads = at?.joint === 'npt' ? 1 : 0;
  for (const { ports } of pieces) {
    const entered: number = at === undefined ? -1 : ports.findIndex((p) => mates(at!, p));
    at = ports[entered === 0 ? 1 : 0];
    if (at?.joint === 'npt') threads++;
  }
  return threads;
}
