import { outputByHose } from '../physics/index.ts';
import { dutySolver } from './duty-state.ts';
import type { DayProof } from './proof/day.ts';
import { liquidOf } from './proof/liquid.ts';
import { siteOf } from './proof/site.ts';
import type { Rig } from './rig-document.ts';

/** The same day with other lengths of hose, each with the flow that comes through it. */
export interface HoseCurve {
  /** [m] */
  readonly lengths: readonly number[];
  /** [m3/s] */
  readonly flows: readonly number[];
  readonly units: readonly number[];
  readonly areas: readonly number[];
  /** Places the rig stood at. */
  readonly stops: readonly number[];
  /** Shortest hose within 1 % of the best [m]. */
  readonly paying: number;
}

/** Least flow that a day can be told with [m3/s]. */
const LEAST_FLOW = 1e-6;

/**
 * What a day yields with hoses of other lengths, all of it walked out; undefined where no hose is walked out, or where
 * nothing comes through one of them.
 *
 * Each length is solved anew: a longer hose saves moves and loses flow.
 */
export function hoseCurve(rig: Rig, day: DayProof, lengths: readonly number[]): HoseCurve | undefined {
  const duty = rig.brief.duties.find((d) => d.id === day.duty);
  const line = rig.lines.find((l) => l.opens === duty?.open[0]);
  const hose = line?.run.find((id) => rig.items.get(id)?.part.kind === 'hose');
  if (duty === undefined || hose === undefined || (day.input.hoseLength ?? 0) === 0) return undefined;
  const liquid = liquidOf(rig.brief, duty.liquid, siteOf(rig.brief));
  const flows = lengths.map((length) => {
    const entry = rig.items.get(hose)!;
    const items = new Map(rig.items).set(hose, { ...entry, item: { ...entry.item, length } });
    const { open } = dutySolver({ ...rig, items }, false)({ ...duty, hoseOut: length }, liquid);
    return open.outlets.reduce((sum, o) => sum + Math.max(0, o.flow), 0);
  });
  if (lengths.length === 0 || flows.some((flow) => !(flow > LEAST_FLOW))) return undefined;
  return { lengths, flows, ...outputByHose({ day: day.input, lengths, flows }) };
}
