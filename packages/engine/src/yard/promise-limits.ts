import { first, type Proof, type Rig } from '../rig/index.ts';
import type { YardRow } from './yard-row.ts';

/** What a reading must not fall below or rise above for a promise to hold. */
export interface ReadingLimit {
  readonly sense: 'at-least' | 'at-most';
  /** In the reading's own unit, SI. */
  readonly value: number;
  /** What is broken beyond it, in the words of the promise. */
  readonly promise: string;
}

/**
 * Limits on one reading that the promises of the proof set.
 *
 * The yard runs water and the proof the duty's own liquid, so a reading may miss what it should show by the same share by
 * which the proof may miss what was asked.
 */
export function promiseLimits(rig: Rig, proof: Proof, row: YardRow, expected: number): ReadingLimit[] {
  const { duty, line } = row;
  const spare = (id: string): { ratio: number; sentence: string } | undefined => {
    const p = proof.promises.find((q) => q.id === id);
    const [asked, has] = [p?.asked?.value, p?.has?.value];
    if (p === undefined || asked === undefined || has === undefined || !(asked > 0 && has > 0))
      return undefined;
    return { ratio: asked / has, sentence: p.sentence };
  };
  const from = (id: string, sense: ReadingLimit['sense'], of: (ratio: number) => number): ReadingLimit[] => {
    const found = spare(id);
    return found === undefined ? [] : [{ sense, value: of(found.ratio), promise: found.sentence }];
  };
  switch (row.instrument) {
    case 'bucket':
      return from(`flow:${duty!.id}:${line!}`, 'at-most', (ratio) => expected / ratio);
    case 'tip-gauge':
      return from(`tip-pressure:${duty!.id}:${line!}:asked`, 'at-least', (ratio) => expected * ratio);
    case 'drive-speed':
      return from('power:speed', 'at-most', (ratio) => expected * ratio);
    case 'shut-gauge':
      return shutLimit(rig, proof, row);
    case 'tape-farthest': {
      const reach = proof.duties.find((d) => d.id === duty!.id)?.reach;
      const promise = proof.promises.find((p) => p.id === `reach:${duty!.id}`);
      const middle = reach?.meaning === 'touched' ? reach.farthest : reach?.bulk;
      if (reach === undefined || promise === undefined || middle === undefined || !(middle > 0)) return [];
      return [{ sense: 'at-least', value: (expected * reach.asked) / middle, promise: promise.sentence }];
    }
    default:
      return [];
  }
}

/** Highest pressure with everything shut that pump, hose and fittings stand, a slammed trigger included. */
function shutLimit(rig: Rig, proof: Proof, row: YardRow): ReadingLimit[] {
  const peak = 1 + (first(rig, 'regulator')?.part.shutPeak ?? 0);
  const shut = proof.duties.find((d) => d.id === row.duty!.id)?.shut;
  const highest = Math.max(0, ...(shut?.pressureAt.values() ?? []));
  let weakest = { most: Infinity, name: '' };
  for (const [item, pressure] of shut?.pressureAt ?? []) {
    const part = rig.items.get(item)!.part;
    // Suction and return see none of the pressure that the gauge shows.
    if (!('maxPressure' in part) || pressure < highest / 2) continue;
    const most = part.kind === 'pump' ? part.maxPressure : part.maxPressure / peak;
    if (most < weakest.most) weakest = { most, name: part.name };
  }
  if (weakest.most === Infinity) return [];
  return [{ sense: 'at-most', value: weakest.most, promise: `${weakest.name} outlasts a slammed trigger` }];
}
