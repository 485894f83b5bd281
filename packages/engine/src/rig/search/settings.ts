import { catalogueOf, type Part, type PartOf, type LayoutLine } from '../../catalogue/index.ts';
import type { Chosen } from '../design/assemble.ts';
import type { LineContext } from '../design/line-context.ts';
import { lineOptions, type LineOption } from '../design/line-options.ts';
import { outletDemands, partsOfLines, pumpDemands, usedOutlets } from '../design/outlet-demands.ts';
import { engineSpeedFor } from '../design/pump-options.ts';
import { RETURN_HOSE, settingFor, SUCTION_HOSE } from '../design/rest-of-rig.ts';
import type { PartAt, SearchSpace } from './space.ts';

/** An outlet line as its parts build it, and the context whose spare it keeps. */
interface BuiltLine {
  readonly option: LineOption;
  readonly context: LineContext;
}

const built = new WeakMap<SearchSpace, Map<string, BuiltLine | undefined>>();

/** How an outlet line is set that is built of given parts; undefined when they cannot do what the duties ask of it. */
export function lineOf(space: SearchSpace, line: LayoutLine, partAt: PartAt): BuiltLine | undefined {
  let known = built.get(space);
  if (known === undefined) built.set(space, (known = new Map<string, BuiltLine | undefined>()));
  const parts = line.run.flatMap((id) => partAt(id) ?? []);
  const key = `${line.id} ${line.run.map((id) => partAt(id)?.id ?? '-').join(' ')}`;
  if (!known.has(key)) known.set(key, build(space, line, parts));
  return known.get(key);
}

function build(space: SearchSpace, line: LayoutLine, parts: readonly Part[]): BuiltLine | undefined {
  const only = catalogueOf(space.catalogue.name, space.catalogue.version, parts);
  for (const context of space.contexts) {
    const [option] = lineOptions({ ...context, catalogue: only }, line);
    if (option !== undefined && option.parts.size === parts.length) return { option, context };
  }
  return undefined;
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
