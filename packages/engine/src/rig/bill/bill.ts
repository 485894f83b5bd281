import type { Part, Shop } from '../../catalogue/index.ts';
import type { Plumbing, Supply } from '../plumbing/index.ts';
import type { Rig } from '../rig-document.ts';
import type { BillLine } from './bill-line.ts';
import { hardwareFor, type HardwareNeed } from './hardware.ts';
import { clampNeeds, cutList, type HoseCut } from './hoses.ts';
import { labour, smallStuff, timesIn } from './labour.ts';
import { PartLines, type RawLine } from './part-lines.ts';
import { priced, pricingOf, type Discount, type Tax } from './pricing.ts';

export interface Bill {
  readonly lines: readonly BillLine[];
  readonly plumbing: Plumbing;
  /** Every piece of hose as it is cut. */
  readonly cuts: readonly HoseCut[];
  /** Small things that the catalogue lacks, named. */
  readonly missing: readonly string[];
  readonly costCents: number;
  /** Sum of the lines, before discount. */
  readonly linesCents: number;
  /** Present when one is asked. */
  readonly discount?: Discount;
  /** What the customer pays without tax and freight. */
  readonly priceCents: number;
  /** Present when the shop's settings name a tax. */
  readonly tax?: Tax;
  /** Present when the rig's pricing names it. */
  readonly freightCents?: number;
  /** What is to be paid, tax and freight included as far as they are reckoned. */
  readonly totalCents: number;
  /** Dry mass of the rig: every part, hose, fitting and small thing of the catalogue [kg]. */
  readonly dryMass: number;
  /** Working days from order to a tested rig. */
  readonly readyInDays: number;
}

/**
 * Every part, hose length, fitting, small thing and hour that a rig takes, with cost, price, mass and shortage.
 *
 * @returns the bill for the straps, bolts, wire, fuses and labels that a proof asks for; what does not depend on them is
 * worked out once, since a proof asks twice: the straps follow from the mass of all the rest
 */
export function billFor(
  rig: Rig,
  supply: Supply,
  shop: Shop,
  plumbing: Plumbing,
): (needs: readonly HardwareNeed[]) => Bill {
  const lines = new PartLines();
  for (const { item, part } of rig.items.values()) {
    if (part.kind === 'hose')
      lines.add('hose', part, wholeFeet(item.length ?? 0) * item.count, 'ft', item.id);
    else lines.add('part', part, item.count, 'each', item.id);
  }
  for (const [part, count] of countPieces(plumbing)) lines.add('fitting', part, count, 'each');
  const clamps = hardwareFor(clampNeeds(rig, plumbing), supply.hardware);
  const times = timesIn(rig, plumbing);
  const work = [...labour(shop, times), ...smallStuff(shop, times)];
  const pricing = pricingOf(shop, rig.document.pricing);
  const cuts = cutList(rig, plumbing);
  return (needs) => {
    const hardware = hardwareFor(needs, supply.hardware, clamps);
    const all: RawLine[] = [...lines.list()];
    // Like parts stand on one line, so that none takes from the shelf what another counts on.
    for (const { part, quantity, unit } of hardware.found.values())
      if (quantity > 0) all.push(lines.next('hardware', part, quantity, unit));
    all.push(...work);
    const money = priced(all, pricing);
    const late = money.lines.filter((l) => l.short > 0).map((l) => l.leadTimeDays);
    return {
      ...money,
      plumbing,
      cuts,
      missing: [...hardware.missing],
      dryMass: all.reduce((sum, l) => sum + l.mass, 0),
      readyInDays: shop.assemblyDays + Math.max(0, ...late),
    };
  };
}

const FOOT = 0.3048;

/** Hose and wire are sold by whole feet. */
export function wholeFeet(length: number): number {
  return Math.ceil(length / FOOT - 1e-6);
}

function countPieces({ joints, added }: Plumbing): Map<Part, number> {
  const counts = new Map<Part, number>();
  const count = (part: Part, times: number) => counts.set(part, (counts.get(part) ?? 0) + times);
  for (const { part } of added) count(part, 1);
  for (const { pieces, times } of joints) for (const piece of pieces) count(piece, times);
  return counts;
}
