import type { LayoutLine, Part } from '../../catalogue/index.ts';
import { pumpDemands, outletDemands, usedOutlets } from '../design/outlet-demands.ts';
import { settingFor } from '../design/rest-of-rig.ts';
import { remember } from './remember.ts';
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

/** What was asked before, by the parts; the last first, since a search asks for the same lines many times. */
interface Asked {
  readonly lines: ReturnType<typeof usedOutlets>;
  readonly slots: readonly string[];
  readonly known: Map<string, LineNeeds | undefined>;
  last: readonly (Part | undefined)[] | undefined;
  answer: LineNeeds | undefined;
}

const asked = new WeakMap<SearchSpace, Asked>();

/** What the outlet lines ask that are built of some parts; undefined when one of them cannot be set. */
export function lineNeeds(space: SearchSpace, partAt: PartAt): LineNeeds | undefined {
  let mine = asked.get(space);
  if (mine === undefined) {
    const lines = usedOutlets(space.layout, space.brief);
    const slots = lines.flatMap((l) => l.run);
    asked.set(space, (mine = { lines, slots, known: new Map(), last: undefined, answer: undefined }));
  }
  const { last, known, slots } = mine;
  if (last !== undefined && slots.every((id, i) => partAt(id) === last[i])) return mine.answer;
  const parts = slots.map(partAt);
  const key = parts.map((p) => p?.id ?? '-').join(' ');
  let answer = known.get(key);
  if (answer === undefined && !known.has(key))
    answer = remember(known, key, needsOf(space, mine.lines, partAt));
  mine.last = parts;
  mine.answer = answer;
  return answer;
}

/** Highest pressure that the regulator is set to for one line alone [Pa]: for several together it is no lower. */
export function lineSet(space: SearchSpace, line: LayoutLine, partAt: PartAt): number | undefined {
  const option = lineOf(space, line, partAt)?.option;
  if (option === undefined) return undefined;
  return settingFor(pumpDemands(outletDemands(space.contexts[0]!, [option]), undefined)).set;
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
