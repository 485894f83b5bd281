import { dutySolver } from '../duty-state.ts';
import { reachTowards } from '../gun-throw.ts';
import type { DutyProof } from '../proof/prove.ts';
import { liquidOf } from '../proof/liquid.ts';
import { siteOf } from '../proof/site.ts';
import { throwerOf } from '../proof/thrower.ts';
import type { Rig } from '../rig-document.ts';

/** What comes out of a hose, and how far it is thrown, with a longer or shorter one on the rig. */
export interface HoseReach {
  readonly item: string;
  /** Length of the hose, rising; the rig's own is one of them [m]. */
  readonly lengths: readonly number[];
  /** At the outlet [m3/s]. */
  readonly flows: readonly number[];
  /** Towards the duty's target [m]; absent when it has none. */
  readonly reach?: {
    readonly farthest: readonly number[];
    readonly bulk: readonly number[];
    /** Kept nine times in ten. */
    readonly promised: readonly number[];
  };
  /** Length of the hose that the rig has [m]. */
  readonly own: number;
}

const STEPS = 14;
/** The curve goes on to this share of the hose that the rig has. */
const BEYOND = 1.75;
/** Shortest hose of the curve [m]. */
const LEAST = 1;

/**
 * Flow and reach of a duty against the length of the hose; undefined when no hose is walked out. Of a longer hose as much is
 * walked out as the duty says and the rest stays on the reel; a shorter one is out whole.
 */
export function hoseReach(rig: Rig, { duty }: DutyProof): HoseReach | undefined {
  const site = siteOf(rig.brief);
  const line = rig.lines.find((l) => l.to === 'air' && duty.open.some((o) => o === l.opens));
  const item = line?.run.find((id) => rig.items.get(id)?.part.kind === 'hose');
  if (line === undefined || item === undefined || line.opens === 'boom' || line.opens === 'bar')
    return undefined;
  const entry = rig.items.get(item)!;
  const own = Math.max(LEAST, entry.item.length ?? 0);
  const shares = Array.from({ length: STEPS }, (_, i) => ((i + 1) / STEPS) * BEYOND);
  const lengths = [...new Set([...shares, 1])].sort((a, b) => a - b).map((share) => share * own);
  const liquid = liquidOf(rig.brief, duty.liquid, site);
  const flows: number[] = [];
  const thrown: { farthest: number; bulk: number; promised: number }[] = [];
  for (const length of lengths) {
    const items = new Map(rig.items).set(item, { ...entry, item: { ...entry.item, length } });
    const longer: Rig = { ...rig, items };
    const out = { ...duty, hoseOut: Math.min(duty.hoseOut ?? length, length) };
    const { open } = dutySolver(longer, false)(out, liquid);
    flows.push(open.outlets.find((o) => o.line === line.id)?.flow ?? 0);
    const thrower = throwerOf(longer, site, { duty: out, open, liquid });
    const found =
      duty.target === undefined || thrower === undefined
        ? undefined
        : reachTowards(thrower.conditions, thrower.pressure, duty.target, duty.reach);
    if (found !== undefined) thrown.push(found);
  }
  return {
    item,
    lengths,
    flows,
    own,
    ...(thrown.length < lengths.length
      ? {}
      : {
          reach: {
            farthest: thrown.map((t) => t.farthest),
            bulk: thrown.map((t) => t.bulk),
            promised: thrown.map((t) => t.promised),
          },
        }),
  };
}
