import type { Part, Shop } from '../catalogue/index.ts';
import { plumbingOf, type Plumbing, type Supply } from './plumbing/index.ts';
import type { Rig } from './rig-document.ts';

/** One line of the bill; money in integer cents, for the whole line. */
export interface BillLine {
  readonly sort: 'part' | 'hose' | 'fitting' | 'labour' | 'small-stuff';
  /** Item of the rig, where the line is one. */
  readonly item?: string;
  readonly part?: string;
  readonly name: string;
  readonly quantity: number;
  readonly unit: 'each' | 'ft' | 'h';
  readonly costCents: number;
  readonly priceCents: number;
  /** [kg] */
  readonly mass: number;
  /** How many are short of stock, and how long they take to come. */
  readonly short: number;
  readonly leadTimeDays: number;
}

export interface Bill {
  readonly lines: readonly BillLine[];
  readonly plumbing: Plumbing;
  readonly costCents: number;
  readonly priceCents: number;
  /** Dry mass of the rig: every part, hose and fitting [kg]. */
  readonly dryMass: number;
  /** Working days from order to a tested rig. */
  readonly readyInDays: number;
}

const FOOT = 0.3048;

/** Every part, hose length, fitting, hour and small thing that the rig takes, with cost and price. */
export function billOf(rig: Rig, supply: Supply, shop: Shop, pressureAt: (item: string) => number): Bill {
  const plumbing = plumbingOf(rig, supply, pressureAt);
  const lines: BillLine[] = [];
  for (const { item, part } of rig.items.values()) {
    if (part.kind === 'hose') {
      const feet = Math.ceil((item.length ?? 0) / FOOT - 1e-6) * item.count;
      if (feet > 0) lines.push(partLine('hose', part, feet, 'ft', item.id));
    } else lines.push(partLine('part', part, item.count, 'each', item.id));
  }
  for (const [part, count] of countPieces(plumbing)) lines.push(partLine('fitting', part, count, 'each'));
  lines.push(...work(rig, shop, plumbing));
  const parts = lines.filter((l) => l.short > 0);
  return {
    lines,
    plumbing,
    costCents: sum(lines, (l) => l.costCents),
    priceCents: sum(lines, (l) => l.priceCents),
    dryMass: sum(lines, (l) => l.mass),
    readyInDays: shop.assemblyDays + Math.max(0, ...parts.map((l) => l.leadTimeDays)),
  };
}

function partLine(
  sort: BillLine['sort'],
  part: Part,
  quantity: number,
  unit: 'each' | 'ft',
  item?: string,
): BillLine {
  const line = {
    sort,
    part: part.id,
    name: part.name,
    quantity,
    unit,
    costCents: part.costCents * quantity,
    priceCents: part.priceCents * quantity,
    mass: part.mass * quantity,
    short: Math.max(0, quantity - part.stock),
    leadTimeDays: part.leadTimeDays,
  };
  return item === undefined ? line : { ...line, item };
}

function work(rig: Rig, shop: Shop, { joints }: Plumbing): BillLine[] {
  const parts = [...rig.items.values()];
  const made = joints.reduce((n, j) => n + (j.pieces.length + 1) * j.times, 0);
  const times = (per: 'rig' | 'part' | 'joint' | 'line', kinds?: readonly string[]): number => {
    if (per === 'rig') return 1;
    if (per === 'line') return rig.lines.length;
    if (per === 'joint') return made;
    return parts.filter(({ part }) => kinds === undefined || kinds.includes(part.kind)).length;
  };
  const labour = shop.operations.flatMap((op): BillLine[] => {
    const hours = Math.round(op.hours * times(op.per, op.kinds) * 100) / 100;
    if (hours === 0) return [];
    return [
      {
        sort: 'labour',
        name: op.name,
        quantity: hours,
        unit: 'h',
        costCents: Math.round(hours * shop.labourCostCentsPerHour),
        priceCents: Math.round(hours * shop.labourRateCentsPerHour),
        mass: 0,
        short: 0,
        leadTimeDays: 0,
      },
    ];
  });
  const small = shop.consumables.flatMap((c): BillLine[] => {
    const quantity = times(c.per);
    if (quantity === 0) return [];
    return [
      {
        sort: 'small-stuff',
        name: c.name,
        quantity,
        unit: 'each',
        costCents: c.costCents * quantity,
        priceCents: c.priceCents * quantity,
        mass: 0,
        short: 0,
        leadTimeDays: 0,
      },
    ];
  });
  return [...labour, ...small];
}

function countPieces({ joints, added }: Plumbing): Map<Part, number> {
  const counts = new Map<Part, number>();
  const count = (part: Part, times: number) => counts.set(part, (counts.get(part) ?? 0) + times);
  for (const { part } of added) count(part, 1);
  for (const { pieces, times } of joints) for (const piece of pieces) count(piece, times);
  return counts;
}

function sum<T>(list: readonly T[], value: (entry: T) => number): number {
  return list.reduce((total, entry) => total + value(entry), 0);
}
