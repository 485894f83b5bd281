import { pumpDemands, outletDemands, usedOutlets } from '../design/outlet-demands.ts';
import { settingFor } from '../design/rest-of-rig.ts';
import { lineOf } from './settings.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** What the outlet lines of a rig ask of the rest of it. */
export interface LineNeeds {
  /** Highest and lowest pressure that the regulator is set to, over the duties [Pa]. */
  readonly set: number;
  readonly lowest: number;
  /** Highest pressure asked of the pump, with its spare [Pa]. */
  readonly pressure: number;
  /** Set pressure in each duty of the brief, in its order [Pa]. */
  readonly sets: readonly number[];
}

const known = new WeakMap<SearchSpace, Map<string, LineNeeds | undefined>>();

/** What the outlet lines ask that are built of some parts; undefined when one of them cannot be set. */
export function lineNeeds(space: SearchSpace, partAt: PartAt): LineNeeds | undefined {
  const lines = usedOutlets(space.layout, space.brief);
  const key = lines.flatMap((l) => l.run.map((id) => partAt(id)?.id ?? '-')).join(' ');
  let answers = known.get(space);
  if (answers === undefined) known.set(space, (answers = new Map<string, LineNeeds | undefined>()));
  if (!answers.has(key)) answers.set(key, needsOf(space, lines, partAt));
  return answers.get(key);
}

function needsOf(
  space: SearchSpace,
  lines: ReturnType<typeof usedOutlets>,
  partAt: PartAt,
): LineNeeds | undefined {
  const built = lines.map((line) => lineOf(space, line, partAt)?.option);
  if (built.some((b) => b === undefined)) return undefined;
  const outlets = outletDemands(
    space.contexts[0]!,
    built.map((b) => b!),
  );
  const demands = pumpDemands(outlets, undefined);
  const { set, lowest, chosen } = settingFor(demands);
  return {
    set,
    lowest,
    pressure: Math.max(...demands.map((d) => d.pressure)),
    sets: demands.map((d) => chosen.setByDuty?.get(d.duty) ?? set),
  };
}
