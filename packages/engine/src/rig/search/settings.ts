import type { Part, PartOf, LayoutLine, Slot } from '../../catalogue/index.ts';
import type { Chosen } from '../design/assemble.ts';
import type { LineContext } from '../design/line-context.ts';
import { hasLineOption, lineOptions, type LineOption } from '../design/line-options.ts';
import { outletDemands, partsOfLines, pumpDemands, usedOutlets } from '../design/outlet-demands.ts';
import { engineSpeedFor } from '../design/pump-options.ts';
import { RETURN_HOSE, settingFor, SUCTION_HOSE } from '../design/rest-of-rig.ts';
import { remember } from './remember.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** An outlet line as its parts build it, and the context whose spare it keeps. */
interface BuiltLine {
  readonly option: LineOption;
  readonly context: LineContext;
}

/** Lines built before, by their parts; the last of each line first, since a search asks for the same one many times. */
interface Built {
  readonly known: Map<string, BuiltLine | undefined>;
  last: readonly (Part | undefined)[];
  answer: BuiltLine | undefined;
}

const built = new WeakMap<SearchSpace, Map<string, Built>>();

/** How an outlet line is set that is built of given parts; undefined when they cannot do what the duties ask of it. */
export function lineOf(space: SearchSpace, line: LayoutLine, partAt: PartAt): BuiltLine | undefined {
  let lines = built.get(space);
  if (lines === undefined) built.set(space, (lines = new Map<string, Built>()));
  let mine = lines.get(line.id);
  if (mine === undefined) lines.set(line.id, (mine = { known: new Map(), last: [], answer: undefined }));
  const { known, last } = mine;
  if (last.length > 0 && line.run.every((id, i) => partAt(id) === last[i])) return mine.answer;
  const parts = line.run.map(partAt);
  const key = parts.map((p) => p?.id ?? '-').join(' ');
  let answer = known.get(key);
  if (answer === undefined && !known.has(key)) answer = remember(known, key, build(space, line, partAt));
  mine.last = parts;
  mine.answer = answer;
  return answer;
}

function build(space: SearchSpace, line: LayoutLine, partAt: PartAt): BuiltLine | undefined {
  const parts = line.run.filter((id) => partAt(id) !== undefined).length;
  const partsOf = ({ id }: Slot) => {
    const part = partAt(id);
    return part === undefined || !line.run.includes(id) ? [] : [part];
  };
  for (const context of space.contexts) {
    const [option] = lineOptions(context, line, partsOf);
    if (option !== undefined && option.parts.size === parts) return { option, context };
  }
  return undefined;
}

const begun = new WeakMap<SearchSpace, Map<string, boolean>>();

/**
 * Whether an outlet line that begins with the parts of some of its slots can be set with any of the space's parts in the
 * others. A reel only takes pressure and bounds the hose: without one, and whatever its rewind, more can be set.
 */
export function canBegin(
  space: SearchSpace,
  line: LayoutLine,
  decided: readonly string[],
  partAt: PartAt,
): boolean {
  let known = begun.get(space);
  if (known === undefined) begun.set(space, (known = new Map<string, boolean>()));
  const key = `${line.id} ${decided.map((id) => partAt(id)?.id ?? '-').join(' ')}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const partsOf = ({ id }: Slot): readonly Part[] => {
    if (!line.run.includes(id)) return [];
    if (decided.includes(id)) return [partAt(id)].filter((p) => p !== undefined);
    const options = space.slots.find((s) => s.id === id)?.options ?? [];
    return options.filter((p) => p !== undefined && p.kind !== 'reel');
  };
  const can = space.contexts.some((context) => {
    const { rewind: _any, ...wishes } = context.brief.wishes;
    return hasLineOption({ ...context, brief: { ...context.brief, wishes } }, line, partsOf);
  });
  return remember(known, key, can);
}

/**
 * Parts with their settings: hose lengths, the set of the regulator, the speed of the engine. They follow from the
 * parts by the same rules as in the quick selection, so that a set of parts is one rig. Undefined when an outlet line
 * cannot be set.
 */
export function settingsOf(space: SearchSpace, partAt: PartAt): ReadonlyMap<string, Chosen> | undefined {
  const lines: BuiltLine[] = [];
  for (const line of usedOutlets(space.layout, space.brief)) {
    const found = lineOf(space, line, partAt);
    if (found === undefined) return undefined;
    lines.push(found);
  }
  const options = lines.map((l) => l.option);
  const agitator = partAt('agitator') as PartOf<'agitator'> | undefined;
  const demands = pumpDemands(outletDemands(space.contexts[0]!, options), agitator);
  const chosen = new Map<string, Chosen>(partsOfLines(options));
  for (const { id } of space.slots) {
    const part = partAt(id);
    if (part === undefined || chosen.has(id)) continue;
    chosen.set(id, { part, ...settingOf(id, part, partAt, demands) });
  }
  return chosen;
}

function settingOf(
  slot: string,
  part: Part,
  partAt: PartAt,
  demands: Parameters<typeof settingFor>[0],
): Omit<Chosen, 'part'> {
  if (slot === 'suction-hose') return { length: SUCTION_HOSE };
  if (slot === 'return-hose') return { length: RETURN_HOSE };
  // A hose or nozzle of a line that no duty opens.
  if (part.kind === 'hose') return { length: SUCTION_HOSE };
  if (part.kind === 'regulator') return settingFor(demands).chosen;
  const [reduction, pump] = [partAt('reduction'), partAt('pump')];
  if (part.kind !== 'engine' || reduction?.kind !== 'reduction' || pump?.kind !== 'pump') return {};
  const speed = engineSpeedFor(part, reduction, pump);
  return speed < part.ratedSpeed * 0.999 ? { speed } : {};
}
